#!/bin/sh
# Writes logger.gpx: the sentences of logger.nmea, invented, as GPX 1.1 written by
# gpsbabel 1.8.0 (Debian package gpsbabel). The file was checked against the
# published schema (topografix.com/GPX/1/1/gpx.xsd), its annotations left out, with xmllint:
#   xmllint --noout --schema gpx.xsd logger.gpx
python3 - > logger.nmea <<'PY'
import math
from functools import reduce
def sentence(body):
    print("$%s*%02X" % (body, reduce(lambda a, c: a ^ ord(c), body, 0)))
# a minute of longitude at 36 36' S on WGS84, in nautical miles
minute = 6378137 / (1 - 0.00669437999014 * math.sin(math.radians(36.6)) ** 2) ** 0.5 * math.cos(math.radians(36.6)) * math.pi / 10800 / 1852
for i in range(90):
    s = 4 * 3600 + 12 * 60 + 2 * i
    hms = "%02d%02d%02d.00" % (s // 3600, s // 60 % 60, s % 60)
    # 11.6 kn due east for three minutes, at 36 36' S
    minutes = 10.0 + 11.6 * 2 * i / 3600 / minute
    sentence("GPRMC,%s,A,3636.0000,S,176%08.5f,E,011.6,090.0,140226,,,A" % (hms, minutes))
    sentence("GPGGA,%s,3636.0000,S,176%08.5f,E,1,09,1.0,2.0,M,28.0,M,," % (hms, minutes))
PY
gpsbabel -i nmea -f logger.nmea -o gpx,gpxver=1.1 -F logger.gpx
