-- The library as first published. Never edited once released: later versions are files of their own.
-- Times are unix seconds. Fingerprints are 64 unsigned bits stored as a signed integer. Numbers that
-- stand for a choice (method, memory, pen_model, kind) are those of the enumerations in the code.

-- Palettes are stored once for equal content; the fingerprint finds, the bytes decide.
CREATE TABLE palettes (
    id INTEGER PRIMARY KEY,
    fingerprint INTEGER NOT NULL,
    colours BLOB NOT NULL CHECK (length(colours) BETWEEN 6 AND 768 AND length(colours) % 3 = 0),
    transparent INTEGER CHECK (transparent BETWEEN 0 AND 255)
) STRICT;
CREATE INDEX palettes_by_fingerprint ON palettes (fingerprint);

CREATE TABLE palette_names (
    name TEXT NOT NULL PRIMARY KEY COLLATE NOCASE,
    palette_id INTEGER NOT NULL REFERENCES palettes (id)
) STRICT, WITHOUT ROWID;
CREATE INDEX palette_names_by_palette ON palette_names (palette_id);

-- Grids in their stored form, once for equal content: the same cells with the same palette.
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
CREATE INDEX contents_by_fingerprint ON contents (fingerprint);
CREATE INDEX contents_by_palette ON contents (palette_id);

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
CREATE INDEX textures_by_title ON textures (title COLLATE NOCASE);
CREATE INDEX textures_by_added ON textures (added_at);
CREATE INDEX textures_by_changed ON textures (changed_at);

CREATE TABLE tags (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL UNIQUE
) STRICT;
CREATE INDEX tags_by_name ON tags (name COLLATE NOCASE);

CREATE TABLE texture_tags (
    texture_id INTEGER NOT NULL REFERENCES textures (id) ON DELETE CASCADE,
    tag_id INTEGER NOT NULL REFERENCES tags (id),
    PRIMARY KEY (texture_id, tag_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX texture_tags_by_tag ON texture_tags (tag_id, texture_id);

CREATE TABLE shelves (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL UNIQUE COLLATE NOCASE,
    position INTEGER NOT NULL
) STRICT;

CREATE TABLE shelf_textures (
    shelf_id INTEGER NOT NULL REFERENCES shelves (id) ON DELETE CASCADE,
    texture_id INTEGER NOT NULL REFERENCES textures (id) ON DELETE CASCADE,
    position INTEGER NOT NULL,
    PRIMARY KEY (shelf_id, texture_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX shelf_textures_by_texture ON shelf_textures (texture_id, shelf_id);
CREATE INDEX shelf_textures_by_position ON shelf_textures (shelf_id, position);

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
) STRICT;
CREATE INDEX canvases_by_palette ON canvases (palette_id);

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
) STRICT;

CREATE TABLE loads (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL UNIQUE COLLATE NOCASE,
    board_id INTEGER NOT NULL REFERENCES boards (id),
    made_at INTEGER NOT NULL
) STRICT;
CREATE INDEX loads_by_board ON loads (board_id);

CREATE TABLE load_slots (
    load_id INTEGER NOT NULL REFERENCES loads (id) ON DELETE CASCADE,
    slot INTEGER NOT NULL,
    texture_id INTEGER NOT NULL REFERENCES textures (id),
    PRIMARY KEY (load_id, slot)
) STRICT, WITHOUT ROWID;
CREATE INDEX load_slots_by_texture ON load_slots (texture_id);

-- What was written when and where. The board stands here by its name, as it was called then.
CREATE TABLE load_writings (
    id INTEGER PRIMARY KEY,
    load_id INTEGER NOT NULL REFERENCES loads (id) ON DELETE CASCADE,
    at INTEGER NOT NULL,
    place TEXT NOT NULL,
    board TEXT NOT NULL
) STRICT;
CREATE INDEX load_writings_by_load ON load_writings (load_id);

-- One row for each change of a texture, with what the changed fields held before it; a field that
-- the change left alone is NULL. Revision 1 is the adding itself. Tags stand with blanks between.
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
CREATE INDEX revisions_by_content ON revisions (content_id) WHERE content_id IS NOT NULL;

-- What drawing and loading would take with the settings that profile_key names.
CREATE TABLE estimates (
    texture_id INTEGER PRIMARY KEY REFERENCES textures (id) ON DELETE CASCADE,
    draw_ms INTEGER NOT NULL,
    load_bytes INTEGER NOT NULL,
    profile_key TEXT NOT NULL
) STRICT;
CREATE INDEX estimates_by_draw_ms ON estimates (draw_ms);
CREATE INDEX estimates_by_load_bytes ON estimates (load_bytes);
