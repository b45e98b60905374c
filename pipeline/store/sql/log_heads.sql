-- All logs, without what is counted in their rows.
SELECT log_id, label, name, folder, coalesce(boat, ''), sha256, coalesce(settings, ''), coalesce(headings, ''),
    rows_kept, changed_at,
    'in' AS state, 0 AS replaced_by, log_id IN (SELECT log_id FROM track)
FROM log
UNION ALL
SELECT log_id, label, name, folder, coalesce(boat, ''), sha256, coalesce(settings, ''), coalesce(headings, ''),
    rows_kept, changed_at,
    state, coalesce(replaced_by, 0), log_id IN (SELECT log_id FROM past_track)
FROM past_log
ORDER BY 1
