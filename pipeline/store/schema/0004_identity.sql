-- A log is known by what is in it, so that its name and folder may change, and another
-- log may have them next year.
ALTER TABLE log ADD COLUMN folder VARCHAR DEFAULT '';     -- in which the file was, its last part
ALTER TABLE log ADD COLUMN label VARCHAR DEFAULT '';      -- its name, with the folder where several logs have that name
ALTER TABLE log ADD COLUMN settings VARCHAR DEFAULT '';   -- JSON: what its owner said of reading it
ALTER TABLE log ADD COLUMN headings VARCHAR DEFAULT '';   -- of its tables, in lower case, parted by chr(31)
ALTER TABLE log ADD COLUMN boat_given VARCHAR;            -- the boat as it was named for the log; boat: as it is shown
ALTER TABLE log ADD COLUMN changed_at TIMESTAMP;          -- UTC: when the file itself was last changed
UPDATE log SET label = name, boat_given = boat;
-- From here on sha256 is of the file's bytes alone; those of earlier loads match no file.

-- The name of a boat as logged, and as it is shown: a boat renamed, or two spellings joined.
CREATE TABLE boat_name (logged VARCHAR NOT NULL, boat VARCHAR NOT NULL);

-- Two logs that their owner said are different logs, whatever they have in common.
CREATE TABLE log_apart (log_id INTEGER NOT NULL, other_id INTEGER NOT NULL);

-- Logs that were replaced or forgotten, with all that was read of them, to be had back
-- until they are tidied away. Nothing else reads these tables.
CREATE TABLE past_log AS FROM log LIMIT 0;
ALTER TABLE past_log ADD COLUMN state VARCHAR;            -- replaced or forgotten
ALTER TABLE past_log ADD COLUMN left_at TIMESTAMP;        -- UTC
ALTER TABLE past_log ADD COLUMN replaced_by INTEGER;      -- the log that took its place
CREATE TABLE past_log_sheet AS FROM log_sheet LIMIT 0;
CREATE TABLE past_entry_kept AS FROM entry_kept LIMIT 0;
CREATE TABLE past_set_aside AS FROM set_aside LIMIT 0;
CREATE TABLE past_reading_doubt AS FROM reading_doubt LIMIT 0;
CREATE TABLE past_question AS FROM question LIMIT 0;
CREATE TABLE past_log_answer AS FROM log_answer LIMIT 0;
CREATE TABLE past_track AS FROM track LIMIT 0;
CREATE TABLE past_fix AS FROM fix LIMIT 0;
