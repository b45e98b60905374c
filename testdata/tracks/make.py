#!/usr/bin/env python3
"""Writes the simulated tracks: python3 testdata/tracks/make.py, from the top of the module.

Each case is a folder with a log and the tracks of one boat, all invented. The truth is known
by construction and stands in cases.csv with the bound that must hold."""
import csv
import datetime as dt
import gzip
import io
import math
import os
import random
import shutil
import zipfile

HERE = os.path.dirname(os.path.abspath(__file__))
UTC = dt.timezone.utc
START = dt.datetime(2026, 2, 13, 17, 55, tzinfo=UTC)  # 06:55 on the boat, UTC+13
NOISE = random.Random()
rows = []


def sail(spells, every=10, start=START, noise=0.0, lat=-36.5, lon=176.2, offset=0):
    """Fixes each so many seconds of a boat that runs spells of (minutes, kn, degrees a minute)."""
    x = y = course = 0.0
    out, second = [], 0
    for minutes, kn, turn in spells:
        for _ in range(int(minutes * 60)):
            if second % every == offset % every:
                n, e = NOISE.gauss(0, noise), NOISE.gauss(0, noise)
                out.append((start + dt.timedelta(seconds=second), lat + (y + n) / 110955, lon + (x + e) / (111320 * math.cos(math.radians(lat)))))
            course += math.radians(turn) / 60
            x += kn * 1852 / 3600 * math.sin(course)
            y += kn * 1852 / 3600 * math.cos(course)
            second += 1
    return out


DAY = [(50, 12, 0)]
LEGS = "trip,leg,date,start,end,speed kn,lines out\nT1,1,2026-02-14,07:00,07:40,12,4\n"
FULL = dict(hours=40 / 60, nmi=8)


def iso(t):
    return t.strftime("%Y-%m-%dT%H:%M:%SZ")


def point(f, extra=""):
    return f'<trkpt lat="{f[1]:.6f}" lon="{f[2]:.6f}"><time>{iso(f[0])}</time>{extra}</trkpt>\n'


def gpx(*segments, extra=""):
    body = "".join("<trk><trkseg>\n" + "".join(point(f, extra) for f in s) + "</trkseg></trk>\n" for s in segments)
    return '<?xml version="1.0"?>\n<gpx version="1.1" creator="make.py" xmlns="http://www.topografix.com/GPX/1/1">\n' + body + "</gpx>\n"


def table(head, fixes, row):
    return head + "\n" + "".join(row(*f) + "\n" for f in fixes)


def rmc(f):
    t, lat, lon = f
    a, o = abs(lat), abs(lon)
    s = f"GPRMC,{t:%H%M%S},A,{int(a):02d}{60 * (a % 1):07.4f},S,{int(o):03d}{60 * (o % 1):08.5f},E,,,{t:%d%m%y},,,A"
    x = 0
    for c in s:
        x ^= ord(c)
    return f"${s}*{x:02X}"


def case(name, files, says="", hours=None, nmi=None, within=0.01, legs=None, steady=50 / 60, zone="UTC+13", log=LEGS, silent="", hold=""):
    folder = os.path.join(HERE, name)
    os.makedirs(folder)
    if log:
        files = {"legs.csv": log, **files}
    for file, text in files.items():
        path = os.path.join(folder, file)
        os.makedirs(os.path.dirname(path), exist_ok=True)
        with open(path, "wb") as f:
            f.write(text if isinstance(text, bytes) else text.encode())
    rows.append(dict(case=name, zone=zone, hours=None if hours is None else f"{hours:.4f}", nmi=nmi and f"{nmi:.3f}", within=within, legs=legs, steady=legs and f"{steady:.4f}", band=hold, says=says, silent=silent))


def one_time():
    clean = sail(DAY)
    case("two-tracks-in-one", {"a.gpx": gpx(clean, sail(DAY, offset=5))}, **FULL, legs=1)
    case("the-same-twice", {"a.gpx": gpx(clean), "b.gpx": gpx(clean) + "\n"}, **FULL, legs=1)
    case("overlapping-exports", {"a.gpx": gpx(clean[:180]), "b.gpx": gpx(clean[90:])}, **FULL, legs=1)
    noisy = sail(DAY, every=5, noise=30)
    case("better-loaded-first", {"a.gpx": gpx(clean), "b.gpx": gpx(noisy)}, **FULL, within=0.002, legs=1, says="closer fixes or less noise")
    case("better-loaded-last", {"b.gpx": gpx(clean), "a.gpx": gpx(noisy)}, **FULL, within=0.002, legs=1, says="closer fixes or less noise")
    case("left-ashore", {"a.gpx": gpx(clean), "b.gpx": gpx(sail([(50, 0, 0)], noise=3, lat=-36.8))}, says="another boat's, or a device left ashore")
    quarter = [clean[i:i + 89] for i in range(0, len(clean), 89)]
    case("segment-each-quarter", {"a.gpx": gpx(*quarter)}, **FULL, legs=1)
    case("gap-in-the-better", {"a.gpx": gpx(clean[:100], clean[190:]), "b.gpx": gpx(noisy)}, **FULL, legs=1)


def by_content():
    clean = sail(DAY)
    case("wide-headings", {"a.csv": table("Date,Time (UTC),Latitude,Longitude,Altitude (m),Description,Engine RPM,Bearing,Battery %", clean,
         lambda t, a, o: f"{t:%Y-%m-%d},{t:%H:%M:%S},{a:.6f},{o:.6f},2.1,Track point,2100,0,88")}, **FULL, says="passed over: Altitude (m)")
    april = sail(DAY, start=dt.datetime(2026, 4, 2, 18, 55, tzinfo=UTC))
    local = lambda t: t + dt.timedelta(hours=12)
    log = LEGS.replace("2026-02-14", "2026-04-03")
    case("day-first", {"a.csv": table("Date,Time,Latitude,Longitude,RPM", april, lambda t, a, o: f"{local(t):%d/%m/%Y,%H:%M:%S},{a:.6f},{o:.6f},2100")},
         **FULL, zone="UTC+12", log=log, says="its days are read day first")
    case("month-first", {"a.csv": table("Date,Time,Latitude,Longitude,RPM", april, lambda t, a, o: f"{local(t):%m/%d/%Y,%I:%M:%S %p},{a:.6f},{o:.6f},2100")},
         **FULL, zone="UTC+12", log=log, says="its days are read month first")
    case("days-not-certain", {"a.csv": table("Date,Time,Latitude,Longitude,RPM", april, lambda t, a, o: f"{local(t):%d/%m/%Y,%H:%M:%S},{a:.6f},{o:.6f},2100")},
         zone="UTC+12", says="is that 3 April 2026 or 4 March 2026?")
    case("dots-and-commas", {"a.csv": table("Zeit;Breite;Länge;Drehzahl", clean, lambda t, a, o: f"{t + dt.timedelta(hours=13):%d.%m.%Y %H:%M:%S};{a:.6f};{o:.6f};2100".replace(".", ",").replace(",02,2026", ".02.2026"))}, **FULL)
    dm = lambda v, p, n: f"{int(abs(v))}°{60 * (abs(v) % 1):.4f}'{p if v > 0 else n}"
    case("degrees-and-minutes", {"a.csv": table("time,lat,lon,course", clean, lambda t, a, o: f"{iso(t)},{dm(a, 'N', 'S')},{dm(o, 'E', 'W')},0")}, **FULL)
    case("letters-apart", {"a.csv": table("time,lat,N/S,lon,E/W,course", clean, lambda t, a, o: f"{iso(t)},{-a:.6f},S,{o:.6f},E,0")}, **FULL)
    case("unix-seconds", {"a.csv": table("timestamp,latitude,longitude,battery", clean, lambda t, a, o: f"{int(t.timestamp())},{a:.6f},{o:.6f},88")}, **FULL)
    case("newest-first", {"a.csv": table("time,lat,lon,depth (m)", clean[::-1], lambda t, a, o: f"{iso(t)},{a:.6f},{o:.6f},80")}, **FULL, legs=1)
    case("changed-over", {"a.csv": table("time,lat,lon,depth (m)", clean, lambda t, a, o: f"{iso(t)},{o:.6f},{a:.6f},80")}, **FULL, says="latitude and longitude are changed over")
    west = sail(DAY, start=dt.datetime(2026, 2, 14, 12, 55, tzinfo=UTC), lat=38.5, lon=-73.2)
    case("changed-over-by-the-zone", {"a.csv": table("time,lat,lon,depth (m)", west, lambda t, a, o: f"{iso(t)},{o:.6f},{a:.6f},80")}, zone="UTC-6", hours=0,
         says="seem to be changed over in it: as they stand it is far from the boat's legs, and none of it is used")


def messy():
    clean = sail(DAY)
    plain = table("time,lat,lon,name", clean, lambda t, a, o: f"{iso(t)},{a:.6f},{o:.6f},p")
    lines = plain.split("\n")
    stray = lines[:]
    stray[100] = stray[100][:-1] + '"p'
    case("stray-quote", {"a.csv": "\n".join(stray)}, **FULL, says="a quote does not end")
    endless = lines[:]
    endless[100] += "x" * 70000
    mixed = [lines[0]] + [l for i in range(0, len(clean), 60) for l in lines[1:-1][i + 30:i + 60] + lines[1:-1][i:i + 30]]
    case("out-of-order", {"a.csv": "\n".join(mixed) + "\n"}, **FULL, legs=1, says="150 fixes out of order, put in order by time")
    case("endless-line", {"a.csv": "\n".join(endless)}, **FULL, says="more than 64 KiB")
    case("times-in-extensions", {"a.gpx": gpx(clean, extra="<extensions><time>2020-01-01T00:00:00Z</time></extensions>")}, **FULL)
    case("tag-blocks", {"a.nmea": "".join(f"\\s:gps,c:{i}*5A\\{rmc(f)}\r\n" for i, f in enumerate(clean))}, **FULL)
    case("ais-first", {"a.nmea": "!AIVDM,1,1,,B,177KQJ5000G?tO`K>RA1wUbN0TKH,0*5C\r\n" * 60 + "".join(rmc(f) + "\r\n" for f in clean)}, **FULL)
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as z:
        for name, text in (("README.txt", "My tracks of February.\n"), ("tracks/a.gpx", gpx(clean))):
            z.writestr(zipfile.ZipInfo(name, (2026, 2, 15, 0, 0, 0)), text)
    case("readme-first", {"a.zip": packed.getvalue()}, **FULL, says="README.txt")
    case("no-times", {"a.gpx": gpx(clean).replace("<time>", "<!--").replace("</time>", "-->")}, says="it has no times", silent="set aside")
    case("waypoints", {"a.gpx": '<gpx version="1.1">' + "".join(f'<wpt lat="{a:.6f}" lon="{o:.6f}"><name>m</name></wpt>' for _, a, o in clean[:9]) + "</gpx>"}, says="it holds waypoints or routes and no track")
    whole = gpx(clean)
    case("cut-short", {"a.gpx": whole[:-len(point(clean[0])) - 40], "b.csv": plain[:-12]}, **FULL, says="the file ends in the middle")
    case("cut-short-packed", {"a.gpx.gz": gzip.compress(whole.encode(), mtime=0)[:-300]}, says="the file ends in the middle")
    case("a-folder", {"cards/one/a.gpx": gpx(clean[:180]), "cards/two/b.csv": table("time,lat,lon,depth (m)", clean[170:], lambda t, a, o: f"{iso(t)},{a:.6f},{o:.6f},80"),
         "cards/photo.jpg": b"\xff\xd8\xff\xe0" + bytes(100)}, **FULL)


def clocks():
    start = dt.datetime(2026, 4, 4, 11, 30, tzinfo=UTC)  # 00:30 in Auckland, where the clock goes back at 03:00
    night = sail([(330, 9, 0)], every=30, start=start)

    def local(t):
        return t + dt.timedelta(hours=13 if t < dt.datetime(2026, 4, 4, 14, tzinfo=UTC) else 12)
    log = "trip,leg,date,start,end,speed kn,lines out\nT1,1,2026-04-05,01:00,04:00,9,4\n"
    case("clock-goes-back", {"a.csv": table("time,lat,lon,depth (m)", night, lambda t, a, o: f"{local(t):%Y-%m-%d %H:%M:%S},{a:.6f},{o:.6f},80")},
         hours=4, nmi=36, legs=1, steady=5.5, zone="Pacific/Auckland", log=log)
    spring = sail([(180, 9, 0)], every=30, start=dt.datetime(2026, 9, 26, 12, 30, tzinfo=UTC))
    case("clock-goes-on", {"a.gpx": gpx(spring)}, hours=2, nmi=18, zone="Pacific/Auckland", log=log.replace("2026-04-05", "2026-09-27"))


def sparse():
    circles = [(5, 9, 0), (20, 9, 150), (20, 9.1, -150), (5, 9, 0)]
    hour = LEGS.replace("07:40", "07:40").replace(",12,4", ",9,4")
    for every in (30, 60):
        case(f"circles-{every}-s", {"a.gpx": gpx(sail(circles, every=every, noise=3))}, hours=40 / 60, nmi=6.033, within=0.05, log=hour, hold="[8, 10)",
             says="fixes far apart" if every == 60 else "")
    case("stops", {"a.gpx": gpx(sail([(20, 12, 0), (15, 0.2, 0), (15, 12, 0)]))}, hours=40 / 60, says="stopped, below 1 kn, for 0.2 h of its legs")
    case("ten-minutes-apart", {"a.gpx": gpx(sail([(180, 9, 0)], every=600))}, says="more than --track-gap, 5 min")
    case("no-clock", {"a.gpx": gpx(sail(DAY))}, log="trip,date,hours,speed kn,lines out\nT1,2026-02-14,0.7,12,4\n", says="have no clock times")
    dropped = sail([(12, 9, 0), (30, 9, 120), (8, 9, 0)], every=5)
    case("missing-in-turns", {"a.gpx": gpx([f for i, f in enumerate(dropped) if i % 60 < 36])}, log=hour, says="in which it turned or changed its speed", hold="[8, 10)")


def receivers():
    day = sail([(50, 12, 0), (35, 20, 15), (35, 20, 0)])
    behind = sail([(50, 12, 0), (35, 20, 15), (35, 20, 0)], every=5, start=START - dt.timedelta(hours=1))
    case("an-hour-apart", {"a.gpx": gpx(day), "b.gpx": gpx(behind)}, **FULL, legs=1, hold="[12, 14)",
         says="its clock is 1h behind that of another track, which ran the same way: its times are taken 1h later, as the legs say")
    case("an-hour-apart-no-legs", {"a.gpx": gpx(day), "b.gpx": gpx(behind)}, legs=1, log="species,length,date\nYFT,100 cm,2026-02-14\n",
         says="but no leg tells which of the two clocks is right")


def logged_off():
    spells = [(40, 18, 0), (60, 9, 0), (12, 4, 30), (60, 12, 0), (15, 0.5, 0), (50, 8, 0), (45, 20, 0)]

    def log(off):
        times = (("07:35", "08:35", 9), ("08:47", "09:47", 12), ("10:02", "10:52", 8))
        return LEGS.split("\n")[0] + "\n" + "".join(f"T1,{i},2026-02-14,{a},{b},{kn + off},4\n" for i, (a, b, kn) in enumerate(times, 1))
    truth = dict(hours=170 / 60, nmi=9 + 12 + 8 * 50 / 60)
    for name, off in (("logged-too-fast", 2.5), ("logged-too-slow", -2.5)):
        case(name, {"a.gpx": gpx(sail(spells, noise=3))}, **truth, legs=4, steady=208 / 60, log=log(off), silent="--track-clock")
    behind = sail(spells, noise=3, start=START - dt.timedelta(hours=1))
    case("an-hour-behind", {"a.gpx": gpx(behind)}, legs=4, steady=208 / 60, log=log(0), says="--track-clock 1h")


def main():
    for name in os.listdir(HERE):
        if os.path.isdir(os.path.join(HERE, name)):
            shutil.rmtree(os.path.join(HERE, name))
    for part in (one_time, by_content, messy, clocks, sparse, receivers, logged_off):
        NOISE.seed(part.__name__)  # a case added to one leaves the others' noise as it is
        part()
    with open(os.path.join(HERE, "cases.csv"), "w", newline="") as f:
        w = csv.DictWriter(f, rows[0].keys(), lineterminator="\n")
        w.writeheader()
        w.writerows(rows)


main()
