SELECT coalesce(max(sheet_id), 0) + 1 FROM (SELECT sheet_id FROM log_sheet UNION ALL SELECT sheet_id
    FROM past_log_sheet) ORDER BY 1
