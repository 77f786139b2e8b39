-- A library as schema version 7 left it, written out as SQL: that of version 6 brought up to date, with one action that can
-- be undone: texture 1 got the tag 'quay'.
PRAGMA application_id=1347701829;
PRAGMA user_version=7;
BEGIN;
CREATE TABLE action_changes (
    id INTEGER PRIMARY KEY,
    action_id INTEGER NOT NULL REFERENCES actions (id) ON DELETE CASCADE,
    body BLOB NOT NULL
) STRICT;
INSERT INTO "action_changes" VALUES(1,1,X'4209B2A1B0B780060208A9B483C2350A1185020909850209110429D1BCE7E7ED01050929050909050911030919FF8BFFD272');
CREATE TABLE actions (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    at INTEGER NOT NULL,
    what TEXT NOT NULL,
    state INTEGER NOT NULL CHECK (state BETWEEN 1 AND 3),
    bytes INTEGER NOT NULL CHECK (bytes >= 0)
) STRICT;
INSERT INTO "actions" VALUES(1,1795717695,'Change the tags of texture 1',1,50);
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
INSERT INTO "boards" VALUES(1,'flash-32k','8-bit USB board, 32 KiB flash. 28672 bytes are left by a bootloader of 4 KiB (from such a part''s datasheet); 6144 of them are kept for the player. Five slots and careful timing: common practice, no source.',0,5,22528,8,127,8,33,33,100,0,0);
INSERT INTO "boards" VALUES(2,'card-64','8-bit USB board with a memory card. 64 slots are what a person still finds by short presses; 64 KiB for each is far above what a texture takes, and far below any card. Both are choices of ours. Careful timing: common practice, no source.',1,64,4194304,8,127,8,33,33,100,0,0);
INSERT INTO "boards" VALUES(3,'linux-255','Small Linux board whose kernel makes it a USB mouse; the load is a file on its card. 255 slots are the most that a load has: its player names each on a terminal. 64 KiB for each as for card-64, a choice of ours. Careful timing: common practice, no source.',1,255,16711680,8,127,8,33,33,100,0,0);
INSERT INTO "boards" VALUES(4,'pier','',0,12,9000,8,127,8,33,33,100,0,0);
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
INSERT INTO "canvases" VALUES(1,'cells-16',16,16,NULL,16,0,4,4,8,160,8,16,16,1,1,0,NULL,NULL);
INSERT INTO "canvases" VALUES(2,'cells-32',32,32,NULL,16,0,4,4,8,288,8,16,16,1,1,0,NULL,NULL);
INSERT INTO "canvases" VALUES(3,'cells-64',64,64,NULL,16,0,4,4,8,544,8,16,16,1,1,0,NULL,NULL);
INSERT INTO "canvases" VALUES(4,'quay',16,16,NULL,8,0,4,4,8,160,8,16,16,1,1,0,NULL,NULL);
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
INSERT INTO "contents" VALUES(1,-7297029982841053149,4,3,1,3,0,X'0112221102122111',X'07',951,155);
INSERT INTO "contents" VALUES(2,6785390912281706868,2,2,2,2,0,X'0113',X'03',157827,100);
INSERT INTO "contents" VALUES(3,-5124718927259854862,3,3,3,2,0,X'01120211011101',X'03',264,100);
INSERT INTO "contents" VALUES(4,4364622475269902767,4,3,1,3,0,X'2112031121112112',X'07',951,155);
INSERT INTO "contents" VALUES(5,6785392011793335079,2,2,2,2,0,X'011201',X'03',264,100);
CREATE TABLE estimates (
    texture_id INTEGER PRIMARY KEY REFERENCES textures (id) ON DELETE CASCADE,
    draw_ms INTEGER NOT NULL,
    load_bytes INTEGER NOT NULL,
    profile_key TEXT NOT NULL
) STRICT;
INSERT INTO "estimates" VALUES(1,978,118,'ea3960731b08135c cells-16 / flash-32k');
INSERT INTO "estimates" VALUES(2,618,108,'ea3960731b08135c cells-16 / flash-32k');
INSERT INTO "estimates" VALUES(3,666,111,'ea3960731b08135c cells-16 / flash-32k');
INSERT INTO "estimates" VALUES(4,978,118,'ea3960731b08135c cells-16 / flash-32k');
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
INSERT INTO "facts" VALUES(1,0,4,3,3,4,155,978,118,1,1795693380,1795717695,951,X'07');
INSERT INTO "facts" VALUES(2,0,2,2,2,0,100,618,108,2,1795693380,1795693417,264,X'03');
INSERT INTO "facts" VALUES(3,1,3,3,2,0,100,666,111,3,1795693380,1795693397,264,X'03');
INSERT INTO "facts" VALUES(4,0,4,3,3,0,155,978,118,1,1795693381,1795693381,951,X'07');
CREATE TABLE folding (version TEXT NOT NULL) STRICT;
INSERT INTO "folding" VALUES('1, unicode 24');
CREATE TABLE load_slots (
    load_id INTEGER NOT NULL REFERENCES loads (id) ON DELETE CASCADE,
    slot INTEGER NOT NULL,
    texture_id INTEGER NOT NULL REFERENCES textures (id),
    PRIMARY KEY (load_id, slot)
) STRICT, WITHOUT ROWID;
INSERT INTO "load_slots" VALUES(1,0,1);
INSERT INTO "load_slots" VALUES(1,1,2);
CREATE TABLE load_writings (
    id INTEGER PRIMARY KEY,
    load_id INTEGER NOT NULL REFERENCES loads (id) ON DELETE CASCADE,
    at INTEGER NOT NULL,
    place TEXT NOT NULL,
    board TEXT NOT NULL
) STRICT;
INSERT INTO "load_writings" VALUES(1,1,1795716614,'/media/card','pier');
CREATE TABLE loads (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL UNIQUE COLLATE NOCASE,
    board_id INTEGER NOT NULL REFERENCES boards (id),
    made_at INTEGER NOT NULL
) STRICT;
INSERT INTO "loads" VALUES(1,'Night',4,1795693397);
CREATE TABLE looks (
    content_id INTEGER PRIMARY KEY REFERENCES contents (id) ON DELETE CASCADE,
    shape INTEGER NOT NULL,
    lightness INTEGER NOT NULL CHECK (lightness BETWEEN 0 AND 255),
    green_to_red INTEGER NOT NULL CHECK (green_to_red BETWEEN 0 AND 255),
    blue_to_yellow INTEGER NOT NULL CHECK (blue_to_yellow BETWEEN 0 AND 255),
    unpainted INTEGER NOT NULL CHECK (unpainted BETWEEN 0 AND 255),
    lights BLOB NOT NULL CHECK (length(lights) = 16)
) STRICT;
INSERT INTO "looks" VALUES(1,581710179,147,100,104,0,X'35BEBE9A78BE6356A6BE5663BEBE9ABE');
INSERT INTO "looks" VALUES(3,1255820180,98,99,104,0,X'35789A9A354B6D9A354B627835787835');
INSERT INTO "looks" VALUES(4,581710179,147,100,104,0,X'9ABEBE355663BE786356BEA6BE9ABEBE');
INSERT INTO "looks" VALUES(5,501759498,109,77,114,0,X'3535A6A63535A6A6A6A63535A6A63535');
CREATE TABLE looks_missing (
    content_id INTEGER PRIMARY KEY REFERENCES contents (id) ON DELETE CASCADE
) STRICT;
INSERT INTO "looks_missing" VALUES(2);
CREATE TABLE palette_names (
    name TEXT NOT NULL PRIMARY KEY COLLATE NOCASE,
    palette_id INTEGER NOT NULL REFERENCES palettes (id)
) STRICT, WITHOUT ROWID;
INSERT INTO "palette_names" VALUES('dune',1);
CREATE TABLE palettes (
    id INTEGER PRIMARY KEY,
    fingerprint INTEGER NOT NULL,
    colours BLOB NOT NULL CHECK (length(colours) BETWEEN 6 AND 768 AND length(colours) % 3 = 0),
    transparent INTEGER CHECK (transparent BETWEEN 0 AND 255)
) STRICT;
INSERT INTO "palettes" VALUES(1,1361306652219694167,X'1B2631F2EFE4C9B27A',NULL);
INSERT INTO "palettes" VALUES(2,-3226484460135975739,X'1B263122EF24',NULL);
INSERT INTO "palettes" VALUES(3,-7444667359742215669,X'1B2631C9B27A',NULL);
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
INSERT INTO "revisions" VALUES(1,1,1795693380,1,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "revisions" VALUES(1,2,1795693381,2,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,0);
INSERT INTO "revisions" VALUES(1,3,1795717695,3,NULL,NULL,NULL,NULL,NULL,'sand shore',NULL,NULL,NULL);
INSERT INTO "revisions" VALUES(2,1,1795693380,1,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "revisions" VALUES(2,2,1795693417,7,NULL,NULL,NULL,NULL,NULL,NULL,NULL,2,NULL);
INSERT INTO "revisions" VALUES(3,1,1795693380,1,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "revisions" VALUES(3,2,1795693381,2,NULL,NULL,NULL,NULL,'',NULL,NULL,NULL,NULL);
INSERT INTO "revisions" VALUES(3,3,1795693397,4,NULL,NULL,NULL,NULL,NULL,NULL,0,NULL,NULL);
INSERT INTO "revisions" VALUES(4,1,1795693381,1,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
CREATE TABLE seals (
    name TEXT NOT NULL PRIMARY KEY,
    sum INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO "seals" VALUES('action_changes',128090657411);
INSERT INTO "seals" VALUES('actions',168255262604);
INSERT INTO "seals" VALUES('boards',521912792317);
INSERT INTO "seals" VALUES('canvases',575720955445);
INSERT INTO "seals" VALUES('estimates',565521982677);
INSERT INTO "seals" VALUES('load_slots',258705375279);
INSERT INTO "seals" VALUES('load_writings',7774924032);
INSERT INTO "seals" VALUES('loads',246672021922);
INSERT INTO "seals" VALUES('palette_names',77983245447);
INSERT INTO "seals" VALUES('revisions',1181008180582);
INSERT INTO "seals" VALUES('searches',64716263164);
INSERT INTO "seals" VALUES('shelf_textures',243358892953);
INSERT INTO "seals" VALUES('shelves',140842560294);
INSERT INTO "seals" VALUES('tag_aliases',228492943651);
INSERT INTO "seals" VALUES('textures',429556527620);
CREATE TABLE searches (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL UNIQUE COLLATE NOCASE,
    query TEXT NOT NULL,
    sort TEXT NOT NULL,
    position INTEGER NOT NULL
) STRICT;
INSERT INTO "searches" VALUES(1,'Beach','tag:shore stars>=3','title',1);
CREATE TABLE shelf_textures (
    shelf_id INTEGER NOT NULL REFERENCES shelves (id) ON DELETE CASCADE,
    texture_id INTEGER NOT NULL REFERENCES textures (id) ON DELETE CASCADE,
    position INTEGER NOT NULL,
    PRIMARY KEY (shelf_id, texture_id)
) STRICT, WITHOUT ROWID;
INSERT INTO "shelf_textures" VALUES(1,1,1);
INSERT INTO "shelf_textures" VALUES(1,2,2);
CREATE TABLE shelves (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL UNIQUE COLLATE NOCASE,
    position INTEGER NOT NULL
) STRICT;
INSERT INTO "shelves" VALUES(1,'Tideline',1);
CREATE TABLE tag_aliases (
    alias TEXT NOT NULL PRIMARY KEY,
    tag TEXT NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO "tag_aliases" VALUES('strand','shore');
CREATE TABLE tags (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL UNIQUE
, folded TEXT) STRICT;
INSERT INTO "tags" VALUES(1,'sand','sand');
INSERT INTO "tags" VALUES(2,'shore','shore');
INSERT INTO "tags" VALUES(3,'stone/slate','stone/slate');
INSERT INTO "tags" VALUES(4,'rope','rope');
INSERT INTO "tags" VALUES(5,'quay','quay');
CREATE TABLE texture_tags (
    texture_id INTEGER NOT NULL REFERENCES textures (id) ON DELETE CASCADE,
    tag_id INTEGER NOT NULL REFERENCES tags (id),
    PRIMARY KEY (texture_id, tag_id)
) STRICT, WITHOUT ROWID;
INSERT INTO "texture_tags" VALUES(1,1);
INSERT INTO "texture_tags" VALUES(4,1);
INSERT INTO "texture_tags" VALUES(1,2);
INSERT INTO "texture_tags" VALUES(2,2);
INSERT INTO "texture_tags" VALUES(2,3);
INSERT INTO "texture_tags" VALUES(3,4);
INSERT INTO "texture_tags" VALUES(1,5);
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
INSERT INTO "textures" VALUES(1,1,'Wet sand','Ebb','CC0','sand.csv','',1795693380,1795717695,NULL,3,4);
INSERT INTO "textures" VALUES(2,5,'Kelp on slate','Flow','CC-BY 4.0','kelp.csv','',1795693380,1795693417,NULL,2,0);
INSERT INTO "textures" VALUES(3,3,'Küstentau','Ébène','','rope.csv','three strands, laid left',1795693380,1795693397,1795693397,3,0);
INSERT INTO "textures" VALUES(4,4,'Wet sand, other way','Ebb','','sand_mirrored.csv','',1795693381,1795693381,NULL,1,0);
CREATE TABLE word_pages (
    page INTEGER PRIMARY KEY,
    words BLOB NOT NULL
) STRICT;
INSERT INTO "word_pages" VALUES(0,X'FF7765742073616E64FE656262FE636330FE73616E642E637376FF6B656C70206F6E20736C617465FE666C6F77FE63632D627920342E30FE6B656C702E637376FF6B757374656E746175FE6562656E65FEFE726F70652E637376FE746872656520737472616E64732C206C616964206C656674FF7765742073616E642C206F7468657220776179FE656262FEFE73616E645F6D6972726F7265642E637376FF');
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
CREATE INDEX action_changes_by_action ON action_changes (action_id);
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
SELECT 'searches', ifnull(sum(seal(id, name, query, sort, position)), 0) FROM searches
UNION ALL
SELECT 'actions', ifnull(sum(seal(id, at, what, state, bytes)), 0) FROM actions
UNION ALL
SELECT 'action_changes', ifnull(sum(seal(id, action_id, body)), 0) FROM action_changes;
CREATE TRIGGER seal_new_actions AFTER INSERT ON actions BEGIN
    UPDATE seals SET sum = sum + seal(new.id, new.at, new.what, new.state, new.bytes)
    WHERE name = 'actions';
END;
CREATE TRIGGER seal_changed_actions AFTER UPDATE ON actions BEGIN
    UPDATE seals SET sum = sum + seal(new.id, new.at, new.what, new.state, new.bytes)
        - seal(old.id, old.at, old.what, old.state, old.bytes)
    WHERE name = 'actions';
END;
CREATE TRIGGER seal_dropped_actions AFTER DELETE ON actions BEGIN
    UPDATE seals SET sum = sum - seal(old.id, old.at, old.what, old.state, old.bytes)
    WHERE name = 'actions';
END;
CREATE TRIGGER seal_new_action_changes AFTER INSERT ON action_changes BEGIN
    UPDATE seals SET sum = sum + seal(new.id, new.action_id, new.body)
    WHERE name = 'action_changes';
END;
CREATE TRIGGER seal_changed_action_changes AFTER UPDATE ON action_changes BEGIN
    UPDATE seals SET sum = sum + seal(new.id, new.action_id, new.body)
        - seal(old.id, old.action_id, old.body)
    WHERE name = 'action_changes';
END;
CREATE TRIGGER seal_dropped_action_changes AFTER DELETE ON action_changes BEGIN
    UPDATE seals SET sum = sum - seal(old.id, old.action_id, old.body)
    WHERE name = 'action_changes';
END;
CREATE TRIGGER note_new_palettes AFTER INSERT ON palettes BEGIN
    SELECT note_new('palettes',
        new.id, new.fingerprint, new.colours, new.transparent);
END;
CREATE TRIGGER note_changed_palettes AFTER UPDATE ON palettes BEGIN
    SELECT note_changed('palettes',
        old.id, old.fingerprint, old.colours, old.transparent, new.id, new.fingerprint,
        new.colours, new.transparent);
END;
CREATE TRIGGER note_dropped_palettes AFTER DELETE ON palettes BEGIN
    SELECT note_dropped('palettes',
        old.id, old.fingerprint, old.colours, old.transparent);
END;
CREATE TRIGGER note_new_contents AFTER INSERT ON contents BEGIN
    SELECT note_new('contents',
        new.id, new.fingerprint, new.width, new.height, new.palette_id, new.colours, new.method);
END;
CREATE TRIGGER note_changed_contents AFTER UPDATE
    OF id, fingerprint, width, height, palette_id, colours, method ON contents BEGIN
    SELECT note_changed('contents',
        old.id, old.fingerprint, old.width, old.height, old.palette_id, old.colours, old.method,
        new.id, new.fingerprint, new.width, new.height, new.palette_id, new.colours, new.method);
END;
CREATE TRIGGER note_dropped_contents AFTER DELETE ON contents BEGIN
    SELECT note_dropped('contents',
        old.id, old.fingerprint, old.width, old.height, old.palette_id, old.colours, old.method,
        old.body, old.used, old.tone, old.seam);
END;
CREATE TRIGGER note_new_textures AFTER INSERT ON textures BEGIN
    SELECT note_new('textures',
        new.id, new.content_id, new.title, new.author, new.licence, new.source, new.note,
        new.added_at, new.changed_at, new.removed_at, new.revision, new.stars);
END;
CREATE TRIGGER note_changed_textures AFTER UPDATE ON textures BEGIN
    SELECT note_changed('textures',
        old.id, old.content_id, old.title, old.author, old.licence, old.source, old.note,
        old.added_at, old.changed_at, old.removed_at, old.revision, old.stars, new.id,
        new.content_id, new.title, new.author, new.licence, new.source, new.note, new.added_at,
        new.changed_at, new.removed_at, new.revision, new.stars);
END;
CREATE TRIGGER note_dropped_textures AFTER DELETE ON textures BEGIN
    SELECT note_dropped('textures',
        old.id, old.content_id, old.title, old.author, old.licence, old.source, old.note,
        old.added_at, old.changed_at, old.removed_at, old.revision, old.stars);
END;
CREATE TRIGGER note_new_revisions AFTER INSERT ON revisions BEGIN
    SELECT note_new('revisions',
        new.texture_id, new.number, new.at, new.kind, new.title, new.author, new.licence,
        new.source, new.note, new.tags, new.was_removed, new.content_id, new.stars);
END;
CREATE TRIGGER note_changed_revisions AFTER UPDATE ON revisions BEGIN
    SELECT note_changed('revisions',
        old.texture_id, old.number, old.at, old.kind, old.title, old.author, old.licence,
        old.source, old.note, old.tags, old.was_removed, old.content_id, old.stars,
        new.texture_id, new.number, new.at, new.kind, new.title, new.author, new.licence,
        new.source, new.note, new.tags, new.was_removed, new.content_id, new.stars);
END;
CREATE TRIGGER note_dropped_revisions AFTER DELETE ON revisions BEGIN
    SELECT note_dropped('revisions',
        old.texture_id, old.number, old.at, old.kind, old.title, old.author, old.licence,
        old.source, old.note, old.tags, old.was_removed, old.content_id, old.stars);
END;
CREATE TRIGGER note_new_tags AFTER INSERT ON tags BEGIN
    SELECT note_new('tags',
        new.id, new.name);
END;
CREATE TRIGGER note_changed_tags AFTER UPDATE OF id, name ON tags BEGIN
    SELECT note_changed('tags',
        old.id, old.name, new.id, new.name);
END;
CREATE TRIGGER note_dropped_tags AFTER DELETE ON tags BEGIN
    SELECT note_dropped('tags',
        old.id, old.name, old.folded);
END;
CREATE TRIGGER note_new_texture_tags AFTER INSERT ON texture_tags BEGIN
    SELECT note_new('texture_tags',
        new.texture_id, new.tag_id);
END;
CREATE TRIGGER note_changed_texture_tags AFTER UPDATE ON texture_tags BEGIN
    SELECT note_changed('texture_tags',
        old.texture_id, old.tag_id, new.texture_id, new.tag_id);
END;
CREATE TRIGGER note_dropped_texture_tags AFTER DELETE ON texture_tags BEGIN
    SELECT note_dropped('texture_tags',
        old.texture_id, old.tag_id);
END;
CREATE TRIGGER note_new_shelves AFTER INSERT ON shelves BEGIN
    SELECT note_new('shelves',
        new.id, new.name, new.position);
END;
CREATE TRIGGER note_changed_shelves AFTER UPDATE ON shelves BEGIN
    SELECT note_changed('shelves',
        old.id, old.name, old.position, new.id, new.name, new.position);
END;
CREATE TRIGGER note_dropped_shelves AFTER DELETE ON shelves BEGIN
    SELECT note_dropped('shelves',
        old.id, old.name, old.position);
END;
CREATE TRIGGER note_new_shelf_textures AFTER INSERT ON shelf_textures BEGIN
    SELECT note_new('shelf_textures',
        new.shelf_id, new.texture_id, new.position);
END;
CREATE TRIGGER note_changed_shelf_textures AFTER UPDATE ON shelf_textures BEGIN
    SELECT note_changed('shelf_textures',
        old.shelf_id, old.texture_id, old.position, new.shelf_id, new.texture_id, new.position);
END;
CREATE TRIGGER note_dropped_shelf_textures AFTER DELETE ON shelf_textures BEGIN
    SELECT note_dropped('shelf_textures',
        old.shelf_id, old.texture_id, old.position);
END;
CREATE TRIGGER note_new_palette_names AFTER INSERT ON palette_names BEGIN
    SELECT note_new('palette_names',
        new.name, new.palette_id);
END;
CREATE TRIGGER note_changed_palette_names AFTER UPDATE ON palette_names BEGIN
    SELECT note_changed('palette_names',
        old.name, old.palette_id, new.name, new.palette_id);
END;
CREATE TRIGGER note_dropped_palette_names AFTER DELETE ON palette_names BEGIN
    SELECT note_dropped('palette_names',
        old.name, old.palette_id);
END;
CREATE TRIGGER note_new_canvases AFTER INSERT ON canvases BEGIN
    SELECT note_new('canvases',
        new.id, new.name, new.width, new.height, new.palette_id, new.free_colours,
        new.pen_model, new.grid_x, new.grid_y, new.cell_pitch, new.swatch_x, new.swatch_y,
        new.swatch_pitch, new.swatches_per_column, new.pen_turns, new.pen_covers,
        new.pen_leaving, new.fill_x, new.fill_y);
END;
CREATE TRIGGER note_changed_canvases AFTER UPDATE ON canvases BEGIN
    SELECT note_changed('canvases',
        old.id, old.name, old.width, old.height, old.palette_id, old.free_colours,
        old.pen_model, old.grid_x, old.grid_y, old.cell_pitch, old.swatch_x, old.swatch_y,
        old.swatch_pitch, old.swatches_per_column, old.pen_turns, old.pen_covers,
        old.pen_leaving, old.fill_x, old.fill_y, new.id, new.name, new.width, new.height,
        new.palette_id, new.free_colours, new.pen_model, new.grid_x, new.grid_y, new.cell_pitch,
        new.swatch_x, new.swatch_y, new.swatch_pitch, new.swatches_per_column, new.pen_turns,
        new.pen_covers, new.pen_leaving, new.fill_x, new.fill_y);
END;
CREATE TRIGGER note_dropped_canvases AFTER DELETE ON canvases BEGIN
    SELECT note_dropped('canvases',
        old.id, old.name, old.width, old.height, old.palette_id, old.free_colours,
        old.pen_model, old.grid_x, old.grid_y, old.cell_pitch, old.swatch_x, old.swatch_y,
        old.swatch_pitch, old.swatches_per_column, old.pen_turns, old.pen_covers,
        old.pen_leaving, old.fill_x, old.fill_y);
END;
CREATE TRIGGER note_new_boards AFTER INSERT ON boards BEGIN
    SELECT note_new('boards',
        new.id, new.name, new.description, new.memory, new.slots, new.bytes,
        new.report_interval_ms, new.max_step_up, new.max_step_down, new.press_ms,
        new.release_ms, new.settle_ms, new.display_width, new.display_height);
END;
CREATE TRIGGER note_changed_boards AFTER UPDATE ON boards BEGIN
    SELECT note_changed('boards',
        old.id, old.name, old.description, old.memory, old.slots, old.bytes,
        old.report_interval_ms, old.max_step_up, old.max_step_down, old.press_ms,
        old.release_ms, old.settle_ms, old.display_width, old.display_height, new.id, new.name,
        new.description, new.memory, new.slots, new.bytes, new.report_interval_ms,
        new.max_step_up, new.max_step_down, new.press_ms, new.release_ms, new.settle_ms,
        new.display_width, new.display_height);
END;
CREATE TRIGGER note_dropped_boards AFTER DELETE ON boards BEGIN
    SELECT note_dropped('boards',
        old.id, old.name, old.description, old.memory, old.slots, old.bytes,
        old.report_interval_ms, old.max_step_up, old.max_step_down, old.press_ms,
        old.release_ms, old.settle_ms, old.display_width, old.display_height);
END;
CREATE TRIGGER note_new_loads AFTER INSERT ON loads BEGIN
    SELECT note_new('loads',
        new.id, new.name, new.board_id, new.made_at);
END;
CREATE TRIGGER note_changed_loads AFTER UPDATE ON loads BEGIN
    SELECT note_changed('loads',
        old.id, old.name, old.board_id, old.made_at, new.id, new.name, new.board_id, new.made_at);
END;
CREATE TRIGGER note_dropped_loads AFTER DELETE ON loads BEGIN
    SELECT note_dropped('loads',
        old.id, old.name, old.board_id, old.made_at);
END;
CREATE TRIGGER note_new_load_slots AFTER INSERT ON load_slots BEGIN
    SELECT note_new('load_slots',
        new.load_id, new.slot, new.texture_id);
END;
CREATE TRIGGER note_changed_load_slots AFTER UPDATE ON load_slots BEGIN
    SELECT note_changed('load_slots',
        old.load_id, old.slot, old.texture_id, new.load_id, new.slot, new.texture_id);
END;
CREATE TRIGGER note_dropped_load_slots AFTER DELETE ON load_slots BEGIN
    SELECT note_dropped('load_slots',
        old.load_id, old.slot, old.texture_id);
END;
CREATE TRIGGER note_new_load_writings AFTER INSERT ON load_writings BEGIN
    SELECT note_new('load_writings',
        new.id, new.load_id, new.at, new.place, new.board);
END;
CREATE TRIGGER note_changed_load_writings AFTER UPDATE ON load_writings BEGIN
    SELECT note_changed('load_writings',
        old.id, old.load_id, old.at, old.place, old.board, new.id, new.load_id, new.at,
        new.place, new.board);
END;
CREATE TRIGGER note_dropped_load_writings AFTER DELETE ON load_writings BEGIN
    SELECT note_dropped('load_writings',
        old.id, old.load_id, old.at, old.place, old.board);
END;
CREATE TRIGGER note_new_tag_aliases AFTER INSERT ON tag_aliases BEGIN
    SELECT note_new('tag_aliases',
        new.alias, new.tag);
END;
CREATE TRIGGER note_changed_tag_aliases AFTER UPDATE ON tag_aliases BEGIN
    SELECT note_changed('tag_aliases',
        old.alias, old.tag, new.alias, new.tag);
END;
CREATE TRIGGER note_dropped_tag_aliases AFTER DELETE ON tag_aliases BEGIN
    SELECT note_dropped('tag_aliases',
        old.alias, old.tag);
END;
CREATE TRIGGER note_new_searches AFTER INSERT ON searches BEGIN
    SELECT note_new('searches',
        new.id, new.name, new.query, new.sort, new.position);
END;
CREATE TRIGGER note_changed_searches AFTER UPDATE ON searches BEGIN
    SELECT note_changed('searches',
        old.id, old.name, old.query, old.sort, old.position, new.id, new.name, new.query,
        new.sort, new.position);
END;
CREATE TRIGGER note_dropped_searches AFTER DELETE ON searches BEGIN
    SELECT note_dropped('searches',
        old.id, old.name, old.query, old.sort, old.position);
END;
DELETE FROM "sqlite_sequence";
INSERT INTO "sqlite_sequence" VALUES('textures',4);
INSERT INTO "sqlite_sequence" VALUES('actions',1);
COMMIT;
