/*
 * Vital signs told as numbers: a pulse ("heart rate 165", "pulso en 38", "140 bpm") and how often
 * somebody breathes ("30 breaths a minute", "respira 35 veces por minuto"); a blood pressure is in
 * blood_pressure.h, an oximeter's value in oximeter.h. "Pulse 2" is a setting, and so is whatever
 * no heart beats at. Pure.
 *
 * Breaths: 25 a minute and more are a call to the emergency number (facts.md, E1); 8 and fewer are
 * taken for the same (common practice, no source).
 * Pulse: 50 and less, 120 and more are looked at now; below 40, 150 and more are an emergency
 * (common practice, no source).
 */
#ifndef VITAL_SIGNS_H
#define VITAL_SIGNS_H

#include "tokens.h"

enum vital { VITAL_NOT_FAR_OUT, VITAL_FAR_OUT, VITAL_GRAVE };

/* The gravest that the text tells; not far out if it tells none, or only supposes one. */
enum vital vital_pulse(const struct tokens *tokens);

/* Each that is far out is grave. */
enum vital vital_breaths(const struct tokens *tokens);

/* Where a number may stand behind its name: past "is at", "bajo a" and their like from `at` on. */
size_t vital_number_behind(const struct tokens *tokens, size_t at);

/* The number at `at` tells something else by what stands behind it: "40%", "30 min". */
bool vital_is_of_else(const struct tokens *tokens, size_t behind);

#endif
