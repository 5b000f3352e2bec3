/* From what is told, or not, to a sum that can be worked out (declared in estimate_parts.h). */
#include <string.h>

#include "broken_plug.h"
#include "estimate_parts.h"
#include "memory.h"
#include "steps.h"

enum { MINUTE_S = 60, WEEK_DAYS = 7, NOON = 12 * 60 };

/* More is known of it: charges before all, then what else is asked back. */
static bool
tells_more(const struct told *told, const struct told *than)
{
    return told_has_charge(told) != told_has_charge(than)
               ? told_has_charge(told)
               : (told->missing & ~than->missing) == 0 && told->missing != than->missing;
}

bool
estimate_read(const struct asked *asked, enum told_kind kind, struct told *told)
{
    const struct told *whole = asked->message_told;

    *told = *asked->told;
    if (asked_in_message(asked) && whole->kind == kind && !whole->impossible &&
        (told->kind != kind || tells_more(whole, told))) {
        *told = *whole;
    }
    return asked->told->kind == kind;
}

bool
estimate_is_said(const struct verdict *verdict, const char *id)
{
    size_t i;

    for (i = 0; i < verdict->answer_count; i++) {
        const struct answer *answer = &verdict->answers[i];

        if (strcmp(answer->id, id) == 0 && answer->kind != ANSWER_TOPIC) {
            return true;
        }
    }
    return false;
}

bool
estimate_too_many(const struct asked *asked, struct verdict *verdict, const struct told *told,
                  const char *topic)
{
    int has = (int)asked->rental->battery_count, count = told_batteries(told);

    if (has == 0 || count <= has || asked_open_question(asked) == QUESTION_WHICH_CHARGE) {
        return false;
    }
    estimate_ask_back(asked, verdict, told, topic,
                      say(asked->arena, asked->context->house, asked->language,
                          SAY_MORE_THAN_RECORD, memory_format(asked->arena, "%d", count),
                          memory_format(asked->arena, "%d", has), NULL));
    return true;
}

static const char supposed[] =
    "if|suppose|supposing|assume|assuming|lets say|say i|once|when theyre|when they are|when its|"
    "after charging|after i charge|would|could i|ill have|well have|will have|going to have|"
    "si|supongamos|suponiendo|cuando esten|cuando este|una vez|despues de cargar|tendre|tendria|"
    "tendremos|voy a tener|vamos a tener";
static const char another_day[] =
    "tomorrow|tmrw|tomorow|tmr|monday|tuesday|wednesday|thursday|friday|saturday|sunday|next|"
    "weekend|manana|lunes|martes|miercoles|jueves|viernes|sabado|domingo|proximo|proxima";
static const char has_now[] = "i have|we have|ive got|weve got|i got|we got|have got|right now|now|"
                              "tengo|tenemos|ahora|ahorita";

/* Charges of now: not of a case that is thought of, nor of a day to come. */
static bool
are_of_now(const struct asked *asked)
{
    return !tokens_have(&asked->tokens, supposed) &&
           (!tokens_have(&asked->tokens, another_day) || tokens_have(&asked->tokens, has_now));
}

void
estimate_remember(const struct asked *asked, struct verdict *verdict, const struct told *told)
{
    size_t count = asked->rental == NULL ? 0 : asked->rental->battery_count;

    if (asked->rental == NULL || !told_has_charge(told) || told->is_earlier || told->impossible ||
        (count > 0 && told_batteries(told) > (int)count) || !are_of_now(asked)) {
        return;
    }
    verdict->account_changed = true;
    verdict->account = (struct battery_account){.known = true,
                                                .as_of_utc_s = asked->wrote_utc_s -
                                                               (int64_t)told->since_min * MINUTE_S,
                                                .told = *told};
    verdict->account.told.since_min = 0; /* it is in the time of the account */
    if (told->kind == TOLD_CHARGING && told->on_power == POWER_SOURCE_NONE) {
        verdict->account.told.on_power = POWER_SOURCE_WALL;
    }
}

void
estimate_forget(const struct asked *asked, struct verdict *verdict)
{
    if (asked->account == NULL || !asked->account->known || verdict->account_changed ||
        !are_of_now(asked)) {
        return;
    }
    verdict->account_changed = true;
    verdict->account = (struct battery_account){.as_of_utc_s = asked->wrote_utc_s};
}

void
estimate_ask_back(const struct asked *asked, struct verdict *verdict, const struct told *told,
                  const char *topic, const char *text)
{
    estimate_add(asked, verdict, ANSWER_ASK, ROUTE_ANSWER, told, topic, topic)->text = text;
    (void)open_question_ask(asked, verdict, QUESTION_WHICH_CHARGE);
}

void
estimate_no_record(const struct asked *asked, struct verdict *verdict, const struct told *told,
                   const char *topic, const char *brief)
{
    estimate_add(asked, verdict, ANSWER_TOPIC, ROUTE_ANSWER, told, topic, topic)->text =
        estimate_say(asked, SAY_NO_RENTAL, NULL);
    if (told_has_charge(told)) {
        verdict_alert(verdict, ALERT_OFFICE, false, "power:no-record", brief);
        broken_plug_call(asked, verdict);
    }
}

void
estimate_to_person(const struct asked *asked, struct verdict *verdict, const struct told *told,
                   const char *topic, const char *text, enum alert_level level, const char *reason,
                   const char *brief)
{
    estimate_add(asked, verdict, ANSWER_OFFICE, ROUTE_STAFF, told, topic, topic)->text = text;
    verdict_alert(verdict, level, false, reason, brief);
}

/* Days from today to the one told, or -1 if none is. */
static int
days_ahead(const struct told *told, int weekday_today)
{
    if (!told->has_day) {
        return -1;
    }
    if (told->day == DAY_TODAY || told->day == DAY_TOMORROW) {
        return told->day == DAY_TODAY ? 0 : 1;
    }
    return ((int)told->day - (int)DAY_MONDAY + 1 - weekday_today + WEEK_DAYS) % WEEK_DAYS;
}

bool
estimate_ready_by(const struct asked *asked, const struct told *told, int64_t *utc_s)
{
    const struct zone *zone = asked->context->zone;
    int64_t now_utc_s = asked->context->now_utc_s;
    struct local_time local = zone_local(zone, now_utc_s);
    int ahead = days_ahead(told, local.weekday);

    local = (struct local_time){.year = local.year,
                                .month = local.month,
                                .day = local.day + (ahead > 0 ? ahead : 0),
                                .hour = told->ready_by / MINUTE_S,
                                .minute = told->ready_by % MINUTE_S};
    *utc_s = zone_utc(zone, &local);
    if (*utc_s <= now_utc_s && told->has_day && told->day > DAY_TOMORROW) {
        local.day += WEEK_DAYS;
    } else if (*utc_s <= now_utc_s && (!told->has_day || told->ready_by < NOON)) {
        local.day++; /* "tonight by 5 am" is the night's end */
    }
    *utc_s = zone_utc(zone, &local);
    return *utc_s > now_utc_s;
}
