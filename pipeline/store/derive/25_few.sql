-- Few rows are put together once: what later steps ask of them is read there.
CREATE OR REPLACE TEMP VIEW placed_entry AS SELECT * FROM labelled;

CREATE OR REPLACE TEMP VIEW base AS SELECT * FROM labelled;
