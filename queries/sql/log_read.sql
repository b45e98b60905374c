-- What the season has of each log: trips by the legs and strikes of its rows.
WITH of_trip AS (
    SELECT log_id, trip_id FROM leg UNION SELECT log_id, trip_id FROM strike WHERE trip_id IS NOT NULL
        UNION SELECT log_id, trip_id FROM trip WHERE log_id IS NOT NULL
), t AS (
    SELECT o.log_id, count(*) AS trips, min(t.date) AS first, max(t.date) AS last FROM of_trip o
        JOIN trip t USING (trip_id) GROUP BY o.log_id
), h AS (
    SELECT log_id, sum(hours) AS boat_hours, sum(hours) FILTER (WHERE lines_out IS NULL) AS no_lines FROM leg
        GROUP BY log_id
), e AS (
    SELECT l.log_id, sum(e.line_hours) AS line_hours FROM effort e JOIN leg l USING (leg_id) GROUP BY l.log_id
), s AS (
    SELECT log_id, count(*) AS strikes, count(*) FILTER (WHERE outcome = 'missed') AS missed,
        count(*) FILTER (WHERE outcome = 'lost') AS lost,
        count(*) FILTER (WHERE outcome = 'landed') AS landed, count(*) FILTER (WHERE outcome = 'released') AS released,
        count(*) FILTER (WHERE outcome = 'not logged') AS not_logged
    FROM strike GROUP BY log_id
), u AS (
    SELECT log_id, count(*) AS untimed FROM of_trip
        WHERE trip_id NOT IN (SELECT trip_id FROM leg WHERE hours > 0 AND trip_id IS NOT NULL) GROUP BY log_id
), f AS (
    SELECT log_id, count(*) FILTER (WHERE length_cm IS NOT NULL) AS taped,
        count(*) FILTER (WHERE scale_kg IS NOT NULL) AS weighed FROM fish GROUP BY log_id
)
SELECT log_id AS log, label AS file, coalesce(boat, '') AS boat, coalesce(trips, 0) AS trips,
    strftime(first, '%Y-%m-%d') AS first, strftime(last, '%Y-%m-%d') AS last,
    coalesce(round(boat_hours, 6), 0) AS boat_hours, coalesce(round(line_hours, 6), 0) AS line_hours,
        coalesce(round(no_lines, 6), 0) AS no_lines_hours, coalesce(untimed, 0) AS trips_without_hours,
    coalesce(strikes, 0) AS strikes, coalesce(missed, 0) AS missed, coalesce(lost, 0) AS lost,
        coalesce(landed, 0) AS landed,
    coalesce(released, 0) AS released, coalesce(not_logged, 0) AS not_logged, coalesce(taped, 0) AS taped,
        coalesce(weighed, 0) AS weighed
FROM log LEFT JOIN t USING (log_id) LEFT JOIN h USING (log_id) LEFT JOIN e USING (log_id) LEFT JOIN s USING (log_id)
    LEFT JOIN u USING (log_id) LEFT JOIN f USING (log_id)
ORDER BY log_id
