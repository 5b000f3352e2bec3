/* What was answered, kept for a text that goes on with it (follow_up.c). */
#include <string.h>

#include "follow_words.h"
#include "steps.h"

static enum told_kind
kind_of(enum estimate_kind kind)
{
    static const enum told_kind kinds[] = {
        [ESTIMATE_HOURS_LEFT] = TOLD_HOURS_LEFT, [ESTIMATE_BATTERY_LIFE] = TOLD_BATTERY_LIFE,
        [ESTIMATE_CHARGING] = TOLD_CHARGING,     [ESTIMATE_TRIP] = TOLD_TRIP,
        [ESTIMATE_FLIGHT] = TOLD_FLIGHT,         [ESTIMATE_CYLINDER] = TOLD_CYLINDER};

    return kinds[kind];
}

/* When the charges were so that this sum was worked out with. */
static int64_t
wrote_of(const struct asked *whole, const struct told *told)
{
    bool remembered = told->kind == TOLD_HOURS_LEFT && !told_has_charge(whole->told) &&
                      whole->account != NULL && whole->account->known;

    return remembered ? whole->account->as_of_utc_s : whole->message->sent_utc_s;
}

/* The words of it stand in this text, or it goes on with those of before. */
static bool
keep_words(const struct asked *whole, struct verdict *verdict)
{
    struct conversation *conversation = &verdict->conversation;

    if (conversation->question == QUESTION_NONE) {
        conversation->asked_about =
            conversation->last.goes_on ? whole->context->conversation.asked_about : whole->text;
        return true;
    }
    return conversation->question == QUESTION_PLUG && conversation->asked_about != NULL &&
           (conversation->last.goes_on || strstr(whole->text, conversation->asked_about) != NULL);
}

static void
keep_sum(const struct asked *whole, struct verdict *verdict, const struct answer *answer)
{
    struct last_answer *last = &verdict->conversation.last;
    struct told told = *answer->read;

    told.kind = answer->estimate != NULL ? kind_of(answer->estimate->kind) : told.kind;
    if (!keep_words(whole, verdict)) {
        *last = (struct last_answer){0};
        return;
    }
    if (!last->goes_on) {
        last->wrote_utc_s = wrote_of(whole, &told);
        last->newest = follow_words_newest(&whole->tokens, &told);
    }
    last->is_sum = true;
    last->rental_id = verdict->rental_id;
    last->told = told;
}

/* A short word beside what was answered: that can still be gone on with. */
static bool
is_aside(const struct answer *answer)
{
    return answer->kind == ANSWER_COURTESY || strcmp(answer->id, "plug") == 0 ||
           strcmp(answer->id, "plug-near") == 0;
}

/* Worked out, or a flight of which only the order lacks. */
static bool
is_sum(const struct answer *answer)
{
    return answer->read != NULL &&
           (answer->estimate != NULL ||
            (answer->kind == ANSWER_OFFICE && answer->read->kind == TOLD_FLIGHT));
}

void
follow_up_keep(const struct asked *whole, struct verdict *verdict)
{
    struct last_answer *last = &verdict->conversation.last;
    const struct answer *sum = NULL;
    bool only_asides = true, only_answers = true;
    size_t i;

    for (i = 0; i < verdict->answer_count; i++) {
        const struct answer *answer = &verdict->answers[i];
        bool aside = is_aside(answer);

        sum = is_sum(answer) ? answer : sum;
        only_asides = only_asides && aside;
        only_answers = only_answers && (aside || answer->kind == ANSWER_TOPIC ||
                                        answer->kind == ANSWER_ESTIMATE || is_sum(answer));
    }
    if (only_asides) {
        return;
    }
    verdict->conversation_changed = true;
    if (!only_answers) {
        *last = (struct last_answer){0};
        return;
    }
    last->at_utc_s = whole->context->now_utc_s;
    last->is_sum = false;
    if (sum != NULL) {
        keep_sum(whole, verdict, sum);
    }
    last->goes_on = false;
}
