-- A mains failure at one place is one alert to staff: the others are called with the first.
ALTER TABLE alert_due ADD COLUMN group_number INTEGER REFERENCES alert; -- it is called with this one
ALTER TABLE alert_due ADD COLUMN area TEXT; -- of a mains failure: where
ALTER TABLE alert_due ADD COLUMN outage_utc_s INTEGER; -- when the mains failure was told last
ALTER TABLE alert_due ADD COLUMN runs_out_utc_s INTEGER; -- low end of the batteries, as far as they are told
ALTER TABLE alert_due ADD COLUMN told_utc_s INTEGER; -- at its level: when the renter was told that nobody has answered
CREATE INDEX alert_due_by_group ON alert_due (group_number);
