#include "answered_time.h"

#include <string.h>

#include "memory.h"
#include "when.h"

enum { MINUTE_S = 60, HOUR_MINUTES = 60, FROM_NOW_MAX = 24 * 60, SHORT_ANSWER = 5 };

static const char leads[] =
    " at by around about before til till until for maybe its ok a las la los "
    "para antes de como el es y in the ";
static const char morning[] = " am morning manana madrugada ";
static const char later[] = " pm evening afternoon night tonight tarde noche ";

/* ---- from now -------------------------------------------------------------------------------- */

static int
unit_minutes(const struct tokens *tokens, size_t at)
{
    return token_among(tokens, at, " h hr hrs hour hours hora horas ")             ? HOUR_MINUTES
           : token_among(tokens, at, " m min mins minute minutes minuto minutos ") ? 1
                                                                                   : 0;
}

/* "and a half", "y media" */
static bool
and_a_half(const struct tokens *tokens, size_t at)
{
    size_t next = at + 1;

    next += token_is(tokens, next, "a") ? 1 : 0;
    return token_among(tokens, at, " and y ") && token_among(tokens, next, " half media ");
}

/* "half an hour", "media hora" */
static bool
half_an_hour(const struct tokens *tokens, size_t at)
{
    size_t next = at + 1;

    next += token_among(tokens, next, " an a ") ? 1 : 0;
    return token_among(tokens, at, " half media ") && unit_minutes(tokens, next) == HOUR_MINUTES;
}

/* The length that begins at `at`; 0 if none does. */
static int
length_at(const struct tokens *tokens, size_t at)
{
    int thousandths = 0, unit;
    size_t next;
    long long minutes;

    at += token_among(tokens, at, " about around like maybe como unos unas ") ? 1 : 0;
    if (half_an_hour(tokens, at)) {
        return HOUR_MINUTES / 2;
    }
    next = at + tokens_number(tokens, at, true, &thousandths);
    if (next == at && token_among(tokens, at, " a an un una ")) {
        thousandths = 1000;
        next++;
    }
    if (next > at && and_a_half(tokens, next)) { /* "2 and a half hours" */
        thousandths += 500;
        next += token_is(tokens, next + 1, "a") ? 3 : 2;
    }
    unit = next > at ? unit_minutes(tokens, next) : 0;
    minutes = (long long)thousandths * unit / 1000;
    if (unit == HOUR_MINUTES && and_a_half(tokens, next + 1)) { /* "an hour and a half" */
        minutes += HOUR_MINUTES / 2;
    }
    return minutes > 0 && minutes < FROM_NOW_MAX ? (int)minutes : 0;
}

/* "an alarm for 2 hours", "un recordatorio de 2 horas" */
static bool
is_set_for(const struct tokens *tokens, size_t at)
{
    return at > 0 && token_among(tokens, at, " for de para ") &&
           token_among(tokens, at - 1, " alarm timer reminder alarma aviso recordatorio ");
}

int
minutes_from_now(const struct tokens *tokens)
{
    size_t at;
    int minutes;

    for (at = 0; at < tokens->count; at++) {
        size_t next = at + 1;

        next += token_is(tokens, at, "dentro") && token_is(tokens, next, "de") ? 1 : 0;
        minutes = token_among(tokens, at, " in en dentro ") || is_set_for(tokens, at)
                      ? length_at(tokens, next)
                      : 0;
        if (minutes > 0) {
            return minutes;
        }
    }
    return 0;
}

/* ---- by the clock ---------------------------------------------------------------------------- */

/* Read as the time by which something is wanted. */
static bool
read_time(const struct asked *asked, const char *text, struct told *told)
{
    told_read(asked->arena, asked->context->lexicon,
              memory_format(asked->arena,
                            asked->language == LANGUAGE_ES ? "cargar para las %s" : "charged by %s",
                            text),
              told);
    return told->has_ready_by && !told->impossible;
}

/* `text` with these words behind the token. */
static char *
with_words(const struct asked *asked, const char *text, const struct token *token,
           const char *words)
{
    return memory_format(asked->arena, "%.*s %s%s", (int)token->end, text, words,
                         text + token->end);
}

static int64_t
moment_of(const struct asked *asked, const struct told *told)
{
    return when_told(asked->context->zone, asked->context->now_utc_s, told->ready_by, told->has_day,
                     told->day);
}

/* Of 9 am and 9 pm the one that comes first. */
static bool
sooner_half(const struct asked *asked, const char *text, int64_t *utc_s)
{
    struct tokens tokens = tokens_read(asked->arena, text);
    int64_t now_utc_s = asked->context->now_utc_s, half_utc_s[2];
    struct told told;
    size_t i;

    for (i = tokens.count; i > 0; i--) { /* "12:30": behind its last number */
        const struct token *token = &tokens.list[i - 1];

        if (!read_time(asked, with_words(asked, text, token, "am"), &told)) {
            continue;
        }
        half_utc_s[0] = moment_of(asked, &told);
        if (!read_time(asked, with_words(asked, text, token, "pm"), &told)) {
            continue;
        }
        half_utc_s[1] = moment_of(asked, &told);
        *utc_s = half_utc_s[0] > now_utc_s &&
                         (half_utc_s[0] < half_utc_s[1] || half_utc_s[1] <= now_utc_s)
                     ? half_utc_s[0]
                     : half_utc_s[1];
        return *utc_s > now_utc_s;
    }
    return false;
}

/* The text without the little words before its time. */
static const char *
without_lead(const struct asked *asked)
{
    size_t first = 0;

    while (token_among(&asked->tokens, first, leads)) {
        first++;
    }
    return first < asked->tokens.count ? asked->text + asked->tokens.list[first].start : "";
}

bool
answered_time(const struct asked *asked, int64_t *utc_s)
{
    int minutes = minutes_from_now(&asked->tokens);
    const char *text = without_lead(asked);
    struct told told;

    if (minutes > 0) {
        *utc_s = asked->context->now_utc_s + (int64_t)minutes * MINUTE_S;
        return true;
    }
    if (read_time(asked, text, &told)) {
        *utc_s = moment_of(asked, &told);
        return *utc_s > asked->context->now_utc_s;
    }
    return (told.missing & MISSING_AM_PM) != 0 && sooner_half(asked, text, utc_s);
}

static const char *
half_told(const struct asked *asked)
{
    size_t i;

    for (i = 0; i < asked->tokens.count && asked->tokens.count <= SHORT_ANSWER; i++) {
        if (token_among(&asked->tokens, i, morning)) {
            return "am";
        }
        if (token_among(&asked->tokens, i, later)) {
            return "pm";
        }
    }
    return NULL;
}

bool
answered_half_of_day(const struct asked *asked, const char *before, int *minutes)
{
    const char *half = half_told(asked);
    struct tokens tokens = tokens_read(asked->arena, before);
    struct told told;
    size_t i;

    for (i = 0; i < tokens.count && half != NULL; i++) {
        told_read(asked->arena, asked->context->lexicon,
                  with_words(asked, before, &tokens.list[i], half), &told);
        if (tokens.list[i].kind != TOKEN_SIGN && told.has_ready_by && !told.impossible) {
            *minutes = told.ready_by;
            return true;
        }
    }
    return false;
}

bool
answered_day(const struct asked *asked, int minutes, enum told_day *day)
{
    struct told told;

    if (asked->tokens.count > SHORT_ANSWER ||
        !read_time(asked,
                   memory_format(asked->arena, "%d:%02d %s", minutes / HOUR_MINUTES,
                                 minutes % HOUR_MINUTES, without_lead(asked)),
                   &told) ||
        !told.has_day) {
        return false;
    }
    *day = told.day;
    return true;
}

void
answered_as_told(const struct asked *asked, int64_t utc_s, int *minutes, enum told_day *day)
{
    const struct zone *zone = asked->context->zone;
    struct local_time local = zone_local(zone, utc_s);
    struct local_time today = zone_local(zone, asked->context->now_utc_s);
    struct local_time next = {.year = today.year, .month = today.month, .day = today.day + 1};

    *minutes = local.hour * HOUR_MINUTES + local.minute;
    next = zone_local(zone, zone_utc(zone, &next));
    if (local.day == today.day && local.month == today.month) {
        *day = DAY_TODAY;
    } else if (local.day == next.day && local.month == next.month) {
        *day = DAY_TOMORROW;
    } else {
        *day = (enum told_day)(DAY_MONDAY + (local.weekday + 6) % 7);
    }
}
