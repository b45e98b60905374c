"""The text logs of the corpus. Those typed in a text editor stand in their
folders; here is what is expected of them."""

from datetime import date as D, time as T

from kit import *


def by_r():
    cols = [Col("trip", "trip"), Col("date", "date", day), Col("hit.time", "time_s", hm), Col("rod", "line"), Col("lure", "lure"), Col("result", "outcome"),
            Col("species", "species", {"Yellowfin tuna": "YFT", "Wahoo": "WAH"}.get), Col("fight.min", "fight_s", minute)]
    rows = [header(cols), ["5", "2026-06-30", "06:41", "2", "Cope", "missed", None, None], ["5", "2026-06-30", "07:15", "1", "Bellows", "landed", "Yellowfin tuna", 22],
            ["5", "2026-06-30", "09:02", "4", "Tinker", "lost", None, 6], ["6", "2026-07-07", "06:18", "1", "Bellows", "released", "Wahoo", 9.5]]
    r_file("05-r-strikes", "strikes.csv", table("", cols, rows), "write.csv(d, out, row.names=FALSE, na='')")


def by_r_comma():
    cols = [Col("Trip", "trip"), Col("Date", "date", day), Col("Start", "start_s", hm), Col("End", "end_s", hm), Col("Speed (kn)", "speed_kn", knot), Col("Water temp (C)", "sea_temp_c", cels),
            Col("Lat", "lat", num), Col("Lon", "lon", num)]
    rows = [header(cols), ["1", W("14.05.2026", "2026-05-14"), "06:05", "07:50", 8.3, 17.1, 36.25, -9.5125], ["1", W("14.05.2026", "2026-05-14"), "08:05", "11:15", 12.4, 17.3, 36.31, -9.625],
            ["2", W("21.05.2026", "2026-05-21"), "06:20", "10:00", 12, 18, 36.4, -9.7]]
    r_file("06-r-decimal-commas", "legs.csv", table("", cols, rows), "write.csv2(d, out, row.names=FALSE, quote=FALSE)")


def by_r_tabs():
    cols = [Col("Date", "date", day), Col("Species", "species", {"Pacific bluefin": "PBF", "Albacore": "ALB"}.get), Col("Curved fork length (cm)", "length_cm", cm, also={"length_kind": "CFL"}),
            Col("Girth (cm)", "girth_cm", cm), Col("Gutted weight (kg)", "scale_kg", kg, also={"weight_state": "gutted"})]
    rows = [header(cols), ["2026-08-21", "Pacific bluefin", 151.5, 108, 61.4], ["2026-08-21", "Albacore", 84, None, None], ["2026-08-28", "Pacific bluefin", 166, 121.5, None]]
    r_file("07-r-tabs", "fish.tsv", table("", cols, rows), "write.table(d, out, sep='\\t', row.names=FALSE, quote=FALSE, na='NA')")


def windows_1252():
    cols = [Col("Skipper", "captain"), Col("Outing", "trip"), Col("Date", "date", day), Col("Port", "port"), Col("Departed", "depart_s", hm), Col("Returned", "return_s", hm), Col("Remarks", "notes")]
    rows = [header(cols), ["Renée Ørn", "A", W("28/05/2026", "2026-05-28"), "Säby Hamn", "05:10", "15:30", "calm – hot"], ["Renée Ørn", "B", W("04/06/2026", "2026-06-04"), "Säby Hamn", "04:55", "16:05", None]]
    libreoffice("08-windows-1252", "trips.csv", [table("", cols, rows)], kind="csv:Text - txt - csv (StarCalc):59,34,1,1")


def utf16():
    cols = [Col("Trip #", "trip"), Col("Rod position", "line"), Col("Lure", "lure"), Col("Lure weight (g)", "lure_weight_g", gram), Col("Colour", "colour"), Col("Leader (kg)", "leader"),
            Col("Line class (kg)", "line_class_kg", kg), Col("Drag (kg)", "drag_kg", kg), Col("Setback (m)", "setback_m", metre)]
    rows = [header(cols), ["1", "bâbord", "Épi", 320, "bleu", "136", 37, 9.5, 62.5], ["1", "tribord", "Stavepin", 280, "rose", "136", 37, 9.5, 71], ["2", "centre", "Épi", 320, "bleu", "180", 60, 12, 95]]
    libreoffice("28-utf-16", "lines.txt", [table("", cols, rows)], kind="csv:Text - txt - csv (StarCalc):9,34,65535,1")


def merged_to_csv():
    cols = [Col("Trip", "trip", text, True), Col("Date", "date", day, True), Col("Start", "start_s", hm), Col("End", "end_s", hm), Col("Speed (kts)", "speed_kn", knot), Col("Rods", "lines_out", whole)]
    rows = [header(cols), ["1", D(2026, 6, 6), T(6, 0), T(7, 30), 8, 4], [None, None, T(7, 45), T(9, 0), 12, 4], [None, None, T(9, 20), T(11, 50), 12.5, 5],
            ["2", D(2026, 6, 14), T(6, 15), T(8, 0), 10, 5], [None, None, T(8, 10), T(11, 0), 13, 5], ["3", D(2026, 6, 20), T(5, 50), T(10, 30), 12.2, 5], N(["Total", None, None, None, None, None])]
    libreoffice("29-merged-cells-to-csv", "legs.csv", [table("", cols, rows, merges=["A2:A4", "B2:B4", "A5:A6", "B5:B6"])], kind="csv:Text - txt - csv (StarCalc):44,34,76,1")


def day_first_late():
    cols = [Col("Date", "date", day), Col("Start", "start_s", hm), Col("End", "end_s", hm), Col("SOG kn", "speed_kn", knot)]
    rows = [header(cols)]
    for n in range(110):
        m, d = 4 + n // 11 % 9, 1 + n % 11
        rows.append([W(f"{d:02}/{m:02}/2026", f"2026-{m:02}-{d:02}"), "06:00", "08:30", 8 + n % 9 * 0.5])
    rows.append([W("28/11/2026", "2026-11-28"), "06:00", "09:00", 12])
    r_file("20-day-first-seen-late", "year.csv", table("", cols, rows), "write.csv(d, out, row.names=FALSE)")


def gnumeric_tabs():
    cols = [Col("Trip", "trip"), Col("Leg", "leg"), Col("Lines wet", "start_s", hm), Col("Lines out of water", "end_s", hm), Col("Date", "date", day), Col("Troll speed (knots)", "speed_kn", knot), Col("Approach", "approach")]
    rows = [N(["Legs of the Sorrel"]), header(cols), ["1", "1", T(6, 0), T(7, 0), "2026-03-14", 8.5, "blind"], ["1", "2", T(7, 20), T(10, 40), "2026-03-14", 12.25, "around the boats"], ["2", "1", T(6, 30), T(9, 0), "2026-03-22", 12, "blind"]]
    gnumeric("38-gnumeric-tabs", "legs.txt", [table("", cols, rows)], ["-T", "Gnumeric_stf:stf_assistant", "-O", "separator='\t' quoting-mode=never"])


# --- typed by hand

def pipes():
    def leg(row, trip, d, a, b, kn, n, how):
        return row, {"trip": trip, "date": d, "start_s": hm(a), "end_s": hm(b), "speed_kn": kn, "lines_out": n, "approach": how}
    hand("09-pipes", [leg(3, "1", "2026-05-16", "06:10", "07:55", 8.5, 4, "straight"), leg(4, "1", "2026-05-16", "08:20", "11:40", 12.0, 5, "working the edge"),
                      leg(6, "2", "2026-05-23", "05:45", "09:00", 12.5, 5, "straight")])


def phone_notes():
    hand("11-phone-notes", [
        (4, {"date": "2026-05-09", "time_s": hm("7:20"), "species_logged": "Bluefin tuna", "length_cm": inch(74), "girth_cm": inch(52), "kept": "false", "notes": "swam off strong"}),
        (5, {"date": "2026-05-09", "time_s": hm("11:05"), "species_logged": "Skipjack", "species": "SKJ", "length_cm": inch(22), "scale_kg": lb(6.5), "kept": "true"}),
        (6, {"date": "2026-05-17", "time_s": hm("6:48"), "species_logged": "Yellowfin", "species": "YFT", "length_cm": 105.0, "girth_cm": 71.0, "scale_kg": lb(49.5), "kept": "true", "notes": "on the rattly lure"}),
        (9, {"date": "2026-05-30", "time_s": hm("14:15"), "species_logged": "Bigeye", "species": "BET", "length_cm": inch(49.5), "girth_cm": inch(37), "scale_kg": lb(88), "kept": "true"})])


def counts():
    def leg(row, d, n, a, b, lines, kn, wind):
        return row, {"date": d, "leg": n, "start_s": hm(a), "end_s": hm(b), "lines_out": lines, "speed_kn": kn, "wind": wind}
    hand("14-lines-out-as-counts", [leg(2, "2026-06-07", "1", "6:15", "7:50", 4, 8.2, "NW 8"), leg(3, "2026-06-07", "2", "8:10", "10:45", 6, 12.1, "NW 8"),
                                    leg(4, "2026-06-08", "1", "6:00", "9:30", 6, 12.6, "W 5")])


def other_words():
    def row(n, d, a, b, kn, t, rod, w, back, count, s, h, l, r, notes=None):
        return n, {"captain": "Signe Aas", "boat": "Long Splice", "date": d, "start_s": hm(a), "end_s": hm(b), "speed_kn": kn, "sea_temp_c": fahr(t), "line": rod, "lure_weight_g": oz(w),
                   "setback_m": yd(back), "count_s": float(count), "strikes_n": s, "hooked_n": h, "landed_n": l, "released_n": r, "notes": notes}
    hand("19-other-words", [row(2, "2026-06-20", "5:50", "7:35", 8.4, 66, "short port", 10, 40, 12, 1, 1, 0, 0, "hook straightened"), row(3, "2026-06-20", "5:50", "7:35", 8.4, 66, "long port", 14, 90, 27, 0, 0, 0, 0),
                            row(4, "2026-06-20", "8:00", "12:15", 12.2, 66.8, "long port", 14, 90, 27, 3, 2, 1, 1), row(5, "2026-06-21", "6:05", "10:00", 12.4, 67, "short stbd", 16, 45, 13, 1, 1, 1, 0, "big one")])


def comments():
    def leg(row, trip, n, d, a, b, kn, lines, t, notes=None):
        return row, {"trip": trip, "leg": n, "date": d, "start_s": hm(a), "end_s": hm(b), "speed_kn": kn, "lines_out": lines, "sea_temp_c": t, "notes": notes}
    hand("22-comment-rows", [leg(5, "1", "1", "2026-04-18", "6:30", "8:00", 9.0, 4, 17.2), leg(7, "1", "2", "2026-04-18", "8:10", "11:45", 12.5, 5, 17.4, "birds, bait, nothing else"),
                             leg(9, "2", "1", "2026-04-26", "5:50", "9:20", 12.0, 5, 17.9)])


def speeds():
    hand("24-mph-and-kmh", [
        (2, {"date": "2026-08-15", "start_s": hm("6:00"), "end_s": hm("7:30"), "speed_kn": mph(9), "school_m": yd(150), "nearest_boat_m": 926.0}),
        (3, {"date": "2026-08-15", "start_s": hm("7:45"), "end_s": hm("9:30"), "speed_kn": mph(14), "school_m": ft(200), "nearest_boat_m": 600.0}),
        (4, {"date": "2026-08-16", "start_s": hm("6:10"), "end_s": hm("8:40"), "speed_kn": kmh(23), "school_m": 80.0, "nearest_boat_m": 1852.0}),
        (5, {"date": "2026-08-16", "start_s": hm("9:00"), "end_s": hm("11:00"), "speed_kn": 12.4, "nearest_boat_m": 3704.0})])


def dates():
    def strike(row, d, s, rod, lure, what, sp=None, c=None, fight=None):
        return row, {"date": d, "time_s": s, "line": rod, "lure": lure, "outcome": what, "species_logged": sp, "species": c, "fight_s": fight}
    hand("27-dates-as-text", [strike(2, "2026-06-03", hm("6:55"), "2", "Tinker", "lost"), strike(3, "2026-06-05", hm("19:10"), "1", "Cope", "released", "Bigeye", "BET", 1500.0),
                              strike(4, "2026-06-06", hm("9:15"), "3", "Bellows", "landed", "Yellowfin", "YFT", 1080.0), strike(5, "2026-06-07", hm("11:20"), "1", "Cope", "missed"),
                              strike(6, "2026-06-08", hm("12:00"), "2", "Tinker", "released", "Albacore", "ALB", 720.0), strike(7, "2026-06-09", hm("16:05") + 30, "4", "Stavepin", "lost", None, None, 3900.0)])


def ditto():
    def fish(row, d, sp, c, length, who, kept, tag=None):
        return row, {"date": d, "species_logged": sp, "species": c, "length_cm": inch(length), "length_kind": "FL", "angler": who, "kept": kept, "extra": tag}
    hand("33-ditto-marks", [fish(2, "2026-07-03", "Yellowfin", "YFT", 38, "Tove", "true"), fish(3, "2026-07-03", "Yellowfin", "YFT", 36.5, "Tove", "false", '{"Tag": "T-118"}'),
                            fish(4, "2026-07-10", "Wahoo", "WAH", 51, "Emil", "true"), fish(5, "2026-07-10", "Wahoo", "WAH", 47, "Emil", "true")])


def ambiguous_dates():
    def leg(row, d, a, b, kn, lines):
        return row, {"date": d, "start_s": hm(a), "end_s": hm(b), "speed_kn": float(kn), "lines_out": lines}
    hand("34-ambiguous-dates", [leg(2, "2026-04-03", "6:00", "8:00", 8, 4), leg(3, "2026-04-03", "8:15", "11:00", 12, 5), leg(4, "2026-04-10", "6:30", "9:45", 12.5, 5)])


def no_units():
    hand("35-no-units", [(2, {"date": "2026-06-03", "species_logged": "Yellowfin", "species": "YFT", "length_cm": inch(62), "girth_cm": inch(41)}),
                         (3, {"date": "2026-06-03", "species_logged": "Skipjack", "species": "SKJ", "length_cm": inch(25)}),
                         (4, {"date": "2026-06-11", "species_logged": "Bigeye", "species": "BET", "length_cm": inch(70), "girth_cm": inch(50)})])


def together():
    def leg(row, trip, d, n, a, b, kn, t, lines, nmi, sea, fuel):
        return row, {"trip": trip, "date": d, "leg": n, "start_s": hm(a), "end_s": hm(b), "speed_kn": kn, "sea_temp_c": fahr(t), "lines_out": lines, "nearest_boat_m": nmi * 1852.0, "sea_state": sea,
                     "extra": json.dumps({"FuelUsed": fuel})}
    hand("36-written-together", [leg(2, "14", "2026-09-19", "1", "6:20", "7:55", 8.8, 71.2, 4, 1.5, "3", "22"), leg(3, "14", "2026-09-19", "2", "8:15", "11:20", 12.3, 71.6, 5, 0.8, "3", "41"),
                                 leg(4, "15", "2026-09-20", "1", "6:00", "10:10", 12.9, 70.9, 5, 2, "2", "55")])


def shorthand():
    def row(n, d, out, a, b, back, hdg, kn, lines, s, h, l, r, lost, t, sea, notes=None):
        return n, {"captain": "Lone Dahl", "date": d, "depart_s": hm(out), "start_s": hm(a), "end_s": hm(b), "return_s": hm(back), "heading_deg": float(hdg), "speed_kn": kn, "lines_out": lines,
                   "strikes_n": s, "hooked_n": h, "landed_n": l, "released_n": r, "lost_n": lost, "sea_temp_c": fahr(t), "sea_state": sea, "notes": notes}
    hand("37-shorthand", [row(2, "2026-04-18", "4:45", "6:10", "11:40", "14:20", 210, 12.4, 5, 4, 3, 1, 1, 1, 63.8, "2 ft", "first day with the new spread"),
                          row(3, "2026-04-19", "5:00", "6:25", "12:10", "15:00", 205, 12.1, 5, 0, 0, 0, 0, 0, 63.5, "3 ft"),
                          row(4, "2026-05-02", "4:30", "5:55", "13:00", "16:30", 180, 11.8, 6, 6, 4, 2, 1, 1, 64.9, "1 ft", "doubled twice")])


def capitals():
    def row(n, d, who, a, b, area, kn, t, s, h, l, r, sp, c, notes):
        return n, {"date": d, "boat": "SORREL", "captain": who, "start_s": hm(a), "end_s": hm(b), "area": area, "speed_kn": float(kn), "sea_temp_c": fahr(t), "strikes_n": s, "hooked_n": h,
                   "landed_n": l, "released_n": r, "species_logged": sp, "species": c, "notes": notes}
    hand("39-capitals", [row(5, "2026-05-16", "JON", "6:30", "11:45", "SALLOW BANK", 8.5, 66.4, 3, 2, 1, 1, "YELLOWFIN", "YFT", "SMALL ONES"),
                         row(6, "2026-05-17", "JON/MIA", "6:00", "13:10", "SALLOW BANK", 11.5, 66.9, 0, 0, 0, 0, None, None, "SLOW"),
                         row(7, "2026-06-06", "JON", "5:50", "12:00", "THE SHELF", 12, 67.8, 2, 1, 0, 0, "BIGEYE", "BET", "PULLED AT GAFF")])


def date_and_time():
    def strike(n, no, trip, d, t, line, lure, sp, c, what, why, who):
        return n, {"strike": no, "trip": trip, "date": d, "time_s": hm(t), "line": line, "lure": lure, "species_logged": sp, "species": c, "outcome": what, "loss_cause": why, "angler": who}
    hand("40-date-and-time-together", [strike(2, "1", "T4", "2026-07-04", "6:52", "port long", "Bellows pink", "Yellowfin tuna", "YFT", "landed", None, "Mia"),
                                       strike(3, "2", "T4", "2026-07-04", "9:31", "stbd short", "Cope blue", None, None, "lost", "pulled hook", "Jon"),
                                       strike(4, "3", "T5", "2026-07-11", "5:58", "port long", "Bellows pink", None, None, "missed", None, None)])


def estimates():
    def fish(n, no, d, sp, c, length, girth, est, scale, kept):
        return n, {"date": d, "species_logged": sp, "species": c, "length_cm": float(length), "length_kind": "FL", "girth_cm": girth, "scale_kg": scale, "kept": kept,
                   "extra": json.dumps({"No.": no, "Est. wt (kg)": est})}
    hand("41-length-and-estimate", [fish(2, "1", "2026-05-12", "Southern bluefin", "SBF", 134, 96.0, "52", 49.6, "true"), fish(3, "2", "2026-05-12", "Southern bluefin", "SBF", 118, None, "33", None, "false"),
                                    fish(4, "3", "2026-05-30", "Albacore", "ALB", 88, 62.0, "14", 14.1, "true")])


def spread_list():
    def line(n, pos, lure, w, col, hooks, leader, cls, drag, back):
        return n, {"trip": "7", "line": pos, "lure": lure, "lure_weight_g": float(w), "colour": col, "hooks": hooks, "leader": leader, "line_class_kg": float(cls), "drag_kg": drag, "setback_m": float(back)}
    hand("42-spread-list", [line(2, "left rigger", "Stavepin", 280, "green/yellow", "single hook", "180", 37, 9.0, 65), line(3, "right rigger", "Tinker", 340, "purple", "single hook", "180", 37, 9.5, 75),
                            line(4, "shotgun", "Cope", 450, "black", "double hook", "220", 60, 12.0, 110)])


def hours_only():
    def leg(n, d, h, kn, rods, t, sea, notes=None):
        return n, {"date": d, "boat": "Tern Rock", "duration_s": hour(h), "speed_kn": float(kn), "lines_out": rods, "sea_temp_c": t, "sea_state": sea, "notes": notes}
    hand("43-hours-only", [leg(2, "2026-02-07", 5.5, 8, 4, 19.5, "slight"), leg(3, "2026-02-14", 6, 7.5, 4, 19.8, "moderate", "home early"), leg(4, "2026-02-21", 4.25, 12, 5, 20.1, "slight")])


def summary():
    def row(n, d, out, back, a, b, t, kn, s, h, l, r, notes=None):
        return n, {"date": d, "captain": "Tove Lind", "boat": "Grey Selkie", "depart_s": hm(out), "return_s": hm(back), "start_s": hm(a), "end_s": hm(b), "sea_temp_c": t, "speed_kn": kn,
                   "strikes_n": s, "hooked_n": h, "landed_n": l, "released_n": r, "notes": notes}
    hand("44-outing-summary", [row(2, "2026-03-01", "5:00", "15:30", "6:15", "14:20", 21.5, 8.2, 3, 2, 1, 1), row(3, "2026-03-14", "5:10", "14:00", "6:20", "13:00", 21.9, 12.1, 5, 3, 2, 1, "two on at once"),
                               row(4, "2026-03-28", "4:50", "16:10", "6:00", "15:05", 22.2, 12.6, 1, 0, 0, 0)])


def blank_first():
    def leg(n, trip, no, d, a, b, kn, lines, hdg, sea):
        return n, {"trip": trip, "leg": no, "date": d, "start_s": hm(a), "end_s": hm(b), "speed_kn": float(kn), "lines_out": lines, "heading_deg": float(hdg), "sea_state": sea}
    hand("45-first-column-blank", [leg(2, "1", "1", "2026-06-10", "6:05", "7:40", 8.1, 4, 110, "calm"), leg(3, "1", "2", "2026-06-10", "8:00", "10:15", 12, 5, 290, "calm"),
                                   leg(4, "2", "1", "2026-06-18", "5:55", "9:00", 12.4, 5, 95, "a little chop")])


def catch_by_trip():
    def fish(n, trip, d, t, sp, fl, kept, who, girth=None, w=None, state=None):
        return n, {"trip": trip, "date": d, "time_s": hm(t), "species_logged": sp, "species": sp, "length_cm": inch(fl), "length_kind": "FL", "girth_cm": girth and inch(girth), "scale_kg": w and lb(w),
                   "weight_state": state, "kept": kept, "angler": who}
    hand("46-catch-by-trip", [fish(2, "21", "2026-07-25", "8:40", "YFT", 43, "true", "Emil", 30, 52, "round"), fish(3, "21", "2026-07-25", "11:05", "SKJ", 24, "false", "Tove"),
                              fish(4, "22", "2026-08-01", "6:30", "BET", 55, "true", "Tove", 41, 108, "gutted")])


def register():
    def fish(n, trip, i, d, t, sp, length, g, w, cert, kept, who, photo=None):
        return n, {"trip": trip, "date": d, "time_s": hm(t), "species_logged": sp, "species": sp, "length_cm": float(length), "length_kind": "FL", "girth_cm": g, "scale_kg": w, "certified": cert,
                   "outcome": kept, "angler": who, "extra": json.dumps({"Fish ID": i, **({"Photo": photo} if photo else {})})}
    hand("48-fish-register", [fish(2, "T9", "F1", "2026-08-02", "7:45", "YFT", 112, 78.5, 24.6, "false", "landed", "Bodil", "y"), fish(3, "T9", "F2", "2026-08-02", "8:10", "SKJ", 51, None, None, None, "released", "Ansa"),
                              fish(4, "T10", "F3", "2026-08-09", "6:59", "BET", 126.5, 92.0, 41.2, "true", "landed", "Ansa", "y")])


def semicolons():
    def leg(n, trip, d, a, b, kn, hdg, t, lines, nmi, area):
        return n, {"trip": trip, "date": d, "start_s": hm(a), "end_s": hm(b), "speed_kn": kn, "heading_deg": float(hdg), "sea_temp_c": t, "lines_out": lines, "nearest_boat_m": nmi * 1852, "area": area}
    hand("49-semicolon-legs", [leg(2, "3", "2026-04-02", "6:20", "8:05", 8.4, 100, 17.2, 4, 0.8, "Bodkin Rise"), leg(3, "3", "2026-04-02", "8:25", "11:30", 12.3, 280, 17.5, 5, 0.4, "Bodkin Rise"),
                               leg(4, "4", "2026-04-10", "5:58", "10:01", 12.9, 95, 17.9, 5, 1.5, "east of the Rise")])


def spans():
    def leg(n, d, a, b, kn, rods, area):
        return n, {"date": d, "start_s": hm(a), "end_s": hm(b), "speed_kn": float(kn), "lines_out": rods, "area": area}
    hand("51-times-in-one-cell", [leg(2, "2026-05-02", "6:10", "7:55", 8, 4, "the Shelf"), leg(3, "2026-05-02", "8:15", "11:30", 12.5, 5, "the Shelf"), leg(4, "2026-05-09", "6:00", "9:40", 12, 5, "Sallow Bank")])


def rods():
    def line(n, rod, cls, leader, hooks, lure, w, col, back, drag):
        return n, {"trip": "A", "line": rod, "line_class_kg": lb(cls), "leader": leader, "hooks": hooks, "lure": lure, "lure_weight_g": oz(w), "colour": col, "setback_m": ft(back), "drag_kg": lb(drag)}
    hand("52-rods-and-reels", [line(2, "1", 80, "fluoro 250", "double 9/0", "Bellows", 10, "pink/pearl", 220, 19), line(3, "2", 80, "mono 300", "single 10/0", "Cope", 14, "dorado", 260, 19),
                               line(4, "3", 130, "cable", "single 11/0", "Rattlejack", 18, "black/red", 140, 28)])


def wind_and_tide():
    def row(n, d, a, b, h, kn, wind, sea, tide, t, s, hk, lost, rel, kept, area):
        return n, {"date": d, "boat": "Long Splice", "start_s": hm(a), "end_s": hm(b), "duration_s": hour(h), "speed_kn": kn, "wind": wind, "sea_state": sea, "sea_temp_c": t, "strikes_n": s, "hooked_n": hk,
                   "lost_n": lost, "released_n": rel, "landed_n": kept, "area": area, "extra": json.dumps({"Tide": tide})}
    hand("53-wind-and-tide", [row(2, "2026-06-27", "6:15", "11:45", 5.5, 11.8, "SE 12", "1.2", "rising", 21.4, 4, 3, 1, 1, 1, "north end"),
                              row(3, "2026-06-28", "6:00", "12:30", 6.5, 12.2, "SE 15", "1.5", "rising", 21.6, 2, 0, 0, 0, 0, "north end"),
                              row(4, "2026-07-05", "5:50", "9:50", 4, 12.6, "S 8", "0.8", "falling", 21.1, 1, 1, 0, 0, 1, "the wall")])


def refs():
    def leg(n, trip, no, d, a, b, kn, lines, t, wind, sea, how, m):
        return n, {"trip": trip, "leg": no, "date": d, "start_s": hm(a), "end_s": hm(b), "speed_kn": kn, "lines_out": lines, "sea_temp_c": t, "wind": wind, "sea_state": sea, "approach": how, "nearest_boat_m": float(m)}
    hand("54-refs-legs", [leg(2, "K1", "1", "2026-05-03", "6:12", "7:48", 8.5, 4, 16.9, "10 kn", "slight", "straight", 900), leg(3, "K1", "2", "2026-05-03", "8:05", "11:20", 12.2, 5, 17.3, "12 kn", "slight", "along the break", 400),
                          leg(4, "K2", "1", "2026-05-11", "5:57", "9:45", 12.8, 5, 17.8, "6 kn", "smooth", "straight", 1500)])
    def strike(n, trip, t, rod, what, sp=None, c=None, why=None, fight=None, who=None):
        return n, {"trip": trip, "time_s": hm(t), "line": rod, "outcome": what, "species_logged": sp, "species": c, "loss_cause": why, "fight_s": fight and minute(fight), "angler": who}
    hand("55-refs-strikes", [strike(2, "K1", "6:50", "2", "missed"), strike(3, "K1", "9:14", "1", "landed", "Albacore", "ALB", None, 8, "Per"),
                             strike(4, "K1", "9:15", "3", "lost", "Albacore", "ALB", "hook pulled", 2, "Runa"), strike(5, "K2", "7:31", "4", "released", "Bigeye", "BET", None, 27, "Per")])
    def fish(n, trip, no, sp, c, length, g, w, kept, who):
        return n, {"trip": trip, "species_logged": sp, "species": c, "length_cm": inch(length), "length_kind": "FL", "girth_cm": g and inch(g), "scale_kg": w and lb(w), "kept": kept, "angler": who,
                   "extra": json.dumps({"Fish #": no})}
    hand("56-refs-fish", [fish(2, "K1", "1", "Albacore", "ALB", 33.5, None, 28.4, "true", "Per"), fish(3, "K2", "2", "Bigeye", "BET", 51, 37.5, None, "false", "Per"), fish(4, "K2", "3", "Yellowfin", "YFT", 39, 27.25, 41.8, "true", "Runa")])


def all_short():
    def row(n, a, b, kn, t, rod, lure, w, col, back, s, h, l, r):
        return n, {"date": "2026-06-13", "start_s": hm(a), "end_s": hm(b), "speed_kn": float(kn), "sea_temp_c": fahr(t), "line": rod, "lure": lure, "lure_weight_g": oz(w), "colour": col, "setback_m": yd(back),
                   "strikes_n": s, "hooked_n": h, "landed_n": l, "released_n": r}
    hand("57-all-short", [row(2, "6:00", "7:30", 8, 66, "LL", "COPE", 14, "BLU", 65, 0, 0, 0, 0), row(3, "6:00", "7:30", 8, 66, "LR", "TINKER", 12, "BLK", 80, 1, 1, 1, 0),
                          row(4, "7:45", "11:00", 12.5, 66.5, "LL", "COPE", 14, "BLU", 65, 2, 1, 0, 1)])


def trips_and_gear():
    def trip(n, no, d, a, b, crew):
        return n, {"trip": no, "boat": "Kittiwake Lass", "captain": "Per Lund", "port": "Hollin Quay", "date": d, "depart_s": hm(a), "return_s": hm(b), "anglers": crew, "zone": "UTC+1"}
    hand("58-refs-trips", [trip(2, "K1", "2026-05-03", "5:00", "14:10", "Runa, Mats"), trip(3, "K2", "2026-05-11", "4:45", "13:20", "Runa")])
    def line(n, pos, lure, w, col, hooks, leader, cls, drag, count, kn):
        return n, {"trip": "K1", "line": pos, "lure": lure, "lure_weight_g": oz(w), "colour": col, "hooks": hooks, "leader": leader, "line_class_kg": lb(cls), "drag_kg": lb(drag), "count_s": float(count), "letout_kn": float(kn)}
    hand("59-counts-gear", [line(2, "long left", "Cope", 14, "blue/white", "single 10/0", "300", 80, 18, 28, 7), line(3, "long right", "Tinker", 12, "black/red", "double 9/0", "250", 80, 18, 32, 7),
                            line(4, "short left", "Rattlejack", 18, "pink", "single 11/0", "400", 130, 26, 14, 6.5)])


def notebook():
    def row(n, trip, d, who, a, b, kn, lines, how, s, l, lost, notes=None):
        return n, {"trip": trip, "date": d, "captain": who, "start_s": hm(a), "end_s": hm(b), "speed_kn": float(kn), "lines_out": lines, "approach": how, "strikes_n": s, "landed_n": l, "lost_n": lost, "notes": notes}
    hand("60-notebook", [row(4, "1", "2026-04-04", "Isa", "6:10", "8:05", 8, 4, "blind", 1, 0, 1, "came unbuttoned"), row(5, "1", "2026-04-04", "Isa", "8:20", "11:40", 12, 5, "bird pile", 3, 2, 0, "two of two after the first"),
                         row(6, "2", "2026-04-18", "Mats", "5:50", "10:15", 12.5, 5, "temp break", 0, 0, 0)])


def club_weights():
    def fish(n, d, boat, who, sp, c, w, cert, length, witness, cls):
        return n, {"date": d, "boat": boat, "angler": who, "species_logged": sp, "species": c, "scale_kg": lb(w), "certified": cert, "length_cm": inch(length), "length_kind": "FL",
                   "extra": json.dumps({"Witness": witness, "Line class (lb)": cls})}
    hand("61-club-weights", [fish(2, "2026-07-04", "Tern Rock", "L. Fass", "Yellowfin tuna", "YFT", 61.5, "true", 45, "O. Brandal", "80"), fish(3, "2026-07-04", "Marram", "S. Oye", "Wahoo", "WAH", 38.25, "true", 57.5, "L. Fass", "50"),
                             fish(4, "2026-07-18", "Marram", "S. Oye", "Bigeye tuna", "BET", 140, "false", 61, "J. Moe", "80")])


def plotter():
    def leg(n, no, d, a, b, lat, lon, hdg, kn, lines, t, notes=None):
        return n, {"leg": no, "date": d, "start_s": a, "end_s": b, "lat": lat, "lon": lon, "heading_deg": float(hdg), "speed_kn": kn, "lines_out": lines, "sea_temp_c": t, "notes": notes}
    hand("62-plotter-legs", [leg(2, "1", "2026-08-22", hm("6:03") + 20, hm("7:45"), 32.4012, -127.6604, 285, 8.4, 4, 20.6), leg(3, "2", "2026-08-22", hm("8:01") + 10, hm("11:30") + 40, 32.429, -127.7711, 95, 12.6, 5, 20.9, "birds from 10"),
                             leg(4, "3", "2026-08-23", hm("5:58"), hm("9:12") + 30, 32.3877, -127.6102, 310, 12.9, 5, 20.4)])


def who_caught_what():
    def fish(n, trip, d, t, landed, who, sp, c, length, g, w, kept, line):
        return n, {"trip": trip, "date": d, "time_s": hm(t), "angler": who, "species_logged": sp, "species": c, "length_cm": inch(length), "girth_cm": g and inch(g), "scale_kg": w and lb(w), "kept": kept, "line": line,
                   "extra": json.dumps({"Landed at": landed})}
    hand("63-who-caught-what", [fish(2, "8", "2026-06-28", "7:12", "07:40", "Emil", "Yellowfin", "YFT", 44, 31, 58, "true", "short left"), fish(3, "8", "2026-06-28", "8:31", "08:36", "Tove", "Skipjack", "SKJ", 22, None, None, "false", "long right"),
                                fish(4, "9", "2026-07-05", "6:20", "07:05", "Emil", "Bigeye", "BET", 55, 40, None, "false", "long left")])


def season_sheet():
    def row(n, trip, d, a, b, legs, hours, s, h, k, r, best, area):
        return n, {"trip": trip, "date": d, "boat": "Sorrel", "depart_s": hm(a), "return_s": hm(b), "strikes_n": s, "hooked_n": h, "landed_n": k, "released_n": r, "area": area,
                   "extra": json.dumps({"Legs": legs, "Line hours": hours, "Best fish (kg)": best})}
    hand("64-season-sheet", [row(2, "1", "2026-03-07", "5:10", "14:30", "3", "18.5", 2, 1, 1, 0, "21", "the Shelf"), row(3, "2", "2026-03-21", "5:00", "15:45", "4", "26.25", 4, 3, 1, 1, "48", "Bodkin Rise")])


ALL = [by_r, by_r_comma, by_r_tabs, windows_1252, utf16, merged_to_csv, day_first_late, gnumeric_tabs, pipes, phone_notes, counts, other_words,
       comments, speeds, dates, ditto, ambiguous_dates, no_units, together, shorthand,
       capitals, date_and_time, estimates, spread_list, hours_only, summary, blank_first, catch_by_trip,
       register, semicolons, spans, rods, wind_and_tide, refs, all_short, trips_and_gear,
       notebook, club_weights, plotter, who_caught_what, season_sheet]
