/* What a text asks of the office in numbers: how many batteries by when, how long to keep the unit.
 */
#ifndef OFFICE_REQUEST_H
#define OFFICE_REQUEST_H

#include "asked.h"

struct office_request {
    int count;         /* batteries more, or days more; 0 if not told */
    int64_t day_utc_s; /* when they are needed, or the new day that it is due; 0 if not told */
};

/* `topic` is "extra-battery" or "extend"; of any other, nothing is told. Needs a rental. */
struct office_request office_request_read(const struct asked *asked, const char *topic);

/* "Request: batteries more: 2, by Saturday, Feb 14."; NULL if nothing was told. */
char *office_request_say(const struct asked *asked, const char *topic,
                         const struct office_request *request);

/* For staff: "wants 2 batteries by Saturday, Feb 14"; `brief` if nothing was told. */
const char *office_request_brief(const struct asked *asked, const char *topic, const char *brief,
                                 const struct office_request *request);

#endif
