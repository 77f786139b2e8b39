-- The canvas that all of a load is drawn on, where its maker named one. Without a row each texture is drawn
-- on the smallest canvas that takes it.
CREATE TABLE load_canvases (
    load_id INTEGER PRIMARY KEY REFERENCES loads (id) ON DELETE CASCADE,
    canvas_id INTEGER NOT NULL REFERENCES canvases (id)
) STRICT;
CREATE INDEX load_canvases_by_canvas ON load_canvases (canvas_id);

INSERT INTO seals VALUES ('load_canvases', 0);

CREATE TRIGGER seal_new_load_canvases AFTER INSERT ON load_canvases BEGIN
    UPDATE seals SET sum = sum + seal(new.load_id, new.canvas_id) WHERE name = 'load_canvases';
END;
CREATE TRIGGER seal_changed_load_canvases AFTER UPDATE ON load_canvases BEGIN
    UPDATE seals SET sum = sum + seal(new.load_id, new.canvas_id) - seal(old.load_id, old.canvas_id)
    WHERE name = 'load_canvases';
END;
CREATE TRIGGER seal_dropped_load_canvases AFTER DELETE ON load_canvases BEGIN
    UPDATE seals SET sum = sum - seal(old.load_id, old.canvas_id) WHERE name = 'load_canvases';
END;

CREATE TRIGGER note_new_load_canvases AFTER INSERT ON load_canvases BEGIN
    SELECT note_new('load_canvases', new.load_id, new.canvas_id);
END;
CREATE TRIGGER note_changed_load_canvases AFTER UPDATE ON load_canvases BEGIN
    SELECT note_changed('load_canvases', old.load_id, old.canvas_id, new.load_id, new.canvas_id);
END;
CREATE TRIGGER note_dropped_load_canvases AFTER DELETE ON load_canvases BEGIN
    SELECT note_dropped('load_canvases', old.load_id, old.canvas_id);
END;

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
SELECT 'load_canvases', ifnull(sum(seal(load_id, canvas_id)), 0) FROM load_canvases
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
