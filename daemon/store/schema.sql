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
    source TEXT NOT NULL -- 'import', or 'booking' with the webhook's id behind it
) STRICT;
CREATE INDEX rental_row_newest ON rental_row (rental_id, id);
CREATE INDEX rental_row_by_digest ON rental_row (digest);

CREATE TABLE rental_phone (
    phone TEXT NOT NULL,
    rental_row_id INTEGER NOT NULL REFERENCES rental_row,
    PRIMARY KEY (phone, rental_row_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX rental_phone_by_row ON rental_phone (rental_row_id);

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

-- Whose renter has died, as staff say: nothing is started for the rental. Newest row = current.
CREATE TABLE rental_rest (
    id INTEGER PRIMARY KEY,
    rental_id TEXT NOT NULL,
    rests INTEGER NOT NULL CHECK (rests IN (0, 1)),
    at_utc_s INTEGER NOT NULL,
    who TEXT NOT NULL -- staff phone
) STRICT;
CREATE INDEX rental_rest_newest ON rental_rest (rental_id, id);

-- Newest by as_of_utc_s = current; '{}' where a swap or a new order voided what was told before.
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
        question IN ('none', 'which-rental', 'which-topic', 'which-charge', 'flowing', 'plug',
                     'reading-or-age')),
    asked_utc_s INTEGER NOT NULL,
    asked_text_id INTEGER REFERENCES text,
    asked_start INTEGER,
    asked_length INTEGER,
    choices TEXT NOT NULL, -- JSON array of ids
    rental_id TEXT,
    in_charge TEXT,
    last_answer TEXT -- JSON: numbers only, no words of the renter
) STRICT;
CREATE INDEX conversation_newest ON conversation (phone, id);
CREATE INDEX conversation_by_text ON conversation (text_id);
CREATE INDEX conversation_by_asked_text ON conversation (asked_text_id);

-- One row for each question of ours that is not answered yet and whose answer somebody's safety
-- hangs on: when staff are called unless it comes.
CREATE TABLE answer_due (
    phone TEXT PRIMARY KEY,
    question TEXT NOT NULL,
    rental_id TEXT,
    text_id INTEGER NOT NULL REFERENCES text, -- the text that made us ask
    due_utc_s INTEGER NOT NULL
) STRICT;
CREATE INDEX answer_due_next ON answer_due (due_utc_s);
CREATE INDEX answer_due_by_text ON answer_due (text_id);

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
        event IN ('opened', 'raised', 'added', 'called', 'taken', 'rechecked', 'closed',
                  'offered', 'released')),
    at_utc_s INTEGER NOT NULL,
    level TEXT NOT NULL,
    reason TEXT NOT NULL,
    who TEXT,  -- staff phone
    note TEXT, -- the outcome, in the words of staff
    text_id INTEGER REFERENCES text,
    road TEXT -- of 'taken' and 'closed': by which road staff said so
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
    next_utc_s INTEGER NOT NULL,
    ring INTEGER NOT NULL DEFAULT 1 CHECK (ring IN (0, 1)), -- an urgent one rings at once, or later
    offered_to TEXT, -- staff phone that whoever has it passes it on to
    offer_ends_utc_s INTEGER,
    -- The clock's steps since it has its level, and how much older those are whom it stands for.
    stepped_s INTEGER NOT NULL DEFAULT 0,
    group_number INTEGER REFERENCES alert, -- it is called with this one; NULL: by itself
    area TEXT, -- of a mains failure: where
    outage_utc_s INTEGER, -- when the mains failure was told last
    runs_out_utc_s INTEGER, -- low end of the batteries, as far as they are told
    told_utc_s INTEGER -- at its level: when the renter was told that nobody has answered
) STRICT;
CREATE UNIQUE INDEX alert_due_of_rental ON alert_due (rental_id) WHERE rental_id IS NOT NULL;
CREATE UNIQUE INDEX alert_due_of_stranger ON alert_due (phone) WHERE rental_id IS NULL;
CREATE INDEX alert_due_next ON alert_due (next_utc_s);
CREATE INDEX alert_due_by_group ON alert_due (group_number);

-- One row for each conversation that a person has: by when they must have answered the renter.
CREATE TABLE talk (
    phone TEXT PRIMARY KEY, -- the renter's
    who TEXT NOT NULL, -- staff phone
    alert_number INTEGER NOT NULL REFERENCES alert,
    due_utc_s INTEGER NOT NULL
) STRICT;
CREATE INDEX talk_next ON talk (due_utc_s);
CREATE INDEX talk_by_alert ON talk (alert_number);

-- What an e-mail to staff leads to. The token itself stands in the e-mail and nowhere else.
CREATE TABLE link (
    hash BLOB PRIMARY KEY,
    alert_number INTEGER NOT NULL REFERENCES alert,
    who TEXT NOT NULL, -- staff phone
    expires_utc_s INTEGER NOT NULL,
    used_utc_s INTEGER
) STRICT, WITHOUT ROWID;
CREATE INDEX link_by_alert ON link (alert_number);
CREATE INDEX link_by_age ON link (expires_utc_s);

-- Whose turn begins is asked to confirm it.
CREATE TABLE turn_event (
    id INTEGER PRIMARY KEY,
    turn_utc_s INTEGER NOT NULL, -- when the turn began; which one that is says the configuration
    event TEXT NOT NULL CHECK (event IN ('asked', 'confirmed', 'passed')),
    who TEXT NOT NULL, -- staff phone
    at_utc_s INTEGER NOT NULL
) STRICT;
CREATE INDEX turn_event_by_turn ON turn_event (turn_utc_s, id);

-- Who texts more than is answered, since when; 'hutbell': everybody together. Of an older one it only
-- says that it has ended.
CREATE TABLE limited (
    phone TEXT PRIMARY KEY,
    since_utc_s INTEGER NOT NULL,
    last_utc_s INTEGER NOT NULL
) STRICT;

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
    give_up_utc_s INTEGER NOT NULL,
    -- A recipient is always a phone: of staff it says who, and the road says how they are reached.
    road TEXT NOT NULL DEFAULT 'text' CHECK (road IN ('text', 'ring', 'e-mail', 'webhook')),
    call_event_id INTEGER REFERENCES alert_event -- the call it is one road of
) STRICT;
CREATE INDEX outbox_by_text ON outbox (text_id);
CREATE INDEX outbox_by_verdict ON outbox (verdict_id);
CREATE INDEX outbox_by_alert ON outbox (alert_number);
CREATE INDEX outbox_by_call ON outbox (call_event_id);
CREATE INDEX outbox_by_recipient ON outbox (recipient, id);

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
    next_utc_s INTEGER NOT NULL,
    stepped_s INTEGER NOT NULL DEFAULT 0 -- what the clock was stepped by since it was written
) STRICT;
CREATE INDEX outbox_due_next ON outbox_due (next_utc_s);
CREATE INDEX outbox_due_order ON outbox_due (urgency, outbox_id);

-- Emergencies that the gateway took and nobody has reported as delivered.
CREATE TABLE outbox_unconfirmed (
    outbox_id INTEGER PRIMARY KEY REFERENCES outbox,
    accepted_utc_s INTEGER NOT NULL
) STRICT;

-- ---- Notices ------------------------------------------------------------------------------------

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

-- One row for each phone, and for each rental without any.
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

-- ---- The line itself ---------------------------------------------------------------------------

-- Test texts that go out through the gateway and must come back.
CREATE TABLE line_test (
    id INTEGER PRIMARY KEY,
    token TEXT NOT NULL UNIQUE,
    recipient TEXT NOT NULL,
    sent_utc_s INTEGER NOT NULL,
    come_utc_s INTEGER,
    missed_utc_s INTEGER -- staff were told that it did not come in time
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
CREATE TRIGGER phone_link_stays BEFORE DELETE ON phone_link
BEGIN SELECT RAISE(ABORT, 'phone_link is append-only'); END;
CREATE TRIGGER phone_link_as_written BEFORE UPDATE ON phone_link
BEGIN SELECT RAISE(ABORT, 'phone_link is append-only'); END;
CREATE TRIGGER rental_rest_stays BEFORE DELETE ON rental_rest
BEGIN SELECT RAISE(ABORT, 'rental_rest is append-only'); END;
CREATE TRIGGER rental_rest_as_written BEFORE UPDATE ON rental_rest
BEGIN SELECT RAISE(ABORT, 'rental_rest is append-only'); END;
CREATE TRIGGER battery_account_stays BEFORE DELETE ON battery_account
BEGIN SELECT RAISE(ABORT, 'battery_account is append-only'); END;
CREATE TRIGGER battery_account_as_written BEFORE UPDATE ON battery_account
BEGIN SELECT RAISE(ABORT, 'battery_account is append-only'); END;
CREATE TRIGGER conversation_stays BEFORE DELETE ON conversation
BEGIN SELECT RAISE(ABORT, 'conversation is append-only'); END;
CREATE TRIGGER conversation_as_written BEFORE UPDATE ON conversation
BEGIN SELECT RAISE(ABORT, 'conversation is append-only'); END;
CREATE TRIGGER reminder_stays BEFORE DELETE ON reminder
BEGIN SELECT RAISE(ABORT, 'reminder is append-only'); END;
CREATE TRIGGER reminder_as_written
BEFORE UPDATE OF id, phone, rental_id, kind, due_utc_s, ends_utc_s, as_of_utc_s, gateway, language,
                 text_id, set_utc_s ON reminder
BEGIN SELECT RAISE(ABORT, 'reminder is append-only'); END;
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
CREATE TRIGGER turn_event_stays BEFORE DELETE ON turn_event
BEGIN SELECT RAISE(ABORT, 'turn_event is append-only'); END;
CREATE TRIGGER turn_event_as_written BEFORE UPDATE ON turn_event
BEGIN SELECT RAISE(ABORT, 'turn_event is append-only'); END;
CREATE TRIGGER outbox_stays BEFORE DELETE ON outbox
BEGIN SELECT RAISE(ABORT, 'outbox is append-only'); END;
CREATE TRIGGER outbox_as_written
BEFORE UPDATE OF id, about, text_id, verdict_id, alert_number, gateway, recipient, key, urgency,
                 created_utc_s, expires_utc_s, give_up_utc_s, road, call_event_id ON outbox
BEGIN SELECT RAISE(ABORT, 'outbox is append-only'); END;
CREATE TRIGGER outbox_only_erased BEFORE UPDATE OF body ON outbox
WHEN NEW.body IS NOT NULL
BEGIN SELECT RAISE(ABORT, 'outbox is append-only'); END;
CREATE TRIGGER outbox_event_stays BEFORE DELETE ON outbox_event
BEGIN SELECT RAISE(ABORT, 'outbox_event is append-only'); END;
CREATE TRIGGER outbox_event_as_written BEFORE UPDATE ON outbox_event
BEGIN SELECT RAISE(ABORT, 'outbox_event is append-only'); END;
CREATE TRIGGER notice_stays BEFORE DELETE ON notice
BEGIN SELECT RAISE(ABORT, 'notice is append-only'); END;
CREATE TRIGGER notice_as_written BEFORE UPDATE ON notice
BEGIN SELECT RAISE(ABORT, 'notice is append-only'); END;
CREATE TRIGGER notice_phone_stays BEFORE DELETE ON notice_phone
BEGIN SELECT RAISE(ABORT, 'notice_phone is append-only'); END;
CREATE TRIGGER notice_phone_as_written BEFORE UPDATE ON notice_phone
BEGIN SELECT RAISE(ABORT, 'notice_phone is append-only'); END;
