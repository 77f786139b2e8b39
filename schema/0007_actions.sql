-- What was done, so that it can be undone. An action is what a person does at once; it may take several
-- transactions. state: 1 done, 2 undone, 3 done for good. bytes: the sum of its changes' lengths.
CREATE TABLE actions (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    at INTEGER NOT NULL,
    what TEXT NOT NULL,
    state INTEGER NOT NULL CHECK (state BETWEEN 1 AND 3),
    bytes INTEGER NOT NULL CHECK (bytes >= 0)
) STRICT;

-- The rows that it changed, in order, as src/catalogue/row_changes.h packs them: of a new row its key, of
-- a changed one what it held before, of a dropped one all of it.
CREATE TABLE action_changes (
    id INTEGER PRIMARY KEY,
    action_id INTEGER NOT NULL REFERENCES actions (id) ON DELETE CASCADE,
    body BLOB NOT NULL
) STRICT;
CREATE INDEX action_changes_by_action ON action_changes (action_id);

DROP VIEW sealed;
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

INSERT INTO seals VALUES ('actions', 0), ('action_changes', 0);

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

-- The program's functions note_new, note_changed and note_dropped take down what the open transaction
-- does: the table, the columns that nothing but an action changes, those before the change and after
-- it; of a dropped row also what is worked out of them. src/catalogue/recorded_tables.cpp lists the same.

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
