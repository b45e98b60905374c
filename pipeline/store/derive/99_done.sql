-- What was put together for the steps is not needed any more.
DROP VIEW base;

DROP VIEW placed_entry;

DROP KIND labelled;
