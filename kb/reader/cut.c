/*
 * Sentences are the bricks; a sentence is cut further where a new question begins inside it ("and
 * how", "also"). Then the bricks are put together: what is no question itself belongs to the
 * question that follows it, or, after the last one, to the one before.
 */
#include "cut.h"

#include <stdint.h>
#include <string.h>

#include "cut_words.h"
#include "memory.h"

/* ---- What words show ------------------------------------------------------------------------ */

/* A short condition leads over: so many words at most. */
enum { CONDITION_WORDS = 5 };

/* How many words at `at` join what follows to what was before; "&" is a word of its own. */
static size_t
joins(const struct words *words, size_t at)
{
    return at < words->count && words->list[at].text[0] == '&'
               ? 1
               : cut_words_at(words, at, cut_joiners);
}

/* The number of a list ("1 how ... 2 can ..."), or 0. */
static int
list_number(const struct words *words, size_t at)
{
    const char *text = at < words->count ? words->list[at].text : "";

    return text[0] >= '1' && text[0] <= '9' && text[1] == '\0' ? text[0] - '0' : 0;
}

/* How many words at `at` lead over to what is asked: "also", "and", "2", "if it isnt". */
static size_t
leads_over(const struct words *words, size_t at)
{
    size_t from = at, condition, end;

    at += list_number(words, at) > 0;
    at += cut_words_at(words, at, cut_turns);
    at += joins(words, at);
    condition = cut_words_at(words, at, cut_conditions);
    for (end = at + condition; condition > 0 && end <= at + CONDITION_WORDS; end++) {
        if (cut_words_at(words, end, cut_openers) > 0 ||
            cut_words_at(words, end, cut_requests) > 0) {
            return end - from;
        }
    }
    return at - from;
}

/* True if what begins at `at` is put as a question, whatever word leads over to it. */
static bool
opens_question(const struct words *words, size_t at)
{
    at += leads_over(words, at);
    return cut_words_at(words, at, cut_openers) > 0 || cut_words_at(words, at, cut_requests) > 0;
}

/* ---- One piece under way ----------------------------------------------------------------------
 */

/* Words [from, to) of the text. */
struct brick {
    size_t from, to;
    bool question, courtesy, turn;
};

struct cutting {
    const char *text;
    struct words words;
    bool shouted; /* all in capitals, which then tell nothing */
    struct brick *bricks;
    size_t count;
};

static bool
is_capital(const struct cutting *cutting, size_t word)
{
    char c = cutting->text[cutting->words.list[word].start];

    return !cutting->shouted && c >= 'A' && c <= 'Z' &&
           cut_words_at(&cutting->words, word, cut_no_names) == 0;
}

/* "ok to sleep with it" asks: what would else be a pleasantry belongs to what follows. */
static bool
asks_leave(const struct words *words, size_t at)
{
    return cut_words_at(words, at, cut_agreed) > 0 && cut_words_at(words, at + 1, cut_leave) > 0 &&
           !words->list[at + 1].comma_before;
}

/* The words of [from, to) that are pleasantries, from `from` on; at most one name after them. */
static size_t
skip_courtesy(const struct cutting *cutting, size_t from, size_t to)
{
    size_t at = from;

    while (at < to) {
        size_t count =
            asks_leave(&cutting->words, at) ? 0 : cut_words_at(&cutting->words, at, cut_courtesies);

        if (count == 0 && at > from) {
            count = cut_words_at(&cutting->words, at, cut_followers);
        }
        if (count == 0) {
            size_t said = cut_words_at(&cutting->words, at, cut_names_after);

            if (said > 0 && at + said < to && to - at - said <= 2 &&
                is_capital(cutting, at + said) && is_capital(cutting, to - 1)) {
                return to; /* "this is Alma" */
            }
            if (at > from && at + 1 == to && is_capital(cutting, at)) {
                return to; /* "thanks Alma" */
            }
            if (at > from && at + 1 < to && is_capital(cutting, at) &&
                cutting->words.list[at + 1].comma_before) {
                count = 1; /* "hi Alma, ..." */
            }
        }
        if (count == 0 || at + count > to) {
            return at;
        }
        at += count;
    }
    return to;
}

/* Where the pleasantries at the end of [from, to) begin; `to` if there are none. */
static size_t
find_closing(const struct cutting *cutting, size_t from, size_t to)
{
    size_t at;

    for (at = from + 1; at < to; at++) {
        if (cut_words_at(&cutting->words, at, cut_closers) > 0 &&
            skip_courtesy(cutting, at, to) == to) {
            return at;
        }
    }
    return to;
}

/* The byte after the word, or after the sentence's end marks that follow it. */
static size_t
end_of(const struct cutting *cutting, size_t word)
{
    size_t end = cutting->words.list[word].end;
    size_t limit = word + 1 < cutting->words.count ? cutting->words.list[word + 1].start
                                                   : strlen(cutting->text);

    while (end < limit && strchr(".!?%)", cutting->text[end]) != NULL) {
        end++;
    }
    return end;
}

static bool
ends_with_question_mark(const struct cutting *cutting, size_t to)
{
    size_t at = cutting->words.list[to - 1].end, end = end_of(cutting, to - 1);

    return memchr(cutting->text + at, '?', end - at) != NULL;
}

static void
add_brick(struct cutting *cutting, size_t from, size_t to, bool courtesy)
{
    struct brick *brick = &cutting->bricks[cutting->count];
    size_t turn;

    if (from == to) {
        return;
    }
    turn = cut_words_at(&cutting->words, from, cut_turns);
    *brick = (struct brick){.from = from, .to = to, .courtesy = courtesy, .turn = turn > 0};
    brick->question = !courtesy && (ends_with_question_mark(cutting, to) ||
                                    opens_question(&cutting->words, from));
    cutting->count++;
}

/* Adds words that hold no sentence end: pleasantries, the rest, pleasantries. */
static void
add_stretch(struct cutting *cutting, size_t from, size_t to)
{
    size_t begin = skip_courtesy(cutting, from, to);
    size_t end = begin < to ? find_closing(cutting, begin, to) : to;

    add_brick(cutting, from, begin, true);
    add_brick(cutting, begin, end, false);
    add_brick(cutting, end, to, true);
}

/* True if the numbered list that begins at `from` goes on at `at`. */
static bool
continues_list(const struct cutting *cutting, size_t from, size_t at)
{
    int number = list_number(&cutting->words, from);

    return number > 0 && list_number(&cutting->words, at) == number + 1 &&
           opens_question(&cutting->words, from) && opens_question(&cutting->words, at);
}

/* True if a new question begins at word `at` inside a sentence that began at `from`. */
static bool
begins_question(const struct cutting *cutting, size_t from, size_t at, size_t to)
{
    const struct words *words = &cutting->words;
    size_t joiner, turn;

    if (at < from + 2 || at + 2 > to) {
        return false;
    }
    if (continues_list(cutting, from, at)) {
        return true;
    }
    joiner = joins(words, at);
    turn = cut_words_at(words, at, cut_turns);
    if (turn > 0 && (words->list[at].comma_before || joiner > 0 || at + 3 < to)) {
        return at + turn < to;
    }
    if (joiner > 0) {
        return at + joiner + 2 <= to && opens_question(words, at) &&
               (words->list[at].comma_before || opens_question(words, from));
    }
    return words->list[at].comma_before && opens_question(words, at) &&
           opens_question(words, from) && to - at >= 3;
}

static void
add_sentence(struct cutting *cutting, size_t from, size_t to)
{
    size_t begin = skip_courtesy(cutting, from, to), at;

    for (at = begin + 1; at < to; at++) {
        if (begins_question(cutting, begin, at, to)) {
            add_stretch(cutting, from, at);
            from = begin = at;
        }
    }
    add_stretch(cutting, from, to);
}

static void
lay_bricks(struct cutting *cutting)
{
    size_t from = 0, at;

    for (at = 1; at <= cutting->words.count; at++) {
        if (at == cutting->words.count ||
            cutting->words.list[at].sentence != cutting->words.list[at - 1].sentence) {
            add_sentence(cutting, from, at);
            from = at;
        }
    }
}

/* ---- Putting together -------------------------------------------------------------------------
 */

static bool
question_follows(const struct cutting *cutting, size_t brick)
{
    for (brick++; brick < cutting->count; brick++) {
        if (cutting->bricks[brick].question) {
            return true;
        }
        if (cutting->bricks[brick].turn) {
            return false;
        }
    }
    return false;
}

/* Joins each brick that is no question to the question it belongs to; none are left between. */
static void
join_bricks(struct cutting *cutting)
{
    size_t kept = 0, i;
    bool open = false; /* the last piece still waits for its question, or takes what follows */

    for (i = 0; i < cutting->count; i++) {
        struct brick brick = cutting->bricks[i];
        struct brick *last = kept > 0 ? &cutting->bricks[kept - 1] : NULL;
        bool leads = !brick.question && question_follows(cutting, i);

        if (!brick.courtesy && last != NULL && last->question &&
            cut_words_naming(&cutting->words, brick.from, brick.to) == 0) {
            brick.courtesy = true;
        }
        if (!brick.courtesy && open && last != NULL && !last->courtesy && !brick.turn &&
            (!last->question || (!brick.question && !leads))) {
            last->to = brick.to;
            last->question = last->question || brick.question;
            continue;
        }
        cutting->bricks[kept++] = brick;
        open = !brick.courtesy;
    }
    cutting->count = kept;
}

/* A text without a word: emoji are a courtesy, "??" is not. */
static struct pieces
wordless(void *arena, const char *text)
{
    size_t length = strnlen(text, WORDS_TEXT_MAX), start = strspn(text, " \t\r\n");
    struct piece *piece;

    if (start >= length) {
        return (struct pieces){NULL, 0};
    }
    piece = memory_new(arena, struct piece);
    piece->text = memory_copy_n(piece, text + start, length - start);
    piece->start = start;
    piece->end = length;
    piece->courtesy = memchr(text, '?', length) == NULL;
    return (struct pieces){piece, 1};
}

struct pieces
cut_questions(void *arena, const char *text, enum language language)
{
    struct cutting cutting = {.text = text, .words = words_read(arena, NULL, text, language)};
    struct piece *list;
    size_t i;

    if (cutting.words.count == 0) {
        return wordless(arena, text);
    }
    cutting.shouted = strpbrk(text, "abcdefghijklmnopqrstuvwxyz") == NULL;
    cutting.bricks = memory_array(arena, struct brick, 3 * cutting.words.count + 1);
    lay_bricks(&cutting);
    join_bricks(&cutting);
    list = memory_array(arena, struct piece, cutting.count);
    for (i = 0; i < cutting.count; i++) {
        const struct brick *brick = &cutting.bricks[i];

        list[i].start = cutting.words.list[brick->from].start;
        list[i].end = end_of(&cutting, brick->to - 1);
        list[i].text = memory_copy_n(list, text + list[i].start, list[i].end - list[i].start);
        list[i].courtesy = brick->courtesy;
    }
    return (struct pieces){list, cutting.count};
}
