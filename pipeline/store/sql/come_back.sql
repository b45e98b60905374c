-- Log $1 is of the season again.
INSERT INTO entry_kept BY NAME SELECT * FROM past_entry_kept
    WHERE sheet_id IN (SELECT sheet_id FROM past_log_sheet WHERE log_id = $1);
INSERT INTO log_sheet BY NAME SELECT * FROM past_log_sheet WHERE log_id = $1;
INSERT INTO set_aside BY NAME SELECT * FROM past_set_aside WHERE log_id = $1;
INSERT INTO reading_doubt BY NAME SELECT * FROM past_reading_doubt WHERE log_id = $1;
INSERT INTO question BY NAME SELECT * FROM past_question WHERE log_id = $1;
INSERT INTO log_answer BY NAME SELECT * FROM past_log_answer WHERE log_id = $1;
INSERT INTO track BY NAME SELECT * FROM past_track WHERE log_id = $1;
INSERT INTO fix BY NAME SELECT * FROM past_fix WHERE log_id = $1;
INSERT INTO log BY NAME SELECT * EXCLUDE (state, left_at, replaced_by) FROM past_log WHERE log_id = $1
