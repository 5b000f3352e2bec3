#include "rental_input.h"

#include "memory.h"

static void
check_unit(void *arena, const struct rental_setting *setting, const struct record_namer *namer,
           const struct rental *rental, struct faults *faults)
{
    const struct equipment *const *all;
    char *known = memory_copy(arena, "");
    size_t i, count;

    if (rental->unit == NULL || kb_equipment(setting->kb, rental->unit) != NULL) {
        return;
    }
    all = kb_equipment_all(setting->kb, &count);
    for (i = 0; i < count; i++) {
        memory_append(&known, "%s%s", i == 0 ? "" : ", ", all[i]->id);
    }
    rental_record_fault(arena, namer, "/unit",
                        memory_format(arena, "\"%s\" has no file in kb/equipment", rental->unit),
                        memory_format(arena, "give one of %s, or write its file first", known),
                        faults);
}

const char *
rental_input_read(void *arena, const json_t *record, const struct rental_setting *setting,
                  const struct record_namer *namer, struct rental *rental, struct faults *faults)
{
    size_t before = faults->count;
    char *text;

    (void)rental_record_read(arena, record, namer, rental, faults);
    check_unit(arena, setting, namer, rental, faults);
    if (faults->count > before) {
        return NULL;
    }
    text = rental_record_text(arena, rental);
    rental->digest = rental_record_digest(arena, text);
    return text;
}
