#include "alert_facts.h"

#include <string.h>

#include "memory.h"
#include "night_rows.h"
#include "rental_record.h"
#include "rental_rows.h"
#include "say.h"

enum { TEXTS_MAX = 6, LABEL_COLUMNS = 20, LABEL_COLUMNS_MAX = 32 };

static void
add(void *arena, struct alert_facts *facts, const struct alert_fact *fact)
{
    if (fact->value != NULL && *fact->value != '\0') {
        facts->list = memory_grow(arena, struct alert_fact, facts->list, facts->count);
        facts->list[facts->count++] = *fact;
    }
}

static void
add_text(void *arena, struct alert_facts *facts, const char *what, const char *value)
{
    const struct alert_fact fact = {.what = what, .value = value};

    add(arena, facts, &fact);
}

static void
add_spoken(void *arena, struct alert_facts *facts, const char *what, const char *value)
{
    const struct alert_fact fact = {.what = what, .value = value, .is_spoken = true};

    add(arena, facts, &fact);
}

static void
add_phone(void *arena, struct alert_facts *facts, const char *what, const char *number,
          bool is_spoken)
{
    const struct alert_fact fact = {
        .what = what, .value = number, .is_phone = true, .is_spoken = is_spoken};

    add(arena, facts, &fact);
}

/* ---- The record ----------------------------------------------------------------------------- */

static void
add_phones(void *arena, const struct rental *rental, struct alert_facts *facts)
{
    size_t i;

    for (i = 0; i < rental->phone_count; i++) {
        const struct phone *phone = &rental->phones[i];
        const char *whose = phone->whose != NULL ? phone->whose : "renter";

        add_phone(arena, facts,
                  phone->reach == REACH_ANY
                      ? memory_format(arena, "phone, %s", whose)
                      : memory_format(arena, "phone, %s, %s", whose, reach_name(phone->reach)),
                  phone->number, false);
    }
}

static char *
orders(void *arena, const struct rental *rental)
{
    char *text = memory_copy(arena, "");
    int activity;

    for (activity = 0; activity < ACTIVITY_COUNT; activity++) {
        const struct order *order = &rental->orders[activity];

        if (order->known) {
            memory_append(&text, "%s%s %s", *text == '\0' ? "" : ", ",
                          say_for(LANGUAGE_EN, (enum activity)activity),
                          say_mode(arena, LANGUAGE_EN, order->mode, order->setting_tenths));
        }
    }
    return text;
}

/* A time of day only if the record has one. */
static const char *
day(void *arena, const struct zone *zone, int64_t utc_s)
{
    struct local_time local = zone_local(zone, utc_s);
    bool has_time = local.hour != 0 || local.minute != 0 || local.second != 0;

    return (has_time ? say_day : say_date)(arena, zone, LANGUAGE_EN, utc_s);
}

static const char *
backup(void *arena, const struct zone *zone, const struct rental *rental)
{
    const struct backup *backup = &rental->backup;
    char *text;

    if (!backup->known) {
        return "none on record";
    }
    text = memory_format(arena, "%s%s%s", backup->size != NULL ? backup->size : "",
                         backup->size != NULL ? " " : "",
                         backup->kind != NULL ? backup->kind : "source of unknown kind");
    if (backup->psi > 0) {
        memory_append(&text, ", %d psi", backup->psi);
    }
    if (backup->checked_utc_s > 0) {
        memory_append(&text, ", checked %s", day(arena, zone, backup->checked_utc_s));
    }
    if (backup->flow_tenths > 0) {
        memory_append(&text, ", ordered flow %s", say_tenths(arena, backup->flow_tenths));
    }
    return text;
}

void
alert_facts_of_rental(void *arena, const struct zone *zone, const struct rental *rental,
                      struct alert_facts *facts)
{
    add_text(arena, facts, "renter",
             memory_format(arena, "%s, rental %s, %s",
                           rental->name != NULL ? rental->name : "no name", rental->rental_id,
                           rental_state_name(rental->state)));
    add_text(arena, facts, "reads", rental->in_words ? "blind or read to: write in words" : NULL);
    add_phones(arena, rental, facts);
    add_spoken(arena, facts, "unit",
               rental->unit == NULL ? NULL
                                    : memory_format(arena, "%s%s%s", rental->unit,
                                                    rental->serial != NULL ? ", serial " : "",
                                                    rental->serial != NULL ? rental->serial : ""));
    add_spoken(arena, facts, "ordered", orders(arena, rental));
    add_spoken(arena, facts, "backup", backup(arena, zone, rental));
    add_text(arena, facts, "place", rental->place);
    add_spoken(arena, facts, "address", rental->emergency_address);
    add_spoken(arena, facts, "access", rental->access);
    add_text(arena, facts, "altitude",
             rental->altitude_ft > 0 ? memory_format(arena, "%d ft", rental->altitude_ft) : NULL);
    add_phone(arena, facts, "desk", rental->desk_phone, true);
    add_phone(arena, facts, "emergency contact", rental->emergency_contact, true);
    add_phone(arena, facts, "prescriber", rental->prescriber_phone, true);
    add_phone(arena, facts, "local dispatch", rental->dispatch_number, true);
    add_text(arena, facts, "call prescriber",
             rental->call_below_reading > 0
                 ? memory_format(arena, "at a reading below %d", rental->call_below_reading)
                 : NULL);
}

/* Who may have written about the alert, and what is gathered of it. */
struct telling {
    struct store *store;
    void *arena;
    const struct config *config;
    int64_t since_utc_s, now_utc_s;
    struct phone *speakers;
    size_t speaker_count;
    struct alert_facts *facts;
};

static void
add_speaker(struct telling *telling, const struct phone *phone)
{
    size_t i;

    for (i = 0; i < telling->speaker_count; i++) {
        if (strcmp(telling->speakers[i].number, phone->number) == 0) {
            telling->speakers[i].whose = phone->whose;
            return;
        }
    }
    telling->speakers = memory_grow(telling->arena, struct phone, telling->speakers, i);
    telling->speakers[telling->speaker_count++] = *phone;
}

static int
add_rentals(struct telling *telling, const char *rental_id, const char *phone, struct fault *fault)
{
    struct rental_row one;
    struct rental_row *rows = &one;
    size_t count = 1;
    size_t i, j;
    bool found;

    if (rental_id != NULL) {
        if (rental_rows_newest(telling->store, telling->arena, rental_id, &one, &found, fault) !=
            0) {
            return -1;
        }
        count = found ? 1 : 0;
    } else if (rental_rows_of_phone(telling->store, telling->arena, phone, &rows, &count, fault) !=
               0) {
        return -1;
    }
    for (i = 0; i < count; i++) {
        struct rental rental;

        /* A closed rental's number may be someone else's by now. */
        if (!rental_record_parse(telling->arena, rows[i].json, &rental) ||
            (rental_id == NULL && !rental_is_active(&rental))) {
            continue;
        }
        alert_facts_of_rental(telling->arena, &telling->config->zone, &rental, telling->facts);
        for (j = 0; rental_id != NULL && rental_is_active(&rental) && j < rental.phone_count; j++) {
            add_speaker(telling, &rental.phones[j]);
        }
    }
    return 0;
}

/* ---- What was said and told ----------------------------------------------------------------- */

static void
add_words(struct telling *telling, int64_t at_utc_s, const char *verb, const char *body)
{
    const struct zone *zone = &telling->config->zone;
    struct local_time at = zone_local(zone, at_utc_s);
    bool is_today = at.day == zone_local(zone, telling->now_utc_s).day;

    add_text(telling->arena, telling->facts,
             memory_format(telling->arena, "%s, %s",
                           is_today ? say_clock(telling->arena, zone, at_utc_s)
                                    : say_day(telling->arena, zone, LANGUAGE_EN, at_utc_s),
                           verb),
             body == NULL    ? "(erased)"
             : *body == '\0' ? "(no words)"
                             : body);
}

static void
add_reply(struct telling *telling, const struct night_reply *reply)
{
    const struct staff *staff =
        reply->by == NULL ? NULL : config_staff_by_phone(telling->config, reply->by);
    const char *verb =
        staff != NULL ? memory_format(telling->arena, "%s wrote", staff->name) : "told";

    add_words(telling, reply->created_utc_s, verb, reply->body);
}

/* The last texts of one phone, what each was answered, and what else was sent since the first. */
static void
add_talk(struct telling *telling, const struct phone *speaker, const struct night_text *texts,
         size_t text_count, const struct night_reply *replies, size_t reply_count)
{
    bool is_other = speaker->whose != NULL && strcmp(speaker->whose, "renter") != 0;
    const char *said = is_other ? memory_format(telling->arena, "%s said", speaker->whose) : "said";
    size_t first = text_count > TEXTS_MAX ? text_count - TEXTS_MAX : 0, sent = 0, i, j;

    for (i = first; i <= text_count; i++) {
        for (; sent < reply_count; sent++) {
            if (replies[sent].why == NIGHT_ANSWER) {
                continue;
            }
            if (i < text_count && !night_sent_before(&replies[sent], &texts[i])) {
                break;
            }
            if (i > first || first == 0) {
                add_reply(telling, &replies[sent]);
            }
        }
        if (i == text_count) {
            break;
        }
        add_words(telling, texts[i].received_utc_s, said, texts[i].body);
        for (j = 0; j < reply_count; j++) {
            if (replies[j].why == NIGHT_ANSWER && replies[j].text_id == texts[i].id) {
                add_reply(telling, &replies[j]);
            }
        }
    }
}

static int
add_speakers(struct telling *telling, struct fault *fault)
{
    size_t i;

    for (i = 0; i < telling->speaker_count; i++) {
        const struct night_span span = {.since_utc_s = telling->since_utc_s,
                                        .until_utc_s = INT64_MAX,
                                        .phone = telling->speakers[i].number};
        struct night_text *texts;
        struct night_reply *replies;
        size_t text_count, reply_count;

        if (night_rows_texts(telling->store, telling->arena, &span, &texts, &text_count, fault) !=
                0 ||
            night_rows_replies(telling->store, telling->arena, &span, &replies, &reply_count,
                               fault) != 0) {
            return -1;
        }
        add_talk(telling, &telling->speakers[i], texts, text_count, replies, reply_count);
    }
    return 0;
}

static int
add_renter(struct telling *telling, const char *rental_id, const char *phone, struct fault *fault)
{
    const struct phone first = {.number = phone};

    telling->speaker_count = 0;
    telling->speakers = NULL;
    add_speaker(telling, &first);
    return add_rentals(telling, rental_id, phone, fault) != 0 ? -1 : add_speakers(telling, fault);
}

int
alert_facts_read(struct store *store, void *arena, const struct config *config,
                 const struct alert_row *alert, int64_t now_utc_s, struct alert_facts *facts,
                 struct fault *fault)
{
    int64_t begun_utc_s = alert->level_utc_s < now_utc_s ? alert->level_utc_s : now_utc_s;
    struct telling telling = {.store = store,
                              .arena = arena,
                              .config = config,
                              .since_utc_s = begun_utc_s - config->house.conversation_s,
                              .now_utc_s = now_utc_s,
                              .facts = facts};
    size_t i;

    *facts = (struct alert_facts){0};
    if (strcmp(alert->phone, ALERT_ABOUT_US) == 0) {
        return 0;
    }
    for (i = 0; i < alert->renter_count; i++) { /* one after the other, as they are listed */
        const struct alert_renter *renter = &alert->renters[i];

        add_text(arena, facts, "alert", memory_format(arena, "%lld", (long long)renter->number));
        if (add_renter(&telling, renter->rental_id, renter->phone, fault) != 0) {
            return -1;
        }
    }
    return alert->renter_count > 0 ? 0
                                   : add_renter(&telling, alert->rental_id, alert->phone, fault);
}

/* ---- Shown ---------------------------------------------------------------------------------- */

char *
alert_facts_spoken(void *arena, const struct alert_facts *facts)
{
    char *text = memory_copy(arena, "");
    const char *digit;
    size_t i;

    for (i = 0; i < facts->count; i++) {
        const struct alert_fact *fact = &facts->list[i];

        if (!fact->is_spoken) {
            continue;
        }
        memory_append(&text, "%s%s:", *text == '\0' ? "" : " ", fact->what);
        if (!fact->is_phone) {
            memory_append(&text, " %s", fact->value);
        }
        for (digit = fact->value; fact->is_phone && *digit != '\0'; digit++) {
            if (*digit != '+') { /* a voice would make one large number of it */
                memory_append(&text, " %c", *digit);
            }
        }
        memory_append(&text, ".");
    }
    return text;
}

char *
alert_facts_lines(void *arena, const struct alert_facts *facts)
{
    char *text = memory_copy(arena, "");
    size_t columns = LABEL_COLUMNS, i;

    for (i = 0; i < facts->count; i++) {
        size_t length = strlen(facts->list[i].what);

        columns = length > columns && length <= LABEL_COLUMNS_MAX ? length : columns;
    }
    for (i = 0; i < facts->count; i++) {
        memory_append(&text, "    %-*s %s\n", (int)columns, facts->list[i].what,
                      facts->list[i].value);
    }
    return text;
}
