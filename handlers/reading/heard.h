/*
 * Words as they are dictated or shortened, put as they are meant: "pulse to." is pulse 2, "on too"
 * the same, "q" is "que". Only where nothing else can be meant. Pure.
 */
#ifndef HEARD_H
#define HEARD_H

#include "tokens.h"
#include "words.h"

/* Changes tokens in place; their number and bytes stay. */
void heard_put_right(enum language language, struct tokens *tokens);

#endif
