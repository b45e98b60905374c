-- The lower ends of the classes of gaps, where the units shown have some of their own.
SELECT lo AS lo_m FROM band WHERE factor = 'gap' ORDER BY lo
