/* The stage (stage.h) with the content as it ships (shipped.h); in a talk alerts stay open. */
#ifndef SHIPPED_STAGE_H
#define SHIPPED_STAGE_H

#include "lexicon.h"
#include "shipped.h"
#include "stage.h"

/* For tcase_add_checked_fixture(), with stage_tear_down(). */
static inline void
shipped_stage_set_up(void)
{
    stage_set_up();
    stage->context.kb = shipped_kb();
    stage->context.lexicon = lexicon_new(stage->arena, shipped_kb());
}

static inline void
shipped_talk_set_up(void)
{
    shipped_stage_set_up();
    stage->keeps_alerts = true;
}

/* Of somebody who has not written before. */
static inline void
shipped_talk_anew(void)
{
    stage_tear_down();
    shipped_talk_set_up();
}

#endif
