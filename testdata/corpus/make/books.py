"""The workbooks of the corpus. All boats, crews, ports and lures are invented."""

from datetime import date as D, datetime as DT, time as T

from openpyxl.utils.datetime import CALENDAR_MAC_1904

from kit import *

SPECIES = {"Yellowfin": "YFT", "Skipjack": "SKJ", "Albacore": "ALB", "Bigeye": "BET", "Wahoo": "WAH",
           "Atlantic bluefin": "BFT", "Pacific bluefin": "PBF"}
code = SPECIES.get


def tired_captain():
    cols = [Col("Date", "date", day), Col("In", ""), Col("Lines in", "start_s", hm), Col("Lines up", "end_s", hm),
            Col("Speed kts", "speed_kn", knot), Col("SST F", "sea_temp_c", fahr), Col("Rod", "line"), Col("Lure", "lure"),
            Col("Lure oz", "lure_weight_g", oz), Col("Bites", "strikes_n", whole), Col("Boated", "landed_n", whole), Col("Comments", "notes")]
    cols.pop(1)
    h = header(cols)
    rows = [N(["MARRAM - tuna log 2026"]), N(["kept by Odd Brandal, mostly at night"]), N([]), N(["all times local"]), N([]), N([]), h,
            [D(2026, 5, 30), T(6, 10), T(8, 0), 8.5, 67, "Long left", "Bellows", 8, 1, 0, "came off at the boat"],
            [D(2026, 5, 30), T(6, 10), T(8, 0), 8.5, 67, "Long right", "Tinker", 12, 0, 0, None],
            N(["breakfast, then ran 9 miles south"]), N([]),
            [D(2026, 5, 30), T(8, 40), T(11, 25), 12.2, 67.4, "Long left", "Bellows", 8, 2, 1, None],
            [D(2026, 5, 30), T(8, 40), T(11, 25), 12.2, 67.4, "Long right", "Tinker", 12, 0, 0, None],
            N([None, None, None, None, None, "new page"]), h,
            [D(2026, 6, 2), T(5, 55), T(9, 15), 12.6, 68.1, "Long left", "Rattlejack", 16, 0, 0, None],
            [D(2026, 6, 2), T(5, 55), T(9, 15), 12.6, 68.1, "Long right", "Tinker", 12, 3, 2, "double"],
            N([]),
            N(["Totals", None, None, None, None, None, None, None, F("SUM([.I8:.I17])", 6), F("SUM([.J8:.J17])", 3)])]
    libreoffice("01-tired-captain", "marram 2026.xlsx", [table("Sheet1", cols, rows)])


def two_row_header():
    cols = [Col("Trip", "trip"), Col("Date", "date", day), Col("In", "start_s", hm), Col("Out", "end_s", hm), Col("Lure", "lure"),
            Col("Weight", "lure_weight_g", oz), Col("Back", "setback_m", yd), Col("Species", "species", code), Col("Length", "length_cm", inch), Col("Weight", "scale_kg", lb)]
    rows = [N(["Trip", "Date", "Lines", None, "Gear", None, None, "Fish"]),
            N([None, None, "In", "Out", "Lure", "Lure weight (oz)", "Back (yd)", "Species", "Length (in)", "Weight (lb)"]),
            ["12", D(2026, 6, 14), T(7, 5), T(9, 30), "Stavepin", 10, 70, None, None, None],
            ["12", D(2026, 6, 14), T(9, 50), T(12, 10), "Stavepin", 10, 70, "Yellowfin", 41.5, 46],
            ["13", D(2026, 6, 20), T(6, 20), T(8, 45), "Cope", 14, 85, "Wahoo", 49, None]]
    openpyxl_book("02-two-row-header", "season.xlsx",
                  [table("Log", cols, rows, merges=["A1:A2", "B1:B2", "C1:D1", "E1:G1", "H1:J1"])])


def units_row():
    cols = [Col("Date", "date", day), Col("Fish", "species", code), Col("Fork length", "length_cm", cm, also={"length_kind": "FL"}),
            Col("Girth", "girth_cm", cm), Col("Scale weight", "scale_kg", kg), Col("Angler", "angler"), Col("Remarks", "notes")]
    rows = [N(["Fish of the Grey Selkie"]), N([]), header(cols), N([None, None, "cm", "cm", "kg", None, None]),
            [D(2026, 7, 2), "Bigeye", 131, 98.5, 47.2, "Runa Tveit", None],
            [D(2026, 7, 2), "Bigeye", 118.5, None, None, "Per Lund", "let it go at the boat"],
            [D(2026, 7, 19), "Yellowfin", 96, 66, None, "Runa Tveit", None]]
    gnumeric("03-units-row", "fish.xlsx", [table("Fish", cols, rows)])


def merged_trips_hidden():
    cols = [Col("Trip no.", "trip"), Col("Date", "date", day), Col("Leg", "leg"), Col("Start", "start_s", hm), Col("End", "end_s", hm),
            Col("SOG (kn)", "speed_kn", knot), Col("Lines out", "lines_out", whole), Col("Course", "heading_deg", num)]
    for c in cols[:2]:
        c.fill = True
    rows = [N(["Legs 2026"]), header(cols),
            ["26-01", D(2026, 6, 6), "1", T(6, 0), T(7, 45), 9.1, 5, 180], [None, None, "2", T(8, 0), T(10, 15), 12.4, 5, 200],
            [None, None, "3", T(10, 40), T(12, 5), 14.1, 4, 20],
            ["26-02", D(2026, 6, 13), "1", T(5, 30), T(7, 0), 10.2, 6, 95], [None, None, "2", T(7, 20), T(9, 40), 12.8, 6, 275]]
    lists = Sheet("lists", [["skippers"], ["Ansa"], ["Bodil"], ["quays"], ["Hollin Quay"]], [], hidden=True)
    openpyxl_book("04-merged-trips-hidden-sheet", "legs.xlsx",
                  [table("Legs", cols, rows, merges=["A1:H1", "A3:A5", "B3:B5", "A6:A7", "B6:B7"]), lists])


def dates_1904():
    cols = [Col("Day", "date", day), Col("Lines wet", "start_s", hm), Col("Lines clear", "end_s", hm), Col("Boat speed kn", "speed_kn", knot), Col("Where", "area")]
    rows = [header(cols), [D(2026, 4, 11), T(7, 15), T(9, 5), 7.5, "the Shelf"], [D(2026, 4, 11), T(9, 20), T(12, 0), 9, "the Shelf"],
            [D(2026, 4, 18), T(6, 45), T(10, 30), 12, "Sallow Bank"]]
    openpyxl_book("10-dates-1904", "old computer.xlsx", [table("Legs", cols, rows)], epoch=CALENDAR_MAC_1904)


def weigh_in():
    cols = [Col("Date", "date", day), Col("Boat", "boat"), Col("Angler", "angler"), Col("Fish", "species", code),
            Col("Weight (lbs)", "scale_kg", lb), Col("Certified", "certified", yes), Col("Ticket", "")]
    rows = [N(["Port Sallow weigh-in book"]), N([]), header(cols),
            [D(2026, 8, 8), "Marram", "O. Brandal", "Bigeye", 162.4, "Y", "A17"], [D(2026, 8, 8), "Tern Rock", "L. Fass", "Yellowfin", 71.2, "Y", "A18"],
            [D(2026, 8, 9), "Marram", "S. Oye", "Albacore", 33.6, "N", None], N(["Total", None, None, None, F("SUM([.E4:.E6])", 267.2)])]
    gnumeric("12-weigh-in-book", "weigh-in.xlsx", [table("August", cols, rows)])


def lines_in_times():
    cols = [Col("Trip", "trip"), Col("Date", "date", day), Col("Lines in", "start_s", hm), Col("Lines out", "end_s", hm), Col("Knots", "speed_kn", knot),
            Col("Rods", "lines_out", whole), Col("Method", "approach")]
    rows = [header(cols), ["1", D(2026, 9, 3), T(6, 40), T(8, 10), 8, 4, "straight"], ["1", D(2026, 9, 3), T(8, 30), T(11, 55), 12.5, 5, "circling birds"],
            ["2", D(2026, 9, 12), T(7, 0), T(13, 20), 11.5, 5, "temp break"]]
    excelize_book("13-lines-in-as-times", "september.xlsx", [table("Legs", cols, rows)])


def sheet_a_trip():
    cols = [Col("Lines in", "start_s", hm), Col("Lines up", "end_s", hm), Col("Speed (kts)", "speed_kn", knot), Col("Lines out", "lines_out", whole), Col("Notes", "notes")]
    sheets = []
    for n, (d, legs) in enumerate([(D(2026, 7, 4), [[T(6, 0), T(8, 0), 8.2, 4, None], [T(8, 15), T(12, 0), 12.1, 5, "birds"]]),
                                   (D(2026, 7, 11), [[T(5, 40), T(9, 10), 12.4, 5, None]]),
                                   (D(2026, 7, 25), [[T(6, 30), T(7, 45), 9.6, 5, None], [T(8, 0), T(11, 0), 13.2, 5, None]])]):
        rows = [N(["Boat:", "Oyster Bell"]), N(["Skipper: Mats Rein"]), N(["Date", d]), N([]), header(cols), *legs]
        sheets.append(table(f"Trip {n + 1}", cols, rows, given={"boat": "Oyster Bell", "captain": "Mats Rein", "date": day(d)}))
    libreoffice("15-sheet-a-trip", "oyster bell.xlsx", sheets)


def past_midnight():
    cols = [Col("Date", "date", day), Col("From", "start_s", hm), Col("To", "end_s", hm), Col("Speed", "speed_kn", knot), Col("Lines", "lines_out", whole)]
    rows = [header(cols), [D(2026, 8, 1), T(20, 15), W("24:00", 86400), 7, 3], [D(2026, 8, 2), T(22, 30), W(T(1, 45), 25.75 * 3600), 8, 3],
            [D(2026, 8, 8), "21:00", W("00:30", 24.5 * 3600), 6.5, 3], [D(2026, 8, 8), W(DT(2026, 8, 9, 2, 10), 26 * 3600 + 600), W(DT(2026, 8, 9, 4, 0), 28 * 3600), 9, 3]]
    for r in rows[1:]:
        for i in (1, 2):
            if isinstance(r[i], W) and isinstance(r[i].want, float):
                r[i].want = int(r[i].want)
    openpyxl_book("16-past-midnight", "nights.xlsx", [table("Legs", cols, rows)])


def formulas():
    cols = [Col("Date", "date", day), Col("Start time", "start_s", hm), Col("Hours", "duration_s", hour), Col("End time", "end_s", hm), Col("Speed kn", "speed_kn", knot),
            Col("Miles", "")]
    def row(n, d, start, hours, end, speed):
        return [d, start, hours, F(f"[.B{n}]+[.C{n}]/24", end, "time"), speed, None]
    rows = [header(cols), row(2, D(2026, 6, 27), T(6, 0), 1.5, T(7, 30), 8), row(3, D(2026, 6, 27), T(8, 0), 2.25, T(10, 15), 12),
            row(4, D(2026, 6, 28), T(6, 15), 3, T(9, 15), 12.5), N(["Total", None, F("SUM([.C2:.C4])", 6.75)])]
    libreoffice("17-formulas", "formulas.xlsx", [table("Legs", cols, rows)])


def mixed_units():
    cols = [Col("Date", "date", day), Col("Species", "species", code), Col("Length (in)", "length_cm", inch), Col("Girth in", "girth_cm", inch),
            Col("Scale wt (kg)", "scale_kg", kg), Col("Fight mins", "fight_s", minute), Col("Speed km/h", "strike_speed_kn", kmh)]
    rows = [header(cols), [D(2026, 5, 5), "Yellowfin", 40, 28, 21.4, 18, 22], [D(2026, 5, 9), "Bigeye", 52.5, 38.25, 52, 41, 23.5],
            [D(2026, 5, 9), "Skipjack", 23, None, 3.6, None, 14]]
    gnumeric("18-mixed-units", "two systems.xlsx", [table("Catch", cols, rows)])


def positions():
    cols = [Col("Date", "date", day), Col("Begin", "start_s", hm), Col("Finish", "end_s", hm), Col("Position", "position"), Col("SOG", "speed_kn", knot), Col("Sea temp", "sea_temp_c", fahr)]
    rows = [header(cols), [D(2026, 9, 1), T(6, 5), T(7, 40), W("32 15.2N 127 30.6W", (32 + 15.2 / 60, -(127 + 30.6 / 60))), 9.5, 68],
            [D(2026, 9, 1), T(8, 0), T(10, 0), W("32°18.0'N, 127°41.5'W", (32.3, -(127 + 41.5 / 60))), 12.5, 68.4],
            [D(2026, 9, 6), T(6, 0), T(9, 30), W("32.4010, -127.7020", (32.401, -127.702)), 12, 67.9]]
    libreoffice("21-position-in-one-cell", "positions.xlsx", [table("Runs", cols, rows)])


def setback_feet():
    cols = [Col("Trip", "trip"), Col("Position", "line"), Col("Lure", "lure"), Col("Wt", "lure_weight_g", oz), Col("Color", "colour"), Col("Hooks", "hooks"), Col("Leader (#)", "leader"),
            Col("Line class (lb)", "line_class_kg", lb), Col("Drag #", "drag_kg", lb), Col("Setback ft", "setback_m", ft)]
    rows = [N(["The spread, summer 2026"]), header(cols), ["1", "Long left", "Bellows", W("8 oz", oz(8)), "pink/white", "1 x 10/0", "300", 80, 18, 210],
            ["1", "Long right", "Tinker", W("12 oz", oz(12)), "black", "2 x 9/0", "300", 80, 18.5, 240], ["1", "Short", "Cope", W("1 lb", lb(1) * 1000), "blue/silver", "1 x 10/0", "400", 100, 22, 150]]
    excelize_book("23-setback-in-feet", "spread.xlsx", [table("Spread", cols, rows)])


def local_names():
    cols = [Col("Trip", "trip"), Col("Time", "time_s", hm), Col("Line", "line"), Col("Fish", "species"), Col("Result", "outcome"), Col("Why", "loss_cause"), Col("Who", "angler")]
    sp = lambda name, c: W(name, c)
    rows = [header(cols), ["3", T(7, 12), "1", sp("YFT", "YFT"), W("gaffed", "landed"), None, "Ansa"], ["3", T(8, 3), "3", sp("ahi", "YFT"), W("Pulled hook", "lost"), "hook pulled", "Bodil"],
            ["3", T(9, 40), "2", sp("ono", "WAH"), W("Let go", "released"), None, "Ansa"], ["4", T(6, 55), "1", sp("bluefin", None), W("broke off", "lost"), "chafed leader", "Bodil"],
            ["4", T(7, 30), "2", sp("aku", "SKJ"), W("Kept", "landed"), None, "Ansa"], ["4", T(8, 45), "4", None, W("Miss", "missed"), None, None]]
    openpyxl_book("25-local-names", "bites.xlsx", [table("Bites", cols, rows)])


def one_sheet():
    cols = [Col("Trip", "trip"), Col("Date", "date", day), Col("Captain", "captain"), Col("Start", "start_s", hm), Col("Stop", "end_s", hm), Col("Speed (kn)", "speed_kn", knot),
            Col("Water temp F", "sea_temp_c", fahr), Col("Rod", "line"), Col("Lure", "lure"), Col("Lure wt oz", "lure_weight_g", oz), Col("Colour", "colour"), Col("Drag lb", "drag_kg", lb),
            Col("Setback yd", "setback_m", yd), Col("Hit time", "time_s", hm), Col("Outcome", "outcome"), Col("Fish", "species", code), Col("Length in", "length_cm", inch),
            Col("Girth in", "girth_cm", inch), Col("Weight lb", "scale_kg", lb), Col("Moon", "")]
    base = ["7", D(2026, 6, 21), "Isa Holm", T(6, 10), T(8, 40), 12.3, 66.5]
    rows = [header(cols), base + ["LL", "Bellows", 8, "pink", 18, 70, None, None, None, None, None, None, "new"],
            base + ["LR", "Tinker", 12, "black", 18, 80, T(7, 2), W("Boated", "landed"), "Yellowfin", 42, 29, 49, "new"],
            base + ["SL", "Cope", 16, "blue", 20, 50, T(7, 3), W("lost", "lost"), None, None, None, None, "new"]]
    libreoffice("26-one-sheet-for-everything", "everything.xlsx", [table("2026", cols, rows)])


def merged_legs_flat():
    cols = [Col("Date", "date", day, True), Col("Lines down", "start_s", hm, True), Col("Lines up", "end_s", hm, True), Col("Speed kn", "speed_kn", knot),
            Col("Line", "line"), Col("Lure", "lure"), Col("Strikes", "strikes_n", whole), Col("Landed", "landed_n", whole)]
    rows = [header(cols), [D(2026, 7, 9), T(6, 0), T(7, 30), 8, "1", "Cope", 0, 0], [None, None, None, None, "2", "Tinker", 1, 0], [None, None, None, None, "3", "Bellows", 2, 1],
            [None, T(7, 45), T(9, 30), 12, "1", "Cope", 1, 1], [None, None, None, None, "2", "Tinker", 0, 0]]
    excelize_book("30-merged-times", "july.xlsx", [table("July", cols, rows, merges=["A2:A6", "B2:B4", "C2:C4", "D2:D4", "B5:B6", "C5:C6", "D5:D6"])])


def gear_and_trips():
    trips = [Col("Outing", "trip"), Col("Date fished", "date", day), Col("Vessel", "boat"), Col("Skipper", "captain"), Col("Home port", "port"), Col("Left dock", "depart_s", hm),
             Col("Back at dock", "return_s", hm), Col("Hours", ""), Col("Crew", "anglers")]
    t = [header(trips), ["Spring 1", D(2026, 4, 4), "Tern Rock", "Lise Fass", "Port Sallow", T(4, 50), T(15, 10), None, "Jon, Mia"],
         ["Spring 2", D(2026, 4, 12), "Tern Rock", "Lise Fass", "Port Sallow", T(5, 5), T(16, 0), None, "Jon"]]
    gear = [Col("Outing", "trip"), Col("Rod no.", "line"), Col("Lure name", "lure"), Col("Head weight (g)", "lure_weight_g", gram), Col("Skirt", "colour"), Col("Count", "count_s", sec),
            Col("Let out speed", "letout_kn", knot), Col("Strike drag (kg)", "drag_kg", kg)]
    g = [header(gear), ["Spring 1", "1", "Stavepin", 280, "green", 25, 7, 8.5], ["Spring 1", "2", "Cope", 400, "purple", 32, 7, 9], ["Spring 2", "1", "Stavepin", 280, "green", 28, 7.5, 8.5]]
    gnumeric("31-trips-and-gear", "tern rock.xlsx", [table("Outings", trips, t), table("Gear", gear, g)])


def implied_units():
    cols = [Col("Date", "date", day), Col("Time start", "start_s", hm), Col("Time end", "end_s", hm), Col("Speed", "speed_kn", knot), Col("SST", "sea_temp_c", cels)]
    rows = [header(cols), [D(2026, 10, 3), T(7, 0), T(9, 0), 11, 22.4], [D(2026, 10, 3), T(9, 15), T(12, 30), 12.5, 22.9], [D(2026, 10, 10), T(7, 10), T(10, 0), 12, 21.8]]
    openpyxl_book("32-only-one-unit-possible", "autumn.xlsx", [table("Legs", cols, rows)])


def three_sheets():
    legs = [Col("Trip#", "trip"), Col("Leg#", "leg"), Col("Date", "date", day), Col("Lns in", "start_s", hm), Col("Lns out", "end_s", hm), Col("Avg spd", "speed_kn", knot), Col("# rods", "lines_out", whole),
            Col("Wtr temp (F)", "sea_temp_c", fahr), Col("Wind dir/spd", "wind"), Col("Method", "approach")]
    le = [header(legs), ["1", "1", D(2026, 6, 5), T(6, 2), T(7, 31), 8.2, 5, 65.9, "NW 8", "blind"], ["1", "2", D(2026, 6, 5), T(7, 50), T(10, 44), 12.6, 5, 66.4, "NW 10", "birds"]]
    bites = [Col("Trip#", "trip"), Col("Leg#", "leg"), Col("Time of bite", "time_s", hm), Col("Rod pos.", "line"), Col("Result", "outcome"), Col("Fish type", "species", code), Col("Reason lost", "loss_cause"), Col("Min. fought", "fight_s", minute)]
    b = [header(bites), ["1", "1", T(6, 40), "LL", W("missed", "missed"), None, None, None], ["1", "2", T(8, 12), "SR", W("boated", "landed"), "Yellowfin", None, 14], ["1", "2", T(9, 3), "LL", W("lost", "lost"), None, "leader parted", 3]]
    fish = [Col("Trip#", "trip"), Col("Caught", "time_s", hm), Col("Species", "species", code), Col("Fork length in", "length_cm", inch, also={"length_kind": "FL"}), Col("Girth in", "girth_cm", inch), Col("Scale lbs", "scale_kg", lb), Col("Kept/released", "kept", yes)]
    f = [header(fish), ["1", T(8, 12), "Yellowfin", 44.25, 30, 57, W("kept", "true")], ["1", T(10, 1), "Skipjack", 23, None, None, W("released", "false")]]
    libreoffice("47-three-sheets", "season.xlsx", [table("Runs", legs, le), table("Bites", bites, b), table("Fish", fish, f)])


def ticks():
    cols = [Col("Date", "date", day), Col("Pass", "leg"), Col("From", "start_s", hm), Col("Until", "end_s", hm), Col("Depth ft", ""), Col("Rod", "line"), Col("Lure/skirt", "lure"), Col("Oz", "lure_weight_g", oz), Col("Yds back", "setback_m", yd),
            Col("Strike?", "strikes_n"), Col("Hook up?", "hooked_n"), Col("Boated?", "landed_n")]
    def t(v): return W(v, {"y": 1, "n": 0}[v]) if v else None
    rows = [header(cols), [D(2026, 7, 1), "1", T(6, 0), T(7, 0), "900", "1", "Cope blue", 14, 60, t("y"), t("y"), t("n")], [D(2026, 7, 1), "1", T(6, 0), T(7, 0), "900", "2", "Tinker black", 12, 75, t("n"), None, None],
            [D(2026, 7, 1), "2", T(7, 20), T(9, 10), "1200", "1", "Cope blue", 14, 60, t("y"), t("y"), t("y")]]
    excelize_book("50-yes-and-no", "passes.xlsx", [table("Passes", cols, rows)])


ALL = [tired_captain, two_row_header, units_row, merged_trips_hidden, dates_1904, weigh_in, lines_in_times, sheet_a_trip, past_midnight, formulas,
       mixed_units, positions, setback_feet, local_names, one_sheet, merged_legs_flat, gear_and_trips, implied_units, three_sheets, ticks]
