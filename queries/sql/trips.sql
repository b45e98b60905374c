-- Every trip with its effort, strikes and heaviest fish.
WITH legs AS (
    SELECT trip_id, count(*) AS legs, sum(hours) AS boat_hours FROM leg GROUP BY trip_id
), lines AS (
    SELECT l.trip_id, sum(e.line_hours) AS line_hours FROM effort e JOIN leg l USING (leg_id) GROUP BY l.trip_id
), strikes AS (
    SELECT trip_id, count(*) AS strikes, count(*) FILTER (WHERE outcome = 'landed') AS landed,
        count(*) FILTER (WHERE outcome = 'released') AS released
    FROM strike GROUP BY trip_id
), heaviest AS (
    SELECT f.trip_id, max(e.weight_kg) AS kg, arg_max(e.method, e.weight_kg) AS method
    FROM fish f JOIN estimate e ON e.fish_id = f.fish_id AND e.rank = 1 GROUP BY f.trip_id
)
SELECT t.trip, t.boat, strftime(t.date, '%Y-%m-%d') AS date, coalesce(g.legs, 0) AS legs,
    round(coalesce(g.boat_hours, 0), 6) AS boat_hours, round(coalesce(n.line_hours, 0), 6) AS line_hours,
    coalesce(s.strikes, 0) AS strikes, coalesce(s.landed, 0) AS landed, coalesce(s.released, 0) AS released,
    h.kg AS heaviest_kg, h.method AS heaviest_method
FROM trip t LEFT JOIN legs g USING (trip_id) LEFT JOIN lines n USING (trip_id)
LEFT JOIN strikes s USING (trip_id) LEFT JOIN heaviest h USING (trip_id)
ORDER BY t.trip_id
