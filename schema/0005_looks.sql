-- What is worked out of a content so that others that look alike are found without reading them all:
-- docs/look-alikes.md. Nothing else is lost if rows are deleted. There is no index of the means: all rows
-- are passed through, and are short for that.
CREATE TABLE looks (
    content_id INTEGER PRIMARY KEY REFERENCES contents (id) ON DELETE CASCADE,
    shape INTEGER NOT NULL,
    lightness INTEGER NOT NULL CHECK (lightness BETWEEN 0 AND 255),
    green_to_red INTEGER NOT NULL CHECK (green_to_red BETWEEN 0 AND 255),
    blue_to_yellow INTEGER NOT NULL CHECK (blue_to_yellow BETWEEN 0 AND 255),
    unpainted INTEGER NOT NULL CHECK (unpainted BETWEEN 0 AND 255),
    lights BLOB NOT NULL CHECK (length(lights) = 16)
) STRICT;
CREATE INDEX looks_by_shape ON looks (shape);

-- Contents without a row above. The program notes new ones, since a trigger would make each content dearer.
CREATE TABLE looks_missing (
    content_id INTEGER PRIMARY KEY REFERENCES contents (id) ON DELETE CASCADE
) STRICT;
INSERT INTO looks_missing SELECT id FROM contents;

CREATE TRIGGER look_worked_out AFTER INSERT ON looks BEGIN
    DELETE FROM looks_missing WHERE content_id = new.content_id;
END;
