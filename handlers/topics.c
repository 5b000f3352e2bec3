#include "fill.h"
#include "memory.h"
#include "say.h"
#include "steps.h"

static struct filling
filling_of(const struct asked *asked)
{
    return (struct filling){.house = asked->context->house,
                            .zone = asked->context->zone,
                            .rental = asked->rental,
                            .equipment = asked->equipment,
                            .language = asked->language,
                            .now_utc_s = asked->wrote_utc_s};
}

static struct why
why_of(const struct asked *asked)
{
    struct why why = {0};

    if (asked->search.count > 0) {
        why.score = asked->search.best[0].score;
        why.nearest = asked->search.best[0].nearest;
    }
    if (asked->search.count > 1) {
        why.runner_up = asked->search.best[1].topic->id;
    }
    return why;
}

void
topics_answer(const struct asked *asked, struct verdict *verdict, const struct topic *topic)
{
    const struct filling with = filling_of(asked);
    struct answer *answer;

    if (asked->which_rental && fill_wants_record(topic->answer)) {
        open_question_which_rental(asked, verdict, topic->id);
        return;
    }
    answer = verdict_add(verdict, ANSWER_TOPIC, ROUTE_ANSWER, topic->id);
    answer->topic = topic->id;
    answer->text = fill(asked->arena, topic->answer, &with, NULL);
    answer->why = why_of(asked);
    office_call(asked, verdict, topic->id);
}

/* False if it cannot be asked now: a person answers then. */
static bool
ask_between(const struct asked *asked, struct verdict *verdict)
{
    const struct topic *first = asked->search.best[0].topic, *second = asked->search.best[1].topic;
    struct conversation *conversation = &verdict->conversation;
    struct answer *answer;

    if (!open_question_ask(asked, verdict, QUESTION_WHICH_TOPIC)) {
        return false;
    }
    answer = verdict_add(verdict, ANSWER_ASK, ROUTE_ANSWER, "which-topic");
    answer->text = say(asked->arena, asked->context->house, asked->language, SAY_WHICH_TOPIC,
                       first->title, second->title, NULL);
    answer->why = why_of(asked);
    conversation->choices[0] = first->id;
    conversation->choices[1] = second->id;
    conversation->choice_count = 2;
    return true;
}

bool
topics_decide(const struct asked *asked, struct verdict *verdict)
{
    const struct filling with = filling_of(asked);
    const struct topic *topic;

    if (asked->search.count == 0 || asked->search.sureness == UNSURE) {
        return false;
    }
    topic = asked->search.best[0].topic;
    if (asked->search.sureness == BETWEEN_TWO && asked->search.count > 1) {
        /* Who asks for a person is not asked back by a machine, and nobody in titles of another
         * language, found by its words: a person answers. */
        return topic->language == asked->language && !office_is_asked_for(asked) &&
               ask_between(asked, verdict);
    }
    if (!fill_only_if_holds(topic->only_if, topic->only_if_count, &with)) {
        return false; /* it is not so for this unit: a person answers */
    }
    topics_answer(asked, verdict, topic);
    return true;
}
