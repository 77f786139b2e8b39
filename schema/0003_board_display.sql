-- The screen of a board, in pixels: 0 and 0 where there is none.
ALTER TABLE boards ADD COLUMN display_width INTEGER NOT NULL DEFAULT 0;
ALTER TABLE boards ADD COLUMN display_height INTEGER NOT NULL DEFAULT 0;
