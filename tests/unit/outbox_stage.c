#include "outbox_stage.h"

#include <netinet/in.h>
#include <stdio.h>
#include <string.h>
#include <sys/socket.h>

#include <event2/buffer.h>
#include <event2/http.h>

#include "mailer.h"
#include "transfer.h"
#include "turn.h"

enum { SPEED = 200 };

static struct staff staff[] = {{.name = "Robin", .phone = ROBIN}, {.name = "Kim", .phone = KIM}};

struct event_base *base;
static struct evhttp *server;
struct config config;
struct gateway gateway;
static char send_url[64];
struct clock *played;
struct store *store;
static struct turn *turn;
static struct transfers *transfers;
static struct mailer *mailer;
struct outbox *outbox;
struct alerts *alerts;
struct deliveries *deliveries;

struct sent sent[SENT_MAX];
size_t sent_count;
int answer_status;
int refuse_first;

static void
on_send(struct evhttp_request *request, void *data)
{
    struct evbuffer *input = evhttp_request_get_input_buffer(request);
    struct evbuffer *output = evbuffer_new();
    const char *key =
        evhttp_find_header(evhttp_request_get_input_headers(request), "Idempotency-Key");
    bool is_refused = (int)sent_count < refuse_first;

    (void)data;
    ck_assert_uint_lt(sent_count, SENT_MAX);
    evbuffer_copyout(input, sent[sent_count].body, sizeof(sent[0].body) - 1);
    snprintf(sent[sent_count].key, sizeof(sent[0].key), "%s", key != NULL ? key : "");
    sent_count++;
    evbuffer_add_printf(output, "{\"id\":\"g-%zu\"}", sent_count);
    evhttp_send_reply(request, is_refused ? answer_status : 200, "told", output);
    evbuffer_free(output);
}

static void
on_written(void *data)
{
    (void)data;
    outbox_look(outbox);
    alerts_look(alerts);
}

static int
work_out_again(void *data, struct store *where, void *arena, const struct outbox_row *row,
               struct fault *fault)
{
    struct outbox_result replaced = {.id = row->id, .event = OUTBOX_REPLACED};

    (void)data;
    (void)arena;
    replaced.now_utc_s = clock_now_utc_s(played);
    return outbox_rows_result(where, &replaced, fault);
}

static void
start_server(void)
{
    struct evhttp_bound_socket *bound;
    struct sockaddr_in address;
    socklen_t length = sizeof(address);

    server = evhttp_new(base);
    evhttp_set_gencb(server, on_send, NULL);
    bound = evhttp_bind_socket_with_handle(server, "127.0.0.1", 0);
    ck_assert_ptr_nonnull(bound);
    getsockname(evhttp_bound_socket_get_fd(bound), (struct sockaddr *)&address, &length);
    snprintf(send_url, sizeof(send_url), "http://127.0.0.1:%d/send", ntohs(address.sin_port));
}

static void
set_config(void)
{
    gateway = (struct gateway){.name = "valley",
                               .send = {.method = "POST",
                                        .url = send_url,
                                        .body_json = "{\"to\":\"{to}\",\"text\":\"{text}\"}",
                                        .message_id = "/id",
                                        .from = "+12085550100",
                                        .timeout_ms = 5000}};
    config = (struct config){
        .gateways = &gateway,
        .gateway_count = 1,
        .reply_gateway = "valley",
        .staff = staff,
        .staff_count = 2,
        .alert_times = {[ALERT_URGENT] = {.next_s = 600, .everyone_s = 1200, .recheck_s = 900},
                        [ALERT_EMERGENCY] = {.next_s = 120, .everyone_s = 300, .recheck_s = 300}},
        .limits = {.outbox_running = 4, .give_up_s = 1800, .unconfirmed_s = 120}};
}

void
stage_begin(void)
{
    const struct transfer_limits limits = {
        .running = 8, .waiting = 20, .body_bytes = 1000, .header_bytes = 4096};
    struct fault fault = {""};

    ck_assert_int_eq(transfers_prepare(&fault), 0);
    ck_assert_msg(store_open("", STORE_IN_MEMORY, &store, &fault) == 0, "%s", fault.text);
    base = event_base_new();
    start_server();
    set_config();
    played = clock_new(START_UTC_S, SPEED);
    turn = turn_new(base, store);
    transfers = transfers_new(base, &limits);
    mailer = mailer_new(base);
    outbox = outbox_new(&(struct outbox_parts){.base = base,
                                               .clock = played,
                                               .store = store,
                                               .turn = turn,
                                               .transfers = transfers,
                                               .mailer = mailer,
                                               .config = &config,
                                               .work_out_again = work_out_again});
    alerts = alerts_new(&(struct alerts_parts){
        .base = base, .clock = played, .store = store, .turn = turn, .config = &config});
    deliveries = deliveries_new(&(struct deliveries_parts){
        .base = base, .clock = played, .turn = turn, .outbox = outbox, .config = &config});
    turn_on_written(turn, on_written, NULL);
}

void
stage_end(void)
{
    alerts_close(alerts);
    turn_free(turn);
    mailer_free(mailer);
    deliveries_free(deliveries);
    alerts_free(alerts);
    outbox_free(outbox);
    transfers_free(transfers);
    evhttp_free(server);
    event_base_free(base);
    store_close(store);
    clock_free(played);
}

/* ---- The few words -------------------------------------------------------------------------- */

int64_t
add(struct outbox_new row)
{
    struct fault fault = {""};
    int64_t id;

    row.gateway = "valley";
    row.now_utc_s = clock_now_utc_s(played);
    if (row.give_up_utc_s == 0) {
        row.give_up_utc_s = row.now_utc_s + 1800;
    }
    ck_assert_int_eq(store_begin(store, &fault), 0);
    ck_assert_msg(outbox_rows_add(store, &row, &id, &fault) == 0, "%s", fault.text);
    ck_assert_int_eq(store_commit(store, &fault), 0);
    outbox_look(outbox);
    return id;
}

int64_t
add_reply(const char *text, enum urgency urgency)
{
    return add(
        (struct outbox_new){.about = OUTBOX_REPLY, .to = RENTER, .body = text, .urgency = urgency});
}

int64_t
waiting(void)
{
    struct fault fault = {""};
    int64_t count, oldest_utc_s;

    ck_assert_msg(outbox_rows_waiting(store, &count, &oldest_utc_s, &fault) == 0, "%s", fault.text);
    return count;
}

bool
was_sent(const char *to, const char *piece)
{
    size_t i;

    for (i = 0; i < sent_count; i++) {
        if (strstr(sent[i].body, to) != NULL && strstr(sent[i].body, piece) != NULL) {
            return true;
        }
    }
    return false;
}

bool
is_settled(void)
{
    return waiting() == 0 && outbox_in_hand(outbox) == 0;
}
