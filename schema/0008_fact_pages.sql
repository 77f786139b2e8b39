-- What queries compare and order by, column by column instead of row by row: a query reads only the
-- columns that it asks about, and 512 numbers at a time.

DROP TRIGGER facts_of_new_texture;
DROP TRIGGER facts_of_changed_texture;
DROP TRIGGER facts_of_other_content;
DROP TRIGGER facts_of_measured_content;
DROP TRIGGER facts_of_new_estimate;
DROP TRIGGER facts_of_changed_estimate;
DROP TRIGGER facts_of_dropped_estimate;
DROP TABLE facts;

-- Row f * 2^56 + p holds the fact f of ids 512 p to 512 p + 511, 0 where there is no texture: one byte,
-- how many bytes w a number takes, 0 to 8; the least number in eight bytes; and of each texture how
-- much its number is above that in w bytes. The lowest byte comes first; negative numbers are two's
-- complements. The facts, and what they are where nothing is known, stand in fact_index.h. Where a page
-- has textures all its facts have a row, else none.
CREATE TABLE fact_pages (
    id INTEGER PRIMARY KEY,
    numbers BLOB NOT NULL
) STRICT;

-- The program brings the pages of words and facts up to date before it commits.
CREATE TRIGGER outdate_new_texture AFTER INSERT ON textures BEGIN
    SELECT outdate_texture(new.id);
END;
CREATE TRIGGER outdate_changed_texture AFTER UPDATE ON textures BEGIN
    SELECT outdate_texture(old.id), outdate_texture(new.id);
END;
CREATE TRIGGER outdate_dropped_texture AFTER DELETE ON textures BEGIN
    SELECT outdate_texture(old.id);
END;
CREATE TRIGGER outdate_measured_content AFTER UPDATE OF used, tone, seam ON contents BEGIN
    SELECT outdate_texture(id) FROM textures WHERE content_id = new.id;
END;
CREATE TRIGGER outdate_new_estimate AFTER INSERT ON estimates BEGIN
    SELECT outdate_texture(new.texture_id);
END;
CREATE TRIGGER outdate_changed_estimate AFTER UPDATE ON estimates BEGIN
    SELECT outdate_texture(old.texture_id), outdate_texture(new.texture_id);
END;
CREATE TRIGGER outdate_dropped_estimate AFTER DELETE ON estimates BEGIN
    SELECT outdate_texture(old.texture_id);
END;

-- All pages are made anew when the library is next opened.
DELETE FROM folding;
