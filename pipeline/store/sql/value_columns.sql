-- The columns of an entry that hold what its row says, the day left out.
SELECT column_name FROM information_schema.columns
WHERE table_schema = 'main' AND table_name = 'entry_shape' AND column_name NOT IN ('sheet_id', 'row', 'part', 'date')
ORDER BY ordinal_position
