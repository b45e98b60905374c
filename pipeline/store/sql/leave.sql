-- Log $1 leaves the season; what was read of it is kept.
INSERT INTO past.entry_kept BY NAME SELECT * FROM main.entry_kept WHERE sheet_id IN (SELECT sheet_id FROM main.log_sheet WHERE log_id = $1);
INSERT INTO past.log_sheet BY NAME SELECT * FROM main.log_sheet WHERE log_id = $1;
INSERT INTO past.set_aside BY NAME SELECT * FROM main.set_aside WHERE log_id = $1 AND stage = 'read';
INSERT INTO past.reading_doubt BY NAME SELECT * FROM main.reading_doubt WHERE log_id = $1;
INSERT INTO past.question BY NAME SELECT * FROM main.question WHERE log_id = $1;
INSERT INTO past.log_answer BY NAME SELECT * FROM main.log_answer WHERE log_id = $1;
INSERT INTO past.track BY NAME SELECT * FROM main.track WHERE log_id = $1;
INSERT INTO past.fix BY NAME SELECT * FROM main.fix WHERE log_id = $1;
INSERT INTO past.log BY NAME SELECT * FROM main.log WHERE log_id = $1
