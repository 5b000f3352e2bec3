-- The store. Every table is STRICT; what is written per text is append-only, which triggers
-- enforce: a row of such a table is never deleted, and never changed but by erasing.
--
-- Renters' own words stand in one column, text.body. Whatever may echo them (a verdict, a reply)
-- points to the text it belongs to and can be emptied with it; nothing else holds them.
--
-- Times are UTC seconds. A change here needs a numbered file in migrations/ that makes the same of
-- an older file; a test compares both.

CREATE TABLE migration (
    version INTEGER PRIMARY KEY,
    program TEXT NOT NULL -- version of the program that applied it
) STRICT;

-- ---- People of the office ----------------------------------------------------------------------

CREATE TABLE account (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL UNIQUE,
    role TEXT NOT NULL CHECK (role IN ('reader', 'office', 'clinician', 'administrator')),
    password_hash TEXT NOT NULL,
    created_utc_s INTEGER NOT NULL,
    ended_utc_s INTEGER -- may no longer sign in
) STRICT;

CREATE TABLE audit (
    id INTEGER PRIMARY KEY,
    at_utc_s INTEGER NOT NULL,
    account_id INTEGER REFERENCES account,
    who TEXT NOT NULL, -- without an account: the command or the staff phone
    what TEXT NOT NULL,
    subject TEXT, -- what it was done to: a rental, an alert, a phone
    detail TEXT
) STRICT;

-- ---- Texts -------------------------------------------------------------------------------------

CREATE TABLE text (
    id INTEGER PRIMARY KEY,
    gateway TEXT NOT NULL,
    gateway_id TEXT,
    sender TEXT NOT NULL,
    recipient TEXT,
    body TEXT, -- the renter's words; NULL once they are erased
    attachments INTEGER NOT NULL,
    sent_utc_s INTEGER NOT NULL,
    received_utc_s INTEGER NOT NULL,
    erase_after_utc_s INTEGER, -- NULL: no day is set yet
    erased_utc_s INTEGER,
    CHECK ((body IS NULL) = (erased_utc_s IS NOT NULL))
) STRICT;
CREATE INDEX text_by_sender ON text (sender, id);
CREATE INDEX text_to_erase ON text (erase_after_utc_s)
    WHERE erased_utc_s IS NULL AND erase_after_utc_s IS NOT NULL;

-- What makes a text a repeat; pruned, so not append-only. The digest covers sender, recipient,
-- words and attachments.
CREATE TABLE repeat_key (
    gateway TEXT NOT NULL,
    digest BLOB NOT NULL,
    key TEXT NOT NULL, -- 'id:' and the gateway's id, or 'at:' and the time sent
    seen_utc_s INTEGER NOT NULL,
    text_id INTEGER NOT NULL REFERENCES text,
    PRIMARY KEY (gateway, digest, key)
) STRICT, WITHOUT ROWID;
CREATE INDEX repeat_key_by_age ON repeat_key (seen_utc_s);

-- ---- Rentals -----------------------------------------------------------------------------------

-- The record as canonical JSON, once for each different content.
CREATE TABLE rental_snapshot (
    digest TEXT PRIMARY KEY, -- SHA-256 of json, 64 hex digits
    json TEXT NOT NULL
) STRICT;

-- Newest row of a rental_id = current.
CREATE TABLE rental_row (
    id INTEGER PRIMARY KEY,
    rental_id TEXT NOT NULL,
    digest TEXT NOT NULL REFERENCES rental_snapshot,
    written_utc_s INTEGER NOT NULL,
    account_id INTEGER REFERENCES account,
    source TEXT NOT NULL -- 'import'
) STRICT;
CREATE INDEX rental_row_newest ON rental_row (rental_id, id);
CREATE INDEX rental_row_by_digest ON rental_row (digest);

CREATE TABLE rental_phone (
    phone TEXT NOT NULL,
    rental_row_id INTEGER NOT NULL REFERENCES rental_row,
    PRIMARY KEY (phone, rental_row_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX rental_phone_by_row ON rental_phone (rental_row_id);

-- Newest by as_of_utc_s = current.
CREATE TABLE battery_account (
    id INTEGER PRIMARY KEY,
    rental_id TEXT NOT NULL,
    as_of_utc_s INTEGER NOT NULL,
    told TEXT NOT NULL, -- JSON: numbers only, no words of the renter
    text_id INTEGER NOT NULL REFERENCES text
) STRICT;
CREATE INDEX battery_account_newest ON battery_account (rental_id, as_of_utc_s, id);
CREATE INDEX battery_account_by_text ON battery_account (text_id);

-- ---- Conversations -----------------------------------------------------------------------------

-- Newest row of a phone = current. What we asked about is a span of a text, never a copy.
CREATE TABLE conversation (
    id INTEGER PRIMARY KEY,
    phone TEXT NOT NULL,
    text_id INTEGER NOT NULL REFERENCES text, -- the text that changed it
    last_utc_s INTEGER NOT NULL,
    question TEXT NOT NULL CHECK (
        question IN ('none', 'which-rental', 'which-topic', 'which-charge', 'flowing')),
    asked_utc_s INTEGER NOT NULL,
    asked_text_id INTEGER REFERENCES text,
    asked_start INTEGER,
    asked_length INTEGER,
    choices TEXT NOT NULL, -- JSON array of ids
    rental_id TEXT,
    in_charge TEXT
) STRICT;
CREATE INDEX conversation_newest ON conversation (phone, id);
CREATE INDEX conversation_by_text ON conversation (text_id);
CREATE INDEX conversation_by_asked_text ON conversation (asked_text_id);

-- Newest row of a phone = current; a phone without a row has withdrawn nothing.
CREATE TABLE consent (
    id INTEGER PRIMARY KEY,
    phone TEXT NOT NULL,
    given INTEGER NOT NULL CHECK (given IN (0, 1)),
    at_utc_s INTEGER NOT NULL,
    text_id INTEGER NOT NULL REFERENCES text
) STRICT;
CREATE INDEX consent_newest ON consent (phone, id);
CREATE INDEX consent_by_text ON consent (text_id);

-- ---- Verdicts ----------------------------------------------------------------------------------

CREATE TABLE verdict (
    id INTEGER PRIMARY KEY,
    text_id INTEGER NOT NULL REFERENCES text,
    supersedes INTEGER REFERENCES verdict, -- a reply gone stale was worked out anew
    at_utc_s INTEGER NOT NULL,
    kb_digest TEXT NOT NULL,
    program TEXT NOT NULL,
    rental_id TEXT,
    rental_digest TEXT REFERENCES rental_snapshot,
    conversation_id INTEGER REFERENCES conversation, -- it started from this row; NULL: from none
    started_from TEXT NOT NULL, -- JSON: the rest of the context, by ids and digests
    route TEXT NOT NULL,
    language TEXT NOT NULL,
    alert_level TEXT NOT NULL,
    json TEXT -- as `ask --json` prints it; NULL once the text is erased
) STRICT;
CREATE INDEX verdict_by_text ON verdict (text_id, id);
CREATE INDEX verdict_by_superseded ON verdict (supersedes);
CREATE INDEX verdict_by_conversation ON verdict (conversation_id);
CREATE INDEX verdict_by_snapshot ON verdict (rental_digest);

-- ---- Alerts ------------------------------------------------------------------------------------

CREATE TABLE alert (
    number INTEGER PRIMARY KEY, -- what staff call it
    rental_id TEXT,
    phone TEXT NOT NULL,
    text_id INTEGER REFERENCES text,
    opened_utc_s INTEGER NOT NULL
) STRICT;
CREATE INDEX alert_by_text ON alert (text_id);

CREATE TABLE alert_event (
    id INTEGER PRIMARY KEY,
    alert_number INTEGER NOT NULL REFERENCES alert,
    event TEXT NOT NULL CHECK (
        event IN ('opened', 'raised', 'added', 'called', 'taken', 'rechecked', 'closed')),
    at_utc_s INTEGER NOT NULL,
    level TEXT NOT NULL,
    reason TEXT NOT NULL,
    who TEXT,  -- staff phone
    note TEXT, -- the outcome, in the words of staff
    text_id INTEGER REFERENCES text
) STRICT;
CREATE INDEX alert_event_by_alert ON alert_event (alert_number, id);
CREATE INDEX alert_event_by_text ON alert_event (text_id);

-- One row for each alert that is not closed: where it stands and its next step.
CREATE TABLE alert_due (
    alert_number INTEGER PRIMARY KEY REFERENCES alert,
    rental_id TEXT,
    phone TEXT NOT NULL,
    level TEXT NOT NULL,
    reason TEXT NOT NULL,
    brief TEXT NOT NULL,
    taken_by TEXT,
    taken_utc_s INTEGER,
    calls INTEGER NOT NULL,
    next_utc_s INTEGER NOT NULL
) STRICT;
CREATE UNIQUE INDEX alert_due_of_rental ON alert_due (rental_id) WHERE rental_id IS NOT NULL;
CREATE UNIQUE INDEX alert_due_of_stranger ON alert_due (phone) WHERE rental_id IS NULL;
CREATE INDEX alert_due_next ON alert_due (next_utc_s);

-- ---- Outbox ------------------------------------------------------------------------------------

CREATE TABLE outbox (
    id INTEGER PRIMARY KEY,
    about TEXT NOT NULL CHECK (about IN ('reply', 'alert')),
    text_id INTEGER REFERENCES text,
    verdict_id INTEGER REFERENCES verdict,
    alert_number INTEGER REFERENCES alert,
    gateway TEXT NOT NULL,
    recipient TEXT NOT NULL,
    body TEXT, -- NULL once the text it answers is erased
    key TEXT NOT NULL UNIQUE, -- idempotency key
    urgency INTEGER NOT NULL, -- 0 is the most urgent
    created_utc_s INTEGER NOT NULL,
    expires_utc_s INTEGER NOT NULL, -- 0: never
    give_up_utc_s INTEGER NOT NULL
) STRICT;
CREATE INDEX outbox_by_text ON outbox (text_id);
CREATE INDEX outbox_by_verdict ON outbox (verdict_id);
CREATE INDEX outbox_by_alert ON outbox (alert_number);

CREATE TABLE outbox_event (
    id INTEGER PRIMARY KEY,
    outbox_id INTEGER NOT NULL REFERENCES outbox,
    event TEXT NOT NULL CHECK (
        event IN ('tried', 'accepted', 'delivered', 'undelivered', 'refused', 'given-up',
                  'replaced', 'not-confirmed')),
    at_utc_s INTEGER NOT NULL,
    gateway_id TEXT,
    detail TEXT
) STRICT;
CREATE INDEX outbox_event_by_outbox ON outbox_event (outbox_id, id);
CREATE INDEX outbox_event_by_gateway_id ON outbox_event (gateway_id) WHERE gateway_id IS NOT NULL;

-- One row for each that is not settled yet.
CREATE TABLE outbox_due (
    outbox_id INTEGER PRIMARY KEY REFERENCES outbox,
    urgency INTEGER NOT NULL,
    attempts INTEGER NOT NULL,
    next_utc_s INTEGER NOT NULL
) STRICT;
CREATE INDEX outbox_due_next ON outbox_due (next_utc_s);
CREATE INDEX outbox_due_order ON outbox_due (urgency, outbox_id);

-- Emergencies that the gateway took and nobody has reported as delivered.
CREATE TABLE outbox_unconfirmed (
    outbox_id INTEGER PRIMARY KEY REFERENCES outbox,
    accepted_utc_s INTEGER NOT NULL
) STRICT;

-- ---- What stays --------------------------------------------------------------------------------

CREATE TRIGGER migration_stays BEFORE DELETE ON migration
BEGIN SELECT RAISE(ABORT, 'migration is append-only'); END;
CREATE TRIGGER audit_stays BEFORE DELETE ON audit
BEGIN SELECT RAISE(ABORT, 'audit is append-only'); END;
CREATE TRIGGER audit_as_written BEFORE UPDATE ON audit
BEGIN SELECT RAISE(ABORT, 'audit is append-only'); END;
CREATE TRIGGER text_stays BEFORE DELETE ON text
BEGIN SELECT RAISE(ABORT, 'text is append-only'); END;
CREATE TRIGGER text_as_written
BEFORE UPDATE OF id, gateway, gateway_id, sender, recipient, attachments, sent_utc_s, received_utc_s
ON text
BEGIN SELECT RAISE(ABORT, 'text is append-only'); END;
CREATE TRIGGER text_only_erased BEFORE UPDATE OF body, erased_utc_s ON text
WHEN NEW.body IS NOT NULL
BEGIN SELECT RAISE(ABORT, 'text is append-only'); END;
CREATE TRIGGER rental_snapshot_stays BEFORE DELETE ON rental_snapshot
BEGIN SELECT RAISE(ABORT, 'rental_snapshot is append-only'); END;
CREATE TRIGGER rental_snapshot_as_written BEFORE UPDATE ON rental_snapshot
BEGIN SELECT RAISE(ABORT, 'rental_snapshot is append-only'); END;
CREATE TRIGGER rental_row_stays BEFORE DELETE ON rental_row
BEGIN SELECT RAISE(ABORT, 'rental_row is append-only'); END;
CREATE TRIGGER rental_row_as_written BEFORE UPDATE ON rental_row
BEGIN SELECT RAISE(ABORT, 'rental_row is append-only'); END;
CREATE TRIGGER battery_account_stays BEFORE DELETE ON battery_account
BEGIN SELECT RAISE(ABORT, 'battery_account is append-only'); END;
CREATE TRIGGER battery_account_as_written BEFORE UPDATE ON battery_account
BEGIN SELECT RAISE(ABORT, 'battery_account is append-only'); END;
CREATE TRIGGER conversation_stays BEFORE DELETE ON conversation
BEGIN SELECT RAISE(ABORT, 'conversation is append-only'); END;
CREATE TRIGGER conversation_as_written BEFORE UPDATE ON conversation
BEGIN SELECT RAISE(ABORT, 'conversation is append-only'); END;
CREATE TRIGGER consent_stays BEFORE DELETE ON consent
BEGIN SELECT RAISE(ABORT, 'consent is append-only'); END;
CREATE TRIGGER consent_as_written BEFORE UPDATE ON consent
BEGIN SELECT RAISE(ABORT, 'consent is append-only'); END;
CREATE TRIGGER verdict_stays BEFORE DELETE ON verdict
BEGIN SELECT RAISE(ABORT, 'verdict is append-only'); END;
CREATE TRIGGER verdict_as_written
BEFORE UPDATE OF id, text_id, supersedes, at_utc_s, kb_digest, program, rental_id, rental_digest,
                 conversation_id, started_from, route, language, alert_level ON verdict
BEGIN SELECT RAISE(ABORT, 'verdict is append-only'); END;
CREATE TRIGGER verdict_only_erased BEFORE UPDATE OF json ON verdict
WHEN NEW.json IS NOT NULL
BEGIN SELECT RAISE(ABORT, 'verdict is append-only'); END;
CREATE TRIGGER alert_stays BEFORE DELETE ON alert
BEGIN SELECT RAISE(ABORT, 'alert is append-only'); END;
CREATE TRIGGER alert_as_written BEFORE UPDATE ON alert
BEGIN SELECT RAISE(ABORT, 'alert is append-only'); END;
CREATE TRIGGER alert_event_stays BEFORE DELETE ON alert_event
BEGIN SELECT RAISE(ABORT, 'alert_event is append-only'); END;
CREATE TRIGGER alert_event_as_written BEFORE UPDATE ON alert_event
BEGIN SELECT RAISE(ABORT, 'alert_event is append-only'); END;
CREATE TRIGGER outbox_stays BEFORE DELETE ON outbox
BEGIN SELECT RAISE(ABORT, 'outbox is append-only'); END;
CREATE TRIGGER outbox_as_written
BEFORE UPDATE OF id, about, text_id, verdict_id, alert_number, gateway, recipient, key, urgency,
                 created_utc_s, expires_utc_s, give_up_utc_s ON outbox
BEGIN SELECT RAISE(ABORT, 'outbox is append-only'); END;
CREATE TRIGGER outbox_only_erased BEFORE UPDATE OF body ON outbox
WHEN NEW.body IS NOT NULL
BEGIN SELECT RAISE(ABORT, 'outbox is append-only'); END;
CREATE TRIGGER outbox_event_stays BEFORE DELETE ON outbox_event
BEGIN SELECT RAISE(ABORT, 'outbox_event is append-only'); END;
CREATE TRIGGER outbox_event_as_written BEFORE UPDATE ON outbox_event
BEGIN SELECT RAISE(ABORT, 'outbox_event is append-only'); END;
