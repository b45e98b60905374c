-- Rows that could not be used, and why.
SELECT file, sheet, "row", "column", cell, reason FROM set_aside
ORDER BY file, sheet, "row", "column", reason
