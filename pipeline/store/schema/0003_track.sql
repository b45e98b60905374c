-- A boat's track, thinned to pieces of ten seconds by the clock: the fixes
-- themselves stay in the boat's own file, whose hash the log remembers.

-- A track as read: a log, or a file of a log that is a zip.
CREATE TABLE track (
    log_id     INTEGER NOT NULL,
    track_no   INTEGER NOT NULL,  -- in its log, from 1
    member     VARCHAR NOT NULL,  -- the file in the zip; '' otherwise
    format     VARCHAR NOT NULL,  -- GPX, NMEA or CSV
    first_ms   BIGINT,            -- of the fixes used: milliseconds since 1970, UTC
    last_ms    BIGINT,
    fixes      BIGINT NOT NULL,   -- read
    used       BIGINT NOT NULL,
    reordered  BIGINT NOT NULL,   -- put in order by their times
    late       BIGINT NOT NULL,   -- dropped: of more out of order than can be put in place
    repeated   BIGINT NOT NULL,   -- dropped: their time was there already
    jumps      BIGINT NOT NULL,   -- dropped: faster than any boat
    gaps       BIGINT NOT NULL,   -- times without a fix that part the track
    breaks     BIGINT NOT NULL,   -- places where the file parts it, and time was lost
    joined     BIGINT NOT NULL,   -- places where the file parts it, and none was: run over
    gap_s      DOUBLE NOT NULL,
    covered_s  DOUBLE NOT NULL,
    stopped_s  DOUBLE NOT NULL,   -- of covered_s, below 1 kn
    dropouts   BIGINT NOT NULL,   -- times without a fix, shorter than a gap: it turned or changed speed
    dropout_s  DOUBLE NOT NULL,
    loose_s    DOUBLE NOT NULL,   -- of covered_s, with fixes so far apart or so noisy that the speed may be another
    clock_s    DOUBLE NOT NULL,   -- put on its own clock, as asked
    unused     VARCHAR NOT NULL   -- why nothing of it is used; '' where it is
);
CREATE TABLE fix (
    log_id       INTEGER NOT NULL,
    track_no     INTEGER NOT NULL,
    at_ms        BIGINT NOT NULL, -- milliseconds since 1970, UTC
    seconds      DOUBLE NOT NULL, -- that the piece covers, 10 but at the ends of a stretch
    lat          DOUBLE NOT NULL, -- at its middle
    lon          DOUBLE NOT NULL,
    run_kn       DOUBLE NOT NULL, -- over ground, from positions
    err_kn       DOUBLE,          -- its standard error
    said_kn      DOUBLE,          -- as the receiver gave it
    course_deg   DOUBLE,
    turn_deg_min DOUBLE,          -- to starboard positive
    gap_s        DOUBLE NOT NULL, -- between the two fixes about its middle
    stretch      INTEGER NOT NULL -- of the track, from 1: without a gap or break; two may overlap
);

-- Made anew with the season's tables.
-- A piece of a boat's track with its speed; no two tell of the same second.
CREATE TABLE track_piece (
    boat VARCHAR, log_id INTEGER NOT NULL, track_no INTEGER NOT NULL, at_utc TIMESTAMP NOT NULL,
        seconds DOUBLE NOT NULL, lat DOUBLE NOT NULL, lon DOUBLE NOT NULL,
    speed_kn DOUBLE NOT NULL, err_kn DOUBLE, course_deg DOUBLE, turn_deg_min DOUBLE
);
-- The part of a piece that is in a leg.
CREATE TABLE leg_piece (
    leg_id INTEGER NOT NULL, at_utc TIMESTAMP NOT NULL, seconds DOUBLE NOT NULL, lat DOUBLE NOT NULL,
        lon DOUBLE NOT NULL,
    speed_kn DOUBLE NOT NULL, err_kn DOUBLE, course_deg DOUBLE, turn_deg_min DOUBLE
);
-- A leg that a track covers, wholly or in part.
CREATE TABLE leg_track (
    leg_id        INTEGER NOT NULL,
    covered       DOUBLE NOT NULL, -- share of the leg's hours
    median_kn     DOUBLE NOT NULL, -- of the covered time
    mean_kn       DOUBLE NOT NULL, -- over the leg, the rest at the speed logged
    distance_nmi  DOUBLE NOT NULL, -- of the covered time
    turn_deg_min  DOUBLE           -- mean change of course, either way
);
-- Its time by speed; the shares of a leg add up to 1.
CREATE TABLE leg_speed (
    leg_id   INTEGER NOT NULL,
    speed_kn DOUBLE,               -- rounded to 0.1; NULL: neither measured nor logged
    share    DOUBLE NOT NULL,
    measured DOUBLE NOT NULL       -- of the share, by the track
);
-- Its time turning and straight; what no track covers is not there.
CREATE TABLE leg_turn (
    leg_id  INTEGER NOT NULL,
    turning VARCHAR NOT NULL,      -- straight or turning
    share   DOUBLE NOT NULL
);
-- A strike on such a leg: its speed is the median over the minute before, or
-- where that is not known the leg's median, or logged speed where the track covers
-- less than half of it.
CREATE TABLE strike_track (
    strike_id INTEGER NOT NULL,
    speed_kn  DOUBLE,
    err_kn    DOUBLE,              -- standard error of the speed; NULL: not measured
    turning   VARCHAR,
    pieces    INTEGER NOT NULL     -- that the median is of; 0: the leg's speed
);
