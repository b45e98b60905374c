DELETE FROM entry_kept WHERE sheet_id IN (SELECT sheet_id FROM log_sheet WHERE log_id = $1);
DELETE FROM log_sheet WHERE log_id = $1;
DELETE FROM set_aside WHERE log_id = $1;
DELETE FROM reading_doubt WHERE log_id = $1;
DELETE FROM question WHERE log_id = $1;
DELETE FROM track WHERE log_id = $1;
DELETE FROM fix WHERE log_id = $1;
DELETE FROM log WHERE log_id = $1
