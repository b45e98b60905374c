-- Made anew with the season's tables.
-- A track with latitude and longitude changed over, by where the legs are: none of it is used.
CREATE TABLE track_astray (log_id INTEGER NOT NULL, track_no INTEGER NOT NULL);
-- A track whose clock is so far off that of another of its boat, which ran the same way.
CREATE TABLE track_shift (
    log_id   INTEGER NOT NULL,
    track_no INTEGER NOT NULL,
    by_ms    BIGINT NOT NULL,      -- put on its times
    told     BOOLEAN NOT NULL      -- the legs tell which of the two clocks is right
);
