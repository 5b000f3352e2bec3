/*
 * The fields of a rental record. One table says of each where it stands in the struct, what it may
 * hold and what to write instead; reading, checking and writing all go by it, so that they cannot
 * disagree. Private to rental_record.c.
 */
#ifndef RENTAL_FIELDS_H
#define RENTAL_FIELDS_H

#include <stdbool.h>
#include <stddef.h>

#include "rental.h"

enum field_kind {
    FIELD_TEXT,   /* const char *; low and high bound its length in bytes */
    FIELD_ID,     /* const char *; the same, without spaces */
    FIELD_PHONE,  /* const char *; E.164, or a short code */
    FIELD_NUMBER, /* int */
    FIELD_FEET,   /* double */
    FIELD_MOMENT, /* int64_t, UTC seconds */
    FIELD_YES_NO, /* bool */
    FIELD_STATE,
    FIELD_LANGUAGE,
    FIELD_MODE,
    FIELD_REACH
};

struct field {
    const char *key;
    enum field_kind kind;
    size_t offset;
    int low, high;
    bool is_required;
    const char *remedy;
};

struct field_list {
    const struct field *fields;
    size_t count;
};

extern const struct field_list rental_fields, phone_fields, order_fields, battery_fields,
    backup_fields;

/* False, *reach untouched, for a name that is none of reach_name()'s. */
bool reach_named(const char *name, enum reach *reach);

#endif
