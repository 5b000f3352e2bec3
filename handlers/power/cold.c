#include "cold.h"

#include <stddef.h>
#include <stdint.h>

bool
cold_share(const struct equipment *equipment, int celsius, int *percent)
{
    int nearest = INT32_MIN;
    bool found = false;
    size_t i;

    for (i = 0; i < equipment->cold_count; i++) {
        const struct cold_step *step = &equipment->cold[i];

        if (step->celsius <= celsius && step->celsius >= nearest) {
            nearest = step->celsius;
            *percent = step->percent;
            found = true;
        }
    }
    return found;
}

bool
cold_told(const struct told *told, int *celsius)
{
    int ninths = (told->fahrenheit.value - 32) * 5;

    if (told->celsius.told) {
        *celsius = told->celsius.value;
    } else if (told->fahrenheit.told) {
        *celsius = ninths >= 0 ? ninths / 9 : -((-ninths + 8) / 9);
    }
    return told->celsius.told || told->fahrenheit.told;
}
