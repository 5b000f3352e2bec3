#include "everyday.h"

#include "steps.h"

/* What has no bearing on what happens now, however it is asked. */
static const char *const rental_topics[] = {
    "return-pack",  "return-ship",  "due-date",      "extend",      "delivery",
    "billing",      "contents",     "extra-battery", "filter-care", "cannula-care",
    "lost-damaged", "prescription", "fly",           "humidifier",
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

enum everyday
everyday_read(const struct asked *whole, const struct verdict *verdict, enum beside beside,
              const struct pieces *pieces)
{
    enum everyday least = SURELY_EVERYDAY;
    size_t i;

    /* "can i keep it another day" asks what to do as well, but with nobody */
    if (everyday_is_courtesy(pieces) || cannot_call_words(whole) != NULL ||
        beside < BESIDE_ASKS_WHAT_TO_DO ||
        (beside == BESIDE_ASKS_WHAT_TO_DO && beside_emergency_of_person(whole, beside))) {
        return NOT_EVERYDAY;
    }
    for (i = 0; i < pieces->count; i++) {
        struct asked piece =
            asked_question(whole, pieces->list[i].text, whole->message->sent_utc_s);

        if (pieces->list[i].courtesy || is_sure(&piece.search)) {
            continue;
        }
        if (!would_be_answered(&piece, verdict)) {
            return NOT_EVERYDAY;
        }
        least = MAY_BE_EVERYDAY;
    }
    return least;
}

bool
everyday_of_rental(const struct asked *whole, const struct pieces *pieces)
{
    size_t i;

    for (i = 0; i < pieces->count; i++) {
        struct asked piece =
            asked_question(whole, pieces->list[i].text, whole->message->sent_utc_s);

        if (!pieces->list[i].courtesy &&
            !everyday_is_surely_of(&piece, rental_topics,
                                   sizeof rental_topics / sizeof rental_topics[0])) {
            return false;
        }
    }
    return true;
}
