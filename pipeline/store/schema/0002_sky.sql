-- The light and the moon of each leg and strike, where its instant in UTC and,
-- for the light, a position are known; made anew with the season's tables.

-- The parts of a leg by light; the shares of a leg add up to 1.
CREATE TABLE leg_light (
    leg_id    INTEGER NOT NULL,
    light     VARCHAR NOT NULL,  -- dawn, day, dusk or night
    share     DOUBLE NOT NULL,   -- of the leg's hours
    from_trip BOOLEAN NOT NULL   -- the leg has no position: the mean of its trip's stands in
);
-- The moon at the middle of a leg.
CREATE TABLE leg_moon (
    leg_id INTEGER NOT NULL,
    lit    DOUBLE NOT NULL,      -- illuminated share of the disc, 0 to 1
    phase  VARCHAR NOT NULL      -- new moon, first quarter, full moon or last quarter
);
-- The light of a strike's instant, or of its leg where that has one light
-- only; and the moon of its leg, else of its instant.
CREATE TABLE strike_sky (
    strike_id INTEGER NOT NULL,
    light     VARCHAR,
    phase     VARCHAR
);
-- A season file made before these tables fills them at the next opening.
INSERT INTO setting
SELECT 'derived', 'stale' WHERE EXISTS (SELECT 1 FROM setting WHERE name = 'derived' AND value = 'fresh');
DELETE FROM setting WHERE name = 'derived' AND value = 'fresh';
