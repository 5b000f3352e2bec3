#include "conversation_rows.h"

#include <assert.h>
#include <string.h>

#include <jansson.h>

#include "memory.h"
#include "store_sql.h"
#include "told_json.h"

static const char *const question_names[] = {
    [QUESTION_NONE] = "none",
    [QUESTION_WHICH_RENTAL] = "which-rental",
    [QUESTION_WHICH_TOPIC] = "which-topic",
    [QUESTION_WHICH_CHARGE] = "which-charge",
    [QUESTION_FLOWING] = "flowing",
    [QUESTION_PLUG] = "plug",
    [QUESTION_READING_OR_AGE] = "reading-or-age",
};

enum { QUESTION_COUNT = sizeof(question_names) / sizeof(question_names[0]) };

const char *
open_question_name(enum open_question question)
{
    return question_names[question];
}

enum open_question
open_question_named(const char *name)
{
    int question;

    for (question = 0; question < QUESTION_COUNT; question++) {
        if (strcmp(question_names[question], name) == 0) {
            return (enum open_question)question;
        }
    }
    return QUESTION_NONE; /* of a newer program, whose file we refuse: cannot be */
}

static void
read_language(const char *code, struct conversation *conversation)
{
    enum language language = code != NULL ? language_named(code) : LANGUAGE_COUNT;

    if (language != LANGUAGE_COUNT) {
        conversation->is_spoken = true;
        conversation->language = language;
    }
}

/* A JSON array of ids. */
static void
read_choices(void *arena, const char *text, struct conversation *conversation)
{
    json_t *list = json_loads(text, 0, NULL);
    json_t *choice;
    size_t i;

    json_array_foreach (list, i, choice) {
        if (i < CHOICES_MAX && json_is_string(choice)) {
            conversation->choices[i] = memory_copy(arena, json_string_value(choice));
            conversation->choice_count = i + 1;
        }
    }
    json_decref(list);
}

static char *
choices_text(const struct conversation *conversation)
{
    json_t *list = memory_must(json_array());
    char *text;
    size_t i;

    for (i = 0; i < conversation->choice_count; i++) {
        json_array_append_new(list, memory_must(json_string(conversation->choices[i])));
    }
    text = memory_must(json_dumps(list, JSON_COMPACT));
    json_decref(list);
    return text;
}

static void
read_last(void *arena, const char *text, struct last_answer *last)
{
    json_t *json = text == NULL ? NULL : json_loads(text, 0, NULL);

    last_answer_from_json(arena, json, last);
    json_decref(json);
}

/* NULL if nothing was answered that could be gone on with. */
static char *
last_text(const struct last_answer *last)
{
    json_t *json;
    char *text;

    if (last->at_utc_s == 0) {
        return NULL;
    }
    json = last_answer_json(last);
    text = memory_must(json_dumps(json, JSON_COMPACT));
    json_decref(json);
    return text;
}

static int
read_consent(struct store *store, const char *phone, bool *opted_out, struct fault *fault)
{
    sqlite3_stmt *query =
        store_query(store, "SELECT given FROM consent WHERE phone = ? ORDER BY id DESC LIMIT 1",
                    VALUES(words(phone)), fault);
    bool more;

    *opted_out = false;
    if (query == NULL || store_next(store, query, &more, fault) != 0) {
        return -1;
    }
    if (more) {
        *opted_out = sqlite3_column_int(query, 0) == 0;
        store_end(query);
    }
    return 0;
}

/* The words that we asked about, cut out of their text; NULL if those are erased or shorter. */
static const char *
read_asked_about(void *arena, sqlite3_stmt *query, int body, int start)
{
    size_t from = (size_t)sqlite3_column_int64(query, start);
    size_t length = (size_t)sqlite3_column_int64(query, start + 1);
    const char *text = (const char *)sqlite3_column_text(query, body);

    if (text == NULL || from + length > strlen(text)) {
        return NULL;
    }
    return memory_copy_n(arena, text + from, length);
}

int
conversation_rows_at(struct store *store, void *arena, const char *phone, int64_t row,
                     struct conversation *conversation, struct fault *fault)
{
    sqlite3_stmt *query = store_query(
        store,
        "SELECT c.last_utc_s, c.question, c.asked_utc_s, c.choices, c.rental_id, c.in_charge,"
        " t.body, c.asked_start, c.asked_length, c.last_answer, (SELECT v.language FROM verdict v"
        " WHERE v.text_id = c.text_id ORDER BY v.id DESC LIMIT 1)"
        " FROM conversation c LEFT JOIN text t ON t.id = c.asked_text_id WHERE c.id = ?",
        VALUES(number(row)), fault);
    bool more;

    memset(conversation, 0, sizeof(*conversation));
    if (query == NULL || store_next(store, query, &more, fault) != 0) {
        return -1;
    }
    if (more) {
        conversation->row = row;
        conversation->last_utc_s = sqlite3_column_int64(query, 0);
        conversation->question = open_question_named((const char *)sqlite3_column_text(query, 1));
        conversation->asked_utc_s = sqlite3_column_int64(query, 2);
        read_choices(arena, (const char *)sqlite3_column_text(query, 3), conversation);
        conversation->rental_id = column_text(arena, query, 4);
        conversation->in_charge = column_text(arena, query, 5);
        conversation->asked_about = read_asked_about(arena, query, 6, 7);
        read_last(arena, (const char *)sqlite3_column_text(query, 9), &conversation->last);
        read_language((const char *)sqlite3_column_text(query, 10), conversation);
        store_end(query);
    }
    return read_consent(store, phone, &conversation->opted_out, fault);
}

int
conversation_rows_newest(struct store *store, void *arena, const char *phone,
                         struct conversation *conversation, struct fault *fault)
{
    sqlite3_stmt *query = store_query(store, "SELECT max(id) FROM conversation WHERE phone = ?",
                                      VALUES(words(phone)), fault);
    int64_t row;
    bool more;

    if (query == NULL || store_next(store, query, &more, fault) != 0) {
        return -1;
    }
    assert(more); /* max() has a row always */
    row = sqlite3_column_int64(query, 0);
    store_end(query);
    return conversation_rows_at(store, arena, phone, row, conversation, fault);
}

int
conversation_rows_is_of(struct store *store, const char *phone, int64_t row, int64_t text_id,
                        bool *is_of, struct fault *fault)
{
    sqlite3_stmt *query = store_query(store,
                                      "SELECT id = ?2 OR text_id = ?3 FROM conversation"
                                      " WHERE phone = ?1 ORDER BY id DESC LIMIT 1",
                                      VALUES(words(phone), number(row), number(text_id)), fault);
    bool more;

    *is_of = true;
    if (query == NULL || store_next(store, query, &more, fault) != 0) {
        return -1;
    }
    if (more) {
        *is_of = sqlite3_column_int(query, 0) != 0;
        store_end(query);
    }
    return 0;
}

/* A piece of a text: start and length in bytes. */
struct span {
    int64_t text_id, start, length;
};

/* Finds where a row's words stand, so that a new row can point at the same. */
static int
span_of_row(struct store *store, int64_t row, struct span *span, struct fault *fault)
{
    sqlite3_stmt *query = store_query(
        store, "SELECT asked_text_id, asked_start, asked_length FROM conversation WHERE id = ?",
        VALUES(number(row)), fault);
    bool more;

    if (query == NULL || store_next(store, query, &more, fault) != 0) {
        return -1;
    }
    if (more) {
        *span = (struct span){sqlite3_column_int64(query, 0), sqlite3_column_int64(query, 1),
                              sqlite3_column_int64(query, 2)};
        store_end(query);
    }
    return 0;
}

static int
find_span(struct store *store, const struct conversation_step *step, const char *asked_about,
          struct span *span, struct fault *fault)
{
    const struct conversation *before = step->before;
    const char *place;

    if (asked_about == NULL) {
        return 0;
    }
    place = strstr(step->text, asked_about);
    if (place != NULL) {
        *span = (struct span){step->text_id, place - step->text, (int64_t)strlen(asked_about)};
        return 0;
    }
    if (before->asked_about != NULL && strcmp(before->asked_about, asked_about) == 0) {
        return span_of_row(store, before->row, span, fault);
    }
    return 0;
}

int
conversation_rows_add(struct store *store, const struct conversation_step *step,
                      const struct conversation *after, bool *asked_about_lost, struct fault *fault)
{
    struct span span = {0};
    char *choices, *last;
    int rc;

    if (find_span(store, step, after->asked_about, &span, fault) != 0) {
        return -1;
    }
    *asked_about_lost = after->asked_about != NULL && span.text_id == 0;
    choices = choices_text(after);
    last = last_text(&after->last);
    rc = store_do(store,
                  "INSERT INTO conversation (phone, text_id, last_utc_s, question, asked_utc_s,"
                  " asked_text_id, asked_start, asked_length, choices, rental_id, in_charge,"
                  " last_answer) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
                  VALUES(words(step->phone), number(step->text_id), number(after->last_utc_s),
                         words(open_question_name(after->question)), number(after->asked_utc_s),
                         number_or_null(span.text_id), number(span.start), number(span.length),
                         words(choices), words(after->rental_id), words(after->in_charge),
                         words(last)),
                  fault);
    free(choices);
    free(last);
    return rc;
}

int
consent_rows_add(struct store *store, const char *phone, bool given, int64_t text_id,
                 int64_t now_utc_s, struct fault *fault)
{
    return store_do(store,
                    "INSERT INTO consent (phone, given, at_utc_s, text_id) VALUES (?, ?, ?, ?)",
                    VALUES(words(phone), number(given), number(now_utc_s), number(text_id)), fault);
}

int
battery_rows_add(struct store *store, const char *rental_id, int64_t as_of_utc_s, const char *told,
                 int64_t text_id, struct fault *fault)
{
    return store_do(store,
                    "INSERT INTO battery_account (rental_id, as_of_utc_s, told, text_id)"
                    " VALUES (?, ?, ?, ?)",
                    VALUES(words(rental_id), number(as_of_utc_s), words(told), number(text_id)),
                    fault);
}

/* It points at the text whose numbers it voids. */
int
battery_rows_void(struct store *store, const char *rental_id, int64_t now_utc_s,
                  struct fault *fault)
{
    return store_do(store,
                    "INSERT INTO battery_account (rental_id, as_of_utc_s, told, text_id)"
                    " SELECT rental_id, max(as_of_utc_s, ?2), '{}', text_id FROM battery_account"
                    " WHERE id = (SELECT id FROM battery_account WHERE rental_id = ?1"
                    " ORDER BY as_of_utc_s DESC, id DESC LIMIT 1) AND told <> '{}'",
                    VALUES(words(rental_id), number(now_utc_s)), fault);
}

int
battery_rows_newest(struct store *store, void *arena, const char *rental_id, int64_t *row,
                    int64_t *as_of_utc_s, char **told, struct fault *fault)
{
    sqlite3_stmt *query =
        store_query(store,
                    "SELECT id, as_of_utc_s, told FROM battery_account WHERE rental_id = ?"
                    " ORDER BY as_of_utc_s DESC, id DESC LIMIT 1",
                    VALUES(words(rental_id)), fault);
    bool more;

    *row = 0;
    *told = NULL;
    if (query == NULL || store_next(store, query, &more, fault) != 0) {
        return -1;
    }
    if (more) {
        *row = sqlite3_column_int64(query, 0);
        *as_of_utc_s = sqlite3_column_int64(query, 1);
        *told = column_text(arena, query, 2);
        store_end(query);
    }
    return 0;
}
