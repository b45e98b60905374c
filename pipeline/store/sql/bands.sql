-- The classes of the season file, in order.
SELECT factor, lo, hi, level FROM main.band ORDER BY ord, factor
