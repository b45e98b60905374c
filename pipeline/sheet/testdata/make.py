#!/usr/bin/python3
"""Makes the workbooks of this folder; README.md says what each is for.

Needs python3-openpyxl, LibreOffice (soffice) and Gnumeric (ssconvert). All data
is invented. Run it in this folder.
"""

import os
import shutil
import subprocess
import tempfile
import zipfile

import datetime as dt

from openpyxl import Workbook
from openpyxl.comments import Comment
from openpyxl.styles import Font, PatternFill
from openpyxl.utils.datetime import CALENDAR_MAC_1904


def legs(epoch=None):
    """A log as people keep it: title, blank row, merged trip column, totals."""
    wb = Workbook()
    if epoch:
        wb.epoch = epoch
    ws = wb.active
    ws.title = "Legs 2026"
    ws["A1"] = "Sea Wren - season 2026"
    ws["A1"].font = Font(bold=True)
    ws.merge_cells("A1:G1")
    ws.append([])
    ws.append(["Trip", "Date", "Start", "Duration", "Speed kn", "Length", "Certified", "Notes"])
    for row in [
        ["T1", dt.datetime(2026, 7, 1), dt.time(6, 30), dt.timedelta(hours=25), 8.5, "6'2\"", True, "Ťuňa, \"big\"\nsecond line"],
        [None, dt.datetime(2026, 7, 1), dt.time(12, 0), dt.timedelta(hours=1, minutes=30), 12, "74\"", False, "caf\u00e9\u00a0bar <&>"],
        [None, dt.datetime(2026, 7, 2, 18, 45), dt.time(23, 59, 59), dt.timedelta(minutes=45), 0.1, "188 cm", None, None],
        [],
        ["T2", dt.datetime(2026, 12, 31), dt.time(0, 0), None, -3, None, True, "5 < 6 & 7 > 6"],
    ]:
        ws.append(row)
    for row in (4, 5, 6):
        ws.cell(row, 4).number_format = "[h]:mm"
    ws.merge_cells("A4:A6")
    for row in range(9, 30):  # blank, but formatted
        for col in range(1, 9):
            ws.cell(row, col).fill = PatternFill("solid", fgColor="FFEEEE")
    hidden = wb.create_sheet("Crew (hidden)")
    hidden.append(["Name"])
    hidden.sheet_state = "hidden"
    return wb


def formulas():
    """Formulas as openpyxl leaves them, without values."""
    wb = Workbook()
    ws = wb.active
    ws.title = "Sums"
    ws.append(["a", "b", "a+b", "text", "error", "blank"])
    ws.append([1, 2, "=A2+B2", "=\"x\"&A2", "=A2/0", "=IF(A2=1,\"\",2)"])
    ws.append([3, 4.5, "=A3+B3", "=\"<\"&A3", "=NA()", "=IF(A3=1,\"\",2)"])
    return wb


def forms():
    """What a cell can be: a row of formats for each of some numbers, formulas,
    texts with blanks of all kinds, a merged date, repeated cells, comments."""
    wb = Workbook()
    ws = wb.active
    ws.title = "Forms"
    formats = ["yyyy-mm-dd", "h:mm", "yyyy-mm-dd h:mm", "[h]:mm", "mm:ss", "0.00", "mm-dd-yy", "h:mm:ss AM/PM", "m/d/yy h:mm",
               "[h]:mm:ss", "mm:ss.0", "mmm yy", '"day" d', "[Red]0.0", "0%", "0.00E+00", '#,##0 "hms"']
    ws.append(["format"] + formats)
    for n in (46204.78125, 0.25, 1.5):
        ws.append(["number"] + [n] * len(formats))
    ws.append(["text"] + ["x"] * len(formats))
    ws.append(["blank"])
    ws.append(["sum", "=B2+1", "=C2", "=TRUE", "=1/0", "=NA()", None, None, "=D2/2"])
    for row in ws.iter_rows(min_row=2, max_row=7):
        for cell, code in zip(row[1:], formats):
            cell.number_format = code
    # LibreOffice gives a text the value 0 in an .xls where the format is of numbers.
    ws.append(["text", '="a"&"\U0001f41f"', '=IF(B2>0,"",1)', "=B2>0", '=REPT("word ",2000)'])
    ws.append([])
    ws.append(["merged", dt.datetime(2026, 7, 1, 18, 45), None, "a  b\tc", " lead\nline two\n\nlast ", "\U0001f41f 6'2\" \u010d\u0159",
               1e20, 1e-7, 123456789012345, 0.1, True, False, "<&>\"'"])
    ws["B10"].number_format = "yyyy-mm-dd h:mm"
    ws.merge_cells("B10:C12")
    ws["A10"].comment = Comment("first line\nsecond line", "mate")
    ws["D9"].comment = Comment("on a blank cell", "mate")
    for row in range(11, 16):
        ws.cell(row, 4).value = 7
    for col in range(4, 12):
        ws.cell(20, col).value = 5
    ws.cell(22, 3).comment = Comment("below all", "mate")
    hidden = wb.create_sheet("H & \u010d")
    hidden["C3"] = 2
    hidden.sheet_state = "hidden"
    wb.create_sheet("Blank")
    return wb


def convert(source, target):
    """Saves a workbook again through LibreOffice, in the format of the target's ending."""
    kind = target.rsplit(".", 1)[1]
    with tempfile.TemporaryDirectory() as tmp:
        subprocess.run(
            ["soffice", f"-env:UserInstallation=file://{tmp}/profile", "--headless",
             "--convert-to", kind, "--outdir", tmp, source],
            check=True, stdout=subprocess.DEVNULL)
        made = os.path.join(tmp, os.path.splitext(os.path.basename(source))[0] + "." + kind)
        if kind == "ods":
            shrink(made)
        shutil.move(made, target)


def shrink(path):
    """Leaves out of an OpenDocument file what is no part of the table, such as its picture."""
    with zipfile.ZipFile(path) as z:
        parts = [(i, z.read(i)) for i in z.infolist() if i.filename in ("mimetype", "content.xml", "styles.xml", "META-INF/manifest.xml")]
    with zipfile.ZipFile(path, "w") as z:
        for info, content in parts:
            z.writestr(info, content)


def main():
    legs().save("legs-openpyxl.xlsx")
    legs(CALENDAR_MAC_1904).save("legs1904-openpyxl.xlsx")
    formulas().save("sums-openpyxl.xlsx")
    forms().save("forms-openpyxl.xlsx")
    for name in ("legs", "legs1904", "sums", "forms"):
        for kind in ("xlsx", "ods", "xls"):
            convert(f"{name}-openpyxl.xlsx", f"{name}-libreoffice.{kind}")
    for name in ("legs", "legs1904", "sums"):
        subprocess.run(["ssconvert", "--recalc", "-T", "Gnumeric_Excel:xlsx2",
                        f"{name}-openpyxl.xlsx", f"{name}-gnumeric.xlsx"], check=True)
    subprocess.run(["ssconvert", "legs-openpyxl.xlsx", "legs-gnumeric.ods"], check=True)
    subprocess.run(["ssconvert", "-T", "Gnumeric_Excel:excel_biff8", "legs-openpyxl.xlsx", "legs-gnumeric.xls"], check=True)


if __name__ == "__main__":
    main()
