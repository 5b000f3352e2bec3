#include "hand_routes.h"

#include <stdlib.h>
#include <string.h>

#include <glib.h>
#include <jansson.h>

#include "alert_renters.h"
#include "clock.h"
#include "form.h"
#include "hand_job.h"
#include "link_page.h"
#include "link_rows.h"
#include "log.h"
#include "memory.h"
#include "request_proof.h"
#include "routes.h"

enum {
    OUTCOME_MAX = 500,
    CALL_TOLERANCE_S = 300 /* as Standard Webhooks' own libraries have it */
};

struct hand_routes {
    const struct routes_parts *parts;
};

static int64_t
now_of(const struct hand_routes *routes)
{
    return clock_now_utc_s(routes->parts->clock);
}

static struct hand_request
new_request(const struct hand_routes *routes, enum hand_source source)
{
    return (struct hand_request){
        .source = source, .now_utc_s = now_of(routes), .config = routes->parts->loaded->config};
}

static void
reply_json(struct http_request *request, int status, json_t *json)
{
    char *text = memory_must(json_dumps(json, JSON_COMPACT));

    http_reply(request, status, "application/json", text, strlen(text));
    free(text);
    json_decref(json);
}

static void
reply_not_written(struct http_request *request)
{
    http_problem(request, 503, NULL, "the store cannot be written now; send it again", NULL);
}

/* ---- A key on the telephone ----------------------------------------------------------------- */

/* Also said when the call was made while the store was broken. */
static const char unknown_call[] =
    "This call is not in our records. See to it now, and tell each other by phone.";

/* A repeat of a report changes nothing, so everything but a broken store gets 200. */
static void
on_ring_answered(void *data, const struct hand_answer *answer)
{
    struct http_request *request = data;
    bool is_done = answer->state == HAND_TOLD && answer->result == HANDS_DONE;
    const char *say = answer->words != NULL           ? answer->words
                      : answer->state == HAND_UNKNOWN ? unknown_call
                                                      : "Press 1 to take the alert.";

    if (answer->state == HAND_NOT_WRITTEN) {
        reply_not_written(request);
        return;
    }
    if (answer->state == HAND_UNKNOWN) {
        log_event(LOG_WARNING, "ring-of-unknown-call", NULL);
    }
    reply_json(request, 200, memory_must(json_pack("{s:b, s:s}", "done", is_done, "say", say)));
}

static void
on_ring(struct http_request *request, void *data)
{
    const struct hand_routes *routes = data;
    const struct config *config = routes->parts->loaded->config;
    const struct ring_service *service = config_ring(config, http_request_tail(request));
    struct hand_request asked = new_request(routes, HAND_BY_RING);
    struct incoming incoming;
    struct fault fault = {""};

    if (service == NULL) {
        request_refuse(request, 404, NULL, "no telephone service of this name is configured");
        return;
    }
    incoming = request_incoming(request, config);
    if (!request_is_proven(request, &service->carrier, service->report.form, &incoming,
                           asked.now_utc_s)) {
        return;
    }
    if (gateway_ring(http_request_arena(request), service, &incoming, &asked.report, &fault) != 0) {
        request_refuse(request, 400, service->carrier.name, fault.text);
        return;
    }
    asked.service = service->carrier.name;
    hand_job_add(routes->parts->turn, &asked, on_ring_answered, request);
}

/* ---- The link of an e-mail ------------------------------------------------------------------ */

static void
reply_page(struct http_request *request, int status, const char *page)
{
    http_reply_header(request, "Cache-Control", "no-store");
    http_reply_header(request, "Content-Security-Policy", link_page_policy);
    http_reply_header(request, "Referrer-Policy", "no-referrer");
    http_reply_header(request, "X-Content-Type-Options", "nosniff");
    http_reply(request, status, "text/html; charset=utf-8", page, strlen(page));
}

static void
tell_page(struct http_request *request, int status, const char *words)
{
    reply_page(request, status, link_page_tell(http_request_arena(request), words));
}

static const char no_link[] =
    "This link is not one of ours. Text MINE instead, or ring the office.";
static const char spent_link[] =
    "This link was used or is too old. Text MINE instead, or wait for the next e-mail.";

/* The link and its alert, read outside any turn; replies and returns false if there is none. */
static bool
find_link(const struct hand_routes *routes, struct http_request *request, struct alert_row *alert)
{
    struct store *store = routes->parts->store;
    void *arena = http_request_arena(request);
    struct link link;
    struct fault fault;
    bool found;

    if (link_rows_find(store, arena, http_request_tail(request), &link, &found, &fault) != 0) {
        goto broken;
    }
    if (!found) {
        tell_page(request, 404, no_link);
        return false;
    }
    if (link.is_used || link.expires_utc_s <= now_of(routes)) {
        tell_page(request, 410, spent_link);
        return false;
    }
    if (alert_rows_find(store, arena, link.alert_number, alert, &found, &fault) != 0) {
        goto broken;
    }
    if (!found) {
        tell_page(request, 410, "This alert is closed.");
        return false;
    }
    if (alert_renters(store, arena, routes->parts->loaded->config, alert, &fault) != 0) {
        goto broken;
    }
    return true;
broken:
    log_event(LOG_ERROR_LEVEL, "link-not-read", "why", fault.text, NULL);
    reply_not_written(request);
    return false;
}

static const char *
holder_words(const struct hand_routes *routes, void *arena, const struct alert_row *alert)
{
    const struct staff *staff =
        alert->taken_by != NULL
            ? config_staff_by_phone(routes->parts->loaded->config, alert->taken_by)
            : NULL;

    return staff != NULL ? memory_format(arena, "%s has it.", staff->name) : NULL;
}

static void
on_link_opened(struct http_request *request, void *data)
{
    const struct hand_routes *routes = data;
    void *arena = http_request_arena(request);
    struct alert_row alert;

    if (find_link(routes, request, &alert)) {
        reply_page(request, 200,
                   link_page_ask(arena, &alert, NULL, holder_words(routes, arena, &alert),
                                 http_request_tail(request)));
    }
}

static void
on_link_answered(void *data, const struct hand_answer *answer)
{
    struct http_request *request = data;

    switch (answer->state) {
    case HAND_TOLD:
        if (answer->is_yours) {
            reply_page(request, 200,
                       link_page_ask(http_request_arena(request), &answer->alert, &answer->facts,
                                     answer->words, answer->token));
        } else {
            tell_page(request, answer->result == HANDS_DONE ? 200 : 409, answer->words);
        }
        break;
    case HAND_NOT_WRITTEN:
        tell_page(request, 503, "That could not be written down. Please go back and try again.");
        break;
    default:
        tell_page(request, 410, spent_link);
    }
}

/* All about it, to whoever pressed a button: a mail scanner does not. The link stays good. */
static void
show_all(const struct hand_routes *routes, struct http_request *request)
{
    void *arena = http_request_arena(request);
    struct alert_facts facts;
    struct alert_row alert;
    struct fault fault;

    if (!find_link(routes, request, &alert)) {
        return; /* replied */
    }
    if (alert_facts_read(routes->parts->store, arena, routes->parts->loaded->config, &alert,
                         now_of(routes), &facts, &fault) != 0) {
        log_event(LOG_ERROR_LEVEL, "alert-not-shown", "why", fault.text, NULL);
        reply_not_written(request);
        return;
    }
    log_event(LOG_INFO, "alert-shown", "alert", log_number(alert.number), "road", "e-mail", NULL);
    reply_page(request, 200,
               link_page_ask(arena, &alert, &facts, holder_words(routes, arena, &alert),
                             http_request_tail(request)));
}

/* What the form says, into *asked; replies and returns false if nothing is to be done then. */
static bool
read_link_form(const struct hand_routes *routes, struct http_request *request,
               struct hand_request *asked)
{
    void *arena = http_request_arena(request);
    struct incoming incoming = request_incoming(request, asked->config);
    struct alert_row alert;
    struct form form;
    struct fault fault;
    const char *what;

    if (!gateway_reads_type(true, incoming.content_type) ||
        form_read(arena, incoming.body, incoming.body_length, &form, &fault) != 0) {
        request_refuse(request, 400, NULL, "the body is not the form of the page");
        return false;
    }
    what = form_get(&form, "do");
    if (what != NULL && strcmp(what, "show") == 0) {
        show_all(routes, request);
        return false;
    }
    asked->is_closing = what != NULL && strcmp(what, "close") == 0;
    asked->outcome = form_get(&form, "outcome");
    if (what == NULL || (!asked->is_closing && strcmp(what, "take") != 0)) {
        request_refuse(request, 400, NULL, "the body is not the form of the page");
        return false;
    }
    if (asked->is_closing &&
        (asked->outcome == NULL || asked->outcome[strspn(asked->outcome, " \t\r\n")] == '\0' ||
         strlen(asked->outcome) > OUTCOME_MAX * 4 || !g_utf8_validate(asked->outcome, -1, NULL))) {
        if (find_link(routes, request, &alert)) {
            reply_page(request, 400,
                       link_page_ask(arena, &alert, NULL,
                                     "Please write in a few words what happened.",
                                     http_request_tail(request)));
        }
        return false;
    }
    return true;
}

static void
on_link_pressed(struct http_request *request, void *data)
{
    const struct hand_routes *routes = data;
    struct hand_request asked = new_request(routes, HAND_BY_LINK);

    asked.token = http_request_tail(request);
    if (read_link_form(routes, request, &asked)) {
        hand_job_add(routes->parts->turn, &asked, on_link_answered, request);
    }
}

/* ---- A signed request in someone's name ----------------------------------------------------- */

static void
on_call_answered(void *data, const struct hand_answer *answer)
{
    struct http_request *request = data;

    if (answer->state == HAND_NOT_WRITTEN) {
        reply_not_written(request);
    } else if (answer->result != HANDS_DONE) {
        http_problem(request, 409, NULL, answer->words, NULL);
    } else {
        reply_json(request, 200,
                   memory_must(json_pack("{s:I, s:s}", "alert", (json_int_t)answer->number, "state",
                                         answer->is_closing ? "closed" : "taken")));
    }
}

/* The person named, if the request proves to come from their side; else it is refused. */
static const struct staff *
proven_staff(const struct hand_routes *routes, struct http_request *request, const json_t *body)
{
    const struct config *config = routes->parts->loaded->config;
    const char *by = json_string_value(json_object_get(body, "by"));
    const struct staff *staff = by != NULL ? config_staff_by_name(config, by) : NULL;
    struct incoming incoming = request_incoming(request, config);
    struct gateway signer = {.name = "alerts",
                             .authentication = {.kind = AUTHENTICATION_STANDARD_WEBHOOKS,
                                                .secret_count = 1,
                                                .tolerance_s = CALL_TOLERANCE_S}};

    if (staff == NULL || staff->webhook_secret == NULL) {
        request_refuse(request, 401, NULL, "/by names nobody of staff who has a webhook");
        return NULL;
    }
    signer.authentication.secrets[0] = staff->webhook_secret;
    return request_is_proven(request, &signer, false, &incoming, now_of(routes)) ? staff : NULL;
}

/* The signature covers the body and not the path, so the body says which alert it is. */
static void
take_call(const struct hand_routes *routes, struct http_request *request, const json_t *body)
{
    const struct staff *staff = proven_staff(routes, request, body);
    const char *what = json_string_value(json_object_get(body, "do"));
    const char *outcome = json_string_value(json_object_get(body, "outcome"));
    struct hand_request asked = new_request(routes, HAND_BY_CALL);

    if (staff == NULL) {
        return; /* refused */
    }
    asked.number = (int64_t)json_integer_value(json_object_get(body, "alert"));
    asked.who = staff->phone;
    asked.is_closing = what != NULL && strcmp(what, "close") == 0;
    if (asked.number <= 0) {
        request_refuse(request, 400, staff->name, "/alert is missing: the number of the alert");
    } else if (what == NULL || (!asked.is_closing && strcmp(what, "take") != 0)) {
        request_refuse(request, 400, staff->name, "/do is neither \"take\" nor \"close\"");
    } else if (asked.is_closing && (outcome == NULL || *outcome == '\0')) {
        request_refuse(request, 400, staff->name, "/outcome is missing: what happened");
    } else {
        asked.outcome = outcome != NULL ? memory_copy(http_request_arena(request), outcome) : NULL;
        hand_job_add(routes->parts->turn, &asked, on_call_answered, request);
    }
}

static void
on_call(struct http_request *request, void *data)
{
    size_t length;
    const char *bytes = http_request_body(request, &length);
    json_t *body = json_loadb(bytes, length, JSON_REJECT_DUPLICATES, NULL);

    if (!json_is_object(body)) {
        request_refuse(request, 400, NULL, "the body is not a JSON object");
    } else {
        take_call(data, request, body);
    }
    json_decref(body);
}

/* ---- From outside --------------------------------------------------------------------------- */

struct hand_routes *
hand_routes_new(void *arena, const struct routes_parts *parts, struct http_route *table)
{
    struct hand_routes *routes = memory_new(arena, struct hand_routes);

    routes->parts = parts;
    table[0] = (struct http_route){"POST", "/rings/", on_ring, routes};
    table[1] = (struct http_route){"GET", "/links/", on_link_opened, routes};
    table[2] = (struct http_route){"POST", "/links/", on_link_pressed, routes};
    table[3] = (struct http_route){"POST", "/alerts", on_call, routes};
    return routes;
}
