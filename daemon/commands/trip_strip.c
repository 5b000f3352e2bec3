#include "trip_strip.h"

#include <string.h>

#include "memory.h"
#include "say.h"

enum {
    MARGIN = 6, /* "100% |" */
    COLUMNS_MAX = 70,
    LEVELS = 10,
    SVG_LEFT = 48,
    SVG_TOP = 24,
    SVG_WIDTH = 640,
    SVG_HEIGHT = 200,
    SVG_ROOM_RIGHT = 24,
    SVG_ROOM_BELOW = 72
};

struct columns {
    int charge[COLUMNS_MAX];
    int minutes; /* that one column stands for */
    int count;
};

/* Of what one column holds, the least is shown. */
static struct columns
columns_of(const struct trip_outcome *outcome)
{
    struct columns columns = {.minutes = outcome->sample_minutes};
    size_t step = 1, i;

    while ((outcome->sample_count + step - 1) / step > COLUMNS_MAX) {
        step *= 2;
        columns.minutes *= 2;
    }
    for (i = 0; i < outcome->sample_count; i++) {
        int *charge = &columns.charge[i / step];

        if (i % step == 0) {
            columns.count++;
            *charge = outcome->samples[i];
        } else if (outcome->samples[i] < *charge) {
            *charge = outcome->samples[i];
        }
    }
    return columns;
}

static size_t
leg_at(const struct trip *trip, int minute)
{
    int end = 0;
    size_t i;

    for (i = 0; i + 1 < trip->leg_count; i++) {
        end += trip->legs[i].minutes;
        if (minute < end) {
            return i;
        }
    }
    return trip->leg_count - 1;
}

static const char *
power_word(enum trip_power power)
{
    return power == TRIP_WALL ? "wall" : power == TRIP_CAR ? "car" : "battery";
}

/* ---- characters ------------------------------------------------------------------------------ */

static void
end_line(char **text)
{
    size_t length = strlen(*text);
    char *whole = *text;

    while (length > 0 && whole[length - 1] == ' ') {
        length--;
    }
    *text = memory_copy_n(talloc_parent(whole), whole, length);
    talloc_free(whole);
    memory_append(text, "\n");
}

static void
charge_rows(char **text, const struct columns *columns)
{
    int level, i;

    for (level = LEVELS; level >= 1; level--) {
        memory_append(text, "%3d%% |", level * 100 / LEVELS);
        for (i = 0; i < columns->count; i++) {
            int from = (level - 1) * 100 / LEVELS;

            memory_append(text, "%c",
                          columns->charge[i] >= level * 100 / LEVELS ? '#'
                          : columns->charge[i] > from                ? ':'
                                                                     : ' ');
        }
        end_line(text);
    }
}

/* A mark each hour, or each so many hours that their names have room. */
static int
hours_a_mark(const struct columns *columns)
{
    int hours = 1;

    while (hours * 60 / columns->minutes < 4 || (hours * 60) % columns->minutes != 0) {
        hours++;
    }
    return hours;
}

static void
hour_rows(char **text, const struct columns *columns)
{
    int hours = hours_a_mark(columns), every = hours * 60 / columns->minutes, i;

    memory_append(text, "     +");
    for (i = 0; i < columns->count; i++) {
        memory_append(text, "%c", i % every == 0 ? '+' : '-');
    }
    memory_append(text, "\nhours ");
    for (i = 0; i < columns->count; i += every) {
        memory_append(text, "%-*d", every, i / every * hours);
    }
    end_line(text);
}

static void
power_row(char **text, const struct trip *trip, const struct columns *columns)
{
    int i;

    memory_append(text, "power ");
    for (i = 0; i < columns->count; i++) {
        enum trip_power power = trip->legs[leg_at(trip, i * columns->minutes)].power;

        memory_append(text, "%c", power == TRIP_WALL ? 'W' : power == TRIP_CAR ? 'C' : '.');
    }
    end_line(text);
}

/* Each leg's name where it begins, cut where the next one does. */
static void
leg_row(char **text, const struct trip_drawing *drawing, const struct columns *columns)
{
    const struct trip *trip = drawing->trip;
    size_t leg = SIZE_MAX, letter = 0;
    const char *name = "";
    int i;

    memory_append(text, "  leg ");
    for (i = 0; i < columns->count; i++) {
        size_t now = leg_at(trip, i * columns->minutes);

        if (now != leg) {
            leg = now;
            letter = 0;
            name = say_leg(LANGUAGE_EN, drawing->kinds[leg]);
        }
        memory_append(text, "%c", letter < strlen(name) ? name[letter] : ' ');
        letter++;
    }
    end_line(text);
}

static char *
outcome_words(void *arena, const struct trip_drawing *drawing)
{
    const struct trip_outcome *outcome = drawing->outcome;

    if (outcome->lasts) {
        char *words = memory_format(arena, "lasts %s, about %s left",
                                    say_minutes(arena, outcome->total_minutes),
                                    say_minutes(arena, trip_left(drawing->trip, outcome)));

        if (!trip_is_safe(outcome)) {
            memory_append(&words, ": too tight, keep %s in hand",
                          say_minutes(arena, outcome->reserve_minutes));
        }
        return words;
    }
    return memory_format(arena, "empty after %s (%s), %s short",
                         say_minutes(arena, outcome->runs_out_at),
                         say_leg(LANGUAGE_EN, drawing->kinds[outcome->runs_out_leg]),
                         say_minutes(arena, outcome->short_minutes));
}

static void
empty_row(void *arena, char **text, const struct trip_drawing *drawing,
          const struct columns *columns)
{
    const char *words = outcome_words(arena, drawing);
    int at = MARGIN + drawing->outcome->runs_out_at / columns->minutes;

    if (drawing->outcome->lasts) {
        memory_append(text, "\n%s\n", words);
    } else if (at + 2 + (int)strlen(words) <= TRIP_STRIP_WIDTH) {
        memory_append(text, "%*s^ %s\n", at, "", words);
    } else if ((int)strlen(words) < at) {
        memory_append(text, "%*s ^\n", at - 1, words);
    } else {
        memory_append(text, "%*s^\n%s\n", at, "", words);
    }
}

char *
trip_strip(void *arena, const struct trip_drawing *drawing)
{
    struct columns columns = columns_of(drawing->outcome);
    char *text =
        memory_format(arena, "Mean charge of all batteries, counted low; a column is %s.\n",
                      say_minutes(arena, columns.minutes));

    charge_rows(&text, &columns);
    hour_rows(&text, &columns);
    power_row(&text, drawing->trip, &columns);
    leg_row(&text, drawing, &columns);
    empty_row(arena, &text, drawing, &columns);
    memory_append(&text, "(# full 10%%, : part of it; power: . battery, C car, W wall)\n");
    return text;
}

/* ---- SVG ------------------------------------------------------------------------------------- */

static int
x_of(const struct trip_outcome *outcome, int minute)
{
    int total = outcome->total_minutes > 0 ? outcome->total_minutes : 1;

    return SVG_LEFT + (int)((long long)minute * SVG_WIDTH / total);
}

static int
y_of(int charge)
{
    return SVG_TOP + SVG_HEIGHT - charge * SVG_HEIGHT / 100;
}

/* Grey where there is power, and the name of each leg below with what feeds it. */
static void
svg_legs(char **text, const struct trip_drawing *drawing)
{
    const struct trip *trip = drawing->trip;
    int from = 0;
    size_t i;

    for (i = 0; i < trip->leg_count; i++) {
        const struct trip_leg *leg = &trip->legs[i];
        int x = x_of(drawing->outcome, from), end = x_of(drawing->outcome, from + leg->minutes);

        memory_append(text,
                      "<rect x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\" fill=\"%s\""
                      " stroke=\"#999\"/>\n<text x=\"%d\" y=\"%d\">%s, %s</text>\n",
                      x, SVG_TOP, end - x, SVG_HEIGHT,
                      leg->power == TRIP_NO_POWER ? "white" : "#ddd", x + 2,
                      SVG_TOP + SVG_HEIGHT + 34 + (int)(i % 2) * 16,
                      say_leg(LANGUAGE_EN, drawing->kinds[i]), power_word(leg->power));
        from += leg->minutes;
    }
}

static void
svg_scales(char **text, const struct trip_outcome *outcome)
{
    int hours = outcome->total_minutes / 60, step = hours / 12 + 1, i;

    for (i = 0; i <= 100; i += 25) {
        memory_append(text, "<text x=\"%d\" y=\"%d\" text-anchor=\"end\">%d%%</text>\n",
                      SVG_LEFT - 4, y_of(i) + 4, i);
    }
    for (i = 0; i <= hours; i += step) {
        memory_append(text, "<text x=\"%d\" y=\"%d\">%d h</text>\n", x_of(outcome, i * 60),
                      SVG_TOP + SVG_HEIGHT + 16, i);
    }
}

static void
svg_charge(char **text, const struct trip_outcome *outcome)
{
    size_t i;

    memory_append(text, "<polyline fill=\"none\" stroke=\"black\" stroke-width=\"2\" points=\"");
    for (i = 0; i < outcome->sample_count; i++) {
        int minute = i + 1 == outcome->sample_count ? outcome->total_minutes
                                                    : (int)i * outcome->sample_minutes;

        memory_append(text, "%s%d,%d", i == 0 ? "" : " ", x_of(outcome, minute),
                      y_of(outcome->samples[i]));
    }
    memory_append(text, "\"/>\n");
    if (!outcome->lasts) {
        int x = x_of(outcome, outcome->runs_out_at);

        memory_append(text,
                      "<line x1=\"%d\" y1=\"%d\" x2=\"%d\" y2=\"%d\" stroke=\"black\""
                      " stroke-dasharray=\"4 3\"/>\n",
                      x, SVG_TOP, x, SVG_TOP + SVG_HEIGHT);
    }
}

char *
trip_svg(void *arena, const struct trip_drawing *drawing)
{
    const char *words = outcome_words(arena, drawing);
    int width = SVG_LEFT + SVG_WIDTH + SVG_ROOM_RIGHT;
    int height = SVG_TOP + SVG_HEIGHT + SVG_ROOM_BELOW;
    char *text = memory_format(
        arena,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"%d\" height=\"%d\""
        " viewBox=\"0 0 %d %d\" font-family=\"sans-serif\" font-size=\"12\">\n"
        "<title>Charge of the batteries on a trip: %s</title>\n"
        "<rect width=\"100%%\" height=\"100%%\" fill=\"white\"/>\n",
        width, height, width, height, words);

    svg_legs(&text, drawing);
    svg_scales(&text, drawing->outcome);
    svg_charge(&text, drawing->outcome);
    memory_append(&text, "<text x=\"%d\" y=\"16\">%s</text>\n</svg>\n", SVG_LEFT, words);
    return text;
}
