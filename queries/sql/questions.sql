-- Open questions, those that move the totals most first.
SELECT id, file, sheet, if(kind = 'told', 'bites', about) AS about,
    replace(text, '{season}', (SELECT count(*) FROM strike s WHERE s.log_id = q.log_id)::VARCHAR) AS text,
    coalesce(array_to_string(options, chr(31)), '') AS options,
    coalesce(array_to_string(effect, chr(31)), '') AS effect, kind, log_id AS log
FROM open_question q ORDER BY file, log_id, no
