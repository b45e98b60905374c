ALTER TABLE entry_kept ADD COLUMN %s %s
