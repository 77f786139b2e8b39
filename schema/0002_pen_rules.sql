-- What a canvas's pen may do (yes 1, no 0), what becomes of a stroke that leaves it, and where a
-- button fills all of it: NULL where there is none.
ALTER TABLE canvases ADD COLUMN pen_turns INTEGER NOT NULL DEFAULT 1;
ALTER TABLE canvases ADD COLUMN pen_covers INTEGER NOT NULL DEFAULT 1;
ALTER TABLE canvases ADD COLUMN pen_leaving INTEGER NOT NULL DEFAULT 0;
ALTER TABLE canvases ADD COLUMN fill_x INTEGER;
ALTER TABLE canvases ADD COLUMN fill_y INTEGER;
