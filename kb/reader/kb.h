/*
 * The knowledge base: everything the office wrote, loaded, checked and ready to be searched.
 *
 * A struct kb never changes once it is loaded; a reload builds a new one. It may be read from
 * several threads at once. Strings that are handed out live as long as the kb.
 *
 * Folder layout: topics/LANG/ID.md, signs/LANG/ID.md, equipment/ID.json,
 * words/LANG.txt (shorthand), words/LANG-known.txt (words that are right as they are spelt, for
 * signs), words/LANG-ordinary.txt (the same for topics), words/LANG-classes.txt (word classes of
 * the signs), words/LANG-elsewhere.txt (texts that no topic fits), words/LANG-harmless.txt
 * (ordinary texts, for the signs only), words/LANG-courtesy.txt (texts that want no answer),
 * words/LANG-request.txt, words/LANG-fault.txt and words/LANG-inquiry.txt (kb_matter()).
 */
#ifndef KB_H
#define KB_H

#include <stdbool.h>
#include <stddef.h>

#include "fault.h"
#include "words.h"
#include "equipment.h"

struct kb;

/*
 * Loads a folder; cache_folder, unless NULL, is only read (see kb_keep()). On success *kb is the
 * caller's, to be freed with kb_free(). On failure *kb is untouched and every fault names file,
 * line, field and remedy. Returns 0 or -1.
 */
int kb_load(const char *folder, const char *cache_folder, struct kb **kb, struct faults *faults);

/* The same of equipment/ alone, at once: for sums. Nothing can be found in it. */
int kb_load_equipment(const char *folder, struct kb **kb, struct faults *faults);

/*
 * Keeps what took time to build in the cache folder, which is made if it is not there, unless it
 * came from there: the content that answers renters, or what is only looked at, such as a draft,
 * which never takes the other's place. It is the folder's owner's, also if root keeps it; a folder
 * that others may write, and a link, are refused. Returns 0, or -1 with a fault, which harms
 * nothing but the next start's speed.
 */
enum kept_as { KEPT_NOWHERE, KEPT_LIVE, KEPT_CHECKED };
int kb_keep(const struct kb *kb, const char *cache_folder, enum kept_as as, struct fault *fault);
void kb_free(struct kb *kb);

/* BLAKE2b over all content files in name order, 64 hex digits: which content said this. */
const char *kb_digest(const struct kb *kb);

/* ---- Topics: one thing that renters ask ---------------------------------------------------- */

struct topic {
    const char *id; /* "charge-car" */
    enum language language;
    const char *title;           /* plain words, for "Did you mean …?" */
    const char *answer;          /* what is texted; placeholders in braces */
    const char *handout;         /* CommonMark, what is printed; "" if none */
    const char *const *asked_as; /* as the file has them */
    const int *asked_as_lines;   /* the line of the file of each */
    size_t asked_as_count;
    const char *const *only_if; /* conditions, all must hold; see answers.h for the words */
    size_t only_if_count;
    bool approved;
    const char *file; /* path below the kb folder */
    int answer_line;
};

/* The topic with this id in this language, in English if it has none there, or NULL. */
const struct topic *kb_topic(const struct kb *kb, const char *id, enum language language);
/* All of them, for checks and handouts. */
const struct topic *kb_topics(const struct kb *kb, size_t *count);

/* How sure the search is, from calibrated scores. */
enum sureness { UNSURE, BETWEEN_TWO, SURE };

struct topic_match {
    const struct topic *topic;
    int score;           /* thousandths, 0 to 1000 */
    const char *nearest; /* the asked-as line nearest to the text */
};

struct topic_search {
    enum sureness sureness;
    struct topic_match best[3]; /* best first */
    size_t count;               /* how many of `best` are filled; 0 if no word is known */
    bool elsewhere;             /* it sounds more like a text that no topic fits than like any */
};

/* Finds what a question (one piece of a text) is about. `nearest` lines live in the kb. */
struct topic_search kb_search_topics(const struct kb *kb, struct workspace *workspace,
                                     const char *question, enum language language);

/* The words of a text as the topics read it: shorthand written out, misspelt words repaired by what
 * the content says (spelling.h). In `arena`; some point into the kb. */
struct words kb_repaired(const struct kb *kb, void *arena, struct workspace *workspace,
                         const char *text, enum language language);

/* True if a text surely wants no answer: thanks, greetings, praise, "will do", learnt from
 * words/LANG-courtesy.txt against what asks, tells of danger or is about something else. */
bool kb_is_courtesy(const struct kb *kb, struct workspace *workspace, const char *text,
                    enum language language);

/* What a person in the office must hear of, whatever the handout says of it. */
enum matter {
    MATTER_REQUEST, /* wants something done: "please pick it up Tuesday instead" */
    MATTER_FAULT,   /* something of the rented things does not work, or not as it should */
    MATTER_NONE
};

/*
 * Which of these a text surely is, learnt from words/LANG-request.txt and words/LANG-fault.txt
 * against questions about the same (words/LANG-inquiry.txt) and some of all else that is texted. A
 * head line "Topics: extend, billing" of the first two names what is asked for in such words as
 * often as in questions: ways of asking for these topics are no examples of either.
 */
enum matter kb_matter(const struct kb *kb, struct workspace *workspace, const char *text,
                      enum language language);

/* True if a text as a whole surely asks for a topic: at such a score fewer than 2 in 100 whole
 * texts of emergencies stand, but 66 in 75 questions that were taken for a sign. */
bool kb_is_asked(const struct kb *kb, struct workspace *workspace, const char *text,
                 enum language language);

/* ---- Signs: warnings that a renter may be in trouble ----------------------------------------- */

enum sign_level { SIGN_CLINICAL, SIGN_EQUIPMENT, SIGN_EMERGENCY };

struct sign {
    const char *id; /* "chest-pain" */
    enum language language;
    const char *title;
    const char *in_brief; /* two or three words for an alert by text: "chest pain" */
    enum sign_level level;
    const char *reply; /* what to text back; an emergency's is its first part, stands alone */
    const char *const *said_as;
    size_t said_as_count;
    bool approved;
    const char *file;
    int reply_line;
};

struct sign_match {
    const struct sign *sign;
    const char *phrase; /* the said-as line that fired, or the whole text that is most like it */
    size_t start, end;  /* bytes of the text that it fired on */
    bool by_likeness;   /* no said-as line has its words there */
};

/*
 * Every sign that a text shows, gravest first, at most `room`; returns how many. All languages'
 * signs are tried on every text. One match a sign. In doubt it fires; a quoted copy of our own
 * words in a reaction (reaction.h) fires nothing.
 */
size_t kb_find_signs(const struct kb *kb, struct workspace *workspace, const char *text,
                     struct sign_match *matches, size_t room);

/* The sign with this id in this language, else in English, else in any, or NULL. */
const struct sign *kb_sign(const struct kb *kb, const char *id, enum language language);
const struct sign *kb_signs(const struct kb *kb, size_t *count);

/*
 * True if a text is in a language or script that we do not speak (words.h), by the words that the
 * content knows.
 */
bool kb_is_foreign(const struct kb *kb, const char *text);

/*
 * The language whose content alone knows words of a text that has no common ones ("convulsiona",
 * "no entiendo"); false if none does, or both do.
 */
bool kb_tells_language(const struct kb *kb, const char *text, enum language *language);

/* True if a cleaned word (words.h) is right as it is spelt, by words/LANG-known.txt and
 * words/LANG-ordinary.txt. */
bool kb_is_ordinary(const struct kb *kb, const char *word, enum language language);

/* ---- Equipment ------------------------------------------------------------------------------ */

/* The unit with this id, or NULL. */
const struct equipment *kb_equipment(const struct kb *kb, const char *id);
const struct equipment *const *kb_equipment_all(const struct kb *kb, size_t *count);

#endif
