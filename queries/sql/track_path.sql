-- The legs' tracks, every n-th piece so that about $1 are left, and the strikes
-- where the track tells their place.
WITH every_nth AS (
    SELECT lat, lon, speed_kn, row_number() OVER (ORDER BY leg_id, at_utc) AS n,
        greatest(count(*) OVER () // $1, 1) AS step FROM leg_piece
)
SELECT lat AS lat_deg, lon AS lon_deg, speed_kn, false AS strike, n FROM every_nth WHERE n % step = 0
UNION ALL
SELECT p.lat, p.lon, p.speed_kn, true, s.strike_id FROM strike s ASOF
    JOIN leg_piece p ON p.leg_id = s.leg_id AND p.at_utc <= s.strike_utc
WHERE date_diff('second', p.at_utc, s.strike_utc) < 60
ORDER BY strike, n
