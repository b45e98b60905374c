#!/usr/bin/python3
"""Makes the workbooks of this folder; README.md says what each is for.

Needs python3-openpyxl, LibreOffice (soffice) and Gnumeric (ssconvert). All data
is invented. Run it in this folder.
"""

import os
import shutil
import subprocess
import tempfile

import datetime as dt

from openpyxl import Workbook
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


def convert(source, target):
    """Saves a workbook again through LibreOffice."""
    with tempfile.TemporaryDirectory() as tmp:
        subprocess.run(
            ["soffice", f"-env:UserInstallation=file://{tmp}/profile", "--headless",
             "--convert-to", "xlsx", "--outdir", tmp, source],
            check=True, stdout=subprocess.DEVNULL)
        shutil.move(os.path.join(tmp, os.path.basename(source)), target)


def main():
    legs().save("legs-openpyxl.xlsx")
    legs(CALENDAR_MAC_1904).save("legs1904-openpyxl.xlsx")
    formulas().save("sums-openpyxl.xlsx")
    for name in ("legs", "legs1904", "sums"):
        convert(f"{name}-openpyxl.xlsx", f"{name}-libreoffice.xlsx")
        subprocess.run(["ssconvert", "--recalc", "-T", "Gnumeric_Excel:xlsx2",
                        f"{name}-openpyxl.xlsx", f"{name}-gnumeric.xlsx"], check=True)
    subprocess.run(["ssconvert", "legs-openpyxl.xlsx", "legs.ods"], check=True)
    subprocess.run(["ssconvert", "-T", "Gnumeric_Excel:excel_biff8", "legs-openpyxl.xlsx", "legs.xls"], check=True)


if __name__ == "__main__":
    main()
