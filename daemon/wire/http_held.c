#include "http_held.h"

#include <string.h>

#include <event2/buffer.h>

#include "memory.h"

void
http_held_init(struct http_held *held)
{
    *held = (struct http_held){.bytes = memory_must(evbuffer_new())};
}

void
http_held_release(struct http_held *held)
{
    evbuffer_free(held->bytes);
}

void
http_held_next(struct http_held *held)
{
    held->head = (struct http_head){0};
    held->chunks = (struct http_chunks){0};
}

/* RFC 9112, section 2.2: one empty line before a request is passed over. */
static void
skip_empty_line(struct http_held *held)
{
    char start[2];

    if (evbuffer_copyout(held->bytes, start, sizeof(start)) == 2 && memcmp(start, "\r\n", 2) == 0) {
        (void)evbuffer_drain(held->bytes, 2);
    }
}

static enum http_head_state
judge_head(struct http_held *held, const struct http_limits *limits)
{
    size_t have, seen;
    enum http_head_state state;

    skip_empty_line(held);
    have = evbuffer_get_length(held->bytes);
    seen = have < (size_t)limits->header_bytes ? have : (size_t)limits->header_bytes;
    if (have == 0) {
        return HTTP_HEAD_UNFINISHED;
    }
    state = http_head_judge((const char *)evbuffer_pullup(held->bytes, (ev_ssize_t)seen), seen,
                            (size_t)limits->header_bytes, (size_t)limits->body_bytes, &held->head);
    if (state != HTTP_HEAD_WHOLE) {
        held->head.head_bytes = 0;
    }
    return state;
}

enum http_head_state
http_held_judge(struct http_held *held, const struct http_limits *limits, size_t *length)
{
    struct http_head *head = &held->head;
    enum http_head_state state;
    const char *bytes;
    size_t have;

    if (head->head_bytes == 0) {
        state = judge_head(held, limits);
        if (state != HTTP_HEAD_WHOLE) {
            return state;
        }
    }
    have = evbuffer_get_length(held->bytes);
    if (!head->is_chunked) {
        *length = head->head_bytes + head->body_bytes;
        return have >= *length ? HTTP_HEAD_WHOLE : HTTP_HEAD_UNFINISHED;
    }
    bytes = (const char *)evbuffer_pullup(held->bytes, -1);
    state = http_chunks_judge(bytes + head->head_bytes, have - head->head_bytes,
                              (size_t)limits->body_bytes, &held->chunks, head);
    *length = head->head_bytes + held->chunks.at;
    return state;
}

bool
http_held_may_settle(const struct http_held *held, const struct http_limits *limits, size_t before)
{
    struct evbuffer_ptr from, found;

    if (held->head.head_bytes > 0 ||
        evbuffer_get_length(held->bytes) >= (size_t)limits->header_bytes ||
        evbuffer_ptr_set(held->bytes, &from, before, EVBUFFER_PTR_SET) != 0) {
        return true;
    }
    found = evbuffer_search(held->bytes, "\n", 1, &from);
    return found.pos >= 0;
}

size_t
http_held_max(const struct http_limits *limits)
{
    return (size_t)limits->header_bytes + (size_t)limits->body_bytes +
           (size_t)HTTP_CHUNKS_MAX * HTTP_CHUNK_FRAME_MAX;
}
