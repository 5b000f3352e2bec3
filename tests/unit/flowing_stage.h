/* What tests of "Is oxygen flowing again?" begin with, and how they look at many answers to it. */
#ifndef FLOWING_STAGE_H
#define FLOWING_STAGE_H

#include "stage.h"

/* The unit stopped, and we asked whether oxygen flows again; the alert of it is open. */
static void
ask_whether_it_flows(void)
{
    fixture_free(stage);
    stage = fixture_new();
    stage->keeps_alerts = true;
    fixture_text(stage, "machine stopped");
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_FLOWING);
    fixture_wait_minutes(stage, 4);
}

static void
each_is(const char *const *texts, size_t count, enum alert_level level, enum open_question after)
{
    size_t i;

    for (i = 0; i < count; i++) {
        ask_whether_it_flows();
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.alert.level == level, "alert %d: %s",
                      (int)stage->verdict.alert.level, texts[i]);
        ck_assert_msg(stage->context.conversation.question == after, "question %d: %s",
                      (int)stage->context.conversation.question, texts[i]);
    }
}

#define EACH_IS(texts, level, after)                                                               \
    each_is(texts, sizeof(texts) / sizeof((texts)[0]), level, after)

#endif
