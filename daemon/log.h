/*
 * The log: one line an event on standard error, logfmt or JSON. At the default level it never
 * holds a renter's text; numbers are shortened to their last four digits by log_phone().
 */
#ifndef LOG_H
#define LOG_H

#include <stdbool.h>
#include <stdint.h>

enum log_level { LOG_ERROR_LEVEL, LOG_WARNING, LOG_INFO, LOG_DEBUG };
enum log_format { LOG_LOGFMT, LOG_JSON };

/* For the whole process; before it is called: info, logfmt. */
void log_setup(enum log_level level, enum log_format format);

/*
 * log_event(LOG_INFO, "text-stored", "gateway", "valley", "id", "17", NULL): pairs of strings,
 * ended by NULL. A NULL value leaves the pair out. Values may hold any bytes; they are quoted.
 */
void log_event(enum log_level level, const char *event, ...) __attribute__((sentinel));

/* "…0123" for a number; points into one of four rotating buffers of the calling thread. */
const char *log_phone(const char *phone);
/* A number as text; the same buffers. */
const char *log_number(int64_t number);

/* One line for each fault, with this event. */
struct faults;
void log_faults(const char *event, const struct faults *faults);

#endif
