-- A library as schema version 6 left it, written out as SQL: that of version 5 brought forward, its looks worked out,
-- its load written once, its tables sealed.
PRAGMA application_id=1347701829;
PRAGMA user_version=6;
BEGIN;
CREATE TABLE boards (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL UNIQUE COLLATE NOCASE,
    description TEXT NOT NULL,
    memory INTEGER NOT NULL,
    slots INTEGER NOT NULL,
    bytes INTEGER NOT NULL,
    report_interval_ms INTEGER NOT NULL,
    max_step_up INTEGER NOT NULL,
    max_step_down INTEGER NOT NULL,
    press_ms INTEGER NOT NULL,
    release_ms INTEGER NOT NULL,
    settle_ms INTEGER NOT NULL
, display_width INTEGER NOT NULL DEFAULT 0, display_height INTEGER NOT NULL DEFAULT 0) STRICT;
INSERT INTO boards VALUES(1,'flash-32k','8-bit USB board, 32 KiB flash. 28672 bytes are left by a bootloader of 4 KiB (from such a part''s datasheet); 6144 of them are kept for the player. Five slots and careful timing: common practice, no source.',0,5,22528,8,127,8,33,33,100,0,0);
INSERT INTO boards VALUES(2,'card-64','8-bit USB board with a memory card. 64 slots are what a person still finds by short presses; 64 KiB for each is far above what a texture takes, and far below any card. Both are choices of ours. Careful timing: common practice, no source.',1,64,4194304,8,127,8,33,33,100,0,0);
INSERT INTO boards VALUES(3,'linux-255','Small Linux board whose kernel makes it a USB mouse; the load is a file on its card. 255 slots are the most that a load has: its player names each on a terminal. 64 KiB for each as for card-64, a choice of ours. Careful timing: common practice, no source.',1,255,16711680,8,127,8,33,33,100,0,0);
INSERT INTO boards VALUES(4,'pier','',0,12,9000,8,127,8,33,33,100,0,0);
CREATE TABLE canvases (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL UNIQUE COLLATE NOCASE,
    width INTEGER NOT NULL,
    height INTEGER NOT NULL,
    palette_id INTEGER REFERENCES palettes (id),
    free_colours INTEGER NOT NULL,
    pen_model INTEGER NOT NULL,
    grid_x INTEGER NOT NULL,
    grid_y INTEGER NOT NULL,
    cell_pitch INTEGER NOT NULL,
    swatch_x INTEGER NOT NULL,
    swatch_y INTEGER NOT NULL,
    swatch_pitch INTEGER NOT NULL,
    swatches_per_column INTEGER NOT NULL
, pen_turns INTEGER NOT NULL DEFAULT 1, pen_covers INTEGER NOT NULL DEFAULT 1, pen_leaving INTEGER NOT NULL DEFAULT 0, fill_x INTEGER, fill_y INTEGER) STRICT;
INSERT INTO canvases VALUES(1,'cells-16',16,16,NULL,16,0,4,4,8,160,8,16,16,1,1,0,NULL,NULL);
INSERT INTO canvases VALUES(2,'cells-32',32,32,NULL,16,0,4,4,8,288,8,16,16,1,1,0,NULL,NULL);
INSERT INTO canvases VALUES(3,'cells-64',64,64,NULL,16,0,4,4,8,544,8,16,16,1,1,0,NULL,NULL);
INSERT INTO canvases VALUES(4,'quay',16,16,NULL,8,0,4,4,8,160,8,16,16,1,1,0,NULL,NULL);
CREATE TABLE contents (
    id INTEGER PRIMARY KEY,
    fingerprint INTEGER NOT NULL,
    width INTEGER NOT NULL CHECK (width BETWEEN 1 AND 256),
    height INTEGER NOT NULL CHECK (height BETWEEN 1 AND 256),
    palette_id INTEGER NOT NULL REFERENCES palettes (id),
    colours INTEGER NOT NULL CHECK (colours BETWEEN 0 AND 256),
    method INTEGER NOT NULL,
    body BLOB NOT NULL
, used BLOB, tone INTEGER, seam INTEGER CHECK (seam >= 0)) STRICT;
INSERT INTO contents VALUES(1,-7297029982841053149,4,3,1,3,0,X'0112221102122111',X'07',951,155);
INSERT INTO contents VALUES(2,6785390912281706868,2,2,2,2,0,X'0113',X'03',157827,100);
INSERT INTO contents VALUES(3,-5124718927259854862,3,3,3,2,0,X'01120211011101',X'03',264,100);
INSERT INTO contents VALUES(4,4364622475269902767,4,3,1,3,0,X'2112031121112112',X'07',951,155);
INSERT INTO contents VALUES(5,6785392011793335079,2,2,2,2,0,X'011201',X'03',264,100);
CREATE TABLE estimates (
    texture_id INTEGER PRIMARY KEY REFERENCES textures (id) ON DELETE CASCADE,
    draw_ms INTEGER NOT NULL,
    load_bytes INTEGER NOT NULL,
    profile_key TEXT NOT NULL
) STRICT;
INSERT INTO estimates VALUES(1,978,118,'ea3960731b08135c cells-16 / flash-32k');
INSERT INTO estimates VALUES(2,618,108,'ea3960731b08135c cells-16 / flash-32k');
INSERT INTO estimates VALUES(3,666,111,'ea3960731b08135c cells-16 / flash-32k');
INSERT INTO estimates VALUES(4,978,118,'ea3960731b08135c cells-16 / flash-32k');
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
INSERT INTO facts VALUES(1,0,4,3,3,4,155,978,118,1,1795693380,1795693381,951,X'07');
INSERT INTO facts VALUES(2,0,2,2,2,0,100,618,108,2,1795693380,1795693417,264,X'03');
INSERT INTO facts VALUES(3,1,3,3,2,0,100,666,111,3,1795693380,1795693397,264,X'03');
INSERT INTO facts VALUES(4,0,4,3,3,0,155,978,118,1,1795693381,1795693381,951,X'07');
CREATE TABLE folding (version TEXT NOT NULL) STRICT;
INSERT INTO folding VALUES('1, unicode 24');
CREATE TABLE load_slots (
    load_id INTEGER NOT NULL REFERENCES loads (id) ON DELETE CASCADE,
    slot INTEGER NOT NULL,
    texture_id INTEGER NOT NULL REFERENCES textures (id),
    PRIMARY KEY (load_id, slot)
) STRICT, WITHOUT ROWID;
INSERT INTO load_slots VALUES(1,0,1);
INSERT INTO load_slots VALUES(1,1,2);
CREATE TABLE load_writings (
    id INTEGER PRIMARY KEY,
    load_id INTEGER NOT NULL REFERENCES loads (id) ON DELETE CASCADE,
    at INTEGER NOT NULL,
    place TEXT NOT NULL,
    board TEXT NOT NULL
) STRICT;
INSERT INTO load_writings VALUES(1,1,1795716614,'/media/card','pier');
CREATE TABLE loads (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL UNIQUE COLLATE NOCASE,
    board_id INTEGER NOT NULL REFERENCES boards (id),
    made_at INTEGER NOT NULL
) STRICT;
INSERT INTO loads VALUES(1,'Night',4,1795693397);
CREATE TABLE palette_names (
    name TEXT NOT NULL PRIMARY KEY COLLATE NOCASE,
    palette_id INTEGER NOT NULL REFERENCES palettes (id)
) STRICT, WITHOUT ROWID;
INSERT INTO palette_names VALUES('dune',1);
CREATE TABLE palettes (
    id INTEGER PRIMARY KEY,
    fingerprint INTEGER NOT NULL,
    colours BLOB NOT NULL CHECK (length(colours) BETWEEN 6 AND 768 AND length(colours) % 3 = 0),
    transparent INTEGER CHECK (transparent BETWEEN 0 AND 255)
) STRICT;
INSERT INTO palettes VALUES(1,1361306652219694167,X'1b2631f2efe4c9b27a',NULL);
INSERT INTO palettes VALUES(2,-3226484460135975739,X'1b263122ef24',NULL);
INSERT INTO palettes VALUES(3,-7444667359742215669,X'1b2631c9b27a',NULL);
CREATE TABLE revisions (
    texture_id INTEGER NOT NULL REFERENCES textures (id) ON DELETE CASCADE,
    number INTEGER NOT NULL,
    at INTEGER NOT NULL,
    kind INTEGER NOT NULL,
    title TEXT,
    author TEXT,
    licence TEXT,
    source TEXT,
    note TEXT,
    tags TEXT,
    was_removed INTEGER,
    content_id INTEGER REFERENCES contents (id), stars INTEGER,
    PRIMARY KEY (texture_id, number)
) STRICT, WITHOUT ROWID;
INSERT INTO revisions VALUES(1,1,1795693380,1,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO revisions VALUES(1,2,1795693381,2,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,0);
INSERT INTO revisions VALUES(2,1,1795693380,1,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO revisions VALUES(2,2,1795693417,7,NULL,NULL,NULL,NULL,NULL,NULL,NULL,2,NULL);
INSERT INTO revisions VALUES(3,1,1795693380,1,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO revisions VALUES(3,2,1795693381,2,NULL,NULL,NULL,NULL,'',NULL,NULL,NULL,NULL);
INSERT INTO revisions VALUES(3,3,1795693397,4,NULL,NULL,NULL,NULL,NULL,NULL,0,NULL,NULL);
INSERT INTO revisions VALUES(4,1,1795693381,1,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
CREATE TABLE searches (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL UNIQUE COLLATE NOCASE,
    query TEXT NOT NULL,
    sort TEXT NOT NULL,
    position INTEGER NOT NULL
) STRICT;
INSERT INTO searches VALUES(1,'Beach','tag:shore stars>=3','title',1);
CREATE TABLE shelf_textures (
    shelf_id INTEGER NOT NULL REFERENCES shelves (id) ON DELETE CASCADE,
    texture_id INTEGER NOT NULL REFERENCES textures (id) ON DELETE CASCADE,
    position INTEGER NOT NULL,
    PRIMARY KEY (shelf_id, texture_id)
) STRICT, WITHOUT ROWID;
INSERT INTO shelf_textures VALUES(1,1,1);
INSERT INTO shelf_textures VALUES(1,2,2);
CREATE TABLE shelves (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL UNIQUE COLLATE NOCASE,
    position INTEGER NOT NULL
) STRICT;
INSERT INTO shelves VALUES(1,'Tideline',1);
CREATE TABLE tag_aliases (
    alias TEXT NOT NULL PRIMARY KEY,
    tag TEXT NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO tag_aliases VALUES('strand','shore');
CREATE TABLE tags (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL UNIQUE
, folded TEXT) STRICT;
INSERT INTO tags VALUES(1,'sand','sand');
INSERT INTO tags VALUES(2,'shore','shore');
INSERT INTO tags VALUES(3,'stone/slate','stone/slate');
INSERT INTO tags VALUES(4,'rope','rope');
CREATE TABLE texture_tags (
    texture_id INTEGER NOT NULL REFERENCES textures (id) ON DELETE CASCADE,
    tag_id INTEGER NOT NULL REFERENCES tags (id),
    PRIMARY KEY (texture_id, tag_id)
) STRICT, WITHOUT ROWID;
INSERT INTO texture_tags VALUES(1,1);
INSERT INTO texture_tags VALUES(4,1);
INSERT INTO texture_tags VALUES(1,2);
INSERT INTO texture_tags VALUES(2,2);
INSERT INTO texture_tags VALUES(2,3);
INSERT INTO texture_tags VALUES(3,4);
CREATE TABLE textures (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    content_id INTEGER NOT NULL UNIQUE REFERENCES contents (id),
    title TEXT NOT NULL,
    author TEXT NOT NULL,
    licence TEXT NOT NULL,
    source TEXT NOT NULL,
    note TEXT NOT NULL,
    added_at INTEGER NOT NULL,
    changed_at INTEGER NOT NULL,
    removed_at INTEGER,
    revision INTEGER NOT NULL
, stars INTEGER NOT NULL DEFAULT 0 CHECK (stars BETWEEN 0 AND 5)) STRICT;
INSERT INTO textures VALUES(1,1,'Wet sand','Ebb','CC0','sand.csv','',1795693380,1795693381,NULL,2,4);
INSERT INTO textures VALUES(2,5,'Kelp on slate','Flow','CC-BY 4.0','kelp.csv','',1795693380,1795693417,NULL,2,0);
INSERT INTO textures VALUES(3,3,'Küstentau','Ébène','','rope.csv','three strands, laid left',1795693380,1795693397,1795693397,3,0);
INSERT INTO textures VALUES(4,4,'Wet sand, other way','Ebb','','sand_mirrored.csv','',1795693381,1795693381,NULL,1,0);
CREATE TABLE word_pages (
    page INTEGER PRIMARY KEY,
    words BLOB NOT NULL
) STRICT;
INSERT INTO word_pages VALUES(0,X'ff7765742073616e64fe656262fe636330fe73616e642e637376ff6b656c70206f6e20736c617465fe666c6f77fe63632d627920342e30fe6b656c702e637376ff6b757374656e746175fe6562656e65fefe726f70652e637376fe746872656520737472616e64732c206c616964206c656674ff7765742073616e642c206f7468657220776179fe656262fefe73616e645f6d6972726f7265642e637376ff');
CREATE TABLE looks (
    content_id INTEGER PRIMARY KEY REFERENCES contents (id) ON DELETE CASCADE,
    shape INTEGER NOT NULL,
    lightness INTEGER NOT NULL CHECK (lightness BETWEEN 0 AND 255),
    green_to_red INTEGER NOT NULL CHECK (green_to_red BETWEEN 0 AND 255),
    blue_to_yellow INTEGER NOT NULL CHECK (blue_to_yellow BETWEEN 0 AND 255),
    unpainted INTEGER NOT NULL CHECK (unpainted BETWEEN 0 AND 255),
    lights BLOB NOT NULL CHECK (length(lights) = 16)
) STRICT;
INSERT INTO looks VALUES(1,581710179,147,100,104,0,X'35bebe9a78be6356a6be5663bebe9abe');
INSERT INTO looks VALUES(3,1255820180,98,99,104,0,X'35789a9a354b6d9a354b627835787835');
INSERT INTO looks VALUES(4,581710179,147,100,104,0,X'9abebe355663be786356bea6be9abebe');
INSERT INTO looks VALUES(5,501759498,109,77,114,0,X'3535a6a63535a6a6a6a63535a6a63535');
CREATE TABLE looks_missing (
    content_id INTEGER PRIMARY KEY REFERENCES contents (id) ON DELETE CASCADE
) STRICT;
INSERT INTO looks_missing VALUES(2);
CREATE TABLE seals (
    name TEXT NOT NULL PRIMARY KEY,
    sum INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO seals VALUES('boards',521912792317);
INSERT INTO seals VALUES('canvases',575720955445);
INSERT INTO seals VALUES('estimates',565521982677);
INSERT INTO seals VALUES('load_slots',258705375279);
INSERT INTO seals VALUES('load_writings',7774924032);
INSERT INTO seals VALUES('loads',246672021922);
INSERT INTO seals VALUES('palette_names',77983245447);
INSERT INTO seals VALUES('revisions',1150232489831);
INSERT INTO seals VALUES('searches',64716263164);
INSERT INTO seals VALUES('shelf_textures',243358892953);
INSERT INTO seals VALUES('shelves',140842560294);
INSERT INTO seals VALUES('tag_aliases',228492943651);
INSERT INTO seals VALUES('textures',456588958235);
DELETE FROM sqlite_sequence;
INSERT INTO sqlite_sequence VALUES('textures',4);
CREATE INDEX canvases_by_palette ON canvases (palette_id);
CREATE INDEX contents_by_fingerprint ON contents (fingerprint);
CREATE INDEX contents_by_palette ON contents (palette_id);
CREATE INDEX facts_unmeasured ON facts (texture_id) WHERE seam IS NULL;
CREATE INDEX load_slots_by_texture ON load_slots (texture_id);
CREATE INDEX load_writings_by_load ON load_writings (load_id);
CREATE INDEX loads_by_board ON loads (board_id);
CREATE INDEX palette_names_by_palette ON palette_names (palette_id);
CREATE INDEX palettes_by_fingerprint ON palettes (fingerprint);
CREATE INDEX revisions_by_content ON revisions (content_id) WHERE content_id IS NOT NULL;
CREATE INDEX shelf_textures_by_position ON shelf_textures (shelf_id, position);
CREATE INDEX shelf_textures_by_texture ON shelf_textures (texture_id, shelf_id);
CREATE INDEX tags_by_folded ON tags (folded);
CREATE INDEX texture_tags_by_tag ON texture_tags (tag_id, texture_id);
CREATE INDEX textures_by_title ON textures (title COLLATE NOCASE);
CREATE TRIGGER facts_of_changed_estimate AFTER UPDATE ON estimates BEGIN
    UPDATE facts SET draw_ms = new.draw_ms, load_bytes = new.load_bytes
    WHERE texture_id = new.texture_id;
END;
CREATE TRIGGER facts_of_changed_texture AFTER UPDATE ON textures BEGIN
    UPDATE facts SET removed = new.removed_at IS NOT NULL, stars = new.stars,
        added_at = new.added_at, changed_at = new.changed_at
    WHERE texture_id = new.id;
END;
CREATE TRIGGER facts_of_dropped_estimate AFTER DELETE ON estimates BEGIN
    UPDATE facts SET draw_ms = NULL, load_bytes = NULL WHERE texture_id = old.texture_id;
END;
CREATE TRIGGER facts_of_measured_content AFTER UPDATE OF used, tone, seam ON contents BEGIN
    UPDATE facts SET seam = new.seam, tone = new.tone, used = new.used
    WHERE texture_id = (SELECT id FROM textures WHERE content_id = new.id);
END;
CREATE TRIGGER facts_of_new_estimate AFTER INSERT ON estimates BEGIN
    UPDATE facts SET draw_ms = new.draw_ms, load_bytes = new.load_bytes
    WHERE texture_id = new.texture_id;
END;
CREATE TRIGGER facts_of_new_texture AFTER INSERT ON textures BEGIN
    INSERT INTO facts
    SELECT new.id, new.removed_at IS NOT NULL, width, height, colours, new.stars, seam, NULL, NULL,
        palette_id, new.added_at, new.changed_at, tone, used
    FROM contents WHERE id = new.content_id;
END;
CREATE TRIGGER facts_of_other_content AFTER UPDATE OF content_id ON textures
WHEN old.content_id <> new.content_id BEGIN
    UPDATE facts SET (width, height, colours, seam, palette_id, tone, used) =
        (SELECT width, height, colours, seam, palette_id, tone, used FROM contents
        WHERE id = new.content_id)
    WHERE texture_id = new.id;
END;
CREATE INDEX looks_by_shape ON looks (shape);
CREATE TRIGGER look_worked_out AFTER INSERT ON looks BEGIN
    DELETE FROM looks_missing WHERE content_id = new.content_id;
END;
CREATE VIEW sealed (name, sum) AS
SELECT 'textures', ifnull(sum(seal(
        id, content_id, title, author, licence, source, note, added_at, changed_at, removed_at,
        revision, stars)), 0) FROM textures
UNION ALL
SELECT 'revisions', ifnull(sum(seal(
        texture_id, number, at, kind, title, author, licence, source, note, tags, was_removed,
        content_id, stars)), 0) FROM revisions
UNION ALL
SELECT 'estimates', ifnull(sum(seal(texture_id, draw_ms, load_bytes, profile_key)), 0) FROM estimates
UNION ALL
SELECT 'palette_names', ifnull(sum(seal(name, palette_id)), 0) FROM palette_names
UNION ALL
SELECT 'shelves', ifnull(sum(seal(id, name, position)), 0) FROM shelves
UNION ALL
SELECT 'shelf_textures', ifnull(sum(seal(shelf_id, texture_id, position)), 0) FROM shelf_textures
UNION ALL
SELECT 'canvases', ifnull(sum(seal(
        id, name, width, height, palette_id, free_colours, pen_model, grid_x, grid_y, cell_pitch,
        swatch_x, swatch_y, swatch_pitch, swatches_per_column, pen_turns, pen_covers, pen_leaving,
        fill_x, fill_y)), 0) FROM canvases
UNION ALL
SELECT 'boards', ifnull(sum(seal(
        id, name, description, memory, slots, bytes, report_interval_ms, max_step_up, max_step_down,
        press_ms, release_ms, settle_ms, display_width, display_height)), 0) FROM boards
UNION ALL
SELECT 'loads', ifnull(sum(seal(id, name, board_id, made_at)), 0) FROM loads
UNION ALL
SELECT 'load_slots', ifnull(sum(seal(load_id, slot, texture_id)), 0) FROM load_slots
UNION ALL
SELECT 'load_writings', ifnull(sum(seal(id, load_id, at, place, board)), 0) FROM load_writings
UNION ALL
SELECT 'tag_aliases', ifnull(sum(seal(alias, tag)), 0) FROM tag_aliases
UNION ALL
SELECT 'searches', ifnull(sum(seal(id, name, query, sort, position)), 0) FROM searches;
CREATE TRIGGER seal_new_textures AFTER INSERT ON textures BEGIN
    UPDATE seals SET sum = sum + seal(
            new.id, new.content_id, new.title, new.author, new.licence, new.source, new.note,
            new.added_at, new.changed_at, new.removed_at, new.revision, new.stars)
    WHERE name = 'textures';
END;
CREATE TRIGGER seal_changed_textures AFTER UPDATE ON textures BEGIN
    UPDATE seals SET sum = sum + seal(
            new.id, new.content_id, new.title, new.author, new.licence, new.source, new.note,
            new.added_at, new.changed_at, new.removed_at, new.revision, new.stars)
        - seal(
            old.id, old.content_id, old.title, old.author, old.licence, old.source, old.note,
            old.added_at, old.changed_at, old.removed_at, old.revision, old.stars)
    WHERE name = 'textures';
END;
CREATE TRIGGER seal_dropped_textures AFTER DELETE ON textures BEGIN
    UPDATE seals SET sum = sum - seal(
            old.id, old.content_id, old.title, old.author, old.licence, old.source, old.note,
            old.added_at, old.changed_at, old.removed_at, old.revision, old.stars)
    WHERE name = 'textures';
END;
CREATE TRIGGER seal_new_revisions AFTER INSERT ON revisions BEGIN
    UPDATE seals SET sum = sum + seal(
            new.texture_id, new.number, new.at, new.kind, new.title, new.author, new.licence,
            new.source, new.note, new.tags, new.was_removed, new.content_id, new.stars)
    WHERE name = 'revisions';
END;
CREATE TRIGGER seal_changed_revisions AFTER UPDATE ON revisions BEGIN
    UPDATE seals SET sum = sum + seal(
            new.texture_id, new.number, new.at, new.kind, new.title, new.author, new.licence,
            new.source, new.note, new.tags, new.was_removed, new.content_id, new.stars)
        - seal(
            old.texture_id, old.number, old.at, old.kind, old.title, old.author, old.licence,
            old.source, old.note, old.tags, old.was_removed, old.content_id, old.stars)
    WHERE name = 'revisions';
END;
CREATE TRIGGER seal_dropped_revisions AFTER DELETE ON revisions BEGIN
    UPDATE seals SET sum = sum - seal(
            old.texture_id, old.number, old.at, old.kind, old.title, old.author, old.licence,
            old.source, old.note, old.tags, old.was_removed, old.content_id, old.stars)
    WHERE name = 'revisions';
END;
CREATE TRIGGER seal_new_estimates AFTER INSERT ON estimates BEGIN
    UPDATE seals SET sum = sum + seal(
            new.texture_id, new.draw_ms, new.load_bytes, new.profile_key)
    WHERE name = 'estimates';
END;
CREATE TRIGGER seal_changed_estimates AFTER UPDATE ON estimates BEGIN
    UPDATE seals SET sum = sum + seal(
            new.texture_id, new.draw_ms, new.load_bytes, new.profile_key)
        - seal(
            old.texture_id, old.draw_ms, old.load_bytes, old.profile_key)
    WHERE name = 'estimates';
END;
CREATE TRIGGER seal_dropped_estimates AFTER DELETE ON estimates BEGIN
    UPDATE seals SET sum = sum - seal(
            old.texture_id, old.draw_ms, old.load_bytes, old.profile_key)
    WHERE name = 'estimates';
END;
CREATE TRIGGER seal_new_palette_names AFTER INSERT ON palette_names BEGIN
    UPDATE seals SET sum = sum + seal(new.name, new.palette_id)
    WHERE name = 'palette_names';
END;
CREATE TRIGGER seal_changed_palette_names AFTER UPDATE ON palette_names BEGIN
    UPDATE seals SET sum = sum + seal(new.name, new.palette_id)
        - seal(old.name, old.palette_id)
    WHERE name = 'palette_names';
END;
CREATE TRIGGER seal_dropped_palette_names AFTER DELETE ON palette_names BEGIN
    UPDATE seals SET sum = sum - seal(old.name, old.palette_id)
    WHERE name = 'palette_names';
END;
CREATE TRIGGER seal_new_shelves AFTER INSERT ON shelves BEGIN
    UPDATE seals SET sum = sum + seal(new.id, new.name, new.position)
    WHERE name = 'shelves';
END;
CREATE TRIGGER seal_changed_shelves AFTER UPDATE ON shelves BEGIN
    UPDATE seals SET sum = sum + seal(new.id, new.name, new.position)
        - seal(old.id, old.name, old.position)
    WHERE name = 'shelves';
END;
CREATE TRIGGER seal_dropped_shelves AFTER DELETE ON shelves BEGIN
    UPDATE seals SET sum = sum - seal(old.id, old.name, old.position)
    WHERE name = 'shelves';
END;
CREATE TRIGGER seal_new_shelf_textures AFTER INSERT ON shelf_textures BEGIN
    UPDATE seals SET sum = sum + seal(new.shelf_id, new.texture_id, new.position)
    WHERE name = 'shelf_textures';
END;
CREATE TRIGGER seal_changed_shelf_textures AFTER UPDATE ON shelf_textures BEGIN
    UPDATE seals SET sum = sum + seal(new.shelf_id, new.texture_id, new.position)
        - seal(old.shelf_id, old.texture_id, old.position)
    WHERE name = 'shelf_textures';
END;
CREATE TRIGGER seal_dropped_shelf_textures AFTER DELETE ON shelf_textures BEGIN
    UPDATE seals SET sum = sum - seal(old.shelf_id, old.texture_id, old.position)
    WHERE name = 'shelf_textures';
END;
CREATE TRIGGER seal_new_canvases AFTER INSERT ON canvases BEGIN
    UPDATE seals SET sum = sum + seal(
            new.id, new.name, new.width, new.height, new.palette_id, new.free_colours, new.pen_model,
            new.grid_x, new.grid_y, new.cell_pitch, new.swatch_x, new.swatch_y, new.swatch_pitch,
            new.swatches_per_column, new.pen_turns, new.pen_covers, new.pen_leaving, new.fill_x,
            new.fill_y)
    WHERE name = 'canvases';
END;
CREATE TRIGGER seal_changed_canvases AFTER UPDATE ON canvases BEGIN
    UPDATE seals SET sum = sum + seal(
            new.id, new.name, new.width, new.height, new.palette_id, new.free_colours, new.pen_model,
            new.grid_x, new.grid_y, new.cell_pitch, new.swatch_x, new.swatch_y, new.swatch_pitch,
            new.swatches_per_column, new.pen_turns, new.pen_covers, new.pen_leaving, new.fill_x,
            new.fill_y)
        - seal(
            old.id, old.name, old.width, old.height, old.palette_id, old.free_colours, old.pen_model,
            old.grid_x, old.grid_y, old.cell_pitch, old.swatch_x, old.swatch_y, old.swatch_pitch,
            old.swatches_per_column, old.pen_turns, old.pen_covers, old.pen_leaving, old.fill_x,
            old.fill_y)
    WHERE name = 'canvases';
END;
CREATE TRIGGER seal_dropped_canvases AFTER DELETE ON canvases BEGIN
    UPDATE seals SET sum = sum - seal(
            old.id, old.name, old.width, old.height, old.palette_id, old.free_colours, old.pen_model,
            old.grid_x, old.grid_y, old.cell_pitch, old.swatch_x, old.swatch_y, old.swatch_pitch,
            old.swatches_per_column, old.pen_turns, old.pen_covers, old.pen_leaving, old.fill_x,
            old.fill_y)
    WHERE name = 'canvases';
END;
CREATE TRIGGER seal_new_boards AFTER INSERT ON boards BEGIN
    UPDATE seals SET sum = sum + seal(
            new.id, new.name, new.description, new.memory, new.slots, new.bytes, new.report_interval_ms,
            new.max_step_up, new.max_step_down, new.press_ms, new.release_ms, new.settle_ms,
            new.display_width, new.display_height)
    WHERE name = 'boards';
END;
CREATE TRIGGER seal_changed_boards AFTER UPDATE ON boards BEGIN
    UPDATE seals SET sum = sum + seal(
            new.id, new.name, new.description, new.memory, new.slots, new.bytes, new.report_interval_ms,
            new.max_step_up, new.max_step_down, new.press_ms, new.release_ms, new.settle_ms,
            new.display_width, new.display_height)
        - seal(
            old.id, old.name, old.description, old.memory, old.slots, old.bytes, old.report_interval_ms,
            old.max_step_up, old.max_step_down, old.press_ms, old.release_ms, old.settle_ms,
            old.display_width, old.display_height)
    WHERE name = 'boards';
END;
CREATE TRIGGER seal_dropped_boards AFTER DELETE ON boards BEGIN
    UPDATE seals SET sum = sum - seal(
            old.id, old.name, old.description, old.memory, old.slots, old.bytes, old.report_interval_ms,
            old.max_step_up, old.max_step_down, old.press_ms, old.release_ms, old.settle_ms,
            old.display_width, old.display_height)
    WHERE name = 'boards';
END;
CREATE TRIGGER seal_new_loads AFTER INSERT ON loads BEGIN
    UPDATE seals SET sum = sum + seal(new.id, new.name, new.board_id, new.made_at)
    WHERE name = 'loads';
END;
CREATE TRIGGER seal_changed_loads AFTER UPDATE ON loads BEGIN
    UPDATE seals SET sum = sum + seal(new.id, new.name, new.board_id, new.made_at)
        - seal(old.id, old.name, old.board_id, old.made_at)
    WHERE name = 'loads';
END;
CREATE TRIGGER seal_dropped_loads AFTER DELETE ON loads BEGIN
    UPDATE seals SET sum = sum - seal(old.id, old.name, old.board_id, old.made_at)
    WHERE name = 'loads';
END;
CREATE TRIGGER seal_new_load_slots AFTER INSERT ON load_slots BEGIN
    UPDATE seals SET sum = sum + seal(new.load_id, new.slot, new.texture_id)
    WHERE name = 'load_slots';
END;
CREATE TRIGGER seal_changed_load_slots AFTER UPDATE ON load_slots BEGIN
    UPDATE seals SET sum = sum + seal(new.load_id, new.slot, new.texture_id)
        - seal(old.load_id, old.slot, old.texture_id)
    WHERE name = 'load_slots';
END;
CREATE TRIGGER seal_dropped_load_slots AFTER DELETE ON load_slots BEGIN
    UPDATE seals SET sum = sum - seal(old.load_id, old.slot, old.texture_id)
    WHERE name = 'load_slots';
END;
CREATE TRIGGER seal_new_load_writings AFTER INSERT ON load_writings BEGIN
    UPDATE seals SET sum = sum + seal(new.id, new.load_id, new.at, new.place, new.board)
    WHERE name = 'load_writings';
END;
CREATE TRIGGER seal_changed_load_writings AFTER UPDATE ON load_writings BEGIN
    UPDATE seals SET sum = sum + seal(new.id, new.load_id, new.at, new.place, new.board)
        - seal(old.id, old.load_id, old.at, old.place, old.board)
    WHERE name = 'load_writings';
END;
CREATE TRIGGER seal_dropped_load_writings AFTER DELETE ON load_writings BEGIN
    UPDATE seals SET sum = sum - seal(old.id, old.load_id, old.at, old.place, old.board)
    WHERE name = 'load_writings';
END;
CREATE TRIGGER seal_new_tag_aliases AFTER INSERT ON tag_aliases BEGIN
    UPDATE seals SET sum = sum + seal(new.alias, new.tag)
    WHERE name = 'tag_aliases';
END;
CREATE TRIGGER seal_changed_tag_aliases AFTER UPDATE ON tag_aliases BEGIN
    UPDATE seals SET sum = sum + seal(new.alias, new.tag)
        - seal(old.alias, old.tag)
    WHERE name = 'tag_aliases';
END;
CREATE TRIGGER seal_dropped_tag_aliases AFTER DELETE ON tag_aliases BEGIN
    UPDATE seals SET sum = sum - seal(old.alias, old.tag)
    WHERE name = 'tag_aliases';
END;
CREATE TRIGGER seal_new_searches AFTER INSERT ON searches BEGIN
    UPDATE seals SET sum = sum + seal(new.id, new.name, new.query, new.sort, new.position)
    WHERE name = 'searches';
END;
CREATE TRIGGER seal_changed_searches AFTER UPDATE ON searches BEGIN
    UPDATE seals SET sum = sum + seal(new.id, new.name, new.query, new.sort, new.position)
        - seal(old.id, old.name, old.query, old.sort, old.position)
    WHERE name = 'searches';
END;
CREATE TRIGGER seal_dropped_searches AFTER DELETE ON searches BEGIN
    UPDATE seals SET sum = sum - seal(old.id, old.name, old.query, old.sort, old.position)
    WHERE name = 'searches';
END;
COMMIT;
