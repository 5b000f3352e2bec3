/*
 * libcurl's multi interface on a libevent loop.
 *
 * libcurl says which sockets to watch (on_socket_wish) and when to be woken (on_timer_wish); the
 * loop's events hand that back to it (on_ready, on_timer). Only those two then collect what is
 * done, so no callback of a caller ever runs inside a function that the caller has called.
 */
#include "transfer.h"

#include <assert.h>
#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <sys/queue.h>

#include <curl/curl.h>
#include <event2/event.h>

#include "memory.h"

/* For calls that fail only when memory is out. */
#define must(call) end_unless((call) == 0)

static void
end_unless(bool is_ok)
{
    if (!is_ok) {
        memory_must(NULL);
    }
}

struct transfer {
    struct transfers *owner;
    CURL *easy;
    struct curl_slist *headers;
    transfer_done *done;
    void *cookie;
    char *body; /* always has room for a 0 behind the bytes */
    size_t body_size, body_room, header_size;
    bool is_running, is_cut;
    char error[CURL_ERROR_SIZE];
    TAILQ_ENTRY(transfer) link;
};

TAILQ_HEAD(transfer_line, transfer);

struct transfers {
    struct event_base *base;
    struct event *timer;
    CURLM *multi;
    struct transfer_limits limits;
    struct transfer_line running, waiting;
    size_t running_count, waiting_count;
    bool is_closed, is_calling;
};

int
transfers_prepare(struct fault *fault)
{
    const curl_version_info_data *version;

    signal(SIGPIPE, SIG_IGN); /* a gateway that hangs up must not end us */
    /* A look-up that gets no answer holds a thread; this bounds for how long. */
    setenv("RES_OPTIONS", "timeout:3 attempts:2", 0);
    if (curl_global_init(CURL_GLOBAL_DEFAULT) != CURLE_OK) {
        fault_set(fault, "libcurl cannot start up");
        return -1;
    }
    version = curl_version_info(CURLVERSION_NOW);
    if ((version->features & CURL_VERSION_ASYNCHDNS) == 0 || version->version_num < 0x075700) {
        curl_global_cleanup(); /* look-ups would hold the loop; QUICK_EXIT came with 7.87.0 */
        fault_set(fault, "libcurl %s: needs 7.87.0 or later, built to look up names off the loop",
                  version->version);
        return -1;
    }
    return 0;
}

static void
transfer_free(struct transfer *transfer)
{
    curl_easy_cleanup(transfer->easy);
    curl_slist_free_all(transfer->headers);
    talloc_free(transfer);
}

/* Takes it out of its line and out of libcurl's hands. */
static void
detach(struct transfer *transfer)
{
    struct transfers *owner = transfer->owner;

    if (transfer->is_running) {
        must(curl_multi_remove_handle(owner->multi, transfer->easy));
        TAILQ_REMOVE(&owner->running, transfer, link);
        owner->running_count--;
    } else {
        TAILQ_REMOVE(&owner->waiting, transfer, link);
        owner->waiting_count--;
    }
}

static void
run_waiting(struct transfers *transfers)
{
    struct transfer *next;

    while (transfers->running_count < transfers->limits.running &&
           (next = TAILQ_FIRST(&transfers->waiting)) != NULL) {
        TAILQ_REMOVE(&transfers->waiting, next, link);
        transfers->waiting_count--;
        TAILQ_INSERT_TAIL(&transfers->running, next, link);
        transfers->running_count++;
        next->is_running = true;
        must(curl_multi_add_handle(transfers->multi, next->easy));
    }
}

static const char *
header_value(CURL *easy, const char *name)
{
    struct curl_header *header;

    return curl_easy_header(easy, name, 0, CURLH_HEADER, -1, &header) == CURLHE_OK ? header->value
                                                                                   : "";
}

static void
finish(struct transfer *transfer, CURLcode code)
{
    struct transfers *owner = transfer->owner;
    struct transfer_result result = {.error = "", .is_cut = transfer->is_cut};
    long status = 0;
    long sent = 0;
    curl_off_t retry_after_s = 0;

    detach(transfer);
    must(curl_easy_getinfo(transfer->easy, CURLINFO_RESPONSE_CODE, &status));
    must(curl_easy_getinfo(transfer->easy, CURLINFO_REQUEST_SIZE, &sent));
    result.was_sent = sent > 0;
    if (code == CURLE_OK || transfer->is_cut) {
        result.status = (int)status;
    } else {
        result.error = transfer->error[0] != '\0' ? transfer->error : curl_easy_strerror(code);
    }
    must(curl_easy_getinfo(transfer->easy, CURLINFO_RETRY_AFTER, &retry_after_s));
    result.retry_after_s = retry_after_s > 0 ? retry_after_s : 0; /* a date may lie behind us */
    result.content_type = header_value(transfer->easy, "Content-Type");
    result.body = transfer->body != NULL ? transfer->body : "";
    result.body_size = transfer->body_size;
    owner->is_calling = true;
    transfer->done(&result, transfer->cookie);
    owner->is_calling = false;
    transfer_free(transfer); /* the result points into it */
}

/* A callback may cancel others; libcurl then drops their messages, so each is asked for anew. */
static void
collect(struct transfers *transfers)
{
    struct transfer *transfer;
    const CURLMsg *message;
    int left;

    while ((message = curl_multi_info_read(transfers->multi, &left)) != NULL) {
        if (message->msg == CURLMSG_DONE) {
            must(curl_easy_getinfo(message->easy_handle, CURLINFO_PRIVATE, &transfer));
            finish(transfer, message->data.result);
        }
    }
    run_waiting(transfers);
}

static void
on_ready(evutil_socket_t fd, short what, void *cookie)
{
    struct transfers *transfers = cookie;
    int mask = ((what & EV_READ) != 0 ? CURL_CSELECT_IN : 0) |
               ((what & EV_WRITE) != 0 ? CURL_CSELECT_OUT : 0);
    int running;

    must(curl_multi_socket_action(transfers->multi, fd, mask, &running));
    collect(transfers);
}

static void
on_timer(evutil_socket_t fd, short what, void *cookie)
{
    struct transfers *transfers = cookie;
    int running;

    (void)fd;
    (void)what;
    must(curl_multi_socket_action(transfers->multi, CURL_SOCKET_TIMEOUT, 0, &running));
    collect(transfers);
}

static int
on_socket_wish(CURL *easy, curl_socket_t fd, int wish, void *cookie, void *watch)
{
    struct transfers *transfers = cookie;
    struct event *event = watch;
    short what = EV_PERSIST;

    (void)easy;
    if (event != NULL) {
        event_free(event);
        event = NULL;
    }
    if (wish != CURL_POLL_REMOVE) {
        what = (short)(what | ((wish & CURL_POLL_IN) != 0 ? EV_READ : 0) |
                       ((wish & CURL_POLL_OUT) != 0 ? EV_WRITE : 0));
        event = memory_must(event_new(transfers->base, fd, what, on_ready, transfers));
        must(event_add(event, NULL));
    }
    must(curl_multi_assign(transfers->multi, fd, event));
    return 0;
}

/* Even "now" goes through the loop: libcurl must not be entered from its own callback. */
static int
on_timer_wish(CURLM *multi, long wait_ms, void *cookie)
{
    struct transfers *transfers = cookie;
    struct timeval wait = {wait_ms / 1000, (wait_ms % 1000) * 1000};

    (void)multi;
    if (wait_ms < 0) {
        evtimer_del(transfers->timer);
    } else {
        evtimer_add(transfers->timer, &wait);
    }
    return 0;
}

static size_t
on_header(char *bytes, size_t one, size_t size, void *cookie)
{
    struct transfer *transfer = cookie;

    (void)bytes;
    (void)one;
    transfer->header_size += size;
    return transfer->header_size <= transfer->owner->limits.header_bytes ? size : 0;
}

/* Keeps what fits. The first byte too many ends the transfer, so a flood is not even read. */
static size_t
on_body(char *bytes, size_t one, size_t size, void *cookie)
{
    struct transfer *transfer = cookie;
    size_t left = transfer->owner->limits.body_bytes - transfer->body_size;
    size_t kept = size <= left ? size : left;
    size_t needed = transfer->body_size + kept + 1;

    (void)one;
    if (needed > transfer->body_room) {
        transfer->body_room = needed * 2;
        transfer->body =
            memory_must(talloc_realloc_size(transfer, transfer->body, transfer->body_room));
    }
    memcpy(transfer->body + transfer->body_size, bytes, kept);
    transfer->body_size += kept;
    transfer->body[transfer->body_size] = '\0';
    transfer->is_cut = kept < size;
    return kept;
}

struct transfers *
transfers_new(struct event_base *base, const struct transfer_limits *limits)
{
    struct transfers *transfers = memory_new(NULL, struct transfers);

    assert(limits->running >= 1 && limits->waiting >= 1);
    assert(limits->body_bytes >= 1 && limits->header_bytes >= 1);
    transfers->base = base;
    transfers->limits = *limits;
    TAILQ_INIT(&transfers->running);
    TAILQ_INIT(&transfers->waiting);
    transfers->timer = memory_must(evtimer_new(base, on_timer, transfers));
    transfers->multi = memory_must(curl_multi_init());
    must(curl_multi_setopt(transfers->multi, CURLMOPT_SOCKETFUNCTION, on_socket_wish));
    must(curl_multi_setopt(transfers->multi, CURLMOPT_SOCKETDATA, transfers));
    must(curl_multi_setopt(transfers->multi, CURLMOPT_TIMERFUNCTION, on_timer_wish));
    must(curl_multi_setopt(transfers->multi, CURLMOPT_TIMERDATA, transfers));
    return transfers;
}

static void
add_header(struct transfer *transfer, const char *line)
{
    transfer->headers = memory_must(curl_slist_append(transfer->headers, line));
}

static void
set_request(struct transfer *transfer, const struct transfer_request *request)
{
    CURL *easy = transfer->easy;
    const char *const *line;

    for (line = request->headers; line != NULL && *line != NULL; line++) {
        add_header(transfer, *line);
    }
    /* An empty line takes back what libcurl would add of its own: a second's wait before a large
     * body, and a form's media type. A caller's line of the same name, being earlier, stays. */
    add_header(transfer, "Expect:");
    add_header(transfer, "Content-Type:");
    must(curl_easy_setopt(easy, CURLOPT_HTTPHEADER, transfer->headers));
    must(curl_easy_setopt(easy, CURLOPT_URL, request->url));
    if (strcmp(request->method, "GET") == 0) {
        assert(request->body_size == 0);
        return;
    }
    must(curl_easy_setopt(easy, CURLOPT_POSTFIELDSIZE_LARGE, (curl_off_t)request->body_size));
    must(curl_easy_setopt(easy, CURLOPT_COPYPOSTFIELDS,
                          request->body_size > 0 ? (const char *)request->body : ""));
    must(curl_easy_setopt(easy, CURLOPT_CUSTOMREQUEST, request->method));
}

static void
set_rules(struct transfer *transfer, long timeout_ms)
{
    CURL *easy = transfer->easy;

    must(curl_easy_setopt(easy, CURLOPT_NOSIGNAL, 1L));
    must(curl_easy_setopt(easy, CURLOPT_QUICK_EXIT, 1L)); /* else the loop joins the resolver */
    must(curl_easy_setopt(easy, CURLOPT_TIMEOUT_MS, timeout_ms));
    must(curl_easy_setopt(easy, CURLOPT_PROTOCOLS_STR, "http,https"));
    must(curl_easy_setopt(easy, CURLOPT_FOLLOWLOCATION, 0L));
    must(curl_easy_setopt(easy, CURLOPT_PROXY, ""));
    /* One transfer per connection: a stalled one holds up no other. */
    must(curl_easy_setopt(easy, CURLOPT_HTTP_VERSION, (long)CURL_HTTP_VERSION_1_1));
    /* On a kept connection that dies libcurl sends the request again, unasked. */
    must(curl_easy_setopt(easy, CURLOPT_FORBID_REUSE, 1L));
    /* With a folder of certificates libcurl does not keep what it has read, and the bundle would be
     * read on the loop for each transfer (29 ms); without, once a day. */
    must(curl_easy_setopt(easy, CURLOPT_CAPATH, NULL));
    must(curl_easy_setopt(easy, CURLOPT_ERRORBUFFER, transfer->error));
    must(curl_easy_setopt(easy, CURLOPT_HEADERFUNCTION, on_header));
    must(curl_easy_setopt(easy, CURLOPT_HEADERDATA, transfer));
    must(curl_easy_setopt(easy, CURLOPT_WRITEFUNCTION, on_body));
    must(curl_easy_setopt(easy, CURLOPT_WRITEDATA, transfer));
    must(curl_easy_setopt(easy, CURLOPT_PRIVATE, transfer));
}

/* libcurl sends header lines as they stand: a line break would be another header. */
static bool
has_line_break(const char *const *line)
{
    for (; line != NULL && *line != NULL; line++) {
        if (strpbrk(*line, "\r\n") != NULL) {
            return true;
        }
    }
    return false;
}

struct transfer *
transfer_start(struct transfers *transfers, const struct transfer_request *request,
               transfer_done *done, void *cookie)
{
    struct transfer *transfer;

    assert(request->timeout_ms >= 1);
    if (transfers->is_closed || transfers->waiting_count >= transfers->limits.waiting ||
        has_line_break(request->headers)) {
        return NULL;
    }
    transfer = memory_new(NULL, struct transfer);
    transfer->owner = transfers;
    transfer->done = done;
    transfer->cookie = cookie;
    transfer->easy = memory_must(curl_easy_init());
    set_request(transfer, request);
    set_rules(transfer, request->timeout_ms);
    TAILQ_INSERT_TAIL(&transfers->waiting, transfer, link);
    transfers->waiting_count++;
    run_waiting(transfers);
    return transfer;
}

void
transfer_cancel(struct transfer *transfer)
{
    struct transfers *owner = transfer->owner;

    detach(transfer);
    transfer_free(transfer);
    run_waiting(owner);
}

void
transfers_close(struct transfers *transfers)
{
    transfers->is_closed = true;
}

size_t
transfers_pending(const struct transfers *transfers)
{
    return transfers->running_count + transfers->waiting_count;
}

static void
drop_all(struct transfer_line *line)
{
    struct transfer *transfer;

    while ((transfer = TAILQ_FIRST(line)) != NULL) {
        detach(transfer);
        transfer_free(transfer);
    }
}

void
transfers_free(struct transfers *transfers)
{
    if (transfers == NULL) {
        return;
    }
    assert(!transfers->is_calling);
    drop_all(&transfers->waiting);
    drop_all(&transfers->running);
    must(curl_multi_cleanup(transfers->multi)); /* still calls on_socket_wish and on_timer_wish */
    event_free(transfers->timer);
    talloc_free(transfers);
}
