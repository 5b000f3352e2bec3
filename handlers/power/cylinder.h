/*
 * How long an oxygen cylinder lasts. Pure arithmetic, with intervals for what a gauge shows.
 *
 *   minutes = (gauge psi - 200 psi residual) x factor / flow in L/min
 *
 * Factor (litres per psi) and residual as in the AAOS emergency-care textbook and the Virginia EMS
 * cylinder sheet of October 2010. Continuous flow from a plain regulator only: a conserver
 * stretches a cylinder by an amount that depends on the person's breathing, so nobody multiplies
 * here. Size, pressure and flow are asked for, never assumed.
 */
#ifndef CYLINDER_H
#define CYLINDER_H

#include <stdbool.h>

#include "interval.h"

struct psi {
    int low, high; /* 0 <= low <= high <= 5000 */
};

enum { CYLINDER_RESIDUAL_PSI = 200, CYLINDER_GAUGE_PSI = 50, CYLINDER_FLOW_TENTHS_MAX = 250 };

/* Millilitres for each psi of a size (D, E, M, G, H or K, either case); 0 for any other word. */
int cylinder_factor(const char *size);

/*
 * What a gauge that was read as `psi` may stand for: a hand's breadth of its scale more or less,
 * CYLINDER_GAUGE_PSI either way (common practice, no source).
 */
struct psi cylinder_gauge(int psi);

/* The same for a reading in bar; 1 bar is 14.5038 psi (1 psi is 6.894757 kPa, NIST SP 811). */
struct psi cylinder_gauge_bar(int bar);

/*
 * Minutes at `flow_tenths` (20 is 2 L/min; 1 to CYLINDER_FLOW_TENTHS_MAX). `factor` as from
 * cylinder_factor(), above 0. A pressure below the residual is no time, never less.
 */
struct minutes cylinder_time(int factor, struct psi pressure, int flow_tenths);

#endif
