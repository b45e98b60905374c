ALTER TABLE past_entry_kept ADD COLUMN %s %s
