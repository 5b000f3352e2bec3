-- A text may go on with what was answered last.
ALTER TABLE conversation ADD COLUMN last_answer TEXT; -- JSON: numbers only, no words of the renter
