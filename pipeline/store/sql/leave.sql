-- Log $1 leaves the season; what was read of it is kept.
INSERT INTO past_entry_kept BY NAME SELECT * FROM entry_kept
    WHERE sheet_id IN (SELECT sheet_id FROM log_sheet WHERE log_id = $1);
INSERT INTO past_log_sheet BY NAME SELECT * FROM log_sheet WHERE log_id = $1;
INSERT INTO past_set_aside BY NAME SELECT * FROM set_aside WHERE log_id = $1 AND stage = 'read';
INSERT INTO past_reading_doubt BY NAME SELECT * FROM reading_doubt WHERE log_id = $1;
INSERT INTO past_question BY NAME SELECT * FROM question WHERE log_id = $1;
INSERT INTO past_log_answer BY NAME SELECT * FROM log_answer WHERE log_id = $1;
INSERT INTO past_track BY NAME SELECT * FROM track WHERE log_id = $1;
INSERT INTO past_fix BY NAME SELECT * FROM fix WHERE log_id = $1;
INSERT INTO past_log BY NAME SELECT * FROM log WHERE log_id = $1
