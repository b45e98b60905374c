-- Rows carry their places, so the order of insertion need not be kept: both
-- cores can then compress what comes in.
SET preserve_insertion_order = false
