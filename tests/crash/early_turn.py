#!/usr/bin/env python3
"""Makes the fault that the crash tests must catch: a turn whose answers leave before its COMMIT.

usage: early_turn.py daemon/turn.c OUTPUT.c

Takes COMMIT out of the turn and makes it a few milliseconds later, or when the next turn begins.
Fails if turn.c no longer has the places that it changes.
"""
import sys

CHANGES = [
    # The turn writes, but does not commit.
    ("""    if (store_commit(store, fault) != 0) {
        store_rollback(store);
        return -1;
    }
    return 0;
""", """    commit_is_owed = true;
    return 0;
"""),
    ("""/* Writes all jobs after BEGIN. */
""", """static bool commit_is_owed;

/* Writes all jobs after BEGIN. */
"""),
    # What the turn before owes comes first.
    ("""    is_broken = store_begin(turn->store, &fault) != 0;
""", """    if (commit_is_owed) {
        commit_is_owed = false;
        if (store_commit(turn->store, &fault) != 0) {
            store_rollback(turn->store);
        }
    }
    if (turn->first == NULL) {
        return;
    }
    is_broken = store_begin(turn->store, &fault) != 0;
"""),
    # Answers are let out, and COMMIT is put off.
    ("""    tell(turn, &work, is_broken, &fault);
}

struct turn *
""", """    tell(turn, &work, is_broken, &fault);
    event_add(turn->event, &soon);
}

struct turn *
"""),
]


def main(source, output):
    text = open(source, encoding="utf-8").read()
    for old, new in CHANGES:
        if text.count(old) != 1:
            sys.exit(f"{source} has changed; not found once:\n{old}")
        text = text.replace(old, new)
    open(output, "w", encoding="utf-8").write(text)


main(*sys.argv[1:])
