#!/bin/sh
# Writes geodesics.csv: pairs of points and the geodesic between them on WGS84 by
# GeodSolve 2.1.2 of GeographicLib (Karney, Algorithms for geodesics, J. Geodesy
# 87, 2013; Debian package geographiclib-tools).
{
    cat <<'POINTS'
40.6 -73.8 51.6 -0.5
33 -117.5 33 -117.4
33 -117.5 33.1 -117.5
33 -117.5 33.01 -117.51
27.5 179.95 27.5 -179.95
0 0 0 1
0 0 1 0
0 0 0.5 179.5
0 0 0 179
0 0 0 179.5
0 0 0 180
90 0 -90 0
-30 0 30 179.8
5 0.00000000000001 5 180
56.320923501171 0 -56.320923501171 179.664747671772880215
52.784459512564 0 -52.784459512563990912 179.634407464943777557
48.522876735459 0 -48.52287673545898293 179.599720456223079643
36.493349428792 0 36.49334942879201 .0000008
88.202499451857 0 -88.202499451857 179.981022032992859592
89.262080389218 0 -89.262080389218 179.992207982775375662
-41.1 174.3 -41.10001 174.30001
POINTS
    awk 'BEGIN { srand(6); for (i = 0; i < 200; i++) {
        a = 178 * rand() - 89; b = 360 * rand() - 180; s = 10 ^ (-5 + 7 * rand());
        c = a + s * (rand() - .5); if (c > 89) c = 89; if (c < -89) c = -89;
        printf "%.9f %.9f %.9f %.9f\n", a, b, c, b + s * (rand() - .5) }
        for (i = 0; i < 100; i++) { a = 178 * rand() - 89;
        printf "%.9f 0 %.9f %.9f\n", a, -a + 1.2 * (rand() - .5), 180 - 1.2 * rand() } }'
} > points.tmp
echo "lat1,lon1,lat2,lon2,metres" > geodesics.csv
GeodSolve -i -p 9 < points.tmp | awk '{ print $3 }' | paste -d' ' points.tmp - | tr ' ' ',' >> geodesics.csv
rm points.tmp
