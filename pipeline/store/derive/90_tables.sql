-- The season's tables.
CREATE OR REPLACE TEMP TABLE kept_bite AS
SELECT b.*, f.fish_hit FROM bite b
LEFT JOIN pair f ON f.strike_hit = b.hit_id
WHERE b.hit_id NOT IN (SELECT fish_hit FROM pair);

-- A day on which the lines went in and nobody wrote down when they came up is a trip.
CREATE OR REPLACE TEMP TABLE open_day AS
SELECT trip_key, boat, min(date) AS date FROM (
    SELECT coalesce(l.trip_key, min(s.trip_key), min(dl.trip_key), 'D|' || l.boat || '|' || l.date) AS trip_key,
        l.boat, l.date
    FROM labelled l LEFT JOIN trip_span s ON s.boat = l.boat AND l.date BETWEEN s.first_day AND s.last_day
    LEFT JOIN day_label dl ON dl.boat = l.boat AND dl.date = l.date
    WHERE l.kind IN ('legs', 'flat') AND l.start_s IS NOT NULL AND l.end_s IS NULL AND l.duration_s IS NULL
        AND l.date IS NOT NULL
    GROUP BY l.ord, l.trip_key, l.boat, l.date
) GROUP BY ALL;

CREATE OR REPLACE TEMP TABLE trip_all AS
WITH keys AS (
    SELECT trip_key FROM leg_trip UNION SELECT trip_key FROM trip_named UNION SELECT trip_key FROM open_day
    UNION SELECT trip_key FROM kept_bite WHERE trip_key IS NOT NULL
), label AS (
    SELECT trip_key, min(trip) AS trip, min(boat) AS boat, min(date) AS date, min(zone) AS zone FROM labelled
        WHERE trip_key IS NOT NULL GROUP BY ALL
), sheet AS (
    SELECT n.trip_key, min(r.boat) AS boat, first_known(date, ord) AS date, first_known(depart_at, ord) AS depart_at,
        first_known(return_at, ord) AS return_at, first_known(captain, ord) AS captain, first_known(port, ord) AS port,
        first_known(anglers, ord) AS anglers, first_known(zone, ord) AS zone, first_known(notes, ord) AS notes,
            min(ord) AS ord
    FROM trip_row r JOIN trip_named n USING (ord) GROUP BY ALL
), bites AS (
    SELECT trip_key, min(boat) AS boat, min(date) AS date FROM (
        SELECT trip_key, boat, date FROM kept_bite WHERE trip_key IS NOT NULL UNION ALL SELECT trip_key, boat, date
            FROM open_day
    ) GROUP BY ALL
), legs AS (
    SELECT t.trip_key, min(m.zone) AS zone, min(l.zone) AS log_zone FROM leg_trip t JOIN leg_made m USING (leg_id)
    JOIN log_place p ON p.place = m.ord // 100000000000000 JOIN log l USING (log_id) GROUP BY ALL
), said AS (
    -- what rows of legs and of a flat log say of their trip
    SELECT t.trip_key, first_known(c.on_date + to_seconds(e.depart_s), c.ord) AS depart_at,
        first_known(c.on_date + to_seconds(e.return_s), c.ord) AS return_at,
        first_known(e.captain, c.ord) AS captain, first_known(e.port, c.ord) AS port,
            first_known(e.anglers, c.ord) AS anglers
    FROM counted c JOIN placed_entry e USING (ord) JOIN leg_trip t ON t.leg_id = c.leg_id
    WHERE coalesce(e.captain, e.port, e.anglers, e.depart_s::VARCHAR, e.return_s::VARCHAR) IS NOT NULL GROUP BY ALL
)
SELECT k.trip_key, l.trip, coalesce(s.boat, l.boat, p.boat, b.boat) AS boat,
    coalesce(s.date, p.first_day, b.date, l.date) AS date,
    coalesce(s.depart_at, a.depart_at) AS depart_at,
    coalesce(s.return_at, a.return_at + CASE WHEN a.return_at < a.depart_at THEN INTERVAL 1 DAY ELSE INTERVAL 0 DAY
        END) AS return_at,
    coalesce(s.captain, a.captain) AS captain, coalesce(s.port, a.port) AS port,
        coalesce(s.anglers, a.anglers) AS anglers,
    coalesce(s.zone, g.zone, l.zone, g.log_zone) AS zone, s.notes,
    r.log_id, r.file, r.sheet, r."row"
FROM keys k LEFT JOIN label l USING (trip_key) LEFT JOIN sheet s USING (trip_key)
LEFT JOIN trip_span p USING (trip_key) LEFT JOIN bites b USING (trip_key) LEFT JOIN legs g USING (trip_key)
LEFT JOIN said a USING (trip_key)
LEFT JOIN trip_row r ON r.ord = s.ord;

CREATE OR REPLACE TEMP TABLE trip_made AS
SELECT row_number() OVER (ORDER BY date NULLS LAST, boat, trip, trip_key)::INTEGER AS trip_id,
    coalesce(trip, date || CASE WHEN row_number() OVER same > 1 THEN ' (' || row_number() OVER same || ')' ELSE ''
        END, 'not logged') AS name, *
FROM trip_all WINDOW same AS (PARTITION BY boat, date, trip ORDER BY trip_key);

DELETE FROM trip;
INSERT INTO trip BY NAME
SELECT trip_id, name AS trip, boat, date, depart_at, return_at, captain, port, anglers, zone, notes, log_id, file,
    sheet, "row" FROM trip_made;

DELETE FROM leg;
INSERT INTO leg BY NAME
WITH full_leg AS (
    SELECT m.*, t.trip_id, coalesce(m.zone, t.zone) AS tz
    FROM leg_made m JOIN leg_trip lt USING (leg_id) JOIN trip_made t ON t.trip_key = lt.trip_key
)
SELECT f.leg_id, f.trip_id, f.leg, f.start_at, f.end_at, f.start_at - to_seconds(z.offset_s) AS start_utc,
    f.start_at - to_seconds(z.offset_s) + to_microseconds((f.hours * 3600000000)::BIGINT) AS end_utc, f.hours,
        f.speed_kn, g.lines_out, f.heading_deg, f.lat, f.lon, f.area, f.sea_temp_c, f.wind, f.sea_state,
    f.approach, f.school_m, f.nearest_boat_m, f.tangle, f.tangled_lines, f.notes, c.log_id, o.label AS file, c.sheet,
        c."row"
FROM full_leg f
JOIN leg_lines g USING (leg_id)
JOIN placed_entry c ON c.ord = f.ord JOIN log o ON o.log_id = c.log_id
ASOF LEFT JOIN zone_offset z ON z.zone = f.tz AND z.local_from <= f.start_at
ORDER BY f.leg_id;

DELETE FROM line;
INSERT INTO line BY NAME
SELECT m.line_id, m.leg_id, m.line, m.hours, m.lure, m.lure_weight_g, m.colour, m.hooks, m.leader, m.line_class_kg,
    m.drag_kg,
    coalesce(m.setback_m, m.count_s * m.letout_kn * 1852 / 3600) AS setback_m, m.count_s, m.letout_kn, e.log_id,
        o.label AS file, e.sheet, e."row"
FROM line_made m JOIN placed_entry e USING (ord) JOIN log o ON o.log_id = e.log_id ORDER BY m.line_id;

DELETE FROM effort;
INSERT INTO effort BY NAME
SELECT leg_id, line_id, lines, hours, lines * hours AS line_hours FROM line_made
UNION ALL
SELECT m.leg_id, NULL, g.lines_out - g.described, m.hours, (g.lines_out - g.described) * m.hours
FROM leg_made m JOIN leg_lines g USING (leg_id) WHERE g.lines_out > g.described OR g.lines_out = 0
UNION ALL
SELECT m.leg_id, NULL, NULL, m.hours, 0 FROM leg_made m JOIN leg_lines g USING (leg_id) WHERE g.lines_out IS NULL
ORDER BY 1, 2 NULLS LAST;

CREATE OR REPLACE TEMP TABLE strike_made AS
SELECT row_number() OVER (ORDER BY b.at NULLS LAST, b.ord, b.sub)::INTEGER AS strike_id, t.trip_id, t.zone AS tz, b.*,
    CASE WHEN b.outcome IN ('hooked', 'not logged') AND b.fish_hit IS NOT NULL THEN f.outcome
         -- a count of boated fish may hold those let go; the fish's own row says which
         WHEN b.outcome = 'landed' AND b.origin = 'flat' AND f.outcome = 'released' THEN 'released'
         WHEN b.outcome = 'hooked' THEN 'not logged' ELSE b.outcome END AS became,
    CASE WHEN b.fish_hit IS NOT NULL OR b.outcome IN ('landed', 'released', 'lost', 'hooked') THEN true
         WHEN b.outcome = 'missed' THEN false END AS hooked
FROM kept_bite b LEFT JOIN trip_made t USING (trip_key)
LEFT JOIN bite f ON f.hit_id = b.fish_hit;

DELETE FROM strike;
INSERT INTO strike BY NAME
SELECT s.strike_id, s.trip_id, s.leg_id, s.line_id, s.at AS strike_at, s.at - to_seconds(z.offset_s) AS strike_utc,
    s.became AS outcome, s.hooked,
    s.species, s.species_logged, s.loss_cause, s.fight_s, s.angler, coalesce(s.speed_kn, f.speed_kn) AS speed_kn,
    -- of a row's own words, and of its fish's where the strike's row has none
    coalesce(s.line, f.line) AS line, coalesce(s.lure, f.lure) AS lure,
        coalesce(s.lure_weight_g, f.lure_weight_g) AS lure_weight_g,
    coalesce(s.colour, f.colour) AS colour, coalesce(s.setback_m, f.setback_m) AS setback_m,
    s.origin, s.log_id, s.file, s.sheet, s."row"
FROM strike_made s LEFT JOIN bite f ON f.hit_id = s.fish_hit
ASOF LEFT JOIN zone_offset z ON z.zone = s.tz AND z.local_from <= s.at
ORDER BY s.strike_id;

DELETE FROM fish;
INSERT INTO fish BY NAME
SELECT row_number() OVER (ORDER BY strike_id)::INTEGER AS fish_id, strike_id, trip_id, date, species, species_logged,
    length_cm, length_kind, girth_cm, scale_kg, weight_state, certified, kept, angler, log_id, file, sheet, "row"
FROM (
    -- the boat's day of the instant, not that of the row: past midnight they differ
    SELECT s.strike_id, s.trip_id, coalesce(s.at::DATE, f.at::DATE, f.date, s.date, m.start_at::DATE, m.on_date,
        t.date) AS date,
        coalesce(f.species, s.species) AS species, coalesce(f.species_logged, s.species_logged) AS species_logged,
        coalesce(f.length_cm, s.length_cm) AS length_cm, coalesce(f.length_kind, s.length_kind) AS length_kind,
        coalesce(f.girth_cm, s.girth_cm) AS girth_cm, coalesce(f.scale_kg, s.scale_kg) AS scale_kg,
        coalesce(f.weight_state, s.weight_state) AS weight_state, coalesce(f.certified, s.certified) AS certified,
        coalesce(f.kept, s.kept, CASE s.became WHEN 'landed' THEN true WHEN 'released' THEN false END) AS kept,
        coalesce(f.angler, s.angler) AS angler, coalesce(f.log_id, s.log_id) AS log_id,
            coalesce(f.file, s.file) AS file,
        coalesce(f.sheet, s.sheet) AS sheet, coalesce(f."row", s."row") AS "row"
    FROM strike_made s LEFT JOIN bite f ON f.hit_id = s.fish_hit LEFT JOIN trip_made t ON t.trip_id = s.trip_id
    LEFT JOIN leg_made m ON m.leg_id = s.leg_id
    WHERE s.became IN ('landed', 'released')
) ORDER BY strike_id;

DELETE FROM set_aside WHERE stage = 'join';
INSERT INTO set_aside BY NAME
WITH again AS (
    SELECT ord, of_ord, 'the same leg as ' AS what FROM leg_again
    UNION ALL SELECT ord, of_ord, 'the same line on a leg as ' FROM line_again
    UNION ALL SELECT ord, of_ord, CASE WHEN b.kind = 'fish' THEN 'the same fish as ' ELSE 'the same strike as ' END
        FROM struck_again JOIN base b USING (ord)
)
SELECT b.log_id, b.file, b.sheet, b."row", '' AS "column", '' AS cell,
    a.what || o.file || CASE WHEN o.sheet <> '' THEN ' ' || o.sheet ELSE ''
        END || ' row ' || o."row" || ': counted once' AS reason, 'join' AS stage
FROM again a JOIN base b USING (ord) JOIN base o ON o.ord = a.of_ord
UNION ALL
SELECT b.log_id, b.file, b.sheet, b."row", '', coalesce(b.line, b.lure, ''),
    'no leg in the logs for this line: its trip or leg is not there', 'join'
FROM base b WHERE b.kind = 'lines' AND b.ord NOT IN (SELECT ord FROM line_row)
ORDER BY 1, 3, 4;
