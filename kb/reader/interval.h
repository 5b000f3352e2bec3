/*
 * Closed intervals: what is not known exactly is carried as [low, high] from the equipment file to
 * the answer. Their unit is in the type's name.
 */
#ifndef INTERVAL_H
#define INTERVAL_H

struct minutes {
    int low, high; /* 0 <= low <= high <= 100000 */
};

struct percent {
    int low, high; /* 0 <= low <= high <= 100 */
};

#endif
