/*
 * Remarks: what `hutbell check` finds wrong with content, equipment and records that load all the
 * same. A remark says where, what, and what to do about it. Faults (fault.h) are what does not
 * load; they become remarks of a kind of their own when they are shown.
 */
#ifndef REMARK_H
#define REMARK_H

#include <stdbool.h>
#include <stddef.h>

/*
 * X(identifier, name in JSON, error (else warning), for who writes the content (else for who runs
 * the office), heading); in the order in which they are shown: errors, what the office can act on,
 * the content.
 */
#define REMARKS(X)                                                                                 \
    X(FAULT, "fault", true, false, "Faults: the program does not start with these")                \
    X(EMERGENCY, "emergency-text", true, true, "Emergency texts that are not one plain part")      \
    X(UNIT, "unit-unknown", true, false, "Rentals whose unit nobody knows")                        \
    X(ORDER, "order", true, false, "Orders that the unit cannot do")                               \
    X(EQUIPMENT, "equipment", true, false, "Equipment tables that contradict themselves")          \
    X(LONG, "too-long", true, true, "Texts of more than 2 parts")                                  \
    X(RECORD, "record", false, false, "Records that lack what an answer needs")                    \
    X(UNTRANSLATED, "untranslated", false, false,                                                  \
      "Words of the office that Spanish replies say in English")                                   \
    X(HOLE, "equipment-hole", false, false, "Equipment tables with holes")                         \
    X(UNAPPROVED, "unapproved", false, false, "Not approved yet: no renter may see these")         \
    X(UCS2, "double-cost", false, true,                                                            \
      "Texts with characters that a text message pays double for")                                 \
    X(GRADE, "grade", false, true, "Texts that are hard to read")                                  \
    X(SIGN_FIRST, "sign-first", false, true, "Lines that a warning sign takes before their topic") \
    X(LOST, "lost-line", false, true,                                                              \
      "Lines that would go to another topic if they were not there")                               \
    X(CONFUSED, "confused", false, true, "Topics that are taken for each other")                   \
    X(LONELY, "lonely-lines", false, true, "Topics with lines that no other line is like")         \
    X(FEW, "few-lines", false, true, "Topics with too few ways of asking")

enum remark_kind {
#define X(identifier, name, is_error, is_content, heading) REMARK_##identifier,
    REMARKS(X)
#undef X
        REMARK_KIND_COUNT
};

struct remark_entry {
    const char *name;
    bool is_error;
    bool is_content;
    const char *heading;
};

/* The table's row. */
const struct remark_entry *remark_entry(enum remark_kind kind);

struct remark {
    enum remark_kind kind;
    const char *file;  /* as faults name it, or NULL */
    int line;          /* 0 if there is none */
    const char *about; /* the topic or sign of the file, its id; NULL if the file is none */
    const char *other; /* a second topic that it is about, its id, or NULL */
    const char *what;
    const char *remedy;
    int gravity; /* among its kind, the higher the worse */
};

/* A growing list; everything in it lives in `arena`. */
struct remarks {
    void *arena;
    struct remark *list;
    size_t count;
};

/* Adds one; file and remedy are copied. Returns it, so that the gravity can be set. */
struct remark *remark_add(struct remarks *remarks, enum remark_kind kind, const char *file,
                          int line, const char *remedy, const char *format, ...)
    __attribute__((format(printf, 6, 7)));

/* Whether it is about the topic or sign of this id, in any language. */
bool remark_is_about(const struct remark *remark, const char *id);

/* Leaves what is about the topic or sign of this id. */
void remarks_keep_about(struct remarks *remarks, const char *id);

/* By kind, the worst first: by gravity, then as they were added. */
void remarks_sort(struct remarks *remarks);

/* How many there are of a kind. */
size_t remarks_of_kind(const struct remarks *remarks, enum remark_kind kind);

#endif
