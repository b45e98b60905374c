-- Open questions on which effort or strikes rest, or the year of a season, and the first of them.
WITH o AS (
    SELECT id, brief, file, log_id, no FROM open_question
        WHERE list_has_any(effect, ['line_hours', 'boat_hours', 'strikes', 'bands']) OR kind = 'no year'
)
SELECT count(DISTINCT id)::BIGINT AS questions, first(brief ORDER BY file, log_id, no) AS brief FROM o
    HAVING count(*) > 0
