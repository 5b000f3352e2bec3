#include "memory.h"
#include "say.h"
#include "steps.h"

bool
foreign_decide(const struct asked *whole, struct verdict *verdict)
{
    struct answer *answer;

    if (!asked_is_active_renter(whole) || !kb_is_foreign(whole->context->kb, whole->text)) {
        return false;
    }
    answer = verdict_add(verdict, ANSWER_OFFICE, ROUTE_STAFF, "other-language");
    answer->text =
        say(whole->arena, whole->context->house, whole->language, SAY_OTHER_LANGUAGE, NULL);
    verdict_alert(verdict, ALERT_URGENT, true, "other-language", "language unknown");
    return true;
}
