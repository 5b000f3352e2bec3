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
