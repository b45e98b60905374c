-- All logs: those of the season, then those that were replaced or forgotten.
WITH days AS (
    SELECT log_id, min(date) AS first, max(date) AS last FROM entry WHERE date IS NOT NULL GROUP BY log_id
), first_track AS (
    SELECT log_id, make_timestamp(min(first_ms) * 1000)::DATE AS first,
        make_timestamp(max(last_ms) * 1000)::DATE AS last FROM track GROUP BY log_id
), boats AS (
    SELECT log_id, string_agg(boat, ', ' ORDER BY boat) AS boats FROM (
        SELECT DISTINCT e.log_id, coalesce(n.boat, e.boat) AS boat FROM entry e LEFT
            JOIN boat_name n ON n.logged = e.boat WHERE e.boat IS NOT NULL
    ) GROUP BY log_id
), aside AS (
    SELECT log_id, count(*) FILTER (WHERE stage = 'read') AS aside FROM set_aside GROUP BY log_id
), asked AS (
    SELECT log_id, count(DISTINCT id) AS asked FROM open_question GROUP BY log_id
), replaced AS (
    SELECT replaced_by AS log_id, string_agg(log_id::VARCHAR, ', ' ORDER BY log_id) AS replaced FROM past_log
        WHERE replaced_by IS NOT NULL GROUP BY replaced_by
)
SELECT * FROM (
SELECT l.log_id, l.label, l.name, l.folder, coalesce(b.boats, l.boat, '') AS boat, l.sha256,
    coalesce(l.settings, '') AS settings, coalesce(l.headings, '') AS headings,
    l.rows_kept, l.loaded_at, l.changed_at, coalesce(strftime(coalesce(d.first, k.first), '%Y-%m-%d'), '') AS first,
        coalesce(strftime(coalesce(d.last, k.last), '%Y-%m-%d'), '') AS last,
    coalesce(a.aside, 0)::BIGINT AS aside, coalesce(q.asked, 0)::BIGINT AS asked,
        coalesce(r.replaced, '') AS replaced, 'in' AS state, NULL AS left_at, 0 AS replaced_by,
            k.log_id IS NOT NULL AS track
FROM log l LEFT JOIN days d USING (log_id) LEFT JOIN first_track k USING (log_id) LEFT JOIN boats b USING (log_id)
    LEFT JOIN aside a USING (log_id)
LEFT JOIN asked q USING (log_id) LEFT JOIN replaced r USING (log_id)
UNION ALL
SELECT l.log_id, l.label, l.name, l.folder, coalesce(l.boat, ''), l.sha256, coalesce(l.settings, ''),
    coalesce(l.headings, ''), l.rows_kept, l.loaded_at, l.changed_at, '', '',
    0, 0, coalesce(r.replaced, ''), l.state, l.left_at, coalesce(l.replaced_by, 0),
        l.log_id IN (SELECT log_id FROM past_track)
FROM past_log l LEFT JOIN replaced r USING (log_id)
) ORDER BY state <> 'in', boat, first, label, log_id
