-- The season file. Inside: kg, cm, m, degrees C, seconds; speed in knots; clock
-- times as the boat kept them (*_at), beside them the instant in UTC (*_utc)
-- where the zone is known.

-- A log that has been read: one file of one boat.
CREATE TABLE log (
    log_id    INTEGER NOT NULL,
    name      VARCHAR NOT NULL,  -- the file's name
    boat      VARCHAR,           -- the boat that the user named for it; NULL: the log's own
    sha256    VARCHAR NOT NULL,  -- of the file's bytes and of the settings that it was read with
    zone      VARCHAR,           -- time zone where the log names none
    rows_kept BIGINT NOT NULL,
    loaded_at TIMESTAMP NOT NULL -- UTC
);

-- A sheet of a log that was understood.
CREATE TABLE log_sheet (
    sheet_id INTEGER NOT NULL,
    log_id   INTEGER NOT NULL,
    sheet_no INTEGER NOT NULL,
    sheet    VARCHAR NOT NULL,
    kind     VARCHAR NOT NULL   -- trips, legs, lines, strikes, fish or flat
);
-- What the logs say: one row per row of a sheet, in the season file's units. Kept
-- in entry_kept, which has the columns that the logs so far have used: those that
-- nobody logs, and those that say the same for a whole sheet, would cost a quarter
-- of a load's time. entry_shape has no rows but all columns, and entry is what
-- everything else reads.
CREATE TABLE entry_shape (
    sheet_id        INTEGER NOT NULL,
    "row"           BIGINT NOT NULL,
    part            BIGINT,            -- of a row that describes several lines: which; NULL: the row itself
    trip            VARCHAR,
    boat            VARCHAR,
    captain         VARCHAR,
    port            VARCHAR,
    anglers         VARCHAR,
    zone            VARCHAR,
    notes           VARCHAR,
    date            DATE,
    depart_s        BIGINT,            -- seconds since midnight of date
    return_s        BIGINT,
    leg             VARCHAR,
    start_s         BIGINT,
    end_s           BIGINT,
    duration_s      DOUBLE,
    stopped_s       DOUBLE,            -- of the time from start to end, with no lines out
    speed_kn        DOUBLE,
    strike_speed_kn DOUBLE,
    lines_out       BIGINT,
    heading_deg     DOUBLE,
    lat             DOUBLE,
    lon             DOUBLE,
    area            VARCHAR,
    sea_temp_c      DOUBLE,
    wind            VARCHAR,
    sea_state       VARCHAR,
    approach        VARCHAR,
    school_m        DOUBLE,
    nearest_boat_m  DOUBLE,
    tangle          BOOLEAN,
    tangled_lines   VARCHAR,           -- which, as logged
    line            VARCHAR,
    lure            VARCHAR,
    lure_weight_g   DOUBLE,
    colour          VARCHAR,
    hooks           VARCHAR,
    leader          VARCHAR,
    line_class_kg   DOUBLE,
    drag_kg         DOUBLE,
    setback_m       DOUBLE,
    count_s         DOUBLE,
    letout_kn       DOUBLE,
    time_s          BIGINT,
    outcome         VARCHAR,
    species         VARCHAR,           -- FAO ASFIS code
    species_logged  VARCHAR,
    loss_cause      VARCHAR,
    fight_s         DOUBLE,
    angler          VARCHAR,
    strikes_n       BIGINT,
    hooked_n        BIGINT,
    landed_n        BIGINT,
    released_n      BIGINT,
    lost_n          BIGINT,
    missed_n        BIGINT,
    strike          VARCHAR,
    length_cm       DOUBLE,
    length_kind     VARCHAR,
    girth_cm        DOUBLE,
    scale_kg        DOUBLE,
    weight_state    VARCHAR,
    certified       BOOLEAN,
    kept            BOOLEAN,
    extra           VARCHAR            -- JSON: columns that were not understood, by heading
);
CREATE TABLE entry_kept (sheet_id INTEGER NOT NULL, "row" BIGINT NOT NULL);
CREATE VIEW entry AS
SELECT s.log_id, s.sheet_no, s.sheet, s.kind, e.* EXCLUDE (sheet_id)
FROM (SELECT * FROM entry_shape UNION ALL BY NAME SELECT * FROM entry_kept) e JOIN log_sheet s USING (sheet_id);

-- Rows that could not be used. stage 'read': by themselves; 'join': beside the others.
CREATE TABLE set_aside (
    log_id  INTEGER NOT NULL,
    file    VARCHAR NOT NULL,
    sheet   VARCHAR NOT NULL,
    "row"   BIGINT NOT NULL,
    "column" VARCHAR NOT NULL,
    cell    VARCHAR NOT NULL,
    reason  VARCHAR NOT NULL,
    stage   VARCHAR NOT NULL
);

-- What only the log's owner can settle. effect: the totals that rest on it.
CREATE TABLE question (
    log_id  INTEGER NOT NULL,
    no      INTEGER NOT NULL,   -- its place among the log's
    id      VARCHAR NOT NULL,
    kind    VARCHAR NOT NULL,
    file    VARCHAR NOT NULL,
    sheet   VARCHAR NOT NULL,
    about   VARCHAR NOT NULL,   -- the heading, or the row
    text    VARCHAR NOT NULL,
    brief   VARCHAR NOT NULL,   -- the text without cells, files and sheets: for pages that others see
    options VARCHAR[] NOT NULL,
    effect  VARCHAR[] NOT NULL
);

-- What the owner answered, by the id of the question. It outlives the logs, so that next
-- year's log of the same hand is not asked again.
CREATE TABLE answer (
    id     VARCHAR NOT NULL,
    about  VARCHAR NOT NULL,
    choice VARCHAR NOT NULL,    -- as reading takes it
    said   VARCHAR NOT NULL,    -- as the owner reads it
    at     TIMESTAMP NOT NULL   -- UTC
);
-- The answers that a log was read with: where they change, it is read again.
CREATE TABLE log_answer (log_id INTEGER NOT NULL, id VARCHAR NOT NULL, choice VARCHAR NOT NULL);

-- Cells of rows that are kept, but may be wrong by themselves.
CREATE TABLE reading_doubt (
    log_id  INTEGER NOT NULL,
    file    VARCHAR NOT NULL,
    sheet   VARCHAR NOT NULL,
    "row"   BIGINT NOT NULL,
    "column" VARCHAR NOT NULL,
    cell    VARCHAR NOT NULL,
    reason  VARCHAR NOT NULL
);

-- What the entries say together; made anew after each change of the entries.
CREATE TABLE trip (
    trip_id   INTEGER NOT NULL,
    trip      VARCHAR NOT NULL,  -- as logged, else the date of its first leg
    boat      VARCHAR NOT NULL,
    date      DATE,
    depart_at TIMESTAMP,
    return_at TIMESTAMP,
    captain   VARCHAR,
    port      VARCHAR,
    anglers   VARCHAR,
    zone      VARCHAR,
    notes     VARCHAR,
    log_id INTEGER, file VARCHAR, sheet VARCHAR, "row" BIGINT  -- NULL: named by no row of its own
);
CREATE TABLE leg (
    leg_id         INTEGER NOT NULL,
    trip_id        INTEGER NOT NULL,
    leg            VARCHAR,
    start_at       TIMESTAMP,
    end_at         TIMESTAMP,
    start_utc      TIMESTAMP,
    end_utc        TIMESTAMP,
    hours          DOUBLE NOT NULL,
    speed_kn       DOUBLE,         -- over ground, rounded to 0.1
    lines_out      BIGINT,         -- NULL: not logged
    heading_deg DOUBLE, lat DOUBLE, lon DOUBLE, area VARCHAR, sea_temp_c DOUBLE, wind VARCHAR,
    sea_state VARCHAR, approach VARCHAR, school_m DOUBLE, nearest_boat_m DOUBLE, tangle BOOLEAN,
        tangled_lines VARCHAR, notes VARCHAR,
    log_id INTEGER NOT NULL, file VARCHAR NOT NULL, sheet VARCHAR NOT NULL, "row" BIGINT NOT NULL
);
CREATE TABLE line (
    line_id       INTEGER NOT NULL,
    leg_id        INTEGER NOT NULL,
    line          VARCHAR,
    hours         DOUBLE NOT NULL,
    lure VARCHAR, lure_weight_g DOUBLE, colour VARCHAR, hooks VARCHAR, leader VARCHAR,
    line_class_kg DOUBLE, drag_kg DOUBLE,
    setback_m     DOUBLE,          -- logged, or count x let-out speed
    count_s DOUBLE, letout_kn DOUBLE,
    log_id INTEGER NOT NULL, file VARCHAR NOT NULL, sheet VARCHAR NOT NULL, "row" BIGINT NOT NULL
);
-- Effort: a line on a leg, or the lines of a leg that nobody described (line_id
-- NULL), or a leg whose lines are not logged (lines NULL).
CREATE TABLE effort (
    leg_id     INTEGER NOT NULL,
    line_id    INTEGER,
    lines      BIGINT,
    hours      DOUBLE NOT NULL,
    line_hours DOUBLE NOT NULL
);
CREATE TABLE strike (
    strike_id  INTEGER NOT NULL,
    trip_id    INTEGER,
    leg_id     INTEGER,
    line_id    INTEGER,
    strike_at  TIMESTAMP,
    strike_utc TIMESTAMP,
    outcome    VARCHAR NOT NULL,   -- missed, lost, landed, released or not logged
    hooked     BOOLEAN,            -- NULL: not known
    species    VARCHAR,
    species_logged VARCHAR,
    loss_cause VARCHAR, fight_s DOUBLE, angler VARCHAR, speed_kn DOUBLE,
    -- as its own row says; what its line_id says comes first
    line VARCHAR, lure VARCHAR, lure_weight_g DOUBLE, colour VARCHAR, setback_m DOUBLE,
    origin     VARCHAR NOT NULL,   -- strikes, flat, or fish (a fish with no strike logged)
    log_id INTEGER NOT NULL, file VARCHAR NOT NULL, sheet VARCHAR NOT NULL, "row" BIGINT NOT NULL
);
CREATE TABLE fish (
    fish_id    INTEGER NOT NULL,
    strike_id  INTEGER NOT NULL,
    trip_id    INTEGER,
    date       DATE,
    species    VARCHAR,
    species_logged VARCHAR,
    length_cm DOUBLE, length_kind VARCHAR, girth_cm DOUBLE, scale_kg DOUBLE, weight_state VARCHAR,
    certified BOOLEAN, kept BOOLEAN, angler VARCHAR,
    log_id INTEGER NOT NULL, file VARCHAR NOT NULL, sheet VARCHAR NOT NULL, "row" BIGINT NOT NULL
);
-- Questions that the season's other logs do not answer: one log may tell of the hours,
-- another of their strikes or lines.
CREATE VIEW open_question AS
SELECT * FROM question q WHERE NOT CASE kind
    WHEN 'no strikes' THEN EXISTS (SELECT 1 FROM strike s JOIN leg l USING (leg_id) WHERE l.log_id = q.log_id)
    WHEN 'no effort' THEN EXISTS (SELECT 1 FROM strike s JOIN leg l USING (leg_id) WHERE s.log_id = q.log_id)
    WHEN 'no lines' THEN EXISTS (SELECT 1 FROM leg WHERE log_id = q.log_id)
        AND NOT EXISTS (SELECT 1 FROM leg WHERE log_id = q.log_id AND lines_out IS NULL)
    WHEN 'few lines' THEN EXISTS (SELECT 1 FROM leg WHERE log_id = q.log_id)
        AND NOT EXISTS (SELECT 1 FROM leg WHERE log_id = q.log_id AND lines_out IS NULL)
    ELSE false END;

-- Every weight that a fish supports; rank 1 is the best.
CREATE TABLE estimate (
    fish_id   INTEGER NOT NULL,
    rank      INTEGER NOT NULL,
    method    VARCHAR NOT NULL,
    weight_kg DOUBLE NOT NULL,
    lo_kg     DOUBLE,              -- 90 % prediction interval; NULL: none is known
    hi_kg     DOUBLE,
    relation  VARCHAR,
    source    VARCHAR NOT NULL,
    notes     VARCHAR
);

-- Reference tables.
CREATE TABLE species (
    code VARCHAR NOT NULL, scientific VARCHAR NOT NULL, name VARCHAR NOT NULL, "group" VARCHAR,
    max_length_cm DOUBLE, max_length_kind VARCHAR, max_weight_kg DOUBLE  -- the largest on record
);
CREATE TABLE relation (
    relation VARCHAR NOT NULL, species VARCHAR NOT NULL, stock VARCHAR, a DOUBLE NOT NULL, b DOUBLE NOT NULL,
    length_kind VARCHAR NOT NULL, weight_state VARCHAR NOT NULL, n BIGINT, length_lo_cm DOUBLE, length_hi_cm DOUBLE,
    residual_s DOUBLE, is_default BOOLEAN NOT NULL, citation VARCHAR NOT NULL, document VARCHAR
);
-- Half-open classes [lo, hi) of the factors that are numbers; hi NULL: and up.
CREATE TABLE band (
    factor VARCHAR NOT NULL, ord INTEGER NOT NULL, lo DOUBLE, hi DOUBLE, level VARCHAR NOT NULL
);
-- Offsets from UTC: from local_from on the zone's clock is offset_s ahead of UTC.
CREATE TABLE zone_offset (
    zone VARCHAR NOT NULL, local_from TIMESTAMP NOT NULL, offset_s BIGINT NOT NULL
);
-- derived 'stale': the entries have changed since the tables above were made.
CREATE TABLE setting (name VARCHAR NOT NULL, value VARCHAR NOT NULL);
