ALTER TABLE past.entry_kept ADD COLUMN %s %s
