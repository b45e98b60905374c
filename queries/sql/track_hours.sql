-- The time and way of legs with a track, by speed to a tenth of a knot.
SELECT speed_kn, round(sum(seconds) / 3600, 9) AS hours, round(sum(seconds * speed_kn) / 3600, 9) AS distance_nmi
FROM leg_piece GROUP BY speed_kn ORDER BY speed_kn
