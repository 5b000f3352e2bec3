-- Texts that renters asked for, and what became of each.
CREATE TABLE reminder (
    id INTEGER PRIMARY KEY,
    phone TEXT NOT NULL,
    rental_id TEXT NOT NULL,
    kind TEXT NOT NULL CHECK (kind IN ('offered', 'running-out', 'at')),
    due_utc_s INTEGER NOT NULL,
    ends_utc_s INTEGER NOT NULL,  -- running-out: when the low end is used up
    as_of_utc_s INTEGER NOT NULL, -- running-out: when the charge was so
    gateway TEXT NOT NULL,
    language TEXT NOT NULL,
    text_id INTEGER NOT NULL REFERENCES text, -- that asked for it
    set_utc_s INTEGER NOT NULL,
    state TEXT NOT NULL CHECK (
        state IN ('offered', 'waits', 'off-charge', 'off-record', 'sent', 'late', 'cancelled')),
    reason TEXT,           -- why it was cancelled
    next_utc_s INTEGER,    -- when something is to be done about it; NULL once it is settled
    settled_utc_s INTEGER
) STRICT;
CREATE INDEX reminder_next ON reminder (next_utc_s) WHERE next_utc_s IS NOT NULL;
CREATE INDEX reminder_by_phone ON reminder (phone, id);
CREATE INDEX reminder_by_rental ON reminder (rental_id);
CREATE INDEX reminder_by_text ON reminder (text_id);
CREATE TRIGGER reminder_stays BEFORE DELETE ON reminder
BEGIN SELECT RAISE(ABORT, 'reminder is append-only'); END;
CREATE TRIGGER reminder_as_written
BEFORE UPDATE OF id, phone, rental_id, kind, due_utc_s, ends_utc_s, as_of_utc_s, gateway, language,
                 text_id, set_utc_s ON reminder
BEGIN SELECT RAISE(ABORT, 'reminder is append-only'); END;
