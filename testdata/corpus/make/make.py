#!/usr/bin/python3
"""Makes the corpus anew: the logs that a program writes, and every want.csv.

Needs python3-openpyxl, LibreOffice (soffice), Gnumeric (ssconvert), R (Rscript)
and Go. Names as arguments make only those: make.py books.formulas
"""

import sys

import blind
import books
import texts

for module in (books, texts, blind):
    for f in module.ALL:
        if len(sys.argv) < 2 or f"{module.__name__}.{f.__name__}" in sys.argv[1:]:
            print(f"{module.__name__}.{f.__name__}", flush=True)
            f()
