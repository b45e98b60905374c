-- Columns of entry_kept that its past has not yet.
SELECT column_name, data_type FROM information_schema.columns s
WHERE table_schema = 'main' AND table_name = 'entry_kept' AND column_name NOT IN (
    SELECT column_name FROM information_schema.columns WHERE table_schema = 'main' AND table_name = 'past_entry_kept')
ORDER BY column_name
