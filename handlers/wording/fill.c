#include "fill.h"

#include <string.h>

#include "fill_values.h"
#include "memory.h"
#include "placeholders.h"

/* What stands between a brace and its partner: a name, and words after a bar. */
struct slot {
    const char *name;
    size_t name_length;
    const char *words; /* NULL without a bar */
    size_t words_length;
    const char *end; /* just past the closing brace */
};

static bool
read_slot(const char *brace, struct slot *slot)
{
    const char *at;
    int depth = 0;

    *slot = (struct slot){.name = brace + 1};
    for (at = brace; *at != '\0'; at++) {
        if (*at == '{') {
            depth++;
        } else if (*at == '|' && depth == 1 && slot->words == NULL) {
            slot->name_length = (size_t)(at - slot->name);
            slot->words = at + 1;
        } else if (*at == '}' && --depth == 0) {
            if (slot->words == NULL) {
                slot->name_length = (size_t)(at - slot->name);
            } else {
                slot->words_length = (size_t)(at - slot->words);
            }
            slot->end = at + 1;
            return true;
        }
    }
    return false;
}

/* The value, or the slot's own words; NULL if it is no placeholder at all. */
static char *
slot_text(void *arena, const struct slot *slot, const struct filling *with, bool *used_record)
{
    enum placeholder placeholder = placeholder_named(slot->name, slot->name_length);
    const struct placeholder_entry *entry;
    const char *value;

    if (placeholder == PLACEHOLDER_COUNT) {
        return NULL;
    }
    entry = placeholder_entry(placeholder);
    value =
        entry->from_record && with->rental == NULL ? NULL : fill_value(arena, placeholder, with);
    if (value != NULL) {
        *used_record = *used_record || entry->from_record;
        return memory_copy(arena, value);
    }
    if (slot->words == NULL) {
        return memory_copy(arena, "");
    }
    return fill(arena, memory_copy_n(arena, slot->words, slot->words_length), with, used_record);
}

char *
fill(void *arena, const char *text, const struct filling *with, bool *used_record)
{
    char *filled = memory_copy(arena, "");
    const char *brace;
    struct slot slot;
    bool used = false;

    while ((brace = strchr(text, '{')) != NULL) {
        char *value = NULL;

        memory_append(&filled, "%.*s", (int)(brace - text), text);
        if (read_slot(brace, &slot)) {
            value = slot_text(arena, &slot, with, &used);
        }
        memory_append(&filled, "%s", value == NULL ? "{" : value);
        text = value == NULL ? brace + 1 : slot.end;
    }
    memory_append(&filled, "%s", text);
    if (used_record != NULL) {
        *used_record = used;
    }
    return filled;
}

bool
fill_wants_record(const char *text)
{
    struct slot slot;

    for (; (text = strchr(text, '{')) != NULL; text++) {
        enum placeholder placeholder = PLACEHOLDER_COUNT;

        if (read_slot(text, &slot)) {
            placeholder = placeholder_named(slot.name, slot.name_length);
        }
        if (placeholder != PLACEHOLDER_COUNT && placeholder_entry(placeholder)->from_record) {
            return true;
        }
    }
    return false;
}

static bool
has_mode(const struct equipment *equipment, enum mode mode)
{
    size_t i;

    for (i = 0; i < equipment->run_time_count; i++) {
        if (equipment->run_times[i].mode == mode) {
            return true;
        }
    }
    return false;
}

static bool
condition_holds(const char *condition, const struct filling *with)
{
    static const char mode_word[] = "mode ", unit_word[] = "unit ";
    const struct rental *rental = with->rental;

    if (strncmp(condition, unit_word, sizeof unit_word - 1) == 0) {
        return rental != NULL && rental->unit != NULL &&
               strcmp(rental->unit, condition + sizeof unit_word - 1) == 0;
    }
    if (rental == NULL) {
        return true;
    }
    if (strcmp(condition, "backup") == 0) {
        return rental->backup.known;
    }
    if (strcmp(condition, "car-charger") == 0) {
        return rental->car_charger;
    }
    if (strncmp(condition, mode_word, sizeof mode_word - 1) == 0) {
        return with->equipment != NULL &&
               has_mode(with->equipment, mode_named(condition + sizeof mode_word - 1));
    }
    return false;
}

bool
fill_only_if_holds(const char *const *conditions, size_t count, const struct filling *with)
{
    size_t i;

    for (i = 0; i < count; i++) {
        if (!condition_holds(conditions[i], with)) {
            return false;
        }
    }
    return true;
}
