-- Whose turn begins is asked to confirm it.
CREATE TABLE turn_event (
    id INTEGER PRIMARY KEY,
    turn_utc_s INTEGER NOT NULL, -- when the turn began; which one that is says the configuration
    event TEXT NOT NULL CHECK (event IN ('asked', 'confirmed', 'passed')),
    who TEXT NOT NULL, -- staff phone
    at_utc_s INTEGER NOT NULL
) STRICT;
CREATE INDEX turn_event_by_turn ON turn_event (turn_utc_s, id);
CREATE TRIGGER turn_event_stays BEFORE DELETE ON turn_event
BEGIN SELECT RAISE(ABORT, 'turn_event is append-only'); END;
CREATE TRIGGER turn_event_as_written BEFORE UPDATE ON turn_event
BEGIN SELECT RAISE(ABORT, 'turn_event is append-only'); END;
