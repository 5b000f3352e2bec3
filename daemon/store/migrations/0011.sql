-- Whether a number is a reading or an age is a question too (0004.sql tells why it is done so).
PRAGMA writable_schema = ON;
UPDATE sqlite_schema SET sql = replace(sql, ', ''plug'')', ', ''plug'', ''reading-or-age'')')
WHERE type = 'table' AND name = 'conversation';
PRAGMA writable_schema = RESET;
