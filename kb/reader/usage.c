#include "usage.h"

#include <math.h>
#include <string.h>

#include "memory.h"

/* So many more stems each label is taken to have said, as all labels together say them. */
static const float borrowed = 15;

static void
count_row(struct usage *usage, const struct row *row, int label)
{
    size_t i;

    for (i = 0; i < row->count; i++) {
        uint32_t stem = row->index[i];
        uint16_t *count;

        if (stem >= usage->stems) {
            continue;
        }
        count = &usage->counts[stem * (size_t)usage->labels + (size_t)label];
        if (*count < UINT16_MAX) {
            ++*count;
            usage->often[stem]++;
            usage->said[label]++;
            usage->said[usage->labels]++;
        }
    }
}

void
usage_build(void *arena, const struct feature_space *space, const struct row *rows,
            const int *labels, const uint8_t *parts, size_t count, int label_count, int without,
            int about, struct usage *usage)
{
    size_t i;

    memset(usage, 0, sizeof(*usage));
    usage->labels = label_count;
    usage->stems = space->ends[BLOCK_STEMS];
    usage->often = memory_array(arena, uint32_t, usage->stems + (size_t)1);
    usage->counts = memory_array(arena, uint16_t, usage->stems * (size_t)label_count + 1);
    usage->said = memory_array(arena, uint32_t, (size_t)label_count + 1);
    for (i = 0; i < count; i++) {
        if (parts[i] != without && parts[i] != about) {
            count_row(usage, &rows[i], labels[i]);
        }
    }
}

void
usage_view(const struct usage *usage, const struct row *row, const int *labels, size_t count,
           struct usage_view *views)
{
    float all = (float)usage->said[usage->labels] + 1, whole = row->strange, stems = 0;
    size_t i, k;

    memset(views, 0, count * sizeof(*views));
    for (i = 0; i < row->count; i++) {
        uint32_t stem = row->index[i];
        const uint16_t *counts = usage->counts + stem * (size_t)usage->labels;
        float often, tells, stress = row->stress[i];

        if (stem >= usage->stems) {
            continue;
        }
        often = (float)usage->often[stem];
        tells = stress / sqrtf(1 + often);
        whole += tells;
        stems += often > 0 ? stress : 0;
        for (k = 0; k < count; k++) {
            float times = counts[labels[k]];

            views[k].covered += times > 0 ? tells : 0;
            if (often > 0) {
                views[k].likely += stress * logf((times + borrowed * often / all) /
                                                 ((float)usage->said[labels[k]] + borrowed));
            }
        }
    }
    for (k = 0; k < count; k++) {
        views[k].covered /= whole > 0 ? whole : 1;
        views[k].likely /= stems > 0 ? powf(stems, 0.7f) : 1;
    }
}
