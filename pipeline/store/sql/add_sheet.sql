INSERT INTO log_sheet SELECT coalesce(max(sheet_id), 0) + 1, ?, ?, ?, ? FROM (SELECT sheet_id FROM main.log_sheet UNION ALL SELECT sheet_id FROM past.log_sheet) RETURNING sheet_id
