/*
 * What the unit charges from is broken, lost or dead: the plug, the cord, the charger. Who counts
 * hours beside that has nothing to plug in at their end: they are told no plug to be at, and staff
 * are called. Pure.
 */
#ifndef BROKEN_PLUG_H
#define BROKEN_PLUG_H

#include "asked.h"
#include "verdict.h"

/* The text says so, of now, or one right before it (context.h): not "if the cord breaks", nor once
 * it is mended or another one is there. */
bool broken_plug_is_told(const struct asked *asked);
/* Calls staff if it does. */
void broken_plug_call(const struct asked *asked, struct verdict *verdict);

#endif
