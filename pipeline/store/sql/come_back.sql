-- Log $1 is of the season again.
INSERT INTO main.entry_kept BY NAME SELECT * FROM past.entry_kept WHERE sheet_id IN (SELECT sheet_id FROM past.log_sheet WHERE log_id = $1);
INSERT INTO main.log_sheet BY NAME SELECT * FROM past.log_sheet WHERE log_id = $1;
INSERT INTO main.set_aside BY NAME SELECT * FROM past.set_aside WHERE log_id = $1;
INSERT INTO main.reading_doubt BY NAME SELECT * FROM past.reading_doubt WHERE log_id = $1;
INSERT INTO main.question BY NAME SELECT * FROM past.question WHERE log_id = $1;
INSERT INTO main.log_answer BY NAME SELECT * FROM past.log_answer WHERE log_id = $1;
INSERT INTO main.track BY NAME SELECT * FROM past.track WHERE log_id = $1;
INSERT INTO main.fix BY NAME SELECT * FROM past.fix WHERE log_id = $1;
INSERT INTO main.log BY NAME SELECT * EXCLUDE (state, left_at, replaced_by) FROM past.log WHERE log_id = $1
