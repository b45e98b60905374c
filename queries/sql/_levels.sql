-- Shared by the questions: every piece of effort and every strike with its level of each
-- of the factors that $1 names, with commas between them. A leg with a track has its hours
-- at the speeds that it ran, and its strikes at the speed of the minute before them.
-- Elsewhere a strike is put where its effort is: at its leg's speed, and at its own only
-- where the leg has none.
WITH wanted AS (
    SELECT unnest(string_split($1, ',')) AS factor
), sky_order AS (
    SELECT * FROM (VALUES ('light', 'dawn', 1), ('light', 'day', 2), ('light', 'dusk', 3), ('light', 'night', 4),
        ('moon', 'new moon', 1), ('moon', 'first quarter', 2), ('moon', 'full moon', 3), ('moon', 'last quarter', 4),
        ('turning', 'straight', 1), ('turning', 'turning', 2)) v(factor, level, ord)
), leg_at AS (
    SELECT w.factor, l.leg_id, l.trip_id, coalesce(k.mean_kn, l.speed_kn) AS speed_kn,
        -- rounded, so that 71.6 F is 22 C, on its class's edge, and not a hair below
        round(CASE w.factor WHEN 'sea-temp' THEN l.sea_temp_c WHEN 'speed-band' THEN l.speed_kn END, 6) AS measure,
        CASE w.factor WHEN 'approach' THEN lower(l.approach)
            WHEN 'month' THEN strftime(coalesce(l.start_at::DATE, t.date), '%Y-%m')
            WHEN 'sea-state' THEN lower(l.sea_state) WHEN 'moon' THEN m.phase
            WHEN 'boat' THEN nullif(t.boat, 'not logged') END AS word
    FROM leg l JOIN trip t USING (trip_id) LEFT JOIN leg_moon m USING (leg_id)
    LEFT JOIN leg_track k USING (leg_id) CROSS JOIN wanted w
), line_at AS (
    SELECT w.factor, n.line_id, round(CASE w.factor WHEN 'lure-weight' THEN n.lure_weight_g WHEN 'setback'
        THEN n.setback_m END, 6) AS measure,
        CASE w.factor WHEN 'lure' THEN n.lure WHEN 'colour' THEN lower(n.colour)
            WHEN 'position' THEN lower(n.line) WHEN 'hooks' THEN lower(n.hooks) END AS word
    FROM line n CROSS JOIN wanted w
), share_of AS (
    SELECT 'light' AS factor, leg_id, light AS word, NULL::DOUBLE AS kn, share FROM leg_light
    UNION ALL
    SELECT 'speed-band', leg_id, NULL, speed_kn, share FROM leg_speed
    UNION ALL
    SELECT 'turning', leg_id, turning, NULL, share FROM leg_turn
    UNION ALL
    -- what no track covers is not logged
    SELECT 'turning', leg_id, NULL, NULL, 1 - sum(share) FROM leg_turn GROUP BY leg_id HAVING sum(share) < 1 - 1e-9
), piece AS (
    -- a leg's effort by its light for the factor light, by what its track tells for
    -- speed-band and turning, by the clock's hours for the factor hour, else whole
    SELECT w.factor, e.leg_id, e.line_id, e.lines, e.hours * coalesce(k.share, 1) AS hours,
        e.line_hours * coalesce(k.share, 1) AS line_hours,
        k.word, k.kn, w.factor = 'speed-band' AND k.leg_id IS NOT NULL AS tracked
    FROM effort e JOIN leg l USING (leg_id) CROSS JOIN wanted w
    LEFT JOIN share_of k ON k.factor = w.factor AND k.leg_id = e.leg_id
    WHERE w.factor <> 'hour' OR l.start_at IS NULL
    UNION ALL
    SELECT 'hour', leg_id, line_id, lines, part, coalesce(lines, 0) * part, strftime(hour, '%H:00'), NULL, false FROM (
        SELECT *, greatest(date_diff('microsecond', greatest(start_at, hour), least(end_at, hour + INTERVAL 1 HOUR)),
            0) / 3.6e9 AS part
        FROM (
            SELECT e.*, l.start_at, l.start_at + to_microseconds((e.hours * 3600000000)::BIGINT) AS end_at,
                unnest(range(date_trunc('hour', l.start_at),
                    l.start_at + to_microseconds((e.hours * 3600000000)::BIGINT), INTERVAL 1 HOUR)) AS hour
            FROM effort e JOIN leg l USING (leg_id) SEMI JOIN (SELECT 1 FROM wanted WHERE factor = 'hour') h ON true
                WHERE l.start_at IS NOT NULL
        )
    )
), effort_at AS (
    SELECT p.factor, p.leg_id, g.trip_id, p.line_id, p.lines, p.hours, p.line_hours,
        CASE WHEN p.tracked THEN p.kn ELSE g.speed_kn END AS speed_kn,
        coalesce(b.level, n.word, g.word, p.word, 'not logged') AS level, coalesce(b.ord, s.ord, 1000) AS ord
    FROM piece p JOIN leg_at g USING (factor, leg_id) LEFT JOIN line_at n USING (factor, line_id)
    LEFT JOIN band b ON b.factor = p.factor AND CASE WHEN p.tracked THEN p.kn ELSE coalesce(n.measure, g.measure)
        END >= b.lo
        AND (b.hi IS NULL OR CASE WHEN p.tracked THEN p.kn ELSE coalesce(n.measure, g.measure) END < b.hi)
    LEFT JOIN sky_order s ON s.factor = p.factor AND s.level = coalesce(p.word, g.word)
), strike_said AS (
    SELECT w.factor, s.strike_id, s.trip_id, s.leg_id, s.line_id, s.outcome, s.hooked,
        CASE w.factor WHEN 'speed-band' THEN coalesce(r.speed_kn, g.measure, round(s.speed_kn, 1))
            ELSE coalesce(n.measure, g.measure) END AS measure,
        coalesce(n.word, g.word,
            CASE w.factor WHEN 'hour' THEN strftime(s.strike_at, '%H:00') WHEN 'angler' THEN s.angler
                WHEN 'month' THEN strftime(coalesce(s.strike_at::DATE, t.date), '%Y-%m')
                WHEN 'light' THEN k.light WHEN 'moon' THEN k.phase WHEN 'turning' THEN r.turning
                WHEN 'boat' THEN nullif(t.boat, 'not logged') END) AS word,
        CASE w.factor WHEN 'light' THEN k.light WHEN 'turning' THEN r.turning WHEN 'moon' THEN k.phase END AS under
    FROM strike s CROSS JOIN wanted w LEFT JOIN strike_sky k USING (strike_id) LEFT
        JOIN strike_track r USING (strike_id)
    LEFT JOIN trip t USING (trip_id) LEFT JOIN leg_at g ON g.factor = w.factor AND g.leg_id = s.leg_id
    LEFT JOIN line_at n ON n.factor = w.factor AND n.line_id = s.line_id
), strike_at_level AS (
    SELECT s.factor, s.strike_id, s.trip_id, s.leg_id, s.line_id, s.outcome, s.hooked,
        coalesce(b.level, s.word, 'not logged') AS level, coalesce(b.ord, o.ord, 1000) AS ord
    FROM strike_said s LEFT JOIN band b ON b.factor = s.factor AND s.measure >= b.lo
        AND (b.hi IS NULL OR s.measure < b.hi)
    LEFT JOIN sky_order o ON o.factor = s.factor AND o.level = s.under
)
