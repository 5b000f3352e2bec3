/*
 * Statements, for the files of store/ only: each SQL text is prepared once, values are bound by
 * type, and every error is worded as a fault.
 *
 * SQL texts are string constants: a statement is found again by the address of its text.
 */
#ifndef STORE_SQL_H
#define STORE_SQL_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include <sqlite3.h>

#include "store.h"

enum value_kind { VALUE_NULL, VALUE_NUMBER, VALUE_TEXT, VALUE_BYTES };

struct value {
    enum value_kind kind;
    int64_t number;
    const void *bytes;
    size_t length;
};

static inline struct value
number(int64_t value)
{
    return (struct value){.kind = VALUE_NUMBER, .number = value};
}

/* For ids, where 0 says that there is none. */
static inline struct value
number_or_null(int64_t value)
{
    if (value == 0) {
        return (struct value){.kind = VALUE_NULL};
    }
    return number(value);
}

/* NULL is NULL. The text must live until the statement has run. */
static inline struct value
words(const char *text)
{
    return (struct value){.kind = text == NULL ? VALUE_NULL : VALUE_TEXT, .bytes = text};
}

static inline struct value
octets(const void *bytes, size_t length)
{
    return (struct value){.kind = VALUE_BYTES, .bytes = bytes, .length = length};
}

#define VALUES(...)                                                                                \
    (const struct value[]){__VA_ARGS__},                                                           \
        sizeof((const struct value[]){__VA_ARGS__}) / sizeof(struct value)

/* Runs a statement that returns no rows: store_do(store, SQL, VALUES(number(1)), fault). */
int store_do(struct store *store, const char *sql, const struct value *values, size_t count,
             struct fault *fault);

/*
 * Begins a query; then store_next() until *more is false or it fails, both of which end it. Whoever
 * stops earlier calls store_end(). NULL with a fault on failure.
 */
sqlite3_stmt *store_query(struct store *store, const char *sql, const struct value *values,
                          size_t count, struct fault *fault);
int store_next(struct store *store, sqlite3_stmt *query, bool *more, struct fault *fault);
void store_end(sqlite3_stmt *query);

/*
 * Hands each row of the query to `take`, to the end; into `list`, as it likes. A NULL query fails
 * as it did when it was begun. Returns 0 or -1.
 */
int store_each(struct store *store, sqlite3_stmt *query,
               void (*take)(sqlite3_stmt *query, void *list), void *list, struct fault *fault);

/* The number in the first column of the first row, `none` if there is no row, and the end of the
 * query. -1 also if the query is NULL, as store_query() has said why. */
int store_number(struct store *store, sqlite3_stmt *query, int64_t none, int64_t *value,
                 struct fault *fault);

/* The first time that a query of one column gives, as of what is due next; INT64_MAX if it gives
 * none. */
int store_soonest(struct store *store, const char *sql, int64_t *utc_s, struct fault *fault);

/* Text of a column, copied into `arena`; NULL for NULL. */
char *column_text(void *arena, sqlite3_stmt *query, int column);

int64_t store_last_id(struct store *store);
/* Rows that the last statement changed. */
int store_changes(struct store *store);

/* Words what SQLite says about `doing` ("open FILE"), with its extended code. */
void store_fault(sqlite3 *database, const char *doing, struct fault *fault);

#endif
