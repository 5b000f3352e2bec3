#include "problem.h"

#include <stdlib.h>

#include <glib.h>
#include <jansson.h>

#include "memory.h"

static const struct {
    int status;
    const char *title;
} titles[] = {
    /* RFC 9110, section 15; 431 RFC 6585 */
    {400, "Bad Request"},
    {401, "Unauthorized"},
    {403, "Forbidden"},
    {404, "Not Found"},
    {405, "Method Not Allowed"},
    {408, "Request Timeout"},
    {409, "Conflict"},
    {411, "Length Required"},
    {413, "Content Too Large"},
    {414, "URI Too Long"},
    {415, "Unsupported Media Type"},
    {417, "Expectation Failed"},
    {422, "Unprocessable Content"},
    {429, "Too Many Requests"},
    {431, "Request Header Fields Too Large"},
    {500, "Internal Server Error"},
    {501, "Not Implemented"},
    {503, "Service Unavailable"},
    {505, "HTTP Version Not Supported"},
};

const char *
problem_title(int status)
{
    size_t i;

    for (i = 0; i < sizeof(titles) / sizeof(titles[0]); i++) {
        if (titles[i].status == status) {
            return titles[i].title;
        }
    }
    return "Error";
}

static json_t *
json_text(const char *text)
{
    char *valid = g_utf8_make_valid(text, -1);
    json_t *json = json_string(valid);

    g_free(valid);
    return memory_must(json);
}

/* As a URI fragment, RFC 6901, section 6. */
static json_t *
fragment(void *arena, const char *pointer)
{
    char *escaped = g_uri_escape_string(pointer, "/!$&'()*+,;=:@?", FALSE);
    json_t *json = json_text(memory_format(arena, "#%s", escaped));

    g_free(escaped);
    return json;
}

static json_t *
errors_json(void *arena, const struct problem_error *errors, size_t count)
{
    json_t *list = memory_must(json_array());
    size_t i;

    for (i = 0; i < count; i++) {
        json_t *error = memory_must(json_pack("{s:o}", "detail", json_text(errors[i].detail)));

        if (errors[i].pointer != NULL) {
            json_object_set_new(error, "pointer", fragment(arena, errors[i].pointer));
        }
        json_array_append_new(list, error);
    }
    return list;
}

static char *
document(void *arena, int status, const char *title, const char *detail,
         const struct problem_error *errors, size_t count)
{
    json_t *root = memory_must(json_pack("{s:s, s:o, s:i, s:o}", "type", "about:blank", "title",
                                         json_text(title != NULL ? title : problem_title(status)),
                                         "status", status, "detail", json_text(detail)));
    char *text, *copy;

    if (count > 0) {
        json_object_set_new(root, "errors", errors_json(arena, errors, count));
    }
    text = memory_must(json_dumps(root, JSON_COMPACT));
    copy = memory_format(arena, "%s\n", text);
    free(text);
    json_decref(root);
    return copy;
}

char *
problem_json(void *arena, int status, const char *title, const char *detail, const char *pointer)
{
    const struct problem_error error = {detail, pointer};

    return document(arena, status, title, detail, &error, pointer != NULL ? 1 : 0);
}

char *
problem_json_of_all(void *arena, int status, const char *detail, const struct problem_error *errors,
                    size_t count)
{
    return document(arena, status, NULL, detail, errors, count);
}
