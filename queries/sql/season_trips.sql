-- Every trip of every boat: its month, effort and strikes; strikes_on_hours are
-- those that belong to line-hours, as in cells.sql.
WITH worked AS (
    SELECT e.leg_id, any_value(l.trip_id) AS trip_id FROM effort e JOIN leg l USING (leg_id)
    GROUP BY e.leg_id HAVING sum(e.line_hours) > 0
), legs AS (
    SELECT trip_id, sum(hours) AS boat_hours, min(start_at) AS first_at FROM leg GROUP BY trip_id
), lines AS (
    SELECT l.trip_id, sum(e.line_hours) AS line_hours FROM effort e JOIN leg l USING (leg_id) GROUP BY l.trip_id
), hits AS (
    SELECT trip_id, count(*) AS strikes, count(*) FILTER (WHERE hooked) AS hookups,
        count(*) FILTER (WHERE outcome = 'landed') AS landed, count(*) FILTER (WHERE outcome = 'released') AS released,
        count(*) FILTER (WHERE leg_id IN (SELECT leg_id FROM worked)
            OR (leg_id IS NULL AND trip_id IN (SELECT trip_id FROM worked))) AS strikes_on_hours
    FROM strike GROUP BY trip_id
)
SELECT t.trip_id, coalesce(strftime(coalesce(t.date, g.first_at::DATE), '%Y-%m'), 'not logged') AS level,
    coalesce(g.boat_hours, 0) AS boat_hours, coalesce(n.line_hours, 0) AS line_hours, coalesce(h.strikes, 0) AS strikes,
    coalesce(h.strikes_on_hours, 0) AS strikes_on_hours, coalesce(h.hookups, 0) AS hookups,
    coalesce(h.landed, 0) AS landed, coalesce(h.released, 0) AS released
FROM trip t LEFT JOIN legs g USING (trip_id) LEFT JOIN lines n USING (trip_id) LEFT JOIN hits h USING (trip_id)
ORDER BY level = 'not logged', level, t.trip_id
