-- Whether a plug is near is a question too, and questions have a time by which they are answered.
-- A CHECK can only be changed in the schema's text: https://sqlite.org/lang_altertable.html, "Making
-- Other Kinds Of Table Schema Changes". Rows that met the old one meet the new one.
PRAGMA writable_schema = ON;
UPDATE sqlite_schema SET sql = replace(sql, ', ''flowing'')', ', ''flowing'', ''plug'')')
WHERE type = 'table' AND name = 'conversation';
PRAGMA writable_schema = RESET;

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
