#include "fault_run.h"

#include <stdio.h>

#include <event2/event.h>

#include "clock.h"
#include "intake.h"
#include "loaded.h"
#include "outbox_rows.h"
#include "store.h"
#include "turn.h"

/* Three renters of demo/rentals.csv and a stranger; who said STOP gets no more replies. */
static const char *const senders[TEXTS] = {"+12085550105", "+12085550117", "+12085550150",
                                           "+12085550123"};
const char *const fault_words[TEXTS] = {
    "can i charge it in the car and when is it due",
    "2 full batteries how long",
    "i have chest pain",
    "STOP",
};

struct run {
    const struct loaded *loaded;
    struct ledger *ledger;
    struct event_base *base;
    struct clock *clock;
    struct store *store;
    struct turn *turn;
    struct intake *intake;
    struct message messages[TEXTS];
    char ids[TEXTS][16];
    int told;
};

/* Settles what is due as accepted by the gateway. */
struct settling {
    struct turn_job job; /* first */
    struct run *run;
    int64_t ids[SENT_MAX];
    size_t count;
};

static int
write_settling(struct turn_job *job, struct store *store, void *arena, struct fault *fault)
{
    struct settling *settling = (struct settling *)job;
    struct outbox_row *rows;

    if (outbox_rows_due(store, arena, INT64_MAX, 2, &rows, &settling->count, fault) != 0) {
        return -1;
    }
    for (size_t i = 0; i < settling->count; i++) {
        const struct outbox_result result = {.id = rows[i].id,
                                             .event = OUTBOX_ACCEPTED,
                                             .now_utc_s = clock_now_utc_s(settling->run->clock),
                                             .gateway_id = "out"};

        settling->ids[i] = rows[i].id;
        if (outbox_rows_result(store, &result, fault) != 0) {
            return -1;
        }
    }
    return 0;
}

static void
settling_done(struct turn_job *job, enum turn_outcome outcome, const struct fault *fault)
{
    struct settling *settling = (struct settling *)job;
    struct ledger *ledger = settling->run->ledger;

    (void)fault;
    for (size_t i = 0; outcome == TURN_WRITTEN && i < settling->count; i++) {
        ledger->sent[ledger->sent_count++] = settling->ids[i];
    }
    settling->run->told++;
}

struct asked {
    struct run *run;
    int number;
};

static void
on_taken(void *data, enum intake_outcome outcome)
{
    struct asked *asked = data;

    if (outcome != INTAKE_NOT_STORED) {
        asked->run->ledger->answered[asked->number] = true; /* the gateway has its 200 */
    }
    asked->run->told++;
}

static bool
send_unrecorded(void *data, const struct outbox_row *row)
{
    (void)data;
    (void)row;
    return true;
}

static void
write_message(struct run *run, int number)
{
    snprintf(run->ids[number], sizeof(run->ids[number]), "t-%d", number);
    run->messages[number] = (struct message){.gateway = "valley",
                                             .id = run->ids[number],
                                             .sender = senders[number],
                                             .recipient = "+12085550100",
                                             .text = fault_words[number],
                                             .sent_utc_s = 1770854400 + number * 60,
                                             .received_utc_s = 1770854400 + number * 60};
}

static void
run_until_told(struct run *run, int told)
{
    while (run->told < told) {
        event_base_loop(run->base, EVLOOP_ONCE);
    }
}

/* The first `count` texts, A_TURN to a turn, sends settled after each. */
static void
take_texts(struct run *run, int count)
{
    struct asked asked[TEXTS];
    struct settling settling;
    int expected = 0;

    for (int i = 0; i < count; i++) {
        asked[i] = (struct asked){.run = run, .number = i};
        write_message(run, i);
        intake_take(run->intake, &run->messages[i], on_taken, &asked[i]);
        expected++;
        if (i % A_TURN < A_TURN - 1) {
            continue;
        }
        run_until_told(run, expected);
        settling =
            (struct settling){.job = {.write = write_settling, .done = settling_done}, .run = run};
        turn_add(run->turn, &settling.job);
        run_until_told(run, ++expected);
    }
}

bool
fault_run(const char *database, const struct loaded *loaded, int texts, struct ledger *ledger)
{
    struct run run = {.loaded = loaded, .ledger = ledger};
    struct fault fault = {""};

    if (store_open(database, STORE_WRITE, &run.store, &fault) != 0) {
        fprintf(stderr, "%s\n", fault.text);
        return false;
    }
    run.base = event_base_new();
    run.clock = clock_new(loaded->config->played_start_utc_s, loaded->config->played_speed);
    run.turn = turn_new(run.base, run.store);
    run.intake = intake_new(&(struct intake_parts){.turn = run.turn,
                                                   .clock = run.clock,
                                                   .loaded = loaded,
                                                   .send_unrecorded = send_unrecorded});
    take_texts(&run, texts);
    turn_free(run.turn);
    intake_free(run.intake);
    store_close(run.store);
    event_base_free(run.base);
    clock_free(run.clock);
    return true;
}
