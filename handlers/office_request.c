#include "office_request.h"

#include <string.h>

#include "items.h"
#include "memory.h"
#include "say.h"

enum { COUNT_MAX = 60, BATTERIES_MAX = 8, WEEK_DAYS = 7, REACH = 2 };

static const char more_batteries[] = " more extra additional spare spares battery batteries batts "
                                     "bats packs mas extras adicionales bateria baterias pila "
                                     "pilas ";
static const char days[] = " day days night nights dia dias noche noches ";
static const char weeks[] = " week weeks semana semanas ";
static const char another[] = " another otra otro ";

static bool
is_batteries(const char *topic)
{
    return strcmp(topic, "extra-battery") == 0;
}

/* One of these words stands within reach behind `from`. */
static bool
follows(const struct tokens *tokens, size_t from, const char *words)
{
    size_t at;

    for (at = from; at < from + REACH && at < tokens->count; at++) {
        if (token_among(tokens, at, words)) {
            return true;
        }
    }
    return false;
}

/* "2 more batteries", "another week": batteries or days from here on; 0 if none. */
static int
count_at(const struct asked *asked, size_t at, const char *topic)
{
    const struct tokens *tokens = &asked->tokens;
    int thousandths = 0, count;
    size_t taken = tokens_number(tokens, at, true, &thousandths);

    if (taken == 0 && token_among(tokens, at, another)) {
        taken = 1;
        thousandths = 1000;
    }
    if (taken == 0 || thousandths < 1000 || thousandths % 1000 != 0) {
        return 0;
    }
    count = thousandths / 1000;
    if (is_batteries(topic)) {
        return count <= BATTERIES_MAX && follows(tokens, at + taken, more_batteries) ? count : 0;
    }
    if (count > COUNT_MAX) {
        return 0;
    }
    return follows(tokens, at + taken, days)    ? count
           : follows(tokens, at + taken, weeks) ? count * WEEK_DAYS
                                                : 0;
}

/* The day that the text names, as of `from`; for an extension it lies behind that day. */
static int64_t
day_told(const struct asked *asked, int64_t from_utc_s, bool behind)
{
    struct items items =
        items_read(asked->arena, asked->context->lexicon, &asked->tokens, asked->language);
    struct local_time local = zone_local(asked->context->zone, from_utc_s);
    int day = NO_DAY, ahead;
    size_t at;

    for (at = 0; at < items.count; at++) { /* the last one: what went before is the reason */
        day = item_is(&items, at, ITEM_DAY) ? item_value(&items, at, ITEM_DAY) : day;
    }
    if (day == NO_DAY || (behind && (day == DAY_TODAY || day == DAY_TOMORROW))) {
        return 0;
    }
    if (day == DAY_TODAY || day == DAY_TOMORROW) {
        ahead = day == DAY_TODAY ? 0 : 1;
    } else {
        ahead = (day - (int)DAY_MONDAY + 1 - local.weekday + WEEK_DAYS) % WEEK_DAYS;
        ahead = ahead == 0 ? WEEK_DAYS : ahead;
    }
    local.day += ahead;
    return zone_utc(asked->context->zone, &local);
}

static int64_t
days_later(const struct asked *asked, int64_t utc_s, int count)
{
    struct local_time local = zone_local(asked->context->zone, utc_s);

    local.day += count;
    return zone_utc(asked->context->zone, &local);
}

struct office_request
office_request_read(const struct asked *asked, const char *topic)
{
    struct office_request request = {0};
    bool extends = strcmp(topic, "extend") == 0;
    int64_t due_utc_s = asked->rental == NULL ? 0 : asked->rental->due_utc_s;
    size_t at;

    if ((!extends && !is_batteries(topic)) || (extends && due_utc_s == 0)) {
        return request;
    }
    for (at = 0; at < asked->tokens.count && request.count == 0; at++) {
        request.count = count_at(asked, at, topic);
    }
    request.day_utc_s =
        extends && request.count > 0
            ? days_later(asked, due_utc_s, request.count)
            : day_told(asked, extends ? due_utc_s : asked->context->now_utc_s, extends);
    return request;
}

static char *
say_request(const struct asked *asked, enum phrase phrase, const char *first, const char *second)
{
    return say(asked->arena, asked->context->house, asked->language, phrase, first, second, NULL);
}

char *
office_request_say(const struct asked *asked, const char *topic,
                   const struct office_request *request)
{
    char *count = memory_format(asked->arena, "%d", request->count), *text, *day;

    if (request->count == 0 && request->day_utc_s == 0) {
        return NULL;
    }
    day = say_date(asked->arena, asked->context->zone, asked->language, request->day_utc_s);
    if (!is_batteries(topic)) {
        text = request->count > 0 ? say_request(asked, SAY_REQUEST_DAYS, count, day)
                                  : say_request(asked, SAY_REQUEST_UNTIL, day, NULL);
    } else if (request->day_utc_s == 0) {
        text = say_request(asked, SAY_REQUEST_BATTERIES, count, NULL);
    } else {
        text = request->count > 0 ? say_request(asked, SAY_REQUEST_BATTERIES_BY, count, day)
                                  : say_request(asked, SAY_REQUEST_BY, day, NULL);
    }
    return text;
}

const char *
office_request_brief(const struct asked *asked, const char *topic, const char *brief,
                     const struct office_request *request)
{
    const char *one = is_batteries(topic) ? "battery" : "day";
    const char *many = is_batteries(topic) ? "batteries" : "days";
    char *text = memory_copy(asked->arena, brief);

    if (request->count > 0) {
        text = memory_format(asked->arena, "wants %d more %s", request->count,
                             request->count == 1 ? one : many);
    }
    if (request->day_utc_s > 0) {
        memory_append(
            &text, " %s %s", is_batteries(topic) ? "by" : "to",
            say_date(asked->arena, asked->context->zone, LANGUAGE_EN, request->day_utc_s));
    }
    return text;
}
