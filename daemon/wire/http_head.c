#include "http_head.h"

#include <string.h>
#include <strings.h>

/* What the fields said so far. */
struct fields {
    int count, hosts, lengths, encodings;
    bool is_chunked;
};

/* The methods that evhttp reads; all others are refused. */
static const char *const methods[] = {"GET", "HEAD", "POST", "PUT", "DELETE"};

enum { LINE_UNFINISHED = -1, LINE_BAD = -2 };

static enum http_head_state
refuse(struct http_head *head, int status, const char *detail)
{
    head->status = status;
    head->detail = detail;
    return HTTP_HEAD_REFUSED;
}

/* RFC 9110, section 5.6.2 */
static bool
is_token(const char *text, size_t length)
{
    size_t i;

    for (i = 0; i < length; i++) {
        unsigned char c = (unsigned char)text[i];
        bool is_alnum = (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z');

        if (!is_alnum && (c == '\0' || strchr("!#$%&'*+-.^_`|~", c) == NULL)) {
            return false;
        }
    }
    return length > 0;
}

static bool
is_word(const char *text, size_t length, const char *word)
{
    return length == strlen(word) && strncasecmp(text, word, length) == 0;
}

static bool
is_known_method(const char *text, size_t length)
{
    size_t i;

    for (i = 0; i < sizeof(methods) / sizeof(methods[0]); i++) {
        if (length == strlen(methods[i]) && memcmp(text, methods[i], length) == 0) {
            return true;
        }
    }
    return false;
}

/* True for POST and PUT; the body of any other evhttp would take for the next request. */
static bool
may_have_body(const char *method)
{
    return method[0] == 'P';
}

/* Length of the line without its CRLF. LINE_BAD: a bare CR or LF, a NUL or another control. */
static long
line_length(const char *bytes, size_t length)
{
    size_t i;

    for (i = 0; i < length; i++) {
        unsigned char c = (unsigned char)bytes[i];

        if (c == '\r') {
            if (i + 1 == length) {
                return LINE_UNFINISHED;
            }
            return bytes[i + 1] == '\n' ? (long)i : LINE_BAD;
        }
        if ((c < 0x20 && c != '\t') || c == 0x7f) {
            return LINE_BAD;
        }
    }
    return LINE_UNFINISHED;
}

static enum http_head_state
judge_target(const char *target, size_t length, struct http_head *head)
{
    size_t i;

    if (length > HTTP_TARGET_MAX) {
        return refuse(head, 414, "The request target is longer than 2048 bytes.");
    }
    for (i = 0; i < length; i++) {
        if (target[i] < 0x21 || target[i] > 0x7e || target[i] == '#') {
            return refuse(head, 400, "The request target holds a character that is not allowed.");
        }
    }
    if (length == 0 || target[0] != '/' || (length > 1 && target[1] == '/')) {
        return refuse(head, 400, "The request target must be a path that starts with one slash.");
    }
    return HTTP_HEAD_WHOLE;
}

static enum http_head_state
judge_request_line(const char *line, size_t length, bool *is_1_1, struct http_head *head)
{
    const char *target = memchr(line, ' ', length);
    const char *version;

    if (target == NULL || !is_token(line, (size_t)(target - line))) {
        return refuse(head, 400, "The request line does not start with a method.");
    }
    if (!is_known_method(line, (size_t)(target - line))) {
        return refuse(head, 501, "This method is not known here.");
    }
    target++;
    version = memchr(target, ' ', length - (size_t)(target - line));
    if (version == NULL) {
        return refuse(head, 400, "The request line has no HTTP version.");
    }
    if (judge_target(target, (size_t)(version - target), head) == HTTP_HEAD_REFUSED) {
        return HTTP_HEAD_REFUSED;
    }
    version++;
    if (length - (size_t)(version - line) != 8 || memcmp(version, "HTTP/", 5) != 0) {
        return refuse(head, 400, "The request line does not end with an HTTP version.");
    }
    if (memcmp(version + 5, "1.1", 3) != 0 && memcmp(version + 5, "1.0", 3) != 0) {
        return refuse(head, 505, "Only HTTP/1.1 and HTTP/1.0 are spoken here.");
    }
    *is_1_1 = version[7] == '1';
    return HTTP_HEAD_WHOLE;
}

/* Only digits: strtoll would also take signs, blanks and rubbish behind the number. */
static enum http_head_state
judge_length(const char *value, size_t length, size_t body_max, struct http_head *head)
{
    size_t bytes = 0;
    size_t i;

    for (i = 0; i < length; i++) {
        if (value[i] < '0' || value[i] > '9') {
            return refuse(head, 400, "Content-Length is not a whole number.");
        }
        if (bytes <= body_max) { /* past the limit its size no longer matters */
            bytes = bytes * 10 + (size_t)(value[i] - '0');
        }
    }
    if (length == 0) {
        return refuse(head, 400, "Content-Length is empty.");
    }
    head->body_bytes = bytes;
    return HTTP_HEAD_WHOLE;
}

static enum http_head_state
judge_value(const char *name, size_t name_length, const char *value, size_t length, size_t body_max,
            struct fields *fields, struct http_head *head)
{
    if (is_word(name, name_length, "Host")) {
        fields->hosts++;
    } else if (is_word(name, name_length, "Content-Length")) {
        fields->lengths++;
        return judge_length(value, length, body_max, head);
    } else if (is_word(name, name_length, "Transfer-Encoding")) {
        fields->encodings++;
        fields->is_chunked = is_word(value, length, "chunked");
    } else if (is_word(name, name_length, "Expect")) {
        if (!is_word(value, length, "100-continue")) {
            return refuse(head, 417, "The only expectation met here is 100-continue.");
        }
        head->expects = true;
    }
    return HTTP_HEAD_WHOLE;
}

static enum http_head_state
judge_field(const char *line, size_t length, size_t body_max, struct fields *fields,
            struct http_head *head)
{
    const char *colon = memchr(line, ':', length);
    const char *value, *end = line + length;

    if (++fields->count > HTTP_FIELDS_MAX) {
        return refuse(head, 431, "There are more than 64 header fields.");
    }
    if (colon == NULL || !is_token(line, (size_t)(colon - line))) {
        return refuse(head, 400,
                      "A header field is folded, or its name is not followed by a colon.");
    }
    value = colon + 1;
    while (value < end && (*value == ' ' || *value == '\t')) {
        value++;
    }
    while (end > value && (end[-1] == ' ' || end[-1] == '\t')) {
        end--;
    }
    return judge_value(line, (size_t)(colon - line), value, (size_t)(end - value), body_max, fields,
                       head);
}

/* What only shows once all fields are known. */
static enum http_head_state
judge_whole(const char *method, bool is_1_1, size_t body_max, const struct fields *fields,
            struct http_head *head)
{
    if (fields->hosts > 1 || (is_1_1 && fields->hosts == 0)) {
        return refuse(head, 400, "There must be exactly one Host field."); /* RFC 9112, 3.2 */
    }
    if (fields->lengths > 1) {
        return refuse(head, 400, "There is more than one Content-Length.");
    }
    if (fields->encodings > 0 && (fields->lengths > 0 || fields->encodings > 1 || !is_1_1)) {
        return refuse(head, 400, "Transfer-Encoding does not go with the rest of the head.");
    }
    if (fields->encodings > 0 && !fields->is_chunked) {
        return refuse(head, 501, "The only transfer coding known here is chunked.");
    }
    if (!may_have_body(method) && (head->body_bytes > 0 || fields->is_chunked)) {
        return refuse(head, 400, "This method takes no body.");
    }
    if (may_have_body(method) && fields->lengths == 0 && !fields->is_chunked) {
        return refuse(head, 411, "Content-Length is missing.");
    }
    if (head->body_bytes > body_max) {
        return refuse(head, 413, "The body is larger than is taken here.");
    }
    head->is_chunked = fields->is_chunked;
    return HTTP_HEAD_WHOLE;
}

enum http_head_state
http_head_judge(const char *bytes, size_t length, size_t head_max, size_t body_max,
                struct http_head *head)
{
    struct fields fields = {0};
    bool is_1_1 = false;
    size_t at = 0;

    *head = (struct http_head){0};
    for (;;) {
        long line = line_length(bytes + at, length - at);
        enum http_head_state state;

        if (line == LINE_BAD) {
            return refuse(head, 400, "The head holds a control character or a bare CR or LF.");
        }
        if (line == LINE_UNFINISHED && length < head_max) {
            return HTTP_HEAD_UNFINISHED;
        }
        if (line == LINE_UNFINISHED || at + (size_t)line + 2 > head_max) {
            return refuse(head, at == 0 ? 414 : 431, "The head is larger than is taken here.");
        }
        if (at > 0 && line == 0) {
            head->head_bytes = at + 2;
            return judge_whole(bytes, is_1_1, body_max, &fields, head);
        }
        state = at == 0 ? judge_request_line(bytes, (size_t)line, &is_1_1, head)
                        : judge_field(bytes + at, (size_t)line, body_max, &fields, head);
        if (state == HTTP_HEAD_REFUSED) {
            return state;
        }
        at += (size_t)line + 2;
    }
}

/* A chunk's size: 1 to 8 hex digits and nothing else; -1 for anything else. */
static long
chunk_size(const char *line, size_t length)
{
    long size = 0;
    size_t i;

    if (length == 0 || length > 8) {
        return -1;
    }
    for (i = 0; i < length; i++) {
        const char *digits = "0123456789abcdef";
        const char *digit =
            strchr(digits, line[i] >= 'A' && line[i] <= 'F' ? line[i] + 32 : line[i]);

        if (digit == NULL) {
            return -1;
        }
        size = size * 16 + (digit - digits);
    }
    return size;
}

enum http_head_state
http_chunks_judge(const char *bytes, size_t length, size_t body_max, struct http_chunks *chunks,
                  struct http_head *head)
{
    for (;;) {
        const char *from = bytes + chunks->at;
        size_t left = length - chunks->at;
        long line = line_length(from, left < HTTP_CHUNK_FRAME_MAX ? left : HTTP_CHUNK_FRAME_MAX);
        size_t size, whole;

        if (line == LINE_UNFINISHED && left < HTTP_CHUNK_FRAME_MAX) {
            return HTTP_HEAD_UNFINISHED;
        }
        if (line < 0 || chunk_size(from, (size_t)line) < 0) {
            return refuse(head, 400, "A chunk does not start with its size in hex digits.");
        }
        size = (size_t)chunk_size(from, (size_t)line);
        if (chunks->body_bytes + size > body_max || ++chunks->count > HTTP_CHUNKS_MAX) {
            return refuse(head, 413, "The body is larger, or in more chunks, than is taken here.");
        }
        whole = (size_t)line + 2 + size + 2;
        if (left < whole) {
            chunks->count--; /* looked at again when more has come */
            return HTTP_HEAD_UNFINISHED;
        }
        if (memcmp(from + whole - 2, "\r\n", 2) != 0) {
            return refuse(head, 400, "A chunk does not end where its size says.");
        }
        chunks->at += whole;
        chunks->body_bytes += size;
        if (size == 0) {
            return HTTP_HEAD_WHOLE;
        }
    }
}
