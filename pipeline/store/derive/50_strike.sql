-- Rows without counts under one that counts, of the same stretch of a flat sheet: further fish
-- of those that it counts, where its counts have room for all of them; else strikes beside it.
-- A row that names no stretch is of the one above it on its day.
CREATE OR REPLACE TEMP TABLE counts_rest AS
WITH own AS ( -- sheets that count no landed fish: where they say one, it is the row's own, which has measures
    SELECT log_id, sheet FROM labelled WHERE kind = 'flat' GROUP BY log_id, sheet
    HAVING bool_and(landed_n IS NULL OR landed_n = 1 AND strikes_n > 1 AND outcome IS NULL
        AND coalesce(length_cm, scale_kg) IS NOT NULL)
), of_stretch AS (
    SELECT *, last_value(if(coalesce(leg, start_s::VARCHAR, end_s::VARCHAR) IS NULL, NULL,
        {leg: leg, start_s: start_s, end_s: end_s}) IGNORE NULLS) OVER (
            PARTITION BY log_id, sheet, trip_key, date ORDER BY "row", part NULLS FIRST) AS stretch
    FROM labelled WHERE kind = 'flat'
), f AS (
    SELECT ord, (log_id, sheet) IN (SELECT (log_id, sheet) FROM own) AS own_landed, outcome, kept,
        coalesce(length_cm, girth_cm, scale_kg) IS NOT NULL AS taped, line, strikes_n,
        hooked_n, landed_n, released_n, lost_n, missed_n,
        coalesce(strikes_n, hooked_n, landed_n, released_n, lost_n, missed_n) IS NOT NULL AS counts,
        coalesce(outcome, species_logged, length_cm::VARCHAR, girth_cm::VARCHAR,
            scale_kg::VARCHAR) IS NOT NULL AS tells,
        last_value(if(coalesce(strikes_n, hooked_n, landed_n, released_n, lost_n, missed_n) IS NOT NULL, ord,
            NULL) IGNORE NULLS) OVER (
            PARTITION BY log_id, sheet, trip_key, date, stretch ORDER BY "row", part NULLS FIRST) AS of_ord
    FROM of_stretch
), below AS (
    SELECT f.of_ord, coalesce(f.outcome, CASE WHEN f.kept THEN 'landed' WHEN NOT f.kept THEN 'released' WHEN f.taped
        THEN 'landed' END) AS outcome
    FROM f JOIN f o ON o.ord = f.of_ord
    WHERE NOT f.counts AND f.tells AND (f.line IS NULL OR o.line IS NULL OR f.line = o.line)
), n AS (
    SELECT of_ord AS ord, count(*) AS strikes, count(*) FILTER (WHERE outcome IS DISTINCT FROM 'missed') AS hooked,
        count(*) FILTER (WHERE outcome = 'landed') AS landed, count(*) FILTER (WHERE outcome = 'released') AS released,
        count(*) FILTER (WHERE outcome = 'lost') AS lost, count(*) FILTER (WHERE outcome = 'missed') AS missed
    FROM below GROUP BY of_ord
)
SELECT f.ord, f.strikes_n - n.strikes AS strikes_n, f.hooked_n - n.hooked AS hooked_n,
    if(f.own_landed, f.landed_n, f.landed_n - n.landed) AS landed_n,
    f.released_n - n.released AS released_n, f.lost_n - n.lost AS lost_n, f.missed_n - n.missed AS missed_n
FROM f JOIN n USING (ord)
WHERE coalesce(f.strikes_n - n.strikes >= f.tells::INT, true)
    AND coalesce(f.hooked_n - n.hooked >= (coalesce(f.outcome, 'missed') <> 'missed')::INT, true)
    AND (f.own_landed OR coalesce(f.landed_n >= n.landed, true)) AND coalesce(f.released_n >= n.released, true)
        AND coalesce(f.lost_n >= n.lost, true)
    AND coalesce(f.missed_n >= n.missed, true);

-- Sheets in which the fish of a stretch stand on rows of their own, the first on the stretch's own row:
-- what that says of an outcome is said of one fish.
CREATE OR REPLACE TEMP TABLE fishwise AS
SELECT DISTINCT l.log_id, l.sheet FROM counts_rest r JOIN labelled l USING (ord)
WHERE coalesce(l.outcome, l.kept::VARCHAR) IS NOT NULL;

-- Sheets that count misses and nothing else, on rows of fish none of which is said to be missed: each row is of a fish,
-- and the misses are beside it.
CREATE OR REPLACE TEMP TABLE missed_beside AS
SELECT log_id, sheet FROM labelled WHERE kind = 'flat' GROUP BY log_id, sheet
HAVING count(coalesce(strikes_n, hooked_n, lost_n)) = 0 AND count(*) FILTER (outcome = 'missed') = 0
    AND count(*) FILTER (outcome IN ('landed', 'released')) > 0;

-- Strikes as logged, one row each; a flat row's counts nest and are taken apart.
-- 'hooked' is a hook-up of which nobody wrote down what became.
CREATE OR REPLACE TEMP TABLE flat_count AS
WITH c AS (
    SELECT l.* REPLACE (
        if(r.ord IS NULL, l.strikes_n, r.strikes_n) AS strikes_n,
            if(r.ord IS NULL, l.hooked_n, r.hooked_n) AS hooked_n,
                if(r.ord IS NULL, l.landed_n, r.landed_n) AS landed_n,
        if(r.ord IS NULL, l.released_n, r.released_n) AS released_n, if(r.ord IS NULL, l.lost_n, r.lost_n) AS lost_n,
            if(r.ord IS NULL, l.missed_n, r.missed_n) AS missed_n)
    FROM labelled l LEFT JOIN counts_rest r USING (ord) WHERE l.kind = 'flat'
), t AS (
    -- of one hooked fish that no count follows further, the row's words say what became;
    -- of several, one was at the boat where the row has its measures
    SELECT ord, boat, trip_key, date, leg, line, lure, time_s, outcome, species, species_logged, loss_cause, fight_s,
        angler, speed_kn, strike_speed_kn,
        lure_weight_g, colour, setback_m, length_cm, length_kind, girth_cm, scale_kg, weight_state, certified, kept,
            log_id, file, sheet, "row", zone,
        strikes_n, hooked_n, landed_n, released_n, lost_n, missed_n,
        CASE WHEN landed_n IS NULL AND released_n IS NULL THEN
            CASE WHEN coalesce(outcome, kept::VARCHAR) IS NOT NULL AND strikes_n > 0 AND hooked_n IS NULL
                      AND lost_n IS NULL AND ((log_id, sheet) IN (SELECT (log_id, sheet) FROM fishwise)
                          OR outcome IS NULL AND species_logged IS NOT NULL) -- of several it is one at least
                     THEN coalesce(outcome, if(kept, 'landed', 'released'))
                 -- the row's own fish, where the bites that were missed and lost leave room for it
                 WHEN outcome IN ('landed', 'released') AND hooked_n IS NULL AND lost_n IS NOT NULL
                      AND (strikes_n - lost_n - coalesce(missed_n, 0) = 1 OR strikes_n - lost_n
                          - coalesce(missed_n, 0) > 0 AND (log_id, sheet) IN (SELECT (log_id, sheet) FROM fishwise))
                     THEN outcome
                 WHEN outcome IS NULL AND coalesce(length_cm, girth_cm, scale_kg) IS NOT NULL
                     AND hooked_n > coalesce(lost_n, 0) THEN if(kept = false, 'released', 'landed')
                 -- misses that stand beside a fish are not that fish
                 WHEN coalesce(strikes_n, hooked_n, lost_n) IS NULL AND missed_n > 0
                      AND (outcome IN ('landed', 'released')
                          OR outcome = 'lost' AND (log_id, sheet) IN (SELECT (log_id, sheet) FROM missed_beside))
                     THEN outcome
                 WHEN hooked_n IS DISTINCT FROM 1 OR lost_n IS NOT NULL THEN NULL
                 WHEN outcome IN ('landed', 'released', 'lost') THEN outcome
                 WHEN outcome IS NULL AND kept THEN 'landed' WHEN outcome IS NULL AND NOT kept THEN 'released' END
        END AS told
    FROM c
), n AS (
    SELECT *, coalesce(landed_n, (told = 'landed')::INT, 0) AS landed,
        coalesce(released_n, (told = 'released')::INT, 0) AS released,
        num_nulls AS blanks, (landed_n IS NOT NULL OR released_n IS NOT NULL) AS boated_known
    FROM (SELECT l.*, (strikes_n IS NULL)::INT + (hooked_n IS NULL)::INT + (landed_n IS NULL)::INT
            + (released_n IS NULL)::INT + (lost_n IS NULL)::INT + (missed_n IS NULL)::INT AS num_nulls
          FROM t l WHERE ord NOT IN (SELECT ord FROM leg_again)
            AND (strikes_n > 0 OR hooked_n > 0 OR landed_n > 0 OR released_n > 0 OR lost_n > 0 OR missed_n > 0
                OR coalesce(outcome, species_logged, length_cm::VARCHAR, girth_cm::VARCHAR, scale_kg::VARCHAR,
                    time_s::VARCHAR, kept::VARCHAR) IS NOT NULL))
), h AS (
    SELECT *, CASE WHEN lost_n IS NOT NULL THEN lost_n
            WHEN told = 'lost' THEN 1
            WHEN hooked_n IS NOT NULL AND boated_known THEN hooked_n - landed - released ELSE 0 END AS lost
    FROM n
), m AS (
    SELECT *, greatest(coalesce(hooked_n, 0) - landed - released - lost, 0) AS hooked_only,
        greatest(coalesce(hooked_n, 0), landed + released + lost) AS hooked
    FROM h
), s AS (
    SELECT *, CASE WHEN missed_n IS NOT NULL THEN missed_n
            WHEN strikes_n IS NOT NULL AND hooked_n IS NOT NULL THEN greatest(strikes_n - hooked, 0)
            ELSE coalesce(told = 'missed', false)::INT END AS missed
    FROM m
)
SELECT *, greatest(greatest(coalesce(strikes_n, 0) - hooked - missed, 0),
    -- no counts, or none that says what the rest of the row tells: one strike
    CASE WHEN hooked + missed = 0 AND coalesce(strikes_n, 0) = 0
          AND (outcome IS NOT NULL OR length_cm IS NOT NULL OR girth_cm IS NOT NULL OR scale_kg IS NOT NULL
               OR (blanks = 6 AND (species_logged IS NOT NULL OR time_s IS NOT NULL OR kept IS NOT NULL)))
         THEN 1 ELSE 0 END) AS unsaid
FROM s;

CREATE OR REPLACE TEMP TABLE struck AS
WITH flat AS (
    SELECT f.* EXCLUDE (outcome), unnest(list_concat(
            ['landed' FOR i IN range(landed)], list_concat(['released' FOR i IN range(released)],
            list_concat(['lost' FOR i IN range(lost)], list_concat(['hooked' FOR i IN range(hooked_only)],
            list_concat(['missed' FOR i IN range(missed)],
            [CASE WHEN f.landed + f.released + f.lost + f.hooked_only + f.missed = 0 AND f.unsaid = 1
                  THEN coalesce(f.outcome, CASE WHEN f.kept THEN 'landed' WHEN NOT f.kept THEN 'released'
                       WHEN coalesce(f.length_cm, f.girth_cm, f.scale_kg) IS NOT NULL THEN 'landed' END, 'not logged')
                  ELSE 'not logged' END FOR i IN range(unsaid)])))))) AS outcome
    FROM flat_count f
)
SELECT * REPLACE (
    -- one measured fish is one of the row's fish, not each of them
    CASE WHEN sub = 1 THEN length_cm END AS length_cm, CASE WHEN sub = 1 THEN length_kind END AS length_kind,
        CASE WHEN sub = 1 THEN girth_cm END AS girth_cm,
    CASE WHEN sub = 1 THEN scale_kg END AS scale_kg, CASE WHEN sub = 1 THEN weight_state END AS weight_state,
        CASE WHEN sub = 1 THEN certified END AS certified)
FROM (
SELECT ord, (row_number() OVER (PARTITION BY ord ORDER BY CASE outcome WHEN 'landed' THEN 1 WHEN 'released' THEN 2
        WHEN 'hooked' THEN 3 WHEN 'not logged' THEN 4 ELSE 5 END))::INTEGER AS sub, 'flat' AS origin, boat, trip_key,
            date, leg, line, lure, time_s, outcome, species, species_logged,
    loss_cause, fight_s, angler,
    -- else its leg's
    coalesce(strike_speed_kn, CASE WHEN ord NOT IN (SELECT ord FROM stretch) THEN round(speed_kn, 1) END) AS speed_kn,
    NULL::VARCHAR AS strike, lure_weight_g, colour, setback_m,
    length_cm, length_kind, girth_cm, scale_kg, weight_state, certified, kept, log_id, file, sheet, "row", zone
FROM flat)
UNION ALL
SELECT ord, 1, 'strikes', boat, trip_key, date, leg, line, lure, time_s,
    coalesce(outcome, CASE WHEN kept THEN 'landed' WHEN NOT kept THEN 'released'
        WHEN coalesce(length_cm, girth_cm, scale_kg) IS NOT NULL THEN 'landed' END, 'not logged'), species,
            species_logged,
    loss_cause, fight_s, angler, strike_speed_kn, strike, lure_weight_g, colour, setback_m,
    length_cm, length_kind, girth_cm, scale_kg, weight_state, certified, kept, log_id, file, sheet, "row", zone
FROM labelled WHERE kind = 'strikes'
UNION ALL
SELECT ord, 1, 'fish', boat, trip_key, date, leg, line, lure, time_s,
    coalesce(outcome, CASE WHEN kept THEN 'landed' WHEN NOT kept THEN 'released' ELSE 'landed' END), species,
        species_logged,
    NULL, fight_s, angler, strike_speed_kn, strike, lure_weight_g, colour, setback_m,
    length_cm, length_kind, girth_cm, scale_kg, weight_state, certified, kept, log_id, file, sheet, "row", zone
FROM labelled WHERE kind = 'fish';
