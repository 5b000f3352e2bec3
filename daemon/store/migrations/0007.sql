-- Staff write to renters through the line, pass alerts on, and tell a death; intervals outlive a
-- step of the clock. How a CHECK is changed: see 0004.sql.
PRAGMA writable_schema = ON;
UPDATE sqlite_schema SET sql = replace(sql, '''rechecked'', ''closed'')',
    '''rechecked'', ''closed'',' || char(10) || '                  ''offered'', ''released'')')
WHERE type = 'table' AND name = 'alert_event';
PRAGMA writable_schema = RESET;
ALTER TABLE alert_due ADD COLUMN offered_to TEXT;
ALTER TABLE alert_due ADD COLUMN offer_ends_utc_s INTEGER;
ALTER TABLE alert_due ADD COLUMN stepped_s INTEGER NOT NULL DEFAULT 0;
ALTER TABLE outbox_due ADD COLUMN stepped_s INTEGER NOT NULL DEFAULT 0;

-- One row for each conversation that a person has: by when they must have answered the renter.
CREATE TABLE talk (
    phone TEXT PRIMARY KEY, -- the renter's
    who TEXT NOT NULL, -- staff phone
    alert_number INTEGER NOT NULL REFERENCES alert,
    due_utc_s INTEGER NOT NULL
) STRICT;
CREATE INDEX talk_next ON talk (due_utc_s);
CREATE INDEX talk_by_alert ON talk (alert_number);

-- Whose renter has died, as staff say: nothing is started for the rental. Newest row = current.
CREATE TABLE rental_rest (
    id INTEGER PRIMARY KEY,
    rental_id TEXT NOT NULL,
    rests INTEGER NOT NULL CHECK (rests IN (0, 1)),
    at_utc_s INTEGER NOT NULL,
    who TEXT NOT NULL -- staff phone
) STRICT;
CREATE INDEX rental_rest_newest ON rental_rest (rental_id, id);
CREATE TRIGGER rental_rest_stays BEFORE DELETE ON rental_rest
BEGIN SELECT RAISE(ABORT, 'rental_rest is append-only'); END;
CREATE TRIGGER rental_rest_as_written BEFORE UPDATE ON rental_rest
BEGIN SELECT RAISE(ABORT, 'rental_rest is append-only'); END;
