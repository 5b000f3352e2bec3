-- Limits on texts of one sender and of all.
CREATE INDEX outbox_by_recipient ON outbox (recipient, id);
CREATE TABLE limited (
    phone TEXT PRIMARY KEY,
    since_utc_s INTEGER NOT NULL,
    last_utc_s INTEGER NOT NULL
) STRICT;

-- One text to many renters.
CREATE TABLE notice (
    number INTEGER PRIMARY KEY,
    at_utc_s INTEGER NOT NULL,
    who TEXT NOT NULL, -- staff phone
    english TEXT NOT NULL,
    spanish TEXT,
    picked TEXT NOT NULL, -- by what rentals were picked, in words
    urgent INTEGER NOT NULL CHECK (urgent IN (0, 1))
) STRICT;
CREATE TABLE notice_phone (
    id INTEGER PRIMARY KEY,
    notice_number INTEGER NOT NULL REFERENCES notice,
    rental_id TEXT NOT NULL,
    phone TEXT,
    hindrance TEXT, -- why it was not texted
    outbox_id INTEGER REFERENCES outbox,
    CHECK ((hindrance IS NULL) = (outbox_id IS NOT NULL))
) STRICT;
CREATE INDEX notice_phone_by_notice ON notice_phone (notice_number, id);
CREATE INDEX notice_phone_by_outbox ON notice_phone (outbox_id);
CREATE INDEX notice_phone_by_phone ON notice_phone (phone);
CREATE TRIGGER notice_stays BEFORE DELETE ON notice
BEGIN SELECT RAISE(ABORT, 'notice is append-only'); END;
CREATE TRIGGER notice_as_written BEFORE UPDATE ON notice
BEGIN SELECT RAISE(ABORT, 'notice is append-only'); END;
CREATE TRIGGER notice_phone_stays BEFORE DELETE ON notice_phone
BEGIN SELECT RAISE(ABORT, 'notice_phone is append-only'); END;
CREATE TRIGGER notice_phone_as_written BEFORE UPDATE ON notice_phone
BEGIN SELECT RAISE(ABORT, 'notice_phone is append-only'); END;
