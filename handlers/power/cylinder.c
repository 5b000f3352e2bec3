#include "cylinder.h"

#include <assert.h>
#include <string.h>

/* 1 bar in ten-thousandths of a psi. */
enum { BAR = 145038, BAR_SHARES = 10000, PSI_MAX = 5000 };

int
cylinder_factor(const char *size)
{
    static const struct {
        char letter;
        int millilitres;
    } factors[] = {{'D', 160}, {'E', 280}, {'M', 1560}, {'G', 2410}, {'H', 3140}, {'K', 3140}};
    size_t i;

    for (i = 0; i < sizeof factors / sizeof factors[0]; i++) {
        char letter = factors[i].letter;

        if ((size[0] == letter || size[0] == letter - 'A' + 'a') && size[1] == '\0') {
            return factors[i].millilitres;
        }
    }
    return 0;
}

static struct psi
widened(int low, int high)
{
    low -= CYLINDER_GAUGE_PSI;
    high += CYLINDER_GAUGE_PSI;
    return (struct psi){low < 0 ? 0 : low, high > PSI_MAX ? PSI_MAX : high};
}

struct psi
cylinder_gauge(int psi)
{
    assert(0 <= psi && psi <= PSI_MAX);
    return widened(psi, psi);
}

struct psi
cylinder_gauge_bar(int bar)
{
    int low = bar * BAR / BAR_SHARES;

    assert(0 <= bar && low < PSI_MAX);
    return widened(low, low + 1);
}

struct minutes
cylinder_time(int factor, struct psi pressure, int flow_tenths)
{
    /* mL/psi x psi / (L/min / 10) is minutes x 100 */
    int flow = flow_tenths * 100;
    int low = pressure.low - CYLINDER_RESIDUAL_PSI, high = pressure.high - CYLINDER_RESIDUAL_PSI;

    assert(factor > 0 && 0 < flow_tenths && flow_tenths <= CYLINDER_FLOW_TENTHS_MAX);
    assert(0 <= pressure.low && pressure.low <= pressure.high && pressure.high <= PSI_MAX);
    return (struct minutes){low <= 0 ? 0 : low * factor / flow,
                            high <= 0 ? 0 : (high * factor + flow - 1) / flow};
}
