#include "say.h"
#include "steps.h"

bool
gap_decide(const struct asked *asked, struct verdict *verdict)
{
    struct answer *answer = verdict_add(verdict, ANSWER_GAP, ROUTE_UNANSWERED, "gap");
    const struct house *house = asked->context->house;

    if (asked->search.count > 0) {
        answer->why.score = asked->search.best[0].score;
        answer->why.nearest = asked->search.best[0].nearest;
        answer->why.runner_up = asked->search.best[0].topic->id;
    }
    if (!asked_is_active_renter(asked)) {
        answer->text = say(asked->arena, house, asked->language, SAY_GAP_STRANGER, NULL);
        return true;
    }
    answer->text = say(asked->arena, house, asked->language,
                       office_hours_wait(asked) ? SAY_GAP_WAITS : SAY_GAP_RENTER, NULL);
    verdict_alert(verdict, ALERT_OFFICE, false, "gap", "no answer found");
    return true;
}
