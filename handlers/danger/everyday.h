/*
 * What a text asks of everyday things while an emergency is open. Private to
 * open_emergency.c. Pure.
 */
#ifndef EVERYDAY_H
#define EVERYDAY_H

#include "asked.h"
#include "cut.h"
#include "verdict.h"

enum everyday { NOT_EVERYDAY, MAY_BE_EVERYDAY, SURELY_EVERYDAY };

/* Costs a dry run of the handlers: once a text. */
enum everyday everyday_read(const struct asked *whole, const struct verdict *verdict,
                            const struct pieces *pieces);

/* What it asks, and it asks something, surely is of the rental, which has no bearing on what
 * happens now, however it is asked. */
bool everyday_of_rental(const struct asked *whole, const struct pieces *pieces);

bool everyday_is_courtesy(const struct pieces *pieces);

/* The topics leave no doubt that it is about one of these. */
bool everyday_is_surely_of(const struct asked *question, const char *const *topics, size_t count);

#endif
