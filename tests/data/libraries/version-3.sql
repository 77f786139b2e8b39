-- A library as schema version 3 left it, written out as SQL: three textures, one of them removed and one
-- with words that are no ASCII, tags below others, a shelf, a palette's name, a canvas and a board of
-- its own and a load.
PRAGMA application_id=1347701829;
PRAGMA user_version=3;
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
INSERT INTO "boards" VALUES(1,'flash-32k','8-bit USB board, 32 KiB flash. 28672 bytes are left by a bootloader of 4 KiB (from such a part''s datasheet); 6144 of them are kept for the player. Five slots and careful timing: common practice, no source.',0,5,22528,8,127,8,33,33,100,0,0);
INSERT INTO "boards" VALUES(2,'card-64','8-bit USB board with a memory card. 64 slots are what a person still finds by short presses; 64 KiB for each is far above what a texture takes, and far below any card. Both are choices of ours. Careful timing: common practice, no source.',1,64,4194304,8,127,8,33,33,100,0,0);
INSERT INTO "boards" VALUES(3,'pier','',0,12,9000,8,127,8,33,33,100,64,64);
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
INSERT INTO "canvases" VALUES(4,'quay',48,32,NULL,12,0,4,4,8,416,8,16,16,1,1,0,620,12);
CREATE TABLE contents (
    id INTEGER PRIMARY KEY,
    fingerprint INTEGER NOT NULL,
    width INTEGER NOT NULL CHECK (width BETWEEN 1 AND 256),
    height INTEGER NOT NULL CHECK (height BETWEEN 1 AND 256),
    palette_id INTEGER NOT NULL REFERENCES palettes (id),
    colours INTEGER NOT NULL CHECK (colours BETWEEN 0 AND 256),
    method INTEGER NOT NULL,
    body BLOB NOT NULL
) STRICT;
INSERT INTO "contents" VALUES(1,6395801654834597587,4,2,1,3,0,X'1101221123');
INSERT INTO "contents" VALUES(2,1199813882404544087,3,2,2,2,0,X'01110311');
INSERT INTO "contents" VALUES(3,7194836680343382500,3,3,3,3,0,X'011121112101210111');
CREATE TABLE estimates (
    texture_id INTEGER PRIMARY KEY REFERENCES textures (id) ON DELETE CASCADE,
    draw_ms INTEGER NOT NULL,
    load_bytes INTEGER NOT NULL,
    profile_key TEXT NOT NULL
) STRICT;
INSERT INTO "estimates" VALUES(1,832,120,'764887ddd7de7fde cells-16 / flash-32k');
INSERT INTO "estimates" VALUES(2,634,114,'764887ddd7de7fde cells-16 / flash-32k');
INSERT INTO "estimates" VALUES(3,1012,124,'764887ddd7de7fde cells-16 / flash-32k');
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
CREATE TABLE loads (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL UNIQUE COLLATE NOCASE,
    board_id INTEGER NOT NULL REFERENCES boards (id),
    made_at INTEGER NOT NULL
) STRICT;
INSERT INTO "loads" VALUES(1,'tide',3,1795681285);
CREATE TABLE palette_names (
    name TEXT NOT NULL PRIMARY KEY COLLATE NOCASE,
    palette_id INTEGER NOT NULL REFERENCES palettes (id)
) STRICT, WITHOUT ROWID;
INSERT INTO "palette_names" VALUES('Dune',4);
CREATE TABLE palettes (
    id INTEGER PRIMARY KEY,
    fingerprint INTEGER NOT NULL,
    colours BLOB NOT NULL CHECK (length(colours) BETWEEN 6 AND 768 AND length(colours) % 3 = 0),
    transparent INTEGER CHECK (transparent BETWEEN 0 AND 255)
) STRICT;
INSERT INTO "palettes" VALUES(1,-3168438257885797457,X'1B2631F2EFE4B5532D',NULL);
INSERT INTO "palettes" VALUES(2,-5849845281882144811,X'0B263122EF24',NULL);
INSERT INTO "palettes" VALUES(3,2987462851893941736,X'C8B88A6E5F432F2A22',NULL);
INSERT INTO "palettes" VALUES(4,-2218214142227762394,X'C8B88A6E5F43',NULL);
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
    content_id INTEGER REFERENCES contents (id),
    PRIMARY KEY (texture_id, number)
) STRICT, WITHOUT ROWID;
INSERT INTO "revisions" VALUES(1,1,1795681283,1,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "revisions" VALUES(1,2,1795681285,3,NULL,NULL,NULL,NULL,NULL,'shore',NULL,NULL);
INSERT INTO "revisions" VALUES(2,1,1795681284,1,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "revisions" VALUES(3,1,1795681284,1,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL);
INSERT INTO "revisions" VALUES(3,2,1795681285,2,NULL,NULL,NULL,NULL,'',NULL,NULL,NULL);
INSERT INTO "revisions" VALUES(3,3,1795681285,4,NULL,NULL,NULL,NULL,NULL,NULL,0,NULL);
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
CREATE TABLE tags (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL UNIQUE
) STRICT;
INSERT INTO "tags" VALUES(1,'shore');
INSERT INTO "tags" VALUES(2,'stone/slate');
INSERT INTO "tags" VALUES(3,'rope');
INSERT INTO "tags" VALUES(4,'sand');
CREATE TABLE texture_tags (
    texture_id INTEGER NOT NULL REFERENCES textures (id) ON DELETE CASCADE,
    tag_id INTEGER NOT NULL REFERENCES tags (id),
    PRIMARY KEY (texture_id, tag_id)
) STRICT, WITHOUT ROWID;
INSERT INTO "texture_tags" VALUES(1,1);
INSERT INTO "texture_tags" VALUES(2,1);
INSERT INTO "texture_tags" VALUES(2,2);
INSERT INTO "texture_tags" VALUES(3,3);
INSERT INTO "texture_tags" VALUES(1,4);
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
) STRICT;
INSERT INTO "textures" VALUES(1,1,'Wet sand','Ebb','CC0','tidewrack sheet 1','',1795681283,1795681285,NULL,2);
INSERT INTO "textures" VALUES(2,2,'Kelp on slate','Flow','CC-BY 4.0','kelp.csv','',1795681284,1795681284,NULL,1);
INSERT INTO "textures" VALUES(3,3,'Küstentau','Ébène','','rope.csv','three strands, laid left',1795681284,1795681285,1795681285,3);
CREATE INDEX palettes_by_fingerprint ON palettes (fingerprint);
CREATE INDEX palette_names_by_palette ON palette_names (palette_id);
CREATE INDEX contents_by_fingerprint ON contents (fingerprint);
CREATE INDEX contents_by_palette ON contents (palette_id);
CREATE INDEX textures_by_title ON textures (title COLLATE NOCASE);
CREATE INDEX textures_by_added ON textures (added_at);
CREATE INDEX textures_by_changed ON textures (changed_at);
CREATE INDEX tags_by_name ON tags (name COLLATE NOCASE);
CREATE INDEX texture_tags_by_tag ON texture_tags (tag_id, texture_id);
CREATE INDEX shelf_textures_by_texture ON shelf_textures (texture_id, shelf_id);
CREATE INDEX shelf_textures_by_position ON shelf_textures (shelf_id, position);
CREATE INDEX canvases_by_palette ON canvases (palette_id);
CREATE INDEX loads_by_board ON loads (board_id);
CREATE INDEX load_slots_by_texture ON load_slots (texture_id);
CREATE INDEX load_writings_by_load ON load_writings (load_id);
CREATE INDEX revisions_by_content ON revisions (content_id) WHERE content_id IS NOT NULL;
CREATE INDEX estimates_by_draw_ms ON estimates (draw_ms);
CREATE INDEX estimates_by_load_bytes ON estimates (load_bytes);
DELETE FROM "sqlite_sequence";
INSERT INTO "sqlite_sequence" VALUES('textures',3);
COMMIT;
