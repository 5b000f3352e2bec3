#include "lexicon.h"
#include "told_words.h"

#include <string.h>

#include "memory.h"

char *
told_words_of_charges(void *arena, const struct told *told)
{
    char *words = memory_copy(arena, "");
    size_t i;

    for (i = 0; i < told->charge_count; i++) {
        if (told->charges[i].low == told->charges[i].high) {
            memory_append(&words, "%d ", told->charges[i].low);
        } else {
            memory_append(&words, "%d-%d ", told->charges[i].low, told->charges[i].high);
        }
    }
    for (i = 0; i < told->light_count; i++) {
        memory_append(&words, "l%d ", told->lights[i]);
    }
    if (told->count > 0) {
        memory_append(&words, "+%d ", told->count);
    }
    if (told->has_mode) {
        memory_append(&words, "%s ", mode_name(told->mode));
    }
    if (told->has_setting) {
        memory_append(&words, "s%d ", told->setting_tenths);
    }
    if (told->has_activity) {
        memory_append(&words, "%s ", activity_name(told->activity));
    }
    if (told->since_min > 0) {
        memory_append(&words, "since%d ", told->since_min);
    }
    if (told->is_earlier) {
        memory_append(&words, "earlier ");
    }
    if (told->impossible) {
        memory_append(&words, "impossible ");
    }
    if (words[0] != '\0') {
        words[strlen(words) - 1] = '\0';
    }
    return words;
}

static void
add_times(char **words, const struct told *told)
{
    if (told->has_ready_by) {
        memory_append(words, "by%02d:%02d ", told->ready_by / 60, told->ready_by % 60);
    }
    if (told->has_remind_at) {
        memory_append(words, "at%02d:%02d ", told->remind_at / 60, told->remind_at % 60);
    }
    if (told->remind_before_min > 0) {
        memory_append(words, "before%d ", told->remind_before_min);
    }
    if (told->has_day) {
        memory_append(words, "%s ", told_day_name(told->day));
    }
    if (told->on_power != POWER_SOURCE_NONE) {
        memory_append(words, "on-%s ", power_source_name(told->on_power));
    }
}

static void
add_ways(char **words, const struct told *told)
{
    size_t i;

    for (i = 0; i < told->leg_count; i++) {
        memory_append(words, "%s%d", leg_kind_name(told->legs[i].kind), told->legs[i].minutes);
        memory_append(words, "%s ",
                      told->legs[i].power == POWER_SOURCE_NONE  ? ""
                      : told->legs[i].power == POWER_SOURCE_CAR ? "-car"
                                                                : "-wall");
    }
    if (told->flight_minutes > 0) {
        memory_append(words, "flight%d ", told->flight_minutes);
    }
    if (told->flight_is_gate || told->flight_is_air) {
        memory_append(words, "%s ", told->flight_is_gate ? "gate" : "air");
    }
}

static void
add_cylinder_and_place(char **words, const struct told *told)
{
    if (told->psi > 0) {
        memory_append(words, "%dpsi ", told->psi);
    }
    if (told->bar > 0) {
        memory_append(words, "%dbar ", told->bar);
    }
    if (told->size[0] != '\0') {
        memory_append(words, "%s ", told->size);
    }
    if (told->flow_tenths > 0) {
        memory_append(words, "flow%d ", told->flow_tenths);
    }
    if (told->celsius.told) {
        memory_append(words, "%dC ", told->celsius.value);
    }
    if (told->fahrenheit.told) {
        memory_append(words, "%dF ", told->fahrenheit.value);
    }
    if (told->altitude_ft.told) {
        memory_append(words, "%dft ", told->altitude_ft.value);
    }
    if (told->altitude_m.told) {
        memory_append(words, "%dm ", told->altitude_m.value);
    }
}

char *
told_words_of_times(void *arena, const struct told *told)
{
    char *words;
    int i;

    words = memory_format(arena, "%s ",
                          told->kind == TOLD_NOTHING ? "nothing" : told_kind_name(told->kind));
    add_times(&words, told);
    add_ways(&words, told);
    add_cylinder_and_place(&words, told);
    if (told->impossible) {
        memory_append(&words, "impossible ");
    }
    for (i = 0; i < MISSING_COUNT; i++) {
        if ((told->missing & (1U << i)) != 0) {
            memory_append(&words, "?%s ", told_missing_name((enum told_missing)(1U << i)));
        }
    }
    words[strlen(words) - 1] = '\0';
    return words;
}

char *
told_words(void *arena, const char *text)
{
    struct told told;
    char *words, *charges;

    told_read(arena, lexicon_new(arena, NULL), text, &told);
    words = told_words_of_times(arena, &told);
    charges = told_words_of_charges(arena, &told);
    return memory_format(arena, "%s%s%s", words, charges[0] != '\0' ? " | " : "", charges);
}
