-- The log of the same bytes: in the season, or replaced or forgotten.
SELECT log_id, '' AS state, coalesce(settings, '') AS settings, rows_kept, NULL AS replaced_by FROM main.log WHERE sha256 = $1
UNION ALL SELECT log_id, state, coalesce(settings, ''), rows_kept, replaced_by FROM past.log WHERE sha256 = $1
ORDER BY 2, 1 DESC
