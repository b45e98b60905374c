-- Open questions, those that move the totals most first.
SELECT id, file, sheet, about, text, coalesce(array_to_string(options, chr(31)), '') AS options,
    coalesce(array_to_string(effect, chr(31)), '') AS effect, kind, log_id AS log
FROM open_question ORDER BY file, log_id, no
