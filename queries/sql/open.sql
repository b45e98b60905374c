-- Open questions on which effort or strikes rest, and the first of them.
WITH o AS (
    SELECT id, brief, log_id, no FROM open_question WHERE list_has_any(effect, ['line_hours', 'boat_hours', 'strikes', 'bands'])
)
SELECT count(DISTINCT id)::BIGINT AS questions, arg_min(brief, log_id * 1000 + no) AS brief FROM o HAVING count(*) > 0
