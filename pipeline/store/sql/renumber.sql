-- Log $1, which was read again, keeps the number $2 of its earlier reading.
UPDATE log SET log_id = $2 WHERE log_id = $1;
UPDATE log_sheet SET log_id = $2 WHERE log_id = $1;
UPDATE set_aside SET log_id = $2 WHERE log_id = $1;
UPDATE reading_doubt SET log_id = $2 WHERE log_id = $1;
UPDATE question SET log_id = $2 WHERE log_id = $1;
UPDATE log_answer SET log_id = $2 WHERE log_id = $1;
UPDATE track SET log_id = $2 WHERE log_id = $1;
UPDATE fix SET log_id = $2 WHERE log_id = $1;
UPDATE log_apart SET log_id = $2 WHERE log_id = $1;
UPDATE log_apart SET other_id = $2 WHERE other_id = $1;
UPDATE past_log SET replaced_by = $2 WHERE replaced_by = $1
