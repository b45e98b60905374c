UPDATE past_log SET state = $2, left_at = $3, replaced_by = $4 WHERE log_id = $1
