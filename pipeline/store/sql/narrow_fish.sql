INSERT INTO temp.part_fish
SELECT fish_id FROM season.fish WHERE strike_id IN (SELECT strike_id FROM temp.part_strike)
    AND ($1 = '' OR species = $1)
