INSERT INTO log_sheet SELECT coalesce(max(sheet_id), 0) + 1, ?, ?, ?, ? FROM log_sheet RETURNING sheet_id
