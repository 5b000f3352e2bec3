/*
 * Random nights in virtual time: texts, takes, words, passings-on, closings, restarts, steps of the
 * clock, roads that die and come back, mains failures, against a store in memory. After each event
 * every open alert has a next step with a time that is not too far, or a person with a re-check
 * time, or is called with one that has; a step of the clock makes nothing due; a renter whom a
 * person has never waits longer than was promised, and one whom nobody has answered knows it.
 *
 * usage: alerts_model_test [EVENTS [SEED]]; a million of them: meson test --benchmark
 */
#include <inttypes.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "alert_calls.h"
#include "alert_group_rows.h"
#include "alert_hands.h"
#include "conversation_rows.h"
#include "memory.h"
#include "not_reached.h"
#include "step_watch.h"
#include "store_sql.h"
#include "talk.h"
#include "talk_rows.h"
#include "texts.h"

enum {
    STAFF = 3,
    RENTERS = 7,
    STORE_EVENTS = 500, /* then a new store, so that its histories stay as short as real ones */
    SENDS_AT_ONCE = 50,
    LINE_BYTES = 200
};

static const int64_t epoch_utc_s = 1770000000;
static const int64_t longest_step_s = 3 * 86400;

static const struct staff staff[STAFF] = {
    {.name = "Robin", .phone = "+12085550190", .road_from = {[ROAD_TEXT] = ALERT_OFFICE}},
    {.name = "Kim", .phone = "+12085550191", .road_from = {[ROAD_TEXT] = ALERT_OFFICE}},
    {.name = "Sam", .phone = "+12085550192", .road_from = {[ROAD_TEXT] = ALERT_OFFICE}},
};

static const char *const renters[RENTERS] = {"+12085550110", "+12085550111", "+12085550112",
                                             "+12085550113", "+12085550114", "+12085550115",
                                             "+12085550116"};
static const char *const rentals[RENTERS] = {"R-0", "R-1", "R-2", "R-3", "R-4"}; /* two strangers */

static const struct gateway valley = {.name = "valley"};

/* The house's own table of times. */
static const struct config config = {
    .gateways = &valley,
    .gateway_count = 1,
    .reply_gateway = "valley",
    .staff = staff,
    .staff_count = STAFF,
    .house = {.company = "Larkspur", .phone = "208-555-0100", .emergency_number = "911"},
    .alert_times = {[ALERT_OFFICE] = {.again_s = 86400},
                    [ALERT_URGENT] = {600, 1200, 900, 86400},
                    [ALERT_EMERGENCY] = {120, 300, 300, 86400}},
    .limits = {
        .give_up_s = 1800, .flowing_s = 300, .plug_s = 600, .talk_s = 600, .talk_urgent_s = 300}};

static struct {
    struct store *store;
    void *arena; /* of one event */
    int64_t now_utc_s;
    int64_t passed_s; /* whatever the wall shows */
    int64_t text_ids[RENTERS];
    int64_t waits_since_s[RENTERS]; /* by passed_s; -1: for no answer */
    bool roads_are_dead;
    uint64_t random;
    uint64_t seed;
    long event;
    char last[LINE_BYTES]; /* what happened */
    long calls, lapses, steps, joined;
} world;

static struct fault fault;

__attribute__((format(printf, 1, 2), noreturn)) static void
fail(const char *format, ...)
{
    va_list list;

    fprintf(stderr, "event %ld of seed %" PRIu64 " (%s): ", world.event, world.seed, world.last);
    va_start(list, format);
    vfprintf(stderr, format, list);
    va_end(list);
    fprintf(stderr, "\n");
    exit(EXIT_FAILURE);
}

#define MUST(call)                                                                                 \
    do {                                                                                           \
        if ((call) != 0) {                                                                         \
            fail("%s", fault.text);                                                                \
        }                                                                                          \
    } while (0)

/* Steele, Lea, Flood: "Fast splittable pseudorandom number generators", 2014 (SplitMix64). */
static uint64_t
random_below(uint64_t limit)
{
    uint64_t mixed = world.random += 0x9e3779b97f4a7c15U;

    mixed = (mixed ^ mixed >> 30) * 0xbf58476d1ce4e5b9U;
    mixed = (mixed ^ mixed >> 27) * 0x94d049bb133111ebU;
    return (mixed ^ mixed >> 31) % limit;
}

static struct caller
caller_now(void)
{
    return (struct caller){&config, world.store, world.arena, world.now_utc_s};
}

static size_t
renter_of(const char *phone)
{
    size_t i = 0;

    while (i < RENTERS && strcmp(renters[i], phone) != 0) {
        i++;
    }
    return i;
}

/* ---- What must hold ------------------------------------------------------------------------- */

static int64_t
longest_s(enum alert_level level)
{
    const struct alert_times *times = &config.alert_times[level];

    return level == ALERT_OFFICE                  ? times->again_s
           : times->everyone_s > times->recheck_s ? times->everyone_s
                                                  : times->recheck_s;
}

static void
check_alert(const struct alert_row *alert)
{
    if (alert->next_utc_s <= world.now_utc_s ||
        alert->next_utc_s > world.now_utc_s + longest_s(alert->level)) {
        fail("alert %" PRId64 " of level %d has its next step in %" PRId64 " s", alert->number,
             (int)alert->level, alert->next_utc_s - world.now_utc_s);
    }
    if (alert->taken_by != NULL && config_staff_by_phone(&config, alert->taken_by) == NULL) {
        fail("alert %" PRId64 " is with nobody of staff", alert->number);
    }
    if (alert->offered_to != NULL && alert->taken_by == NULL) {
        fail("alert %" PRId64 " is passed on by nobody", alert->number);
    }
}

static void
check_talk(size_t renter)
{
    struct conversation conversation;
    struct talk_row talk;
    struct alert_row alert;
    bool found, is_open;

    MUST(talk_rows_find(world.store, world.arena, renters[renter], &talk, &found, &fault));
    MUST(
        conversation_rows_newest(world.store, world.arena, renters[renter], &conversation, &fault));
    if (!found) {
        world.waits_since_s[renter] = -1; /* answered by the program, which said so */
        if (conversation.in_charge != NULL) {
            fail("the program is silent for %s, whom nobody has", renters[renter]);
        }
        return;
    }
    MUST(alert_rows_find(world.store, world.arena, talk.alert_number, &alert, &is_open, &fault));
    if (!is_open || alert.taken_by == NULL || strcmp(alert.taken_by, talk.who) != 0 ||
        conversation.in_charge == NULL || strcmp(conversation.in_charge, talk.who) != 0) {
        fail("%s talks with somebody who does not have the alert", renters[renter]);
    }
    if (world.waits_since_s[renter] >= 0 &&
        world.passed_s - world.waits_since_s[renter] >= config.limits.talk_s) {
        fail("%s waits in vain for %" PRId64 " s", renters[renter],
             world.passed_s - world.waits_since_s[renter]);
    }
    if (world.waits_since_s[renter] >= 0 && talk.due_utc_s == INT64_MAX) {
        fail("nobody minds that %s waits", renters[renter]);
    }
}

/* What is called with another alert is in the same hands, and nothing graver is. */
static void
check_joined(void)
{
    sqlite3_stmt *query = store_query(
        world.store,
        "SELECT m.alert_number, h.alert_number IS NULL OR h.group_number IS NOT NULL,"
        " m.taken_by IS NOT h.taken_by, m.level <> 'urgent' OR h.level <> 'urgent' FROM alert_due m"
        " LEFT JOIN alert_due h ON h.alert_number = m.group_number"
        " WHERE m.group_number IS NOT NULL",
        NULL, 0, &fault);
    bool more;

    if (query == NULL || store_next(world.store, query, &more, &fault) != 0) {
        fail("%s", fault.text);
    }
    while (more) {
        world.joined++;
        if (sqlite3_column_int(query, 1) != 0 || sqlite3_column_int(query, 2) != 0 ||
            sqlite3_column_int(query, 3) != 0) {
            fail("alert %lld is called with one that is %s",
                 (long long)sqlite3_column_int64(query, 0),
                 sqlite3_column_int(query, 1) != 0   ? "not open"
                 : sqlite3_column_int(query, 2) != 0 ? "in other hands"
                                                     : "of another level");
        }
        if (store_next(world.store, query, &more, &fault) != 0) {
            fail("%s", fault.text);
        }
    }
}

static void
check_all(void)
{
    struct alert_row *rows;
    size_t count, i;

    MUST(alert_rows_due(world.store, world.arena, INT64_MAX, &rows, &count, &fault));
    for (i = 0; i < count; i++) {
        check_alert(&rows[i]);
    }
    check_joined();
    for (i = 0; i < RENTERS; i++) {
        check_talk(i);
    }
}

/* ---- Time ----------------------------------------------------------------------------------- */

/* Who was called in vain for so long that everyone is called: its renter knows. */
static void
check_told(const struct alert_row *before)
{
    int64_t everyone_s = config.alert_times[before->level].everyone_s;
    struct alert_row alert;
    bool is_open;

    if (before->level < ALERT_URGENT || before->taken_by != NULL ||
        world.now_utc_s - before->level_utc_s < everyone_s) {
        return;
    }
    MUST(alert_rows_find(world.store, world.arena, before->number, &alert, &is_open, &fault));
    if (is_open && alert.level == before->level && alert.told_utc_s == 0) {
        fail("nobody has taken alert %" PRId64 ", and its renter does not know", alert.number);
    }
}

static void
make_calls(void)
{
    const struct caller caller = caller_now();
    struct alert_calls calls;
    struct alert_row *due;
    size_t count, i;

    MUST(alert_rows_due(world.store, world.arena, world.now_utc_s, &due, &count, &fault));
    MUST(alert_calls_make(&caller, &calls, &fault));
    for (i = 0; i < count; i++) {
        check_told(&due[i]);
    }
    if (calls.failed > 0) {
        fail("%s", fault.text);
    }
    world.calls += (long)calls.count;
}

/* A road takes what is due or fails, for now or for good. */
static void
send_due(void)
{
    const struct caller caller = caller_now();
    struct outbox_row *rows;
    size_t count, i;

    MUST(outbox_rows_due(world.store, world.arena, world.now_utc_s, SENDS_AT_ONCE, &rows, &count,
                         &fault));
    for (i = 0; i < count; i++) {
        struct outbox_result result = {.id = rows[i].id,
                                       .event = OUTBOX_ACCEPTED,
                                       .now_utc_s = world.now_utc_s,
                                       .next_utc_s = world.now_utc_s + 60};

        if (rows[i].give_up_utc_s <= world.now_utc_s) {
            result.event = OUTBOX_GIVEN_UP;
        } else if (world.roads_are_dead) {
            result.event = random_below(3) == 0 ? OUTBOX_REFUSED : OUTBOX_TRIED_AGAIN_LATER;
        }
        MUST(outbox_rows_result(world.store, &result, &fault));
        if (result.event != OUTBOX_ACCEPTED) {
            MUST(not_reached(&caller, &rows[i], result.event, &fault));
        }
    }
}

/* The daemon looks when something is due, and acts. */
static void
let_pass(int64_t seconds)
{
    int64_t until_s = world.passed_s + seconds, next_utc_s;

    for (;;) {
        MUST(alert_calls_next(world.store, &next_utc_s, &fault));
        if (next_utc_s == INT64_MAX || next_utc_s - world.now_utc_s > until_s - world.passed_s) {
            break;
        }
        if (next_utc_s > world.now_utc_s) {
            world.passed_s += next_utc_s - world.now_utc_s;
            world.now_utc_s = next_utc_s;
        }
        make_calls();
        check_all();
    }
    world.now_utc_s += until_s - world.passed_s;
    world.passed_s = until_s;
}

/* ---- Events --------------------------------------------------------------------------------- */

static void
renter_texts(void)
{
    static const char *const reasons[] = {"gap", "sign:reading", "sign:chest-pain",
                                          "sign:power-out-now", "sign:power-out-now"};
    static const enum alert_level levels[] = {ALERT_OFFICE, ALERT_URGENT, ALERT_EMERGENCY,
                                              ALERT_URGENT, ALERT_URGENT};
    enum { OUTAGE = 3 };
    const struct caller caller = caller_now();
    size_t renter = random_below(RENTERS), what = random_below(7);
    struct talk_row talk;
    int64_t number;
    bool is_new, found;

    if (what <= OUTAGE + 1) {
        bool is_outage = what >= OUTAGE && rentals[renter] != NULL;
        const struct alert_row alert = {.level = levels[what],
                                        .rental_id = rentals[renter],
                                        .phone = renters[renter],
                                        .reason = reasons[what],
                                        .brief = "brief",
                                        .next_utc_s = world.now_utc_s,
                                        .area = is_outage ? "Hessick" : NULL,
                                        .joins_since_utc_s = world.now_utc_s - 3600};

        MUST(alert_rows_open(world.store, &alert, world.now_utc_s, &number, &is_new, &fault));
    }
    MUST(talk_pass_on(&caller, renters[renter], "words", world.text_ids[renter], &fault));
    MUST(talk_rows_find(world.store, world.arena, renters[renter], &talk, &found, &fault));
    if (found && world.waits_since_s[renter] < 0) {
        world.waits_since_s[renter] = world.passed_s;
    }
}

/* One of the open alerts; false if there is none. */
static bool
any_alert(struct alert_row *alert)
{
    struct alert_renter *with;
    struct alert_row *rows;
    size_t count;
    bool is_open;

    MUST(alert_rows_due(world.store, world.arena, INT64_MAX, &rows, &count, &fault));
    if (count == 0) {
        return false;
    }
    *alert = rows[random_below(count)];
    if (alert->area != NULL) { /* any of those who are called together */
        MUST(alert_group_renters(world.store, world.arena, alert->number, &with, &count, &fault));
        MUST(alert_rows_find(world.store, world.arena, with[random_below(count)].number, alert,
                             &is_open, &fault));
    }
    return true;
}

static void
staff_talk(const struct caller *caller, const struct alert_row *alert,
           const struct alert_hand *hand)
{
    bool wrote = random_below(4) != 0;
    size_t renter = renter_of(alert->phone);
    enum hands_result result;

    MUST(alert_take(caller, alert->number, hand, &result, NULL, &fault));
    if (result == HANDS_DONE) {
        MUST(talk_begin(caller, alert, hand->who, wrote, world.text_ids[renter], &fault));
        if (wrote) {
            world.waits_since_s[renter] = -1;
        } else {
            world.waits_since_s[renter] = world.passed_s;
        }
    }
}

static void
staff_text(void)
{
    const struct caller caller = caller_now();
    const struct alert_hand hand = {
        .who = staff[random_below(STAFF)].phone, .road = "text", .now_utc_s = world.now_utc_s};
    const char *other = staff[random_below(STAFF)].phone;
    enum hands_result result;
    struct alert_row alert;

    if (!any_alert(&alert)) {
        return;
    }
    switch (random_below(8)) {
    case 0:
    case 1:
        MUST(alert_take(&caller, alert.number, &hand, &result, NULL, &fault));
        break;
    case 2:
        if (strcmp(other, hand.who) != 0) {
            MUST(alert_pass(&caller, alert.number, &hand, other, &result, &fault));
        }
        break;
    case 3:
    case 4:
        MUST(alert_close(&caller, alert.number, &hand, "done", &result, &fault));
        break;
    default:
        staff_talk(&caller, &alert, &hand);
    }
}

static int64_t
a_step_s(void)
{
    int64_t limit = random_below(4) == 0 ? longest_step_s : 7200;
    int64_t step_s = 2 + (int64_t)random_below((uint64_t)limit);

    return random_below(2) == 0 ? step_s : -step_s;
}

/* How many alerts and talks are due now; what waits for the office goes by the wall's date. */
static int64_t
count_due(void)
{
    sqlite3_stmt *query =
        store_query(world.store,
                    "SELECT (SELECT count(*) FROM alert_due WHERE next_utc_s <= ?1"
                    " AND group_number IS NULL AND level <> 'office') + (SELECT count(*) FROM talk "
                    "WHERE due_utc_s <= ?1)",
                    VALUES(number(world.now_utc_s)), &fault);
    int64_t count;
    bool more;

    if (query == NULL || store_next(world.store, query, &more, &fault) != 0) {
        fail("%s", fault.text);
    }
    count = sqlite3_column_int64(query, 0);
    store_end(query);
    return count;
}

/* Somebody sets the clock while the daemon runs. */
static void
clock_steps(void)
{
    int64_t step_s = a_step_s();

    world.now_utc_s += step_s;
    MUST(step_write(world.store, &config, step_s, world.now_utc_s, &fault));
    if (count_due() > 0) {
        fail("a step of %" PRId64 " s makes %" PRId64 " due at once", step_s, count_due());
    }
    world.steps++;
}

/* It was down for a while, and the clock may have been set meanwhile. */
static void
restarts(void)
{
    int64_t down_s = (int64_t)random_below(600);
    size_t i;

    world.now_utc_s += down_s + (random_below(3) == 0 ? a_step_s() : 0);
    world.passed_s += down_s;
    MUST(step_write(world.store, &config, 0, world.now_utc_s, &fault));
    for (i = 0; i < RENTERS; i++) { /* what nobody could see pass begins anew */
        if (world.waits_since_s[i] >= 0) {
            world.waits_since_s[i] = world.passed_s;
        }
    }
}

static void
happens(void)
{
    static const char *const names[] = {"restart", "step", "roads", "renter", "staff", "time"};
    uint64_t what = random_below(100);
    size_t name = what < 3 ? 0 : what < 6 ? 1 : what < 9 ? 2 : what < 45 ? 3 : what < 75 ? 4 : 5;

    snprintf(world.last, sizeof(world.last), "%s", names[name]);
    switch (name) {
    case 0:
        restarts();
        break;
    case 1:
        clock_steps();
        break;
    case 2:
        world.roads_are_dead = true; /* for a while */
        break;
    case 3:
        renter_texts();
        break;
    case 4:
        staff_text();
        break;
    default:
        let_pass((int64_t)random_below(random_below(20) == 0 ? 4000 : 200));
    }
    world.roads_are_dead = world.roads_are_dead && random_below(12) != 0;
    send_due();
    let_pass(0);
    check_all();
}

/* ---- A store ---------------------------------------------------------------------------------*/

static void
begin_store(void)
{
    size_t i;

    world.now_utc_s = epoch_utc_s;
    MUST(store_open(NULL, STORE_IN_MEMORY, &world.store, &fault));
    MUST(store_begin(world.store, &fault));
    for (i = 0; i < RENTERS; i++) {
        const struct message message = {.gateway = "valley",
                                        .sender = renters[i],
                                        .text = "hello",
                                        .sent_utc_s = world.now_utc_s,
                                        .received_utc_s = world.now_utc_s};

        MUST(texts_add(world.store, &message, &world.text_ids[i], &fault));
        world.waits_since_s[i] = -1;
    }
}

static void
end_store(void)
{
    sqlite3_stmt *query = store_query(
        world.store, "SELECT count(*) FROM alert_event WHERE event = 'released'", NULL, 0, &fault);
    bool more;

    if (query == NULL || store_next(world.store, query, &more, &fault) != 0) {
        fail("%s", fault.text);
    }
    world.lapses += sqlite3_column_int64(query, 0);
    store_end(query);
    store_rollback(world.store);
    store_close(world.store);
}

int
main(int argc, char **argv)
{
    long events = argc > 1 ? strtol(argv[1], NULL, 10) : 4000;

    log_setup(LOG_ERROR_LEVEL, LOG_LOGFMT);
    world.seed = argc > 2 ? strtoull(argv[2], NULL, 10) : 1;
    world.random = world.seed;
    for (world.event = 0; world.event < events; world.event++) {
        if (world.event % STORE_EVENTS == 0) {
            if (world.event > 0) {
                end_store();
            }
            begin_store();
        }
        world.arena = memory_must(talloc_new(NULL));
        happens();
        talloc_free(world.arena);
    }
    end_store();
    printf("%ld events: %ld calls, %ld steps of the clock, %ld alerts let go, %ld joined\n", events,
           world.calls, world.steps, world.lapses, world.joined);
    if (world.calls == 0 || world.lapses == 0 || world.steps == 0 || world.joined == 0) {
        fail("nothing was tested");
    }
    return EXIT_SUCCESS;
}
