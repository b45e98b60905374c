-- Strikes and fish that are told twice. What a strike is told by - its leg, line
-- and instant - is known only now; the rows of two logs may say it in two ways.
CREATE OR REPLACE TEMP TABLE told AS
SELECT p.*, h.line_id, coalesce(p.held_at, coalesce(p.date, m.on_date) + to_seconds(p.time_s)) AS at,
    coalesce(p.species, lower(p.species_logged)) AS kind_of_fish,
    coalesce(p.length_cm, p.girth_cm, p.scale_kg) IS NOT NULL AND p.sub = 1 AS measured
FROM placed p JOIN hit_line h USING (hit_id) LEFT JOIN leg_made m ON m.leg_id = p.leg_id;

-- Only trips that several logs tell of can hold one twice.
CREATE OR REPLACE TEMP TABLE several AS
SELECT trip_key FROM told WHERE trip_key IS NOT NULL GROUP BY trip_key HAVING min(log_id) <> max(log_id);

-- The same strike in another log: trip, leg, line, instant, outcome and species
-- agree; without an instant also angler, fight and cause. The n-th of a log is
-- the n-th of the other.
CREATE OR REPLACE TEMP TABLE strike_again AS
WITH keyed_hit AS (
    SELECT hit_id, ord, log_id, concat_ws('|', trip_key, coalesce(leg_id, 0), coalesce(line_id, 0),
        coalesce(at::VARCHAR, '-'), outcome,
        coalesce(kind_of_fish, '-'), CASE WHEN at IS NULL
            THEN concat_ws('|', coalesce(angler, '-'), coalesce(fight_s, 0), loss_cause) END) AS key
    FROM told JOIN several USING (trip_key) WHERE origin <> 'fish'
), counted_off AS (
    SELECT *, row_number() OVER (PARTITION BY key, log_id ORDER BY hit_id) AS n FROM keyed_hit
)
SELECT hit_id, ord, of_hit, of_ord FROM (
    SELECT *, first_value(hit_id) OVER same AS of_hit, first_value(ord) OVER same AS of_ord,
        first_value(log_id) OVER same AS of_log
    FROM counted_off WINDOW same AS (PARTITION BY key, n ORDER BY hit_id)
) WHERE of_log <> log_id;

-- The same fish in another log is told by its measures in place of the outcome,
-- without these and an instant by the strike's number and the angler; a flat row
-- with measures is a fish too.
CREATE OR REPLACE TEMP TABLE fish_again AS
WITH keyed_fish AS (
    SELECT hit_id, ord, log_id, concat_ws('|', trip_key, coalesce(leg_id, 0), coalesce(line_id, 0),
        coalesce(at::VARCHAR, '-'),
        coalesce(kind_of_fish, '-'), coalesce(round(length_cm, 2), 0), coalesce(round(girth_cm, 2), 0),
            coalesce(round(scale_kg, 3), 0),
        CASE WHEN at IS NULL AND NOT measured THEN concat_ws('|', coalesce(strike, '-'), coalesce(angler, '-'))
            END) AS key
    FROM told JOIN several USING (trip_key)
    WHERE (origin = 'fish' OR measured) AND hit_id NOT IN (SELECT hit_id FROM strike_again)
), counted_off AS (
    SELECT *, row_number() OVER (PARTITION BY key, log_id ORDER BY hit_id) AS n FROM keyed_fish
)
SELECT hit_id, ord, of_hit, of_ord FROM (
    SELECT *, first_value(hit_id) OVER same AS of_hit, first_value(ord) OVER same AS of_ord,
        first_value(log_id) OVER same AS of_log
    FROM counted_off WINDOW same AS (PARTITION BY key, n ORDER BY hit_id)
) WHERE of_log <> log_id;

-- The strikes of a row that was entered twice, as a form that was sent twice: its several
-- legs are those of another row of the sheet, and so is the strike.
CREATE OR REPLACE TEMP TABLE sent_again AS
WITH ran AS (
    SELECT b.log_id, b.sheet, b."row", list_sort(list(DISTINCT l.leg_id)) AS legs FROM leg_row l
        JOIN base b USING (ord) GROUP BY ALL
)
SELECT DISTINCT b.log_id, b.sheet, b."row", o."row" AS of_row
FROM leg_again a JOIN base b USING (ord) JOIN base o ON o.ord = a.of_ord AND o.log_id = b.log_id
    AND o.sheet = b.sheet AND o."row" < b."row"
JOIN ran r ON r.log_id = b.log_id AND r.sheet = b.sheet AND r."row" = b."row"
JOIN ran f ON f.log_id = b.log_id AND f.sheet = b.sheet AND f."row" = o."row" AND f.legs = r.legs
WHERE len(r.legs) > 1;

CREATE OR REPLACE TEMP TABLE row_again AS
WITH keyed_hit AS (
    SELECT hit_id, ord, h.log_id, h.sheet, h."row", coalesce(r.of_row, h."row") AS of_row,
        concat_ws('|', coalesce(time_s, -1), outcome, coalesce(kind_of_fish, '-'), coalesce(h.line, '-'),
            coalesce(round(length_cm, 2), 0), coalesce(round(girth_cm, 2), 0), coalesce(round(scale_kg, 3), 0)) AS key
    FROM told h LEFT JOIN sent_again r ON r.log_id = h.log_id AND r.sheet = h.sheet AND r."row" = h."row"
), counted_off AS (
    SELECT *, row_number() OVER (PARTITION BY log_id, sheet, "row", key ORDER BY hit_id) AS n FROM keyed_hit
)
SELECT a.hit_id, a.ord, o.hit_id AS of_hit, o.ord AS of_ord
FROM counted_off a JOIN counted_off o ON o.log_id = a.log_id AND o.sheet = a.sheet AND o."row" = a.of_row
    AND o.key = a.key AND o.n = a.n
WHERE a.of_row <> a."row";

CREATE OR REPLACE TEMP TABLE hit_again AS
SELECT * FROM strike_again UNION ALL SELECT * FROM fish_again
UNION ALL SELECT * FROM row_again WHERE hit_id NOT IN (SELECT hit_id FROM strike_again UNION ALL SELECT hit_id
    FROM fish_again);

CREATE OR REPLACE TEMP TABLE struck_again AS
SELECT ord, min(of_ord) AS of_ord FROM hit_again GROUP BY ord;

-- A flat row's counts and a sheet of strikes may tell the same strikes: where both are told,
-- only what the counts have over is added: on a leg that has both, and of a row that counts a
-- whole trip. Between two logs this holds for counts alone, which have no instant. Counts of nothing but bites that
-- were missed, or lost, tell of none of the strikes of a list that has no such bites: they stand beside it.
CREATE OR REPLACE TEMP TABLE surplus AS
WITH detail AS ( -- not those told by a row that counts: it counts what is over
    SELECT * FROM told WHERE origin = 'strikes' AND hit_id NOT IN (SELECT hit_id FROM hit_again)
        AND ord // 128 NOT IN (SELECT ord // 128 FROM told WHERE origin = 'flat')
), counts AS (
    SELECT log_id, sheet, list(DISTINCT outcome) AS fates FROM told WHERE origin = 'flat' GROUP BY ALL
), beside AS (
    SELECT c.log_id, c.sheet FROM counts c JOIN log o USING (log_id) WHERE list_has_all(['missed', 'lost'], c.fates)
      AND NOT EXISTS (SELECT 1 FROM detail d JOIN log x ON x.log_id = d.log_id
          WHERE (d.log_id = c.log_id OR x.folder = o.folder)
            AND (list_contains(c.fates, d.outcome) OR d.outcome NOT IN ('landed', 'released', 'lost')))
), scope AS (
    SELECT 'leg' AS of, leg_id AS id, * FROM detail WHERE leg_id IS NOT NULL
    UNION ALL SELECT 'trip', trip_key, * FROM detail WHERE trip_key IS NOT NULL
), details AS (
    SELECT of, id, count(*) AS n, arg_min(log_id, ord) AS log_id FROM scope GROUP BY of, id
), counted AS (
    SELECT 'leg' AS of, leg_id AS id, * FROM told WHERE leg_id IS NOT NULL
    UNION ALL SELECT 'trip', trip_key, * FROM told WHERE trip_key IS NOT NULL AND leg_id IS NULL
)
SELECT hit_id FROM (
    SELECT b.hit_id, d.n AS details, row_number() OVER (PARTITION BY b.of, b.id ORDER BY
        CASE b.outcome WHEN 'landed' THEN 1 WHEN 'released' THEN 2 WHEN 'lost' THEN 3 WHEN 'hooked' THEN 4
            WHEN 'missed' THEN 5 ELSE 6 END, b.hit_id) AS n
    FROM counted b JOIN details d USING (of, id)
    WHERE b.origin = 'flat' AND NOT b.measured AND (b.log_id = d.log_id OR b.at IS NULL)
      AND (b.log_id, b.sheet) NOT IN (SELECT (log_id, sheet) FROM beside)
      -- a count that a strike of the other sheet was found equal to stands for it
      AND b.hit_id NOT IN (SELECT hit_id FROM hit_again UNION ALL SELECT of_hit FROM hit_again)
) WHERE n <= details;

CREATE OR REPLACE TEMP TABLE bite AS
SELECT * FROM told WHERE hit_id NOT IN (SELECT hit_id FROM hit_again) AND hit_id NOT IN (SELECT hit_id FROM surplus);
