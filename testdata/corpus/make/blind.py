"""What is expected of the logs that were written blind: before their reader was
looked at, as people of other trades, coasts and habits keep them. The logs stand
for themselves; their cells are read here with the converters of kit.py, told for
each log what a careful clerk would make of them."""

import csv
import re

import openpyxl

from kit import *

SPECIES = {"yft": "YFT", "yellowfin": "YFT", "ahi": "YFT", "shibi": "YFT", "bet": "BET", "bigeye tuna": "BET", "bluefin": None, "albacore": "ALB", "skipjack": "SKJ", "aku": "SKJ", "mahi": "DOL", "mahi mahi": "DOL",
           "dolphinfish": "DOL", "dorado": None, "wahoo": "WAH", "ono": "WAH", "blue marlin": "BUM", "yellowfin tuna": "YFT", "yellowtail": None, "spearfish": None, "bigeye": "BET", "skippy": "SKJ", "ono, mahi": None, "ahi, ahi": None, "black marlin": "BLM", "striped marlin": "MLS", "false albacore": "LTA", "little tunny": "LTA", "bonito": None}


def rows_of(folder, file, sheet=None, sep=","):
    """Row number -> cells, as text or as the workbook has them."""
    path = os.path.join(CORPUS, folder, file)
    if file.endswith(".xlsx"):
        ws = openpyxl.load_workbook(path)[sheet]
        return {r[0].row: [c.value for c in r] for r in ws.iter_rows()}
    enc = "utf-8" if "sal" not in file else "cp1252"
    with open(path, encoding=enc, newline="") as f:
        r = csv.reader(f, delimiter=sep)
        return {r.line_num: cells for cells in r}


def entries(rows, numbers, cols, given=None):
    """cols: (index, column of the season file or ":heading" that is kept by name, converter)."""
    want = []
    for n in numbers:
        e, extra = dict(given or {}), {}
        for i, name, *conv in cols:
            cell = rows[n][i] if i < len(rows[n]) else None
            if cell is None or str(cell).strip() in ("", "-"):
                continue
            cell = cell.strip() if isinstance(cell, str) else cell
            if name.startswith(":"):
                extra[name[1:]] = str(cell)
            elif name == "species":
                e["species_logged"] = cell
                if SPECIES[cell.lower()]:
                    e["species"] = SPECIES[cell.lower()]
            else:
                v = (conv[0] if conv else text)(cell)
                if v is not None:
                    e[name] = v
        if extra:
            e["extra"] = json.dumps(extra, sort_keys=True)
        want.append((n, e))
    return want


def put_wants(folder, *sheets, workbook=True):
    write_want(os.path.join(CORPUS, folder), [Sheet(name, [], want) for name, want in sheets], workbook)


def clock(v):
    """A time with a.m. or p.m. as one letter, with h or a point for a colon, or four digits."""
    if isinstance(v, (dt.time, dt.datetime)):
        return hm(v)
    m = re.fullmatch(r"(\d{1,2})[:.h]?(\d\d) ?([ap]?)m?", v.strip())
    h = int(m[1])
    if m[3]:
        h = h % 12 + (12 if m[3] == "p" else 0)
    return h * 3600 + int(m[2]) * 60


MONTHS = dict(zip("jan feb mar apr may jun jul aug sep oct nov dec".split(), range(1, 13)))


def dated(order, years):
    """A date from its numbers and the month's name; years are by month where the cell has none."""
    def f(v):
        if isinstance(v, (dt.date, dt.datetime)):
            return day(v)
        month = next((MONTHS[w[:3].lower()] for w in re.findall(r"[A-Za-z]{3,}", v) if w[:3].lower() in MONTHS), 0)
        n = [int(x) for x in re.findall(r"\d+", v)]
        if month:
            d, rest = n[0], n[1:]
        else:
            d, month = (n[0], n[1]) if order == "dmy" else (n[1], n[0])
            rest = n[2:]
        y = rest[0] if rest else years(month)
        return dt.date(y + 2000 if y < 100 else y, month, d).isoformat()
    return f


def feet(v):
    """Feet and inches, inches alone, or a half."""
    m = re.fullmatch(r"(?:(\d+)' ?)?(\d+)( 1/2)?\"?", v)
    return inch(12 * int(m[1] or 0) + int(m[2]) + (0.5 if m[3] else 0))


def of(conv):
    """The number at a cell's start, without what is behind it; a decimal comma is a point."""
    return lambda v: conv(float(re.match(r"[\d.,]+", str(v))[0].replace(",", ".")))


def landed(words):
    return lambda v: next(words[k] for k in words if str(v).startswith(k))


def canyon():
    out = landed({"boated": "landed", "pulled": "lost", "broke": "lost", "knocked": "missed", "missed": "missed", "released": "released"})
    cols = [(0, "time_s", clock), (1, "line"), (2, "lure"), (3, "outcome", out), (4, "species"), (5, "length_cm", of(inch)), (6, "scale_kg", of(lb))]
    f = "65-canyon-sheet-per-trip"
    put_wants(f, *[(s, entries(rows_of(f, "tuna log.xlsx", s), range(5, last + 1), cols, {"date": d}))
                   for s, last, d in (("7-5", 10, "2025-07-05"), ("7-12", 8, "2025-07-12"), ("8-2", 8, "2025-08-02"))])


def baja():
    f = "66-baja-season"
    cols = [(0, "date", dated("dmy", lambda m: 2025)), (1, "start_s", clock), (2, "end_s", clock), (3, "speed_kn", num), (4, "lines_out", whole), (5, "strikes_n", whole), (6, "hooked_n", whole), (7, "landed_n", whole), (8, "notes")]
    put_wants(f, ("", entries(rows_of(f, "baja2025.csv"), range(5, 15), cols)), workbook=False)


def hawaii_wide():
    f = "67-hawaii-wide"
    legs = [(0, "date", day), (1, "start_s", hm), (2, "end_s", hm), (3, "speed_kn", num), (9, "area")]
    rows = rows_of(f, "2026 spring.xlsx", "lures")
    want = []
    for n, e in entries(rows, range(2, 8), legs):  # a lure in a place's column is a line out there, on the row's leg
        out = [(rows[1][i], rows[n][i]) for i in range(4, 9) if rows[n][i]]
        want.append((n, e | {"lines_out": len(out)}))
        want += [(n, {k: e[k] for k in ("date", "start_s", "end_s")} | {"line": place, "lure": lure}) for place, lure in out]
    bites = [(0, "date", day), (1, "time_s", hm), (2, "line"), (3, "species"), (4, "outcome", landed({"boated": "landed", "lost": "lost", "missed": "missed", "released": "released"})), (5, "scale_kg", lb)]
    put_wants(f, ("lures", want), ("bites", entries(rows_of(f, "2026 spring.xlsx", "bites"), range(2, 10), bites)))


def club_captures():
    f = "68-club-captures"
    cols = [(0, "date", dated("dmy", None)), (1, "boat"), (2, "angler"), (3, "species"), (4, "kept", lambda v: "true" if v == "C" else "false"), (5, "scale_kg", num), (6, ":Line (kg)"), (7, "length_cm", num), (8, "notes")]
    want = entries(rows_of(f, "Captures 2025-26.csv"), range(2, 14), cols)
    for _, e in want:
        if "length_cm" in e:
            e["length_kind"] = "FL"
    put_wants(f, ("", want), workbook=False)


def month_sheets():
    f = "69-nz-sheet-per-month"
    sheets = []
    for name, month, last in (("Jan 26", 1, 6), ("Feb 26", 2, 5), ("Mar 26", 3, 4)):
        cols = [(0, "date", lambda v, m=month: f"2026-{m:02}-{int(v):02}"), (1, "start_s", clock), (2, "end_s", clock), (3, "speed_kn", num), (4, "lines_out", whole), (5, "sea_temp_c", num), (6, "strikes_n", whole),
                (7, "hooked_n", whole), (8, "landed_n", whole), (9, "released_n", whole), (10, "notes")]
        sheets.append((name, entries(rows_of(f, "Log.xlsx", name), range(2, last + 1), cols)))
    put_wants(f, *sheets)


def spain():
    f = "70-spain-semicolon"
    cols = [(0, "date", dated("dmy", None)), (1, "start_s", clock), (2, "end_s", clock), (3, "speed_kn", of(num)), (4, "lines_out", whole), (5, "lure"), (6, "colour"), (7, "setback_m", num), (8, "strikes_n", whole),
            (9, "species"), (10, "scale_kg", of(kg)), (11, "notes")]
    want = entries(rows_of(f, "salidas 2025.csv", sep=";"), range(2, 10), cols)
    for _, e in want:  # of several strikes the fish that was weighed was landed
        if "scale_kg" in e and e["strikes_n"] > 1:
            e["landed_n"] = 1
    put_wants(f, ("", want), workbook=False)


def italy():
    f = "71-italy-two-tables"
    rows = rows_of(f, "tuna 2025.xlsx", "Foglio1")
    legs = [(0, "trip"), (1, "date", day), (2, "start_s", hm), (3, "end_s", hm), (4, "speed_kn", num), (5, "lines_out", whole), (6, "wind"), (7, "sea_state")]
    fish = [(0, "trip"), (1, "time_s", hm), (2, "species"), (3, "length_cm", num), (4, "girth_cm", num), (5, "scale_kg", num), (6, "kept", lambda v: "true" if v == "yes" else "false")]
    below = entries(rows, range(13, 20), fish)
    for _, e in below:
        e["length_kind"] = "FL"
    put_wants(f, ("Foglio1", entries(rows, range(4, 9), legs) + below))


def france():
    f = "72-france-tsv"
    cols = [(0, "date", dated("dmy", None)), (1, "time_s", clock), (2, "strike_speed_kn", of(num)), (3, "line"), (4, "lure"), (5, "lure_weight_g", of(gram)), (6, "setback_m", of(metre)), (7, "outcome"), (8, "species"),
            (9, "length_cm", of(cm)), (10, "girth_cm", of(cm)), (11, "angler"), (12, "notes")]
    put_wants(f, ("", entries(rows_of(f, "carnet.tsv", sep="\t"), range(2, 11), cols)), workbook=False)


def islands():
    f = "73-islands-estimates"
    fate = lambda v: next((o for w, o in (("released", "released"), ("lost", "lost"), ("kept", "landed")) if w in v), None)
    cols = [(0, "date", day), (1, "boat"), (2, "start_s", clock), (3, "end_s", clock), (4, "species"), (5, ":Est. kg"), (6, "scale_kg", num), (7, "outcome", fate)]
    rows = rows_of(f, "big game.xlsx", "Sheet1")
    for above, n in ((6, 7), (10, 11)):  # the day and boat of the row above
        rows[n][:4] = rows[above][:4]
    want = entries(rows, range(4, 13), cols)
    for n, e in want:
        e["notes"] = rows[n][7]
    put_wants(f, ("Sheet1", want))


def japan():
    f = "74-japan-english"
    cols = [(0, "date", dated("mdy", lambda m: 2025)), (1, "start_s", clock), (2, "end_s", clock), (3, "speed_kn", num), (4, "line"), (5, "lure"), (6, "lure_weight_g", num), (7, "setback_m", num), (8, "strikes_n", whole), (9, "landed_n", whole),
            (10, "species"), (11, "length_cm", num)]
    want = entries(rows_of(f, "2025_log.csv"), range(3, 14), cols)
    for _, e in want:
        if "length_cm" in e:
            e["length_kind"] = "FL"
    put_wants(f, ("", want), workbook=False)


def mates_text():
    f = "75-mate-textfile"
    want = []
    with open(os.path.join(CORPUS, f, "mates log.txt"), encoding="utf-8") as lines:
        for n, line in enumerate(lines, 1):
            c = re.split(r" {2,}", line.strip())
            if n > 4 and len(c) > 5:
                want.append((n, {"date": dated("mdy", None)(c[0]), "start_s": clock(c[1]), "end_s": clock(c[2]), "speed_kn": float(c[3]), "lines_out": int(c[4]), "notes": c[5]}))
    put_wants(f, ("", want), workbook=False)


def dittos():
    f = "76-ditto-nicknames"
    rows = rows_of(f, "fall.xlsx", "Sept")
    for n in range(3, 13):
        rows[n][:4] = [rows[n - 1][i] if c in (None, '"') else c for i, c in enumerate(rows[n][:4])]
    cols = [(0, "date", day), (1, "start_s", hm), (2, "end_s", hm), (3, "speed_kn", mph), (4, "lure"), (5, "lure_weight_g", oz), (6, "setback_m", ft), (7, "strikes_n", whole), (8, "landed_n", whole), (9, "lost_n", whole)]
    put_wants(f, ("Sept", entries(rows, range(2, 13), cols)))


def fish_list():
    f = "77-hawaii-fish-list"
    cols = [(0, ":No"), (1, "date", dated("mdy", None)), (2, "species"), (3, "length_cm", feet), (4, "girth_cm", feet), (5, "scale_kg", lambda v: None if "n/a" in v else of(lb)(v)), (6, "angler")]
    want = entries(rows_of(f, "fish list.csv"), range(2, 12), cols)
    next(e for n, e in want if n == 6)["kept"] = "false"
    put_wants(f, ("", want), workbook=False)


def day_totals():
    f = "78-aus-day-totals"
    rows = rows_of(f, "curlew.xlsx", "Log")
    for n in (5, 11):
        rows[n][0] = rows[n - 1][0]
    count = lambda v: 0 if v == "NIL" else int(v)
    speed = lambda v: sum(float(x) for x in re.findall(r"[\d.]+", v)) / len(re.findall(r"[\d.]+", v))
    # fish raised came up behind a lure, and struck nothing: kept by name
    cols = [(0, "date", dated("dmy", lambda m: 2025 if m > 6 else 2026)), (1, "start_s", clock), (2, "end_s", clock), (3, "speed_kn", speed), (4, "lines_out", whole), (5, ":Raised"), (6, "hooked_n", count), (7, "landed_n", count),
            (8, "sea_temp_c", num), (9, "notes")]
    put_wants(f, ("Log", entries(rows, (4, 5, 7, 9, 10, 11, 13), cols, {"boat": "Curlew", "captain": "self"})))


def species_columns():
    f = "79-nz-species-columns"
    rows = rows_of(f, "session.xlsx", "src.csv")
    # how many of each species is kept by name beside their sum
    cols = [(0, "date", dated("dmy", None)), (1, "start_s", clock), (2, "end_s", clock), (3, "lines_out", of(whole)), (4, "speed_kn", num), (5, ":Albies"), (6, ":Skippies"), (7, ":YFT"), (8, "missed_n", whole), (9, "notes")]
    want = entries(rows, range(2, 8), cols)
    for n, e in want:
        e["landed_n"] = sum(int(c) for c in rows[n][5:8] if c not in (None, ""))
    put_wants(f, ("src.csv", want))


def two_line_heading():
    f = "80-two-line-heading"
    cols = [(0, "date", dated("dmy", None)), (1, "start_s", hm), (2, "end_s", hm), (3, "speed_kn", mph), (4, "lure"), (5, "lure_weight_g", of(oz)), (6, "setback_m", of(yd)), (7, "species"), (8, "length_cm", feet), (9, "girth_cm", of(inch)),
            (10, "scale_kg", lambda v: None if v == "released" else of(lb)(v))]
    want = entries(rows_of(f, "summer.xlsx", "2026"), range(3, 11), cols)
    next(e for n, e in want if n == 9)["kept"] = "false"
    put_wants(f, ("2026", want))


def events():
    """A clerk would make a leg of each day, at the row where its lines went in."""
    f = "81-date-once"
    rows = rows_of(f, "bitacora english.csv")
    want = []
    for first, strikes, last in ((2, (3, 4), 5), (7, (8, 9), 10), (12, (13,), 14)):
        d = dated("dmy", None)(rows[first][0])
        m = re.match(r"(\d+) rods (\d+) knots", rows[first][8])
        want.append((first, {"date": d, "start_s": clock(rows[first][1]), "end_s": clock(rows[last][1]), "lines_out": int(m[1]), "speed_kn": float(m[2])}))
        for n in strikes:
            c = rows[n]
            want.append((n, {"date": d, "time_s": clock(c[1]), "outcome": c[2].split(" - ")[1], "line": c[3], "lure": c[4], "setback_m": float(c[5])}))
    put_wants(f, ("", want), workbook=False)


def rigs():
    f = "82-gulf-month-sheets"
    speed = lambda v: sum(float(x) for x in str(v).split("-")) / len(str(v).split("-"))
    west = lambda sign: lambda v: sign * (float(v.split()[0]) + float(v.split()[1]) / 60)
    cols = [(0, "date", day), (2, "start_s", hm), (3, "end_s", hm), (6, "speed_kn", speed), (7, "lines_out", whole), (8, "sea_temp_c", of(fahr)), (9, "lat", west(1)), (10, "lon", west(-1))]
    put_wants(f, *[(s, entries(rows_of(f, "rigs 2025.xlsx", s), range(2, 5), cols)) for s in ("May", "June")])


def club_two_lists():
    f = "83-club-two-lists"
    rows = rows_of(f, "Easter comp.csv")
    tags = [(0, "boat"), (1, "angler"), (2, "date", dated("dmy", None)), (3, "time_s", clock), (4, "species"), (5, "line_class_kg", num), (6, ":Est kg")]
    fish = [(0, "boat"), (1, "angler"), (2, "date", dated("dmy", None)), (3, "species"), (4, "length_cm", of(cm)), (5, "girth_cm", of(cm)), (6, "scale_kg", of(kg))]
    below = entries(rows, range(12, 17), fish)
    for _, e in below:
        e["length_kind"] = "FL"
    put_wants(f, ("", entries(rows, range(4, 9), tags, {"kept": "false"}) + below), workbook=False)


def four_sheets():
    f, file = "84-four-sheets", "logbook.xlsx"
    trips = [(0, "trip"), (1, "date", day), (2, "anglers"), (3, "port"), (4, ":To")]
    legs = [(0, "trip"), (1, "leg"), (2, "start_s", clock), (3, "end_s", clock), (4, "speed_kn", num), (5, "sea_temp_c", num), (6, "sea_state")]
    lines = [(0, "trip"), (1, "line"), (2, "lure"), (3, "lure_weight_g", num), (4, "setback_m", num)]
    out = {"landed": "landed", "dropped": "lost", "tagged": "released", "broke off": "lost"}.get
    strikes = [(0, "trip"), (1, "time_s", clock), (2, "line"), (3, "species"), (4, "outcome", out), (5, "length_cm", lambda v: 100 * float(v)), (6, "girth_cm", lambda v: float(v) / 10), (7, "scale_kg", num)]
    contacts = entries(rows_of(f, file, "Contacts"), range(2, 9), strikes)
    for _, e in contacts:
        if "length_cm" in e:
            e["length_kind"] = "FL"
    put_wants(f, ("Days", entries(rows_of(f, file, "Days"), range(2, 5), trips)), ("Runs", entries(rows_of(f, file, "Runs"), range(2, 7), legs)), ("Spread", entries(rows_of(f, file, "Spread"), range(2, 11), lines)), ("Contacts", contacts))


def two_fish_in_a_cell():
    """Two fish in one cell are left; what calls itself a guess is no weight."""
    f = "85-two-fish-in-a-cell"
    alone = lambda v: None if "~" in v or "," in v else lb(float(v))
    cols = [(0, "date", dated("mdy", None)), (1, "start_s", clock), (2, "end_s", clock), (3, "lines_out", whole), (4, "speed_kn", num), (5, "strikes_n", whole), (6, "hooked_n", whole), (7, "landed_n", whole), (8, "released_n", whole),
            (9, "species"), (10, "scale_kg", alone), (11, "notes")]
    put_wants(f, ("", entries(rows_of(f, "kona log 2025.csv"), range(2, 14), cols)), workbook=False)


def jigboat():
    f = "86-jigboat-count"
    arc = lambda sign: lambda v: sign * (float(v.split()[0]) + float(v.split()[1][:-1]) / 60)
    cols = [(0, "date", dated("dmy", lambda m: 2025)), (1, "lat", arc(1)), (2, "lon", arc(-1)), (3, "sea_temp_c", of(fahr)), (4, "lines_out", whole), (5, "start_s", clock), (6, "end_s", clock), (7, "speed_kn", num), (8, "landed_n", whole),
            (9, ":Avg Wt"), (10, "notes")]
    put_wants(f, ("", entries(rows_of(f, "albacore.csv"), range(4, 15), cols)), workbook=False)


def hours_and_mph():
    f = "87-hours-and-mph"
    cols = [(0, "date", dated("mdy", lambda m: 2025)), (1, "duration_s", of(hour)), (2, "speed_kn", of(mph)), (3, "lines_out", whole), (4, "strikes_n", whole), (5, "landed_n", whole), (6, "released_n", whole), (7, "species"), (8, ":Biggest (lb)"), (9, "notes")]
    weekday = lambda row: [re.sub(r"^\w{3} ", "", row[0])] + row[1:]
    rows = {n: weekday(r) for n, r in rows_of(f, "tuna 2025.csv").items()}
    put_wants(f, ("", entries(rows, range(3, 12), cols)), workbook=False)


def h_for_colon():
    f = "88-h-for-colon"
    cols = [(0, "date", dated("dmy", None)), (1, "depart_s", clock), (2, "return_s", clock), (3, "start_s", clock), (4, "end_s", clock), (5, "speed_kn", of(kmh)), (6, "lines_out", whole), (7, "species"), (8, "scale_kg", of(kg)), (9, "lure"),
            (10, "lure_weight_g", of(gram)), (11, "strikes_n", whole), (12, "notes")]
    want = entries(rows_of(f, "peche 2025.txt.csv", sep="\t"), range(2, 10), cols)
    for _, e in want:  # of several strikes the fish that was weighed was landed
        if "scale_kg" in e and e["strikes_n"] > 1:
            e["landed_n"] = 1
    put_wants(f, ("", want), workbook=False)


def rod_a_row():
    f = "89-rod-a-row"
    rows = rows_of(f, "tuna log autumn.csv")
    for n in range(3, 20):
        rows[n] = [rows[n - 1][i] if c == '"' else c for i, c in enumerate(rows[n])]
    cols = [(0, "date", dated("dmy", None)), (1, "start_s", clock), (2, "end_s", clock), (3, "speed_kn", num), (4, "line"), (5, "lure"), (6, "lure_weight_g", num), (7, "setback_m", num), (8, "strikes_n", whole), (9, ":Fish"), (10, "landed_n", whole),
            (11, "released_n", whole), (12, "notes")]
    put_wants(f, ("", entries(rows, range(2, 20), cols)), workbook=False)


def fathoms():
    f = "90-fathoms"
    cols = [(0, "date", day), (1, "leg"), (2, "start_s", clock), (3, "end_s", clock), (4, "speed_kn", num), (5, "lines_out", whole), (6, "line"), (7, "setback_m", of(lambda v: ft(6 * v))), (8, "lure"), (9, "lure_weight_g", of(oz)),
            (10, "landed_n", whole), (11, "lost_n", whole), (12, "species"), (13, "length_cm", num), (14, "scale_kg", num)]
    want = entries(rows_of(f, "hikinawa.csv"), range(2, 13), cols)
    for _, e in want:
        if "length_cm" in e:
            e["length_kind"] = "FL"
    put_wants(f, ("", want), workbook=False)


def lines_wet():
    f = "91-lines-wet"
    cols = [(0, "date", day), (1, "area"), (2, "start_s", hm), (3, "end_s", hm), (4, "duration_s", hour), (5, "speed_kn", num), (6, "lines_out", whole), (7, ":Raised"), (8, "strikes_n", whole), (9, "hooked_n", whole), (10, "landed_n", whole),
            (11, "released_n", whole), (12, "species"), (13, "sea_temp_c", num), (14, "wind"), (15, "notes")]
    put_wants(f, ("Log", entries(rows_of(f, "Fishing log.xlsx", "Log"), range(2, 12), cols)))


def trolled_from_to():
    f = "92-trolled-from-to"
    cols = [(0, "date", day), (1, "start_s", hm), (2, "end_s", hm), (3, "speed_kn", of(num)), (4, "lines_out", whole), (5, "time_s", hm), (6, "line"), (7, "lure"), (8, "outcome"), (9, "species"), (10, ":Est. kg"), (11, "scale_kg", num)]
    put_wants(f, ("src.csv", entries(rows_of(f, "log madeira.xlsx", "src.csv"), range(2, 13), cols)))


def set_and_hauled():
    f = "93-set-and-hauled"
    rows = rows_of(f, "tuna.xlsx", "2025")
    for n in (5, 8, 9, 12):  # merged with the row above; speed and lines stand once for the leg
        rows[n][:3] = rows[n - 1][:3]
    cols = [(0, "date", day), (1, "start_s", clock), (2, "end_s", clock), (3, "speed_kn", num), (4, "lines_out", whole), (5, "time_s", clock), (6, "outcome"), (7, "length_cm", feet), (8, "girth_cm", feet), (9, "scale_kg", lb), (10, ":Dressed lb"),
            (11, "notes")]
    want = entries(rows, range(3, 13), cols)
    for _, e in want:
        if "scale_kg" in e:
            e["weight_state"] = "round"
    put_wants(f, ("2025", want))


def effort_and_fish():
    f, file = "94-effort-and-fish", "Summer fishing.xlsx"
    date = dated("dmy", lambda m: 2025 if m > 6 else 2026)
    legs = [(0, "date", date), (1, "start_s", clock), (2, "end_s", clock), (3, "speed_kn", num), (4, "lines_out", whole), (5, "strikes_n", whole), (6, "landed_n", whole), (7, "sea_state"), (8, "sea_temp_c", num), (9, "notes")]
    fish = [(0, "date", date), (1, "time_s", clock), (2, "species"), (3, "scale_kg", lambda v: None if "est" in str(v) else num(v)), (4, "length_cm", num), (5, "kept", lambda v: "true" if v == "Y" else "false"), (6, "angler"), (7, "lure")]
    put_wants(f, *[(s, entries(rows_of(f, file, s), range(2, last), cols)) for s, last, cols in (("Trolling 2025-26", 12, legs), ("Fish 2025-26", 13, fish))])


ALL = [canyon, baja, hawaii_wide, club_captures, month_sheets, spain, italy, france, islands, japan, mates_text, dittos, fish_list, day_totals, species_columns, two_line_heading, events, rigs, club_two_lists, four_sheets, two_fish_in_a_cell, jigboat, hours_and_mph, h_for_colon, rod_a_row, fathoms, lines_wet, trolled_from_to, set_and_hauled, effort_and_fish]
