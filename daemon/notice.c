#include "notice.h"

#include <string.h>

#include <glib.h>

#include "about_us.h"
#include "conversation_rows.h"
#include "in_words.h"
#include "memory.h"
#include "outbox_rows.h"
#include "parts.h"
#include "quiet.h"
#include "rental_record.h"
#include "rental_rows.h"
#include "rest_rows.h"
#include "say.h"

enum { DAY_S = 86400, MINUTE_S = 60 };

/* One plan in the making. */
struct planning {
    struct store *store;
    void *arena;
    const struct config *config;
    const struct notice_pick *pick;
    struct notice *notice;
    int64_t now_utc_s;
    size_t unread;
};

/* ---- Which rentals -------------------------------------------------------------------------- */

static bool
is_like(const char *pattern, const char *value)
{
    char *folded_pattern, *folded_value;
    bool is_like;

    if (pattern == NULL || value == NULL) {
        return pattern == NULL;
    }
    folded_pattern = g_utf8_casefold(pattern, -1);
    folded_value = g_utf8_casefold(value, -1);
    is_like = g_pattern_match_simple(folded_pattern, folded_value);
    g_free(folded_pattern);
    g_free(folded_value);
    return is_like;
}

static bool
has_serial(const char *pattern, const struct rental *rental)
{
    size_t i;

    if (is_like(pattern, rental->serial)) {
        return true;
    }
    for (i = 0; i < rental->battery_count; i++) {
        if (is_like(pattern, rental->batteries[i].serial)) {
            return true;
        }
    }
    return false;
}

static unsigned
states_of(const struct notice_pick *pick)
{
    return pick->states != 0 ? pick->states : 1U << RENTAL_OUT | 1U << RENTAL_OVERDUE;
}

static bool
is_picked(void *arena, const struct notice_pick *pick, const struct rental *rental)
{
    const char *place = pick->place == NULL ? NULL : memory_format(arena, "*%s*", pick->place);

    return (states_of(pick) & 1U << rental->state) != 0 && is_like(pick->unit, rental->unit) &&
           has_serial(pick->serial, rental) && is_like(place, rental->place);
}

char *
notice_pick_words(void *arena, const struct notice_pick *pick)
{
    char *text = memory_copy(arena, "");
    bool is_first = true;
    int state;

    if (pick->unit != NULL) {
        memory_append(&text, "unit %s, ", pick->unit);
    }
    if (pick->serial != NULL) {
        memory_append(&text, "serial %s, ", pick->serial);
    }
    if (pick->place != NULL) {
        memory_append(&text, "place %s, ", pick->place);
    }
    for (state = RENTAL_BOOKED; state <= RENTAL_CLOSED; state++) {
        if ((states_of(pick) & 1U << state) != 0) {
            memory_append(&text, "%s%s", is_first ? "" : " or ",
                          rental_state_name((enum rental_state)state));
            is_first = false;
        }
    }
    return text;
}

/* ---- Whom, when ----------------------------------------------------------------------------- */

static int
find_hindrance(const struct planning *planning, struct notice_target *target, struct fault *fault)
{
    const char *phone = target->phone->number;
    struct conversation conversation;
    bool death_told, wants_silence;
    int texted;

    if (target->phone->reach == REACH_LANDLINE) {
        target->hindrance = "landline";
        return 0;
    }
    if (conversation_rows_newest(planning->store, planning->arena, phone, &conversation, fault) !=
            0 ||
        alert_rows_open_because(planning->store, planning->arena, phone, "sign:death-told",
                                &death_told, fault) != 0 ||
        alert_rows_open_because(planning->store, planning->arena, phone, NO_REPLY_REASON,
                                &wants_silence, fault) != 0 ||
        notice_rows_texted(planning->store, phone, planning->now_utc_s - DAY_S, &texted, fault) !=
            0) {
        return -1;
    }
    if (death_told) {
        target->hindrance = "a death was told";
    } else if (wants_silence) {
        target->hindrance = "somebody else may read the phone";
    } else if (conversation.opted_out) {
        target->hindrance = "wants no texts";
    } else if (!planning->notice->is_urgent && texted >= planning->config->notices.per_day) {
        target->hindrance = "had enough notices today";
    }
    return 0;
}

/* So many a minute; what falls into the quiet hours waits for their end, and what is still not sent
 * when the next ones begin is not sent at all. */
static void
set_time(const struct planning *planning, struct notice_target *target)
{
    const struct config *config = planning->config;
    const char *place = target->rental->place;
    int64_t minute = (int64_t)planning->notice->texted / config->notices.per_minute;

    target->send_utc_s = planning->now_utc_s + minute * MINUTE_S;
    if (!planning->notice->is_urgent) {
        target->send_utc_s = quiet_ends(config, place, target->send_utc_s);
        if (target->send_utc_s > planning->now_utc_s + minute * MINUTE_S) {
            target->send_utc_s += minute * MINUTE_S;
        }
    }
    target->give_up_utc_s = target->send_utc_s + config->limits.give_up_s;
    if (!planning->notice->is_urgent) {
        int64_t quiet_utc_s = quiet_begins(config, place, target->send_utc_s);

        target->give_up_utc_s =
            target->give_up_utc_s < quiet_utc_s ? target->give_up_utc_s : quiet_utc_s;
    }
}

/* A phone of two rentals gets it once. */
static bool
is_there(const struct notice *notice, const char *phone)
{
    size_t i;

    for (i = 0; i < notice->count; i++) {
        if (notice->targets[i].phone != NULL &&
            strcmp(notice->targets[i].phone->number, phone) == 0) {
            return true;
        }
    }
    return false;
}

static struct notice_target *
add_target(struct planning *planning, const struct rental *rental, const struct phone *phone)
{
    struct notice *notice = planning->notice;

    notice->targets =
        memory_grow(planning->arena, struct notice_target, notice->targets, notice->count);
    notice->targets[notice->count] =
        (struct notice_target){.rental = rental, .phone = phone, .language = rental->language};
    return &notice->targets[notice->count++];
}

static int
add_phone(struct planning *planning, const struct rental *rental, const struct phone *phone,
          struct fault *fault)
{
    struct notice_target *target;

    if (is_there(planning->notice, phone->number)) {
        return 0;
    }
    target = add_target(planning, rental, phone);
    if (find_hindrance(planning, target, fault) != 0) {
        return -1;
    }
    if (target->hindrance == NULL) {
        set_time(planning, target);
        planning->notice->texted++;
        planning->notice->texted_in[target->language]++;
    }
    return 0;
}

static int
add_rental(void *data, const struct rental_row *row, struct fault *fault)
{
    struct planning *planning = data;
    struct rental *rental = memory_new(planning->arena, struct rental);
    const char **linked;
    size_t count, i;
    bool rests;

    if (!rental_record_parse(planning->arena, row->json, rental)) {
        planning->unread++;
        return 0;
    }
    if (!is_picked(planning->arena, planning->pick, rental)) {
        return 0;
    }
    if (rest_rows_is(planning->store, rental->rental_id, &rests, fault) != 0 ||
        rental_rows_linked(planning->store, planning->arena, rental->rental_id, &linked, &count,
                           fault) != 0) {
        return -1;
    }
    if (rests) {
        add_target(planning, rental, NULL)->hindrance = "the renter has died";
        return 0;
    }
    for (i = 0; i < rental->phone_count; i++) {
        if (add_phone(planning, rental, &rental->phones[i], fault) != 0) {
            return -1;
        }
    }
    for (i = 0; i < count; i++) {
        struct phone *phone = memory_new(planning->arena, struct phone);

        *phone = (struct phone){.number = linked[i], .whose = "linked by staff"};
        if (add_phone(planning, rental, phone, fault) != 0) {
            return -1;
        }
    }
    if (rental->phone_count + count == 0) {
        add_target(planning, rental, NULL)->hindrance = "no phone on record";
    }
    return 0;
}

/* The office's words as a sentence, for ours follow them. */
static const char *
with_stop(void *arena, const char *words)
{
    size_t length = strlen(words);

    while (length > 0 && g_ascii_isspace(words[length - 1])) {
        length--;
    }
    return memory_format(arena, "%.*s%s", (int)length, words,
                         length > 0 && strchr(".!?", words[length - 1]) != NULL ? "" : ".");
}

int
notice_plan(struct store *store, void *arena, const struct config *config,
            const struct notice_pick *pick, int64_t now_utc_s, struct notice *notice,
            size_t *unread, struct fault *fault)
{
    struct planning planning = {.store = store,
                                .arena = arena,
                                .config = config,
                                .pick = pick,
                                .notice = notice,
                                .now_utc_s = now_utc_s};
    const char *const words[LANGUAGE_COUNT] = {
        [LANGUAGE_EN] = notice->english, [LANGUAGE_ES] = notice->spanish};
    int language;

    for (language = 0; language < LANGUAGE_COUNT; language++) {
        if (words[language] != NULL) {
            notice->texts[language] =
                parts_plain(arena, say(arena, &config->house, (enum language)language, SAY_NOTICE,
                                       with_stop(arena, words[language]), NULL));
        }
    }
    if (rental_rows_each(store, add_rental, &planning, fault) != 0) {
        return -1;
    }
    *unread = planning.unread;
    return 0;
}

/* ---- Into the store ------------------------------------------------------------------------- */

static int
write_target(struct store *store, void *arena, const struct config *config,
             const struct notice *notice, const struct notice_target *target, int64_t number,
             int64_t now_utc_s, struct fault *fault)
{
    const char *text = notice->texts[target->language];
    struct notice_phone phone = {.rental_id = target->rental->rental_id,
                                 .phone = target->phone != NULL ? target->phone->number : NULL,
                                 .hindrance = target->hindrance};
    const struct outbox_new row = {.about = OUTBOX_REPLY,
                                   .gateway = config->reply_gateway,
                                   .to = phone.phone,
                                   .body = target->rental->in_words && text != NULL
                                               ? in_words(arena, target->language, text)
                                               : text,
                                   .urgency = notice->is_urgent ? URGENCY_REPLY : URGENCY_OFFICE,
                                   .now_utc_s = now_utc_s,
                                   .start_utc_s = target->send_utc_s,
                                   .give_up_utc_s = target->give_up_utc_s};

    if (phone.hindrance == NULL && outbox_rows_add(store, &row, &phone.outbox_id, fault) != 0) {
        return -1;
    }
    return notice_rows_add_phone(store, number, &phone, fault);
}

int
notice_write(struct store *store, void *arena, const struct config *config,
             const struct notice *notice, const char *who, const char *picked, int64_t now_utc_s,
             int64_t *number, struct fault *fault)
{
    const struct notice_row row = {.at_utc_s = now_utc_s,
                                   .who = who,
                                   .english = notice->english,
                                   .spanish = notice->spanish,
                                   .picked = picked,
                                   .is_urgent = notice->is_urgent};
    size_t i;

    if (notice_rows_add(store, &row, number, fault) != 0) {
        return -1;
    }
    for (i = 0; i < notice->count; i++) {
        if (write_target(store, arena, config, notice, &notice->targets[i], *number, now_utc_s,
                         fault) != 0) {
            return -1;
        }
    }
    return 0;
}

int
notice_not_reached(struct store *store, const struct config *config, int64_t number, bool is_urgent,
                   int64_t now_utc_s, struct fault *fault)
{
    char reason[60], brief[80];
    int64_t alert;

    g_snprintf(reason, sizeof(reason), "us:notice-%lld", (long long)number);
    g_snprintf(brief, sizeof(brief), "notice %lld not delivered to all: hutbell notice %lld",
               (long long)number, (long long)number);
    return about_us(config, store, is_urgent ? ALERT_URGENT : ALERT_OFFICE, reason, brief,
                    now_utc_s, &alert, fault);
}
