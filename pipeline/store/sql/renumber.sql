-- Log $1, which was read again, keeps the number $2 of its earlier reading.
UPDATE main.log SET log_id = $2 WHERE log_id = $1;
UPDATE main.log_sheet SET log_id = $2 WHERE log_id = $1;
UPDATE main.set_aside SET log_id = $2 WHERE log_id = $1;
UPDATE main.reading_doubt SET log_id = $2 WHERE log_id = $1;
UPDATE main.question SET log_id = $2 WHERE log_id = $1;
UPDATE main.log_answer SET log_id = $2 WHERE log_id = $1;
UPDATE main.track SET log_id = $2 WHERE log_id = $1;
UPDATE main.fix SET log_id = $2 WHERE log_id = $1;
UPDATE main.log_apart SET log_id = $2 WHERE log_id = $1;
UPDATE main.log_apart SET other_id = $2 WHERE other_id = $1;
UPDATE past.log SET replaced_by = $2 WHERE replaced_by = $1
