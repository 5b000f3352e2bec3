-- Phones that staff linked to a rental beside those of its record; newest row of a pair = current.
CREATE TABLE phone_link (
    id INTEGER PRIMARY KEY,
    phone TEXT NOT NULL,
    rental_id TEXT NOT NULL,
    linked INTEGER NOT NULL CHECK (linked IN (0, 1)),
    at_utc_s INTEGER NOT NULL,
    who TEXT NOT NULL -- staff phone
) STRICT;
CREATE INDEX phone_link_newest ON phone_link (phone, rental_id, id);
CREATE TRIGGER phone_link_stays BEFORE DELETE ON phone_link
BEGIN SELECT RAISE(ABORT, 'phone_link is append-only'); END;
CREATE TRIGGER phone_link_as_written BEFORE UPDATE ON phone_link
BEGIN SELECT RAISE(ABORT, 'phone_link is append-only'); END;
