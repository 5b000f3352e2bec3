#include "alert_text.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

#include <jansson.h>

#include "clock.h"
#include "memory.h"
#include "parts.h"
#include "verdict.h"

static const char *
level_word(enum alert_level level)
{
    static const char *const words[] = {[ALERT_NONE] = "",
                                        [ALERT_OFFICE] = "OFFICE",
                                        [ALERT_URGENT] = "URGENT",
                                        [ALERT_EMERGENCY] = "EMERGENCY"};

    return words[level];
}

enum { RENTERS_TEXTED = 8, RENTERS_SPOKEN = 3 };

/* "12 Gwen, Cabin 4, +1…, until 1:10 am"; of what else was told of them, in brackets. */
static void
append_renter(char **text, const struct alert_renter *renter)
{
    memory_append(text, "%lld ", (long long)renter->number);
    if (renter->first_name != NULL) {
        memory_append(text, "%s, ", renter->first_name);
    }
    if (renter->place != NULL) {
        memory_append(text, "%s, ", renter->place);
    }
    memory_append(text, "%s, ", renter->phone);
    if (renter->until != NULL) {
        memory_append(text, "until %s", renter->until);
    } else {
        memory_append(text, "charge not told");
    }
    if (strstr(renter->brief, " + ") != NULL || strchr(renter->brief, ';') != NULL) {
        memory_append(text, " (%s)", renter->brief);
    }
}

/* "3 renters, first to run out first: 14 Tom, Cabin 7, +1…, charge not told; 12 Gwen…" */
static void
append_renters(char **text, const struct alert_row *alert)
{
    size_t i;

    memory_append(text, "%zu renters, first to run out first: ", alert->renter_count);
    for (i = 0; i < alert->renter_count && i < RENTERS_TEXTED; i++) {
        memory_append(text, "%s", i > 0 ? "; " : "");
        append_renter(text, &alert->renters[i]);
    }
    if (i < alert->renter_count) {
        memory_append(text, "; and %zu more", alert->renter_count - i);
    }
}

/* "Gwen, Cabin 4, +12085550123", as much of it as the record has. */
static void
append_who(char **text, const struct alert_row *alert)
{
    if (alert->renter_count > 0) {
        append_renters(text, alert);
        return;
    }
    if (strcmp(alert->phone, ALERT_ABOUT_US) == 0) {
        memory_append(text, "This is about hutbell itself");
        return;
    }
    if (alert->one_of != NULL) {
        memory_append(text, "one of %s; ", alert->one_of);
    } else if (alert->first_name != NULL) {
        memory_append(text, "%s, ", alert->first_name);
    } else if (alert->number != 0) { /* else nobody could look */
        memory_append(text, "no rental on record, ");
    }
    if (alert->place != NULL) {
        memory_append(text, "%s, ", alert->place);
    }
    memory_append(text, "%s", alert->phone);
}

/* "EMERGENCY 12: chest pain. Gwen, Cabin 4, +1…. Taken by Robin, still open." */
static char *
short_form(void *arena, const struct alert_row *alert, const char *taken_name)
{
    char *text = memory_format(arena, "%s", level_word(alert->level));

    assert(alert->level != ALERT_NONE);
    if (alert->number != 0) {
        memory_append(&text, " %lld", (long long)alert->number);
    }
    memory_append(&text, ": %s. ", alert->brief);
    append_who(&text, alert);
    memory_append(&text, ".");
    if (taken_name != NULL) {
        memory_append(&text, " Taken by %s, still open.", taken_name);
    }
    return text;
}

static const char unrecorded[] = " Our records are down: act now, tell each other by phone.";

/* One that has joined it, as an example. */
static int64_t
joined_number(const struct alert_row *alert)
{
    return alert->renters[alert->renters[0].number == alert->number ? 1 : 0].number;
}

char *
alert_text(void *arena, const struct alert_row *alert, const char *taken_name)
{
    char *text = short_form(arena, alert, taken_name);

    if (alert->number == 0) {
        memory_append(&text, "%s", unrecorded);
    } else if (alert->renter_count > 0) {
        memory_append(&text,
                      " Text MINE %lld to take all, SORTED %lld and what happened to close all, "
                      "SORTED %lld for that one.",
                      (long long)alert->number, (long long)alert->number,
                      (long long)joined_number(alert));
    } else {
        memory_append(&text,
                      " Text MINE %lld to take it, SORTED %lld and what happened to close it.",
                      (long long)alert->number, (long long)alert->number);
    }
    return parts_plain(arena, text);
}

const char *
alert_text_joined(void *arena, const struct alert_row *alert)
{
    char *text =
        memory_format(arena, "New with %s %lld, which you have: ", level_word(alert->level),
                      (long long)alert->number);
    const struct alert_renter *last = NULL;
    size_t i;

    for (i = 0; i < alert->renter_count; i++) {
        if (alert->renters[i].is_new) {
            memory_append(&text, "%s", last != NULL ? "; " : "");
            append_renter(&text, &alert->renters[i]);
            last = &alert->renters[i];
        }
    }
    if (last == NULL) {
        return NULL;
    }
    memory_append(&text, ". Text SORTED %lld and what happened to close that one.",
                  (long long)last->number);
    return parts_plain(arena, text);
}

/* ---- Read aloud ----------------------------------------------------------------------------- */

/* "1 2 0 8 5 5 5": a voice would make one large number of it. */
static void
append_digits(char **text, const char *phone)
{
    for (; *phone != '\0'; phone++) {
        if (*phone >= '0' && *phone <= '9') {
            memory_append(text, " %c", *phone);
        }
    }
}

static void
append_renters_spoken(char **text, const struct alert_row *alert)
{
    size_t i;

    memory_append(text, " %zu renters.", alert->renter_count);
    for (i = 0; i < alert->renter_count && i < RENTERS_SPOKEN; i++) {
        const struct alert_renter *renter = &alert->renters[i];

        memory_append(text, " %s %s%s%s, %s%s.", i == 0 ? "First to run out:" : "Then:",
                      renter->first_name != NULL ? renter->first_name : "no name",
                      renter->place != NULL ? ", " : "", renter->place != NULL ? renter->place : "",
                      renter->until != NULL ? "until " : "charge not told",
                      renter->until != NULL ? renter->until : "");
        memory_append(text, " Telephone");
        append_digits(text, renter->phone);
        memory_append(text, ".");
    }
}

static void
append_who_spoken(char **text, const struct alert_row *alert)
{
    if (alert->renter_count > 0) {
        append_renters_spoken(text, alert);
        return;
    }
    if (strcmp(alert->phone, ALERT_ABOUT_US) == 0) {
        memory_append(text, " This is about the text line itself.");
        return;
    }
    if (alert->one_of != NULL) {
        memory_append(text, " One of: %s.", alert->one_of);
    } else if (alert->first_name != NULL) {
        memory_append(text, " %s.", alert->first_name);
    }
    if (alert->place != NULL) {
        memory_append(text, " %s.", alert->place);
    }
    memory_append(text, " Telephone");
    append_digits(text, alert->phone);
    memory_append(text, ".");
}

char *
alert_spoken(void *arena, const struct alert_row *alert, const char *taken_name, bool is_holder)
{
    static const char *const words[] = {[ALERT_NONE] = "",
                                        [ALERT_OFFICE] = "For the office",
                                        [ALERT_URGENT] = "Urgent",
                                        [ALERT_EMERGENCY] = "Emergency"};
    char *text = memory_format(arena, "%s.", words[alert->level]);

    if (alert->number != 0) {
        memory_append(&text, " Alert %lld.", (long long)alert->number);
    }
    memory_append(&text, " %s.", alert->brief);
    append_who_spoken(&text, alert);
    if (alert->number == 0) {
        memory_append(&text, "%s", unrecorded);
    } else if (is_holder) {
        memory_append(&text, " You have it. Press 1 if you still see to it, 5 if %s settled.",
                      alert->renter_count > 0 ? "all of it is" : "it is");
    } else {
        if (taken_name != NULL) {
            memory_append(&text, " Taken by %s, still open.", taken_name);
        }
        memory_append(&text, " Press 1 to take it.");
    }
    return text;
}

/* ---- The other roads ------------------------------------------------------------------------ */

char *
alert_mail(void *arena, const struct alert_row *alert, const char *taken_name)
{
    char *text = short_form(arena, alert, taken_name);

    if (alert->number == 0) {
        memory_append(&text, "%s", unrecorded);
    }
    return text;
}

char *
alert_mail_subject(void *arena, enum alert_level level, int64_t number)
{
    return number != 0 ? memory_format(arena, "%s %lld", level_word(level), (long long)number)
                       : memory_copy(arena, level_word(level));
}

static void
set_text(json_t *object, const char *name, const char *text)
{
    if (text != NULL) {
        (void)json_object_set_new(object, name, memory_must(json_string(text)));
    }
}

static json_t *
renters_json(const struct alert_row *alert)
{
    json_t *list = memory_must(json_array());
    size_t i;

    for (i = 0; i < alert->renter_count; i++) {
        const struct alert_renter *renter = &alert->renters[i];
        json_t *one = memory_must(json_pack("{s:I}", "alert", (json_int_t)renter->number));

        set_text(one, "first_name", renter->first_name);
        set_text(one, "place", renter->place);
        set_text(one, "phone", renter->phone);
        set_text(one, "until", renter->until);
        json_array_append_new(list, one);
    }
    return list;
}

char *
alert_json(void *arena, const struct alert_row *alert, const char *taken_name, const char *to_name,
           int64_t now_utc_s)
{
    json_t *data = memory_must(json_pack("{s:I, s:s, s:s}", "alert", (json_int_t)alert->number,
                                         "level", alert_level_name(alert->level), "to", to_name));
    json_t *body;
    char *dumped;
    char *text;

    set_text(data, "about", alert->brief);
    set_text(data, "first_name", alert->first_name);
    set_text(data, "one_of", alert->one_of);
    set_text(data, "place", alert->place);
    set_text(data, "phone", alert->phone);
    set_text(data, "taken_by", taken_name);
    if (alert->renter_count > 0) {
        json_object_set_new(data, "renters", renters_json(alert));
    }
    body = memory_must(json_pack("{s:s, s:s, s:o}", "type", "alert.called", "timestamp",
                                 clock_text(arena, now_utc_s), "data", data));
    dumped = memory_must(json_dumps(body, JSON_COMPACT));
    text = memory_copy(arena, dumped);
    free(dumped);
    json_decref(body);
    return text;
}

char *
alert_line(void *arena, const struct alert_row *alert)
{
    char *text = memory_format(arena, "%lld %s %s. ", (long long)alert->number,
                               level_word(alert->level), alert->brief);

    append_who(&text, alert);
    return text;
}

char *
alert_text_passed_on(void *arena, const char *from_name, const char *text)
{
    return parts_plain(arena,
                       memory_format(arena, "%s passes this on to you. %s", from_name, text));
}

char *
alert_text_not_passed_on(void *arena, const char *to_name, const char *text)
{
    return parts_plain(arena, memory_format(arena, "%s has not taken it, so it is still yours. %s",
                                            to_name, text));
}

char *
alert_text_gone(void *arena, int64_t number, const char *to_name)
{
    return parts_plain(
        arena, memory_format(arena, "Alert %lld is with %s now.", (long long)number, to_name));
}

char *
alert_text_not_reached(void *arena, enum alert_level level, int64_t number, const char *phone)
{
    return memory_format(arena,
                         "%s %lld: not reached. No word that our text to %s arrived. Ring %s.",
                         level_word(level), (long long)number, phone, phone);
}
