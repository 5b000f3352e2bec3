/*
 * What renters would be texted, filled in and measured: topics for a stranger and for a typical
 * rental of each unit, signs as they stand. Decides nothing that is sent.
 */
#ifndef CHECK_ANSWERS_H
#define CHECK_ANSWERS_H

#include "loaded.h"
#include "remark.h"

enum {
    ANSWER_PARTS_MAX = 2,
    TOPIC_GRADE_MAX = 6, /* Flesch-Kincaid, English only; facts on plain language say 6 for all */
    EMERGENCY_GRADE_MAX = 4
};

/*
 * Errors: emergency texts that are not one part of GSM-7, others of more than 2 parts. Warnings:
 * characters that force UCS-2, grades above the limits, what nobody approved.
 */
void check_answers(const struct loaded *loaded, int64_t now_utc_s, struct remarks *remarks);

#endif
