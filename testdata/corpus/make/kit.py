"""What the scripts that make the corpus share: units, cells, and the programs
that write the logs. Nothing here is shared with the code that reads them."""

import csv
import datetime as dt
import json
import os
import shutil
import subprocess
import tempfile
from dataclasses import dataclass, field

HERE = os.path.dirname(os.path.abspath(__file__))
CORPUS = os.path.dirname(HERE)

# --- units: exact definitions (1 in = 2.54 cm, 1 lb = 0.45359237 kg, 1 nmi = 1852 m)


def inch(v): return v * 2.54
def cm(v): return float(v)
def lb(v): return v * 0.45359237
def kg(v): return float(v)
def oz(v): return v * 28.349523125
def gram(v): return float(v)
def ft(v): return v * 0.3048
def yd(v): return v * 0.9144
def metre(v): return float(v)
def fahr(v): return (v - 32) / 1.8
def cels(v): return float(v)
def knot(v): return float(v)
def mph(v): return v * 1.609344 / 1.852
def kmh(v): return v / 1.852
def sec(v): return float(v)
def minute(v): return v * 60.0
def hour(v): return v * 3600.0
def whole(v): return int(v)
def text(v): return str(v)
def num(v): return float(v)
def yes(v): return "true" if str(v).lower() in ("y", "yes", "x", "true") else "false"
def no(v): return "false" if yes(v) == "true" else "true"


def hm(v):
    """Seconds since midnight of a time cell or of "HH:MM"."""
    if isinstance(v, dt.datetime):
        v = v.time()
    if isinstance(v, dt.time):
        return v.hour * 3600 + v.minute * 60 + v.second
    h, m = str(v).split(":")[:2]
    return int(h) * 3600 + int(m) * 60


def day(v):
    if isinstance(v, dt.datetime):
        v = v.date()
    return v.isoformat() if isinstance(v, dt.date) else str(v)


# --- cells and tables

@dataclass
class W:
    """A cell whose meaning is given beside it."""
    raw: object
    want: object


@dataclass
class F:
    """A formula: as the office suite writes it, and its value."""
    of: str
    value: object
    kind: str = "float"


@dataclass
class Col:
    heading: str
    name: str = ""          # of the season file; "" is a column that nobody understands
    conv: object = text
    fill: bool = False      # written once for the rows under it
    also: dict = field(default_factory=dict)  # what the heading says besides


class N(list):
    """A row that is no entry: a title, a note, totals, a header again."""


@dataclass
class Sheet:
    name: str
    rows: list              # of cells
    want: list              # of (row number, {column: value})
    merges: list = field(default_factory=list)
    hidden: bool = False


def header(cols):
    return N([c.heading for c in cols])


def table(name, cols, rows, given=None, **kw):
    """Places rows (lists are entries, N are not) and says what is expected."""
    out, want, last = [], [], {}
    for i, row in enumerate(rows):
        cells = [c.raw if isinstance(c, W) else c for c in row]
        out.append(cells)
        if isinstance(row, N) or not any(c is not None for c in cells):
            continue
        entry = dict(given or {})
        extra = {}
        for c, cell in zip(cols, row):
            if cell is None and c.fill:
                cell = last.get(c.heading)
            if cell is None or (isinstance(cell, W) and cell.want is None and c.name != "species"):
                continue
            last[c.heading] = cell
            put(entry, extra, c, cell)
        if extra:
            entry["extra"] = json.dumps(extra, sort_keys=True)
        want.append((i + 1, entry))
    return Sheet(name, out, want, **kw)


def put(entry, extra, c, cell):
    raw = cell.raw if isinstance(cell, W) else cell
    if isinstance(raw, F):
        raw = raw.value
    if not c.name:
        extra[c.heading] = str(raw)
        return
    if c.name == "species":
        entry["species_logged"] = raw
        code = cell.want if isinstance(cell, W) else c.conv(raw)
        if code:
            entry["species"] = code
        return
    if c.name == "position":
        entry["lat"], entry["lon"] = cell.want
        return
    entry[c.name] = cell.want if isinstance(cell, W) else c.conv(raw)
    entry.update(c.also)


def write_want(folder, sheets, workbook=True):
    names = ["sheet", "row"]
    for s in sheets:
        for _, e in s.want:
            names += [k for k in e if k not in names]
    with open(os.path.join(folder, "want.csv"), "w", newline="", encoding="utf-8") as f:
        w = csv.writer(f, lineterminator="\n")
        w.writerow(names)
        for s in sheets:
            for row, e in s.want:
                w.writerow([s.name if workbook else "", row] + [show(e.get(n)) for n in names[2:]])


def show(v):
    if v is None:
        return ""
    return repr(v) if isinstance(v, float) else str(v)


# --- writers

def fods(sheets, null_date="1899-12-30"):
    """A flat OpenDocument spreadsheet, which the office suite opens."""
    x = ['<?xml version="1.0" encoding="UTF-8"?>',
         '<office:document xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0" '
         'xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0" xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0" '
         'xmlns:style="urn:oasis:names:tc:opendocument:xmlns:style:1.0" xmlns:number="urn:oasis:names:tc:opendocument:xmlns:datastyle:1.0" '
         'xmlns:of="urn:oasis:names:tc:opendocument:xmlns:of:1.2" office:version="1.2" '
         'office:mimetype="application/vnd.oasis.opendocument.spreadsheet">',
         '<office:automatic-styles>'
         '<number:date-style style:name="N1"><number:year number:style="long"/><number:text>-</number:text><number:month number:style="long"/>'
         '<number:text>-</number:text><number:day number:style="long"/></number:date-style>'
         '<number:time-style style:name="N2"><number:hours number:style="long"/><number:text>:</number:text><number:minutes number:style="long"/></number:time-style>'
         '<style:style style:name="d" style:family="table-cell" style:data-style-name="N1"/>'
         '<style:style style:name="t" style:family="table-cell" style:data-style-name="N2"/>'
         '<style:style style:name="h" style:family="table"><style:table-properties table:display="false"/></style:style>'
         '</office:automatic-styles><office:body><office:spreadsheet>']
    if null_date != "1899-12-30":
        x.append(f'<table:calculation-settings><table:null-date table:date-value="{null_date}"/></table:calculation-settings>')
    for s in sheets:
        hidden = ' table:style-name="h"' if s.hidden else ''
        x.append(f'<table:table table:name={quote(s.name)}{hidden}>')
        spans = dict((top_left(m), span(m)) for m in s.merges)
        for i, row in enumerate(s.rows):
            x.append('<table:table-row>')
            for j, c in enumerate(row or [None]):
                x.append(fods_cell(c, spans.get((i, j))))
            x.append('</table:table-row>')
        x.append('</table:table>')
    x.append('</office:spreadsheet></office:body></office:document>')
    return "\n".join(x)


def quote(s):
    from xml.sax.saxutils import quoteattr
    return quoteattr(s)


def fods_cell(c, merged):
    from xml.sax.saxutils import escape
    attr = ""
    if merged:
        attr = f' table:number-rows-spanned="{merged[0]}" table:number-columns-spanned="{merged[1]}"'
    if isinstance(c, F):
        attr += f' table:formula={quote("of:=" + c.of)}'
        if c.kind == "time":
            attr += ' table:style-name="t"'
        elif c.kind == "date":
            attr += ' table:style-name="d"'
        return f'<table:table-cell{attr}/>'
    if c is None:
        return f'<table:table-cell{attr}/>'
    if isinstance(c, dt.datetime):
        return f'<table:table-cell{attr} office:value-type="date" office:date-value="{c.isoformat()}"/>'
    if isinstance(c, dt.date):
        return f'<table:table-cell{attr} table:style-name="d" office:value-type="date" office:date-value="{c.isoformat()}"/>'
    if isinstance(c, dt.time):
        return f'<table:table-cell{attr} table:style-name="t" office:value-type="time" office:time-value="PT{c.hour:02}H{c.minute:02}M{c.second:02}S"/>'
    if isinstance(c, (int, float)):
        return f'<table:table-cell{attr} office:value-type="float" office:value="{c}"/>'
    return f'<table:table-cell{attr} office:value-type="string"><text:p>{escape(c)}</text:p></table:table-cell>'


def letters(s):
    col = 0
    for ch in s:
        col = col * 26 + ord(ch) - 64
    return col - 1


def top_left(ref):
    import re
    a, n = re.match(r"([A-Z]+)(\d+)", ref).groups()
    return int(n) - 1, letters(a)


def span(ref):
    a, b = ref.split(":")
    (r, c), (s, d) = top_left(a), top_left(b)
    return s - r + 1, d - c + 1


def soffice(source, kind, target):
    """Has LibreOffice convert source (the content of a .fods) to target."""
    with tempfile.TemporaryDirectory() as tmp:
        path = os.path.join(tmp, "log.fods")
        with open(path, "w", encoding="utf-8") as f:
            f.write(source)
        subprocess.run(["soffice", "-env:UserInstallation=file://" + os.path.join(tempfile.gettempdir(), "corpus-soffice"),
                        "--headless", "--convert-to", kind, "--outdir", tmp, path], check=True, stdout=subprocess.DEVNULL)
        ext = kind.split(":")[0]
        shutil.copyfile(os.path.join(tmp, "log." + ext), target)


def folder(name):
    path = os.path.join(CORPUS, name)
    os.makedirs(path, exist_ok=True)
    return path


def libreoffice(name, file, sheets, kind="xlsx", null_date="1899-12-30"):
    d = folder(name)
    soffice(fods(sheets, null_date), kind, os.path.join(d, file))
    write_want(d, sheets, workbook=kind == "xlsx")


def gnumeric(name, file, sheets, options=()):
    """Has Gnumeric convert an OpenDocument file of LibreOffice's."""
    d = folder(name)
    with tempfile.TemporaryDirectory() as tmp:
        ods = os.path.join(tmp, "log.ods")
        soffice(fods(sheets), "ods", ods)
        subprocess.run(["ssconvert", *options, ods, os.path.join(d, file)], check=True,
                       stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    write_want(d, sheets, workbook=file.endswith(".xlsx"))


def openpyxl_book(name, file, sheets, epoch=None):
    from openpyxl import Workbook
    wb = Workbook()
    if epoch:
        wb.epoch = epoch
    wb.remove(wb.active)
    for s in sheets:
        ws = wb.create_sheet(s.name)
        for i, row in enumerate(s.rows):
            for j, c in enumerate(row):
                if c is not None:
                    ws.cell(i + 1, j + 1, c)
        for m in s.merges:
            ws.merge_cells(m)
        if s.hidden:
            ws.sheet_state = "hidden"
    d = folder(name)
    wb.save(os.path.join(d, file))
    write_want(d, sheets)


def excelize_book(name, file, sheets):
    """Has the Go program in excelize/ write the workbook."""
    spec = []
    for s in sheets:
        spec.append({"name": s.name, "merges": s.merges, "hidden": s.hidden, "rows": [[typed(c) for c in row] for row in s.rows]})
    d = folder(name)
    subprocess.run(["go", "run", "./testdata/corpus/make/excelize", os.path.join(d, file)], cwd=os.path.join(CORPUS, "..", ".."),
                   input=json.dumps(spec).encode(), check=True)
    write_want(d, sheets)


def typed(c):
    if isinstance(c, dt.datetime):
        return {"t": "datetime", "v": c.isoformat()}
    if isinstance(c, dt.date):
        return {"t": "date", "v": c.isoformat()}
    if isinstance(c, dt.time):
        return {"t": "time", "v": (c.hour * 3600 + c.minute * 60) / 86400}
    return {"t": "plain", "v": c}


def r_file(name, file, sheet, call, head=0):
    """Has R read the table as text, make its numbers numbers, and write it by
    the given call, in which d is the data frame and out the file."""
    d = folder(name)
    with tempfile.TemporaryDirectory() as tmp:
        src = os.path.join(tmp, "in.csv")
        with open(src, "w", newline="", encoding="utf-8") as f:
            w = csv.writer(f)
            for row in sheet.rows[head:]:
                w.writerow(["NA" if c is None else c for c in row])
        code = (f'd <- read.csv("{src}", check.names=FALSE, colClasses="character", encoding="UTF-8", na.strings="NA"); '
                f'd[] <- lapply(d, type.convert, as.is=TRUE); out <- "{os.path.join(d, file)}"; {call}')
        subprocess.run(["Rscript", "--vanilla", "-e", code], check=True, env=dict(os.environ, TZ="UTC", LC_ALL="C.UTF-8"))
    write_want(d, [sheet], workbook=False)


def hand(name, want):
    """What is expected of a log that was typed in a text editor."""
    write_want(folder(name), [Sheet("", [], want)], workbook=False)
