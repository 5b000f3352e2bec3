#include "stage.h"

struct fixture *stage;

void
stage_set_up(void)
{
    stage = fixture_new();
}

void
stage_tear_down(void)
{
    fixture_free(stage);
}

const struct estimate *
stage_estimate(const char *id, enum estimate_kind kind)
{
    const struct answer *answer = fixture_answer(stage, id);

    ck_assert_ptr_nonnull(answer);
    ck_assert_ptr_nonnull(answer->estimate);
    ck_assert_int_eq(answer->estimate->kind, kind);
    ck_assert_int_le(answer->estimate->minutes.low, answer->estimate->minutes.high);
    return answer->estimate;
}

void
stage_staff_set_up(void)
{
    stage_set_up();
    fixture_staff(stage);
}

void
stage_changes(const char *text, enum alert_step step, int64_t number)
{
    fixture_text(stage, text);
    ck_assert_msg(stage->verdict.alert_change.step == step &&
                      stage->verdict.alert_change.number == number,
                  "\"%s\" led to step %d of %d", text, (int)stage->verdict.alert_change.step,
                  (int)stage->verdict.alert_change.number);
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_NONE);
}
