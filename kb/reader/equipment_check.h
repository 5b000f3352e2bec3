/*
 * What an equipment file lacks or says twice in different ways although each row of it can be so.
 * Rows that cannot be are faults of reading (equipment_read.c). Pure.
 */
#ifndef EQUIPMENT_CHECK_H
#define EQUIPMENT_CHECK_H

#include "equipment.h"
#include "remark.h"

/*
 * Errors: minutes that do not fall as the setting rises, gauge bands that leave a charge out or
 * overlap. Warnings: no run times, a setting left out between two others (unless it is one of
 * needs_wall), no gauge, no charging figures, no cold table or one that ends above the coldest
 * place in which the unit may run, nothing on the car outlet. Places are JSON Pointers.
 */
void equipment_check(const struct equipment *equipment, struct remarks *remarks);

#endif
