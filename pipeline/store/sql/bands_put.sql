-- The first row; the others follow it.
INSERT INTO temp.band VALUES (?, ?, ?, ?, ?)