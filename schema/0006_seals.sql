-- What the check cannot work out from elsewhere, a changed letter in a history or a note, it finds by
-- these: of each table the sum over its rows of what the program's function seal() makes of them.
-- Grids and palettes have fingerprints; tags are stored twice and compared.
CREATE TABLE seals (
    name TEXT NOT NULL PRIMARY KEY,
    sum INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

-- The sums as they should be.
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

INSERT INTO seals SELECT name, sum FROM sealed;

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
