#include "watts.h"

#include <string.h>

enum {
    WATTS_MAX = 100000,
    THOUSANDTHS = 1000,
    WH_TENTHS_MAX = 1000000,
    MILLIVOLTS_MAX = 1000000,
    MILLIAMP_HOURS_MAX = 10000000 /* so that the product of both fits */
};

enum measure {
    MEASURE_NONE,
    MEASURE_WATTS,
    MEASURE_KILOWATTS,
    MEASURE_WH,
    MEASURE_KWH,
    MEASURE_MAH,
    MEASURE_AH,
    MEASURE_VOLTS
};

/* With hours behind it a unit of watts or amperes is what a battery holds. */
static const struct {
    const char *words;
    enum measure alone, with_hours;
} units[] = {
    {" w watt watts wats vatio vatios wattios watios ", MEASURE_WATTS, MEASURE_WH},
    {" kw kilowatt kilowatts kilovatio kilovatios ", MEASURE_KILOWATTS, MEASURE_KWH},
    {" wh whr whrs watthour watthours ", MEASURE_WH, MEASURE_WH},
    {" kwh kilowatthour kilowatthours ", MEASURE_KWH, MEASURE_KWH},
    {" mah miliamp milliamp milliamps miliamperios ", MEASURE_MAH, MEASURE_MAH},
    {" ah amphour amphours ", MEASURE_AH, MEASURE_AH},
    {" amp amps amperio amperios ampere ", MEASURE_NONE, MEASURE_AH},
    {" v volt volts voltio voltios ", MEASURE_VOLTS, MEASURE_VOLTS},
};

static const char hours[] = " h hr hrs hour hours hora horas ";
static const char peak[] = " peak surge max pico maximo starting arranque ";

static enum measure
measure_at(const struct tokens *tokens, size_t at)
{
    size_t next = at + 1, i;

    next += token_among(tokens, next, " - de ") ? 1 : 0;
    for (i = 0; i < sizeof units / sizeof units[0]; i++) {
        if (token_among(tokens, at, units[i].words)) {
            return token_among(tokens, next, hours) ? units[i].with_hours : units[i].alone;
        }
    }
    return MEASURE_NONE;
}

/* "1.000 vatios" are a thousand where a point parts the thousands; no source has 1.000 exactly. But
 * "0.500 kWh" and "12.800 V" have no thousands. */
static long long
number_at(const struct tokens *tokens, size_t at, enum measure measure, int thousandths)
{
    const char *text = tokens->list[at].text, *point = strchr(text, '.');

    return point != NULL && strlen(point + 1) == 3 && text[0] != '0' && measure != MEASURE_VOLTS
               ? (long long)thousandths * THOUSANDTHS
               : thousandths;
}

static bool
is_peak(const struct tokens *tokens, size_t number, size_t unit)
{
    return token_among(tokens, unit + 1, peak) ||
           (number > 0 && token_among(tokens, number - 1, peak));
}

static int
least(int so_far, long long value, int most)
{
    int capped = value > most ? most : (int)value;

    return so_far == 0 || capped < so_far ? capped : so_far;
}

void
watts_read(const struct tokens *tokens, struct watts_told *told)
{
    long long volts = 0, milliamp_hours = 0; /* volts in thousandths */
    int peak_watts = 0;
    size_t at;

    *told = (struct watts_told){0};
    for (at = 0; at < tokens->count; at++) {
        int thousandths = 0;
        size_t unit = at + tokens_number(tokens, at, false, &thousandths);
        enum measure measure;
        long long value;

        unit += unit > at && token_is(tokens, unit, "-") ? 1 : 0;
        measure = unit > at ? measure_at(tokens, unit) : MEASURE_NONE;
        value = measure == MEASURE_NONE ? 0 : number_at(tokens, at, measure, thousandths);
        if (value <= 0) {
            continue;
        }
        if (measure == MEASURE_WATTS || measure == MEASURE_KILOWATTS) {
            int *watts = is_peak(tokens, at, unit) ? &peak_watts : &told->watts;

            *watts =
                least(*watts, measure == MEASURE_WATTS ? value / THOUSANDTHS : value, WATTS_MAX);
        } else if (measure == MEASURE_WH || measure == MEASURE_KWH) {
            told->tenths_wh = least(
                told->tenths_wh, measure == MEASURE_WH ? value / 100 : value * 10, WH_TENTHS_MAX);
        } else if (measure == MEASURE_MAH || measure == MEASURE_AH) {
            milliamp_hours =
                least(0, measure == MEASURE_MAH ? value / THOUSANDTHS : value, MILLIAMP_HOURS_MAX);
        } else {
            volts = least(0, value, MILLIVOLTS_MAX);
        }
        at = unit;
    }
    told->is_peak = told->watts == 0 && peak_watts > 0;
    told->watts = told->is_peak ? peak_watts : told->watts;
    if (told->tenths_wh == 0 && milliamp_hours > 0) {
        told->lacks_volts = volts == 0;
        /* thousandths of a volt x thousandths of an amp-hour are millionths of a watt-hour */
        told->tenths_wh = volts == 0 ? 0 : least(0, volts * milliamp_hours / 100000, WH_TENTHS_MAX);
    }
}
