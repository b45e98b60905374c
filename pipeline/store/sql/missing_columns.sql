-- Columns that entry may have and that no log so far has used, with their types.
SELECT column_name, data_type FROM information_schema.columns s
WHERE table_schema = 'main' AND table_name = 'entry_shape' AND column_name NOT IN (
    SELECT column_name FROM information_schema.columns WHERE table_schema = 'main' AND table_name = 'entry_kept')
ORDER BY column_name
