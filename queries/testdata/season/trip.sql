-- Trips with the start of their first leg in place of their id.
SELECT t.boat, (SELECT min(l.start_at) FROM leg l WHERE l.trip_id = t.trip_id) AS first_start,
    t.trip, t.date, t.depart_at, t.return_at, t.captain, t.port, t.anglers, t.zone, t.notes
FROM trip t ORDER BY t.trip_id
