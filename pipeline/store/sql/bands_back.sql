DROP TABLE temp.band
