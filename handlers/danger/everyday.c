#include "everyday.h"

#include <string.h>

#include "steps.h"

/* What has no bearing on what happens now, however it is asked. */
static const char *const rental_topics[] = {
    "return-pack", "return-ship", "due-date",      "extend",      "delivery",
    "billing",     "contents",    "extra-battery", "filter-care", "fly",
};
/* What is like these may be told of a body, or of the tube that it breathes from: "lost him",
 * "gurgling", "it came off". */
static const char *const body_topics[] = {
    "lost-damaged", "noise", "humidifier", "tubing", "cannula-care", "prescription",
};

bool
everyday_is_courtesy(const struct pieces *pieces)
{
    size_t i;

    for (i = 0; i < pieces->count; i++) {
        if (!pieces->list[i].courtesy) {
            return false;
        }
    }
    return true;
}

bool
everyday_is_surely_of(const struct asked *question, const char *const *topics, size_t count)
{
    size_t i;

    for (i = 0; i < count; i++) {
        if (asked_is_surely_about(question, topics[i])) {
            return true;
        }
    }
    return false;
}

/* An answer would be found at any other time. */
static bool
would_be_answered(const struct asked *question, const struct verdict *verdict)
{
    struct verdict scratch = *verdict;
    size_t i;

    handlers_answer(question, &scratch);
    for (i = verdict->answer_count; i < scratch.answer_count; i++) {
        if (scratch.answers[i].kind == ANSWER_GAP) {
            return false;
        }
    }
    return scratch.answer_count > verdict->answer_count;
}

/* Surer than is asked of an answer: "it got really quiet" is likest to a question about noise. */
static bool
is_sure(const struct topic_search *search)
{
    enum { SURELY = 800 };

    return search->count > 0 && search->sureness == SURE && search->best[0].score >= SURELY;
}

/* While an emergency presses. */
static bool
may_be_of_body(const struct asked *piece)
{
    size_t i;

    for (i = 0; i < sizeof body_topics / sizeof body_topics[0]; i++) {
        if (open_emergency_is(piece->context) && piece->search.count > 0 &&
            strcmp(piece->search.best[0].topic->id, body_topics[i]) == 0) {
            return true;
        }
    }
    return false;
}

enum everyday
everyday_read(const struct asked *whole, const struct verdict *verdict, const struct pieces *pieces)
{
    enum everyday least = SURELY_EVERYDAY;
    size_t i;

    if (everyday_is_courtesy(pieces) || cannot_call_words(whole) != NULL) {
        return NOT_EVERYDAY;
    }
    for (i = 0; i < pieces->count; i++) {
        struct asked piece =
            asked_question(whole, pieces->list[i].text, whole->message->sent_utc_s);

        if (pieces->list[i].courtesy || (is_sure(&piece.search) && !may_be_of_body(&piece))) {
            continue;
        }
        if (may_be_of_body(&piece) || !would_be_answered(&piece, verdict)) {
            return NOT_EVERYDAY;
        }
        least = MAY_BE_EVERYDAY;
    }
    return least;
}

bool
everyday_of_rental(const struct asked *whole, const struct pieces *pieces)
{
    bool is_of_rental = false;
    size_t i;

    for (i = 0; i < pieces->count; i++) {
        struct asked piece =
            asked_question(whole, pieces->list[i].text, whole->message->sent_utc_s);

        if (pieces->list[i].courtesy) {
            continue;
        }
        if (!everyday_is_surely_of(&piece, rental_topics,
                                   sizeof rental_topics / sizeof rental_topics[0])) {
            return false;
        }
        is_of_rental = true;
    }
    return is_of_rental;
}
