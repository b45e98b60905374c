-- Lines as logged: a flat row is one (or as many as it says are out, where it
-- names none); a row of a lines sheet is one on its leg, or on every leg of its
-- trip where it names no leg.
CREATE OR REPLACE TEMP TABLE line_row AS
SELECT c.ord, m.leg_id, 0 AS wide, c.kind, c.line, c.hours,
    CASE WHEN c.line IS NULL THEN coalesce(c.lines_out, 1) ELSE 1 END AS lines,
    c.lure, c.lure_weight_g, c.colour, c.hooks, c.leader, c.line_class_kg, c.drag_kg,
    c.setback_m, c.count_s, c.letout_kn, c.log_id, c.file, c.sheet, c."row"
FROM counted c JOIN leg_made m USING (leg_key)
WHERE c.kind = 'flat' AND coalesce(c.line, c.lure, c.colour, c.hooks, c.leader, c.lure_weight_g::VARCHAR, c.setback_m::VARCHAR, c.count_s::VARCHAR) IS NOT NULL
UNION ALL
SELECT l.ord, t.leg_id, (l.leg IS NULL)::INT, l.kind, l.line, t.hours, 1,
    l.lure, l.lure_weight_g, l.colour, l.hooks, l.leader, l.line_class_kg, l.drag_kg,
    l.setback_m, l.count_s, l.letout_kn, l.log_id, l.file, l.sheet, l."row"
FROM labelled l JOIN timed_leg t
    ON ((l.trip_key IS NOT NULL AND t.trip_key = l.trip_key) OR (l.trip_key IS NULL AND t.boat = l.boat AND t.on_date = l.date))
    AND (l.leg IS NULL OR lower(l.leg) = lower(t.leg))
WHERE l.kind = 'lines';

CREATE OR REPLACE TEMP TABLE line_keyed AS
SELECT *, CASE
    WHEN line IS NOT NULL THEN 'line|' || lower(line)
    WHEN kind = 'flat' THEN concat_ws('|', 'gear', lower(lure), lower(colour), lure_weight_g, setback_m, count_s)
    ELSE 'row|' || ord END AS line_key
FROM line_row;

CREATE OR REPLACE TEMP TABLE line_ranked AS
SELECT *, first_value(ord) OVER pick AS of_ord, first_value(wide) OVER pick AS of_wide,
    first_value(kind) OVER pick AS of_kind, first_value(log_id) OVER pick AS of_log
FROM line_keyed WINDOW pick AS (PARTITION BY leg_id, line_key ORDER BY wide, ord);

CREATE OR REPLACE TEMP TABLE line_again AS
SELECT ord, min(of_ord) AS of_ord FROM line_ranked
WHERE ord <> of_ord AND wide = of_wide AND NOT (kind = 'flat' AND of_kind = 'flat' AND log_id = of_log)
GROUP BY ord;

CREATE OR REPLACE TEMP TABLE line_made AS
SELECT row_number() OVER (ORDER BY leg_id, ord)::INTEGER AS line_id, *
FROM (
    SELECT leg_id, line_key, min(ord) AS ord, min(line) AS line, max(hours) AS hours, max(lines) AS lines,
        first_known(lure, ord) AS lure, first_known(lure_weight_g, ord) AS lure_weight_g,
        first_known(colour, ord) AS colour, first_known(hooks, ord) AS hooks, first_known(leader, ord) AS leader,
        first_known(line_class_kg, ord) AS line_class_kg, first_known(drag_kg, ord) AS drag_kg,
        first_known(setback_m, ord) AS setback_m, first_known(count_s, ord) AS count_s, first_known(letout_kn, ord) AS letout_kn,
        arg_min(log_id, ord) AS log_id, arg_min(file, ord) AS file, arg_min(sheet, ord) AS sheet, arg_min("row", ord) AS "row"
    FROM line_ranked
    -- rows of one flat log share a line and complete each other; elsewhere the first counts
    WHERE ord = of_ord OR (kind = 'flat' AND of_kind = 'flat' AND log_id = of_log)
    GROUP BY leg_id, line_key
);

-- Each strike's line: a flat row's own; else by its name on the leg; else by
-- its lure, where one line ran it; else the only line out.
CREATE OR REPLACE TEMP TABLE leg_lines AS
SELECT m.leg_id, greatest(m.lines_out, sum(l.lines)) AS lines_out, coalesce(sum(l.lines), 0) AS described, min(l.line_id) AS first_line
FROM leg_made m LEFT JOIN line_made l USING (leg_id) GROUP BY m.leg_id, m.lines_out;

CREATE OR REPLACE TEMP TABLE hit_line AS
WITH own AS (
    SELECT p.hit_id, min(m.line_id) AS line_id
    FROM placed p JOIN line_keyed k ON k.ord = p.ord AND k.leg_id = p.leg_id JOIN line_made m ON m.leg_id = k.leg_id AND m.line_key = k.line_key
    WHERE p.origin = 'flat' GROUP BY ALL
), named AS (
    SELECT p.hit_id, min(m.line_id) AS line_id
    FROM placed p JOIN line_made m ON m.leg_id = p.leg_id AND lower(m.line) = lower(p.line)
    WHERE p.origin <> 'flat' GROUP BY ALL HAVING count(*) = 1
), lured AS (
    SELECT p.hit_id, min(m.line_id) AS line_id
    FROM placed p JOIN line_made m ON m.leg_id = p.leg_id AND lower(m.lure) = lower(p.lure)
    WHERE p.origin <> 'flat' AND p.line IS NULL GROUP BY ALL HAVING count(*) = 1
)
SELECT p.hit_id, coalesce(o.line_id, n.line_id, u.line_id,
    CASE WHEN p.line IS NULL AND p.lure IS NULL AND g.lines_out = 1 AND g.described = 1 THEN g.first_line END) AS line_id
FROM placed p
LEFT JOIN own o USING (hit_id) LEFT JOIN named n USING (hit_id) LEFT JOIN lured u USING (hit_id)
LEFT JOIN leg_lines g ON g.leg_id = p.leg_id;
