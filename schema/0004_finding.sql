-- What finding needs: stars, what is worked out about pictures, the facts that queries compare in one
-- narrow table, the folded words, other names of tags, saved searches.

ALTER TABLE textures ADD COLUMN stars INTEGER NOT NULL DEFAULT 0 CHECK (stars BETWEEN 0 AND 5);
ALTER TABLE revisions ADD COLUMN stars INTEGER;

-- Worked out from the grid: a bit for each palette entry that is painted somewhere, the lowest of the
-- first byte for entry 0, without empty bytes at the end; the place of the most painted colour among
-- all colours; and how visible the worse seam is, in hundredths, NULL until it was measured.
ALTER TABLE contents ADD COLUMN used BLOB;
ALTER TABLE contents ADD COLUMN tone INTEGER;
ALTER TABLE contents ADD COLUMN seam INTEGER CHECK (seam >= 0);

-- One row a texture, kept in step by the triggers below and by nothing else.
CREATE TABLE facts (
    texture_id INTEGER PRIMARY KEY REFERENCES textures (id) ON DELETE CASCADE,
    removed INTEGER NOT NULL,
    width INTEGER NOT NULL,
    height INTEGER NOT NULL,
    colours INTEGER NOT NULL,
    stars INTEGER NOT NULL,
    seam INTEGER,
    draw_ms INTEGER,
    load_bytes INTEGER,
    palette_id INTEGER NOT NULL,
    added_at INTEGER NOT NULL,
    changed_at INTEGER NOT NULL,
    tone INTEGER,
    used BLOB
) STRICT;

-- Empty once all are measured.
CREATE INDEX facts_unmeasured ON facts (texture_id) WHERE seam IS NULL;

INSERT INTO facts
SELECT t.id, t.removed_at IS NOT NULL, c.width, c.height, c.colours, t.stars, c.seam, e.draw_ms,
    e.load_bytes, c.palette_id, t.added_at, t.changed_at, c.tone, c.used
FROM textures t JOIN contents c ON c.id = t.content_id LEFT JOIN estimates e ON e.texture_id = t.id;

CREATE TRIGGER facts_of_new_texture AFTER INSERT ON textures BEGIN
    INSERT INTO facts
    SELECT new.id, new.removed_at IS NOT NULL, width, height, colours, new.stars, seam, NULL, NULL,
        palette_id, new.added_at, new.changed_at, tone, used
    FROM contents WHERE id = new.content_id;
END;

CREATE TRIGGER facts_of_changed_texture AFTER UPDATE ON textures BEGIN
    UPDATE facts SET removed = new.removed_at IS NOT NULL, stars = new.stars,
        added_at = new.added_at, changed_at = new.changed_at
    WHERE texture_id = new.id;
END;

CREATE TRIGGER facts_of_other_content AFTER UPDATE OF content_id ON textures
WHEN old.content_id <> new.content_id BEGIN
    UPDATE facts SET (width, height, colours, seam, palette_id, tone, used) =
        (SELECT width, height, colours, seam, palette_id, tone, used FROM contents
        WHERE id = new.content_id)
    WHERE texture_id = new.id;
END;

CREATE TRIGGER facts_of_measured_content AFTER UPDATE OF used, tone, seam ON contents BEGIN
    UPDATE facts SET seam = new.seam, tone = new.tone, used = new.used
    WHERE texture_id = (SELECT id FROM textures WHERE content_id = new.id);
END;

CREATE TRIGGER facts_of_new_estimate AFTER INSERT ON estimates BEGIN
    UPDATE facts SET draw_ms = new.draw_ms, load_bytes = new.load_bytes
    WHERE texture_id = new.texture_id;
END;

CREATE TRIGGER facts_of_changed_estimate AFTER UPDATE ON estimates BEGIN
    UPDATE facts SET draw_ms = new.draw_ms, load_bytes = new.load_bytes
    WHERE texture_id = new.texture_id;
END;

CREATE TRIGGER facts_of_dropped_estimate AFTER DELETE ON estimates BEGIN
    UPDATE facts SET draw_ms = NULL, load_bytes = NULL WHERE texture_id = old.texture_id;
END;

-- Orders by these read the narrow table.
DROP INDEX textures_by_added;
DROP INDEX textures_by_changed;
DROP INDEX estimates_by_draw_ms;
DROP INDEX estimates_by_load_bytes;

-- The folded title, author, licence, source and note of 64 textures in a row: page p holds those of
-- ids 64 p to 64 p + 63. Byte FE stands between the fields of a texture and FF behind each texture,
-- also behind ids that are not there; neither occurs in UTF-8. Empty fields at a texture's end are
-- left out with the FE before them, textures without text at the end of a page with their FF, and
-- pages without text. To search is to read them all: at some 70 bytes a texture that is quicker than
-- an index of parts of words for all but rare words, for any length, in half the room, and such an
-- index must be merged again and again as textures come.
CREATE TABLE word_pages (
    page INTEGER PRIMARY KEY,
    words BLOB NOT NULL
) STRICT;

-- By which rules the words and tags stand folded; no row until they do.
CREATE TABLE folding (version TEXT NOT NULL) STRICT;

-- NULL until folded.
ALTER TABLE tags ADD COLUMN folded TEXT;
DROP INDEX tags_by_name;
CREATE INDEX tags_by_folded ON tags (folded);

-- Another word for a tag. The tag need not be in use.
CREATE TABLE tag_aliases (
    alias TEXT NOT NULL PRIMARY KEY,
    tag TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE searches (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL UNIQUE COLLATE NOCASE,
    query TEXT NOT NULL,
    sort TEXT NOT NULL,
    position INTEGER NOT NULL
) STRICT;
