-- Roads to staff beside the text, links in e-mails, and test texts through the gateway.
ALTER TABLE alert_event ADD COLUMN road TEXT;
ALTER TABLE alert_due ADD COLUMN ring INTEGER NOT NULL DEFAULT 1 CHECK (ring IN (0, 1));
CREATE TABLE link (
    hash BLOB PRIMARY KEY,
    alert_number INTEGER NOT NULL REFERENCES alert,
    who TEXT NOT NULL, -- staff phone
    expires_utc_s INTEGER NOT NULL,
    used_utc_s INTEGER
) STRICT, WITHOUT ROWID;
CREATE INDEX link_by_alert ON link (alert_number);
CREATE INDEX link_by_age ON link (expires_utc_s);
ALTER TABLE outbox ADD COLUMN road TEXT NOT NULL DEFAULT 'text'
    CHECK (road IN ('text', 'ring', 'e-mail', 'webhook'));
ALTER TABLE outbox ADD COLUMN call_event_id INTEGER REFERENCES alert_event;
CREATE INDEX outbox_by_call ON outbox (call_event_id);
DROP TRIGGER outbox_as_written;
CREATE TRIGGER outbox_as_written
BEFORE UPDATE OF id, about, text_id, verdict_id, alert_number, gateway, recipient, key, urgency,
                 created_utc_s, expires_utc_s, give_up_utc_s, road, call_event_id ON outbox
BEGIN SELECT RAISE(ABORT, 'outbox is append-only'); END;
CREATE TABLE line_test (
    id INTEGER PRIMARY KEY,
    token TEXT NOT NULL UNIQUE,
    recipient TEXT NOT NULL,
    sent_utc_s INTEGER NOT NULL,
    come_utc_s INTEGER,
    missed_utc_s INTEGER -- staff were told that it did not come in time
) STRICT;
