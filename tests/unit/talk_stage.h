/* Texts of a talk whose alerts stay open. */
#ifndef TALK_STAGE_H
#define TALK_STAGE_H

#include "stage.h"

static inline void
begin_anew(void)
{
    fixture_free(stage);
    stage = fixture_new();
    stage->keeps_alerts = true;
}

/* Five minutes after another, in a conversation of its own. */
static inline void
said_after(const char *first, const char *text)
{
    begin_anew();
    fixture_text(stage, first);
    fixture_wait_minutes(stage, 5);
    fixture_text(stage, text);
}

#endif
