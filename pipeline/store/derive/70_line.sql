-- Sheets in which a stretch's first row says how many lines were out and its strikes stand on
-- rows beneath, or in which each bite's row, with its time, says again how many were out: the
-- lure of a row is that of one line, one of those out.
CREATE OR REPLACE TEMP TABLE strikewise AS
SELECT DISTINCT log_id, sheet FROM (
    SELECT c.leg_id, e.log_id, e.sheet FROM counted c JOIN placed_entry e USING (ord)
    WHERE c.kind = 'flat' AND c.line IS NULL
    GROUP BY c.leg_id, e.log_id, e.sheet HAVING count(e.lines_out) = 1 AND count(*) > 1
        AND arg_min(e.lines_out IS NOT NULL, c.ord) AND max(e.lines_out) > 1)
UNION
SELECT log_id, sheet FROM (
    SELECT e.log_id, e.sheet, count(*) AS n, count(DISTINCT e.lines_out) AS told, min(e.lines_out) AS lines,
        count(e.time_s) AS timed,
        count(DISTINCT concat_ws('|', lower(e.lure), lower(e.colour), e.lure_weight_g)) AS lures
    FROM counted c JOIN placed_entry e USING (ord) WHERE c.kind = 'flat' AND c.line IS NULL
        GROUP BY c.leg_id, e.log_id, e.sheet)
WHERE n > 1 GROUP BY log_id, sheet
HAVING max(told) = 1 AND min(lines) > 1 AND max(lures) > 1 AND 2 * sum(timed) > sum(n);

-- Sheets whose rows are of bites and name only lines that were struck: most stretches that say how many were out had
-- more out than their rows name, so that the names of a stretch that does not say tell of no number.
CREATE OR REPLACE TEMP TABLE partly_named AS
SELECT log_id, sheet FROM (
    SELECT e.log_id, e.sheet, max(e.lines_out) > count(DISTINCT lower(c.line)) AS more
    FROM counted c JOIN placed_entry e USING (ord) WHERE c.kind = 'flat'
    GROUP BY c.leg_id, e.log_id, e.sheet HAVING count(c.line) > 0 AND count(e.lines_out) > 0
        AND (count(coalesce(e.strikes_n, e.hooked_n, e.landed_n)) = 0
            OR count(e.time_s) > 0 AND max(greatest(e.strikes_n, e.hooked_n, e.landed_n)) <= 1))
GROUP BY log_id, sheet HAVING 2 * count(*) FILTER (more) > count(*);

-- Lines as logged: a flat row is one (or as many as it says are out, where it
-- names none; where a sheet counts its lines and a leg's one row does not, or a sheet has a row a leg
-- and says no more of lines than a lure, nobody knows how many); a row of a lines sheet is one on its
-- leg, or on every leg of its trip where it names no leg.
CREATE OR REPLACE TEMP TABLE lures_alone AS
SELECT log_id, sheet FROM (
    SELECT e.log_id, e.sheet, count(*) AS n, count(coalesce(c.line, e.lines_out::VARCHAR, e.hooks, e.leader,
        e.lure_weight_g::VARCHAR, e.setback_m::VARCHAR, e.count_s::VARCHAR, e.line_class_kg::VARCHAR,
        e.drag_kg::VARCHAR)) AS gear
    FROM counted c JOIN placed_entry e USING (ord) WHERE c.kind = 'flat' GROUP BY c.leg_id, e.log_id, e.sheet)
GROUP BY log_id, sheet HAVING max(n) = 1 AND max(gear) = 0;

CREATE OR REPLACE TEMP TABLE uncounted AS
SELECT c.leg_id FROM counted c JOIN placed_entry e USING (ord)
SEMI JOIN lures_alone a ON a.log_id = e.log_id AND a.sheet = e.sheet WHERE c.kind = 'flat'
UNION
SELECT c.leg_id FROM counted c JOIN placed_entry e USING (ord)
SEMI JOIN (SELECT log_id, sheet FROM labelled WHERE kind = 'flat' AND lines_out IS NOT NULL) k ON k.log_id = e.log_id
    AND k.sheet = e.sheet
LEFT JOIN strikewise w ON w.log_id = e.log_id AND w.sheet = e.sheet
LEFT JOIN partly_named q ON q.log_id = e.log_id AND q.sheet = e.sheet
GROUP BY c.leg_id HAVING (count(*) = 1 OR count(w.log_id) > 0 OR count(q.log_id) > 0) AND count(e.lines_out) = 0;

-- A row of a lines sheet may say from when to when the line was out: a lure that was changed.
CREATE OR REPLACE TEMP TABLE line_own AS
SELECT ord, (end_s - start_s) / 3600.0 AS hours FROM labelled
WHERE kind = 'lines' AND start_s IS NOT NULL AND end_s > start_s;

CREATE OR REPLACE TEMP TABLE line_row AS
SELECT c.ord, c.log_id, c.leg_id, 0 AS wide, c.kind, c.line, least(c.hours, m.hours) AS hours,
    CASE WHEN c.line IS NULL AND w.log_id IS NULL THEN coalesce(e.lines_out, 1) ELSE 1 END AS lines, CASE
        WHEN c.line IS NOT NULL THEN lower(c.line)
        ELSE concat_ws('|', 'gear', lower(e.lure), lower(e.colour), e.lure_weight_g, e.setback_m, e.count_s)
            END AS line_key
FROM counted c JOIN placed_entry e USING (ord) JOIN leg_made m ON m.leg_id = c.leg_id
LEFT JOIN strikewise w ON w.log_id = e.log_id AND w.sheet = e.sheet
LEFT JOIN partly_named q ON q.log_id = e.log_id AND q.sheet = e.sheet
WHERE c.kind = 'flat' AND coalesce(c.line, e.lure, e.colour, e.hooks, e.leader, e.lure_weight_g::VARCHAR,
    e.setback_m::VARCHAR, e.count_s::VARCHAR) IS NOT NULL
    AND NOT (e.lines_out IS NULL AND c.leg_id IN (SELECT leg_id FROM uncounted)
        AND (c.line IS NULL OR q.log_id IS NOT NULL))
UNION ALL
SELECT l.ord, l.log_id, t.leg_id, (l.leg IS NULL)::INT, l.kind, l.line, coalesce(o.hours, t.hours), 1,
    coalesce(lower(l.line), 'row|' || l.ord) || if(o.hours IS NULL, '', chr(31) || l.start_s || '|' || l.ord)
FROM labelled l LEFT JOIN line_own o USING (ord) JOIN timed_leg t
    ON ((l.trip_key IS NOT NULL AND t.trip_key = l.trip_key)
        OR (l.trip_key IS NULL AND t.boat = l.boat AND t.on_date = l.date))
    AND (l.leg IS NULL OR lower(l.leg) = lower(t.leg))
WHERE l.kind = 'lines';

-- Rows of bites that name more lures and places than lines were out tell that lures were changed: nobody knows
-- which ran for how long, and the number that is written holds.
DELETE FROM line_row WHERE kind = 'flat' AND line IS NULL AND leg_id IN (
    SELECT r.leg_id FROM line_row r JOIN placed_entry e USING (ord) JOIN leg_made m ON m.leg_id = r.leg_id
    SEMI JOIN strikewise w ON w.log_id = e.log_id AND w.sheet = e.sheet
    WHERE coalesce(e.time_s::VARCHAR, e.outcome) IS NOT NULL
    GROUP BY r.leg_id, m.lines_out HAVING count(DISTINCT r.line_key) > m.lines_out);

-- A line that stands more than once on a leg counts once: its leg's own row
-- before one for the whole trip, then the earliest. Rows of one flat log share a
-- line and complete each other; elsewhere the first counts.
CREATE OR REPLACE TEMP TABLE line_group AS
SELECT leg_id, line_key, count(*) AS n, arg_min(ord, wide * 9000000000000000000 // 2 + ord) AS of_ord,
    max(hours) AS hours, max(lines) AS lines
FROM line_row GROUP BY leg_id, line_key;

CREATE OR REPLACE TEMP TABLE line_shared AS
SELECT r.ord, r.leg_id, r.line_key, g.of_ord,
    r.ord = g.of_ord OR (r.kind = 'flat' AND f.kind = 'flat' AND r.log_id = f.log_id) AS joins, r.wide = f.wide AS alike
FROM line_row r JOIN line_group g USING (leg_id, line_key)
JOIN line_row f ON f.ord = g.of_ord AND f.leg_id = g.leg_id
WHERE g.n > 1;

CREATE OR REPLACE TEMP TABLE line_again AS
SELECT ord, min(of_ord) AS of_ord FROM line_shared WHERE NOT joins AND alike GROUP BY ord;

CREATE OR REPLACE TEMP TABLE line_made AS
WITH alone AS (
    SELECT g.leg_id, g.line_key, g.of_ord AS ord, e.line, g.hours, g.lines, e.lure, e.lure_weight_g, e.colour,
        e.hooks, e.leader,
        e.line_class_kg, e.drag_kg, e.setback_m, e.count_s, e.letout_kn
    FROM line_group g JOIN placed_entry e ON e.ord = g.of_ord WHERE g.n = 1
), shared AS (
    SELECT s.leg_id, s.line_key, min(s.ord) AS ord, min(e.line) AS line, any_value(g.hours) AS hours,
        any_value(g.lines) AS lines,
        first_known(e.lure, s.ord) AS lure, first_known(e.lure_weight_g, s.ord) AS lure_weight_g,
        first_known(e.colour, s.ord) AS colour, first_known(e.hooks, s.ord) AS hooks,
            first_known(e.leader, s.ord) AS leader,
        first_known(e.line_class_kg, s.ord) AS line_class_kg, first_known(e.drag_kg, s.ord) AS drag_kg,
        first_known(e.setback_m, s.ord) AS setback_m, first_known(e.count_s, s.ord) AS count_s,
            first_known(e.letout_kn, s.ord) AS letout_kn
    FROM line_shared s JOIN line_group g USING (leg_id, line_key) JOIN placed_entry e ON e.ord = s.ord
    WHERE s.joins GROUP BY s.leg_id, s.line_key
)
SELECT row_number() OVER (ORDER BY leg_id, ord)::INTEGER AS line_id, *
    FROM (SELECT * FROM alone UNION ALL SELECT * FROM shared);

-- Each strike's line: a flat row's own; else by its name on the leg; else by
-- its lure, where one line ran it; else the only line out.
CREATE OR REPLACE TEMP TABLE leg_lines AS
SELECT m.leg_id, greatest(m.lines_out, n.lines) AS lines_out, coalesce(n.lines, 0) AS described, n.first_line
FROM leg_made m LEFT JOIN (
    -- lures that followed one another on a line are one line
    SELECT leg_id, coalesce(sum(lines) FILTER (NOT contains(line_key, chr(31))), 0)
        + count(DISTINCT split_part(line_key, chr(31), 1)) FILTER (contains(line_key, chr(31))) AS lines,
        min(line_id) AS first_line
    FROM line_made GROUP BY leg_id) n USING (leg_id);

CREATE OR REPLACE TEMP TABLE hit_line AS
WITH own AS (
    SELECT p.hit_id, min(m.line_id) AS line_id
    FROM placed p JOIN line_row k ON k.ord = p.ord AND k.leg_id = p.leg_id
        JOIN line_made m ON m.leg_id = k.leg_id AND m.line_key = k.line_key
    WHERE p.origin = 'flat' GROUP BY ALL
), named AS (
    SELECT p.hit_id, min(m.line_id) AS line_id
    FROM placed p JOIN line_made m ON m.leg_id = p.leg_id AND lower(m.line) = lower(p.line)
    WHERE p.origin <> 'flat' GROUP BY ALL HAVING count(*) = 1
), lured_there AS (
    SELECT p.hit_id, min(m.line_id) AS line_id
    FROM placed p JOIN line_made m ON m.leg_id = p.leg_id AND lower(m.line) = lower(p.line)
        AND lower(m.lure) = lower(p.lure)
    WHERE p.origin <> 'flat' GROUP BY ALL
), lured AS (
    SELECT p.hit_id, min(m.line_id) AS line_id
    FROM placed p JOIN line_made m ON m.leg_id = p.leg_id AND lower(m.lure) = lower(p.lure)
    WHERE p.origin <> 'flat' AND p.line IS NULL GROUP BY ALL HAVING count(*) = 1
)
SELECT p.hit_id, coalesce(o.line_id, n.line_id, h.line_id, u.line_id,
    CASE WHEN p.line IS NULL AND p.lure IS NULL AND g.lines_out = 1
        AND g.described = 1 THEN g.first_line END) AS line_id
FROM placed p
LEFT JOIN own o USING (hit_id) LEFT JOIN named n USING (hit_id) LEFT JOIN lured_there h USING (hit_id)
    LEFT JOIN lured u USING (hit_id)
LEFT JOIN leg_lines g ON g.leg_id = p.leg_id;
