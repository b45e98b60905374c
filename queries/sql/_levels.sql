-- Shared by the questions: every piece of effort and every strike with its level
-- of the factor $1. A leg with a track has its hours at the speeds that it ran,
-- and its strikes at the speed of the minute before them. Elsewhere a strike is
-- put where its effort is: at its leg's speed, and at its own only where the leg
-- has none.
WITH sky_order AS (
    SELECT * FROM (VALUES ('dawn', 1), ('day', 2), ('dusk', 3), ('night', 4),
        ('new moon', 1), ('first quarter', 2), ('full moon', 3), ('last quarter', 4), ('straight', 1), ('turning', 2)) v(level, ord)
    WHERE $1 IN ('light', 'moon', 'turning')
), leg_at AS (
    SELECT l.leg_id, l.trip_id, l.start_at, l.hours, coalesce(k.mean_kn, l.speed_kn) AS speed_kn, t.boat,
        -- rounded, so that 71.6 F is 22 C, on its class's edge, and not a hair below
        round(CASE $1 WHEN 'sea-temp' THEN l.sea_temp_c WHEN 'speed-band' THEN l.speed_kn END, 6) AS measure,
        CASE $1 WHEN 'approach' THEN lower(l.approach)
            WHEN 'month' THEN strftime(coalesce(l.start_at::DATE, t.date), '%Y-%m')
            WHEN 'sea-state' THEN lower(l.sea_state) WHEN 'moon' THEN m.phase
            WHEN 'boat' THEN nullif(t.boat, 'not logged') END AS word
    FROM leg l JOIN trip t USING (trip_id) LEFT JOIN leg_moon m ON m.leg_id = l.leg_id AND $1 = 'moon'
    LEFT JOIN leg_track k ON k.leg_id = l.leg_id
), line_at AS (
    SELECT line_id, round(CASE $1 WHEN 'lure-weight' THEN lure_weight_g WHEN 'setback' THEN setback_m END, 6) AS measure,
        CASE $1 WHEN 'lure' THEN lure WHEN 'colour' THEN lower(colour) WHEN 'position' THEN lower(line) WHEN 'hooks' THEN lower(hooks) END AS word
    FROM line
), turn_share AS (
    -- what no track covers is not logged
    SELECT leg_id, turning, share FROM leg_turn WHERE $1 = 'turning'
    UNION ALL
    SELECT leg_id, NULL, 1 - sum(share) FROM leg_turn WHERE $1 = 'turning' GROUP BY leg_id HAVING sum(share) < 1 - 1e-9
), piece AS (
    -- a leg's effort by the clock's hours for the factor hour, by its light for
    -- the factor light, by what its track tells for speed-band and turning, else whole
    SELECT e.leg_id, e.line_id, e.lines, e.hours, e.line_hours, NULL::TIMESTAMP AS hour, NULL::VARCHAR AS light, NULL::DOUBLE AS kn, false AS tracked
    FROM effort e JOIN leg l USING (leg_id) WHERE $1 NOT IN ('hour', 'light', 'speed-band', 'turning') OR ($1 = 'hour' AND l.start_at IS NULL)
    UNION ALL
    SELECT e.leg_id, e.line_id, e.lines, e.hours * coalesce(k.share, 1), e.line_hours * coalesce(k.share, 1), NULL, k.light, NULL, false
    FROM effort e LEFT JOIN leg_light k USING (leg_id) WHERE $1 = 'light'
    UNION ALL
    SELECT e.leg_id, e.line_id, e.lines, e.hours * coalesce(k.share, 1), e.line_hours * coalesce(k.share, 1), NULL, NULL, k.speed_kn, k.leg_id IS NOT NULL
    FROM effort e LEFT JOIN leg_speed k USING (leg_id) WHERE $1 = 'speed-band'
    UNION ALL
    SELECT e.leg_id, e.line_id, e.lines, e.hours * coalesce(k.share, 1), e.line_hours * coalesce(k.share, 1), NULL, k.turning, NULL, false
    FROM effort e LEFT JOIN turn_share k USING (leg_id) WHERE $1 = 'turning'
    UNION ALL
    SELECT leg_id, line_id, lines, part, coalesce(lines, 0) * part, hour, NULL, NULL, false FROM (
        SELECT *, greatest(date_diff('microsecond', greatest(start_at, hour), least(end_at, hour + INTERVAL 1 HOUR)), 0) / 3.6e9 AS part
        FROM (
            SELECT e.*, l.start_at, l.start_at + to_microseconds((e.hours * 3600000000)::BIGINT) AS end_at,
                unnest(range(date_trunc('hour', l.start_at), l.start_at + to_microseconds((e.hours * 3600000000)::BIGINT), INTERVAL 1 HOUR)) AS hour
            FROM effort e JOIN leg l USING (leg_id) WHERE $1 = 'hour' AND l.start_at IS NOT NULL
        )
    )
), effort_at AS (
    SELECT p.leg_id, g.trip_id, p.line_id, p.lines, p.hours, p.line_hours, CASE WHEN p.tracked THEN p.kn ELSE g.speed_kn END AS speed_kn,
        coalesce(b.level, n.word, g.word, p.light, strftime(p.hour, '%H:00'), 'not logged') AS level,
        coalesce(b.ord, s.ord, 1000) AS ord
    FROM piece p JOIN leg_at g USING (leg_id) LEFT JOIN line_at n USING (line_id)
    LEFT JOIN band b ON b.factor = $1 AND CASE WHEN p.tracked THEN p.kn ELSE coalesce(n.measure, g.measure) END >= b.lo
        AND (b.hi IS NULL OR CASE WHEN p.tracked THEN p.kn ELSE coalesce(n.measure, g.measure) END < b.hi)
    LEFT JOIN sky_order s ON s.level = coalesce(p.light, g.word)
), strike_at_level AS (
    SELECT s.strike_id, s.trip_id, s.leg_id, s.line_id, s.outcome, s.hooked,
        coalesce(b.level, n.word, g.word,
            CASE $1 WHEN 'hour' THEN strftime(s.strike_at, '%H:00') WHEN 'angler' THEN s.angler
                WHEN 'month' THEN strftime(coalesce(s.strike_at::DATE, t.date), '%Y-%m')
                WHEN 'light' THEN k.light WHEN 'moon' THEN k.phase WHEN 'turning' THEN r.turning
                WHEN 'boat' THEN nullif(t.boat, 'not logged') END,
            'not logged') AS level,
        coalesce(b.ord, o.ord, 1000) AS ord
    FROM strike s LEFT JOIN strike_sky k ON k.strike_id = s.strike_id AND $1 IN ('light', 'moon')
    LEFT JOIN strike_track r ON r.strike_id = s.strike_id AND $1 IN ('speed-band', 'turning')
    LEFT JOIN sky_order o ON o.level = CASE $1 WHEN 'light' THEN k.light WHEN 'turning' THEN r.turning ELSE k.phase END
    LEFT JOIN trip t USING (trip_id) LEFT JOIN leg_at g ON g.leg_id = s.leg_id LEFT JOIN line_at n ON n.line_id = s.line_id
    LEFT JOIN band b ON b.factor = $1 AND coalesce(r.speed_kn, n.measure, g.measure, CASE $1 WHEN 'speed-band' THEN round(s.speed_kn, 1) END) >= b.lo
        AND (b.hi IS NULL OR coalesce(r.speed_kn, n.measure, g.measure, CASE $1 WHEN 'speed-band' THEN round(s.speed_kn, 1) END) < b.hi)
)
