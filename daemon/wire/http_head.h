/*
 * The head of an HTTP/1.1 request, and its chunks, judged before evhttp sees a byte of them. Pure:
 * bytes and a length in, a judgement out. Stricter than RFC 9112 wherever leniency would let two
 * parsers read one request in two ways.
 */
#ifndef HTTP_HEAD_H
#define HTTP_HEAD_H

#include <stdbool.h>
#include <stddef.h>

enum { HTTP_TARGET_MAX = 2048, HTTP_FIELDS_MAX = 64, HTTP_CHUNKS_MAX = 1024 };
/* Longest line that stands around one chunk: 8 hex digits and two line ends. */
enum { HTTP_CHUNK_FRAME_MAX = 12 };

enum http_head_state { HTTP_HEAD_UNFINISHED, HTTP_HEAD_WHOLE, HTTP_HEAD_REFUSED };

struct http_head {
    size_t head_bytes;  /* length of the head, its empty line included */
    bool is_chunked;    /* then the body ends where http_chunks_judge() says */
    size_t body_bytes;  /* of a body that is not chunked */
    bool expects;       /* the client waits for 100 Continue */
    int status;         /* when refused: 4xx or 5xx */
    const char *detail; /* when refused: what is wrong; static */
};

/* Judges `length` bytes from the start of a request. *head is filled in when whole or refused. */
enum http_head_state http_head_judge(const char *bytes, size_t length, size_t head_max,
                                     size_t body_max, struct http_head *head);

/* How far a chunked body has been judged; starts as {0}. */
struct http_chunks {
    size_t at;         /* whole chunks end here; when whole, so does the body */
    size_t body_bytes; /* in them */
    int count;
};

/*
 * Judges what has come of a chunked body, going on where the last call stopped. Chunk extensions
 * and trailer fields are refused. When refused, status and detail of *head say why.
 */
enum http_head_state http_chunks_judge(const char *bytes, size_t length, size_t body_max,
                                       struct http_chunks *chunks, struct http_head *head);

#endif
