-- What the tracks told is told anew, where there are any: steps 94 and 95.
DELETE FROM track_astray;

DELETE FROM track_shift;

DELETE FROM track_piece;

DELETE FROM leg_piece;

DELETE FROM leg_speed;

DELETE FROM leg_track;

DELETE FROM leg_turn;

DELETE FROM strike_track;
