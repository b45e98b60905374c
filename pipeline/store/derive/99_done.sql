-- What was put together for the steps is not needed any more.
DROP KIND labelled;
DROP KIND base;
DROP KIND placed_entry;
