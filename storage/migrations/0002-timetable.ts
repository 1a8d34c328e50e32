/**
 * What the timetable keeps beside a class's facts: cover that is sought, the instructor's *I'm in* for one
 * start, a count of changes that a calendar must notice; the feed's token; and how far notices were looked at.
 */
export const timetable = `
ALTER TABLE classes ADD COLUMN cover_open INTEGER NOT NULL DEFAULT 0 CHECK (cover_open IN (0, 1));
ALTER TABLE classes ADD COLUMN confirmed_by TEXT;
ALTER TABLE classes ADD COLUMN confirmed_for TEXT;
ALTER TABLE classes ADD COLUMN revision INTEGER NOT NULL DEFAULT 0 CHECK (revision >= 0);

CREATE TRIGGER classes_changed AFTER UPDATE ON classes
WHEN OLD.starts_ms <> NEW.starts_ms
  OR OLD.slot_seconds <> NEW.slot_seconds
  OR OLD.instructor_id <> NEW.instructor_id
  OR OLD.room IS NOT NEW.room
  OR OLD.title IS NOT NEW.title
  OR OLD.plan_id IS NOT NEW.plan_id
  OR OLD.cover_open <> NEW.cover_open
  OR (OLD.state = 'cancelled') <> (NEW.state = 'cancelled')
BEGIN
  UPDATE classes SET revision = OLD.revision + 1
  WHERE studio_id = NEW.studio_id AND class_id = NEW.class_id;
END;

CREATE TABLE calendar_feeds (
  studio_id TEXT NOT NULL PRIMARY KEY REFERENCES studios (studio_id),
  token TEXT NOT NULL UNIQUE,
  made_at TEXT NOT NULL
) STRICT;

CREATE TABLE due_marks (
  studio_id TEXT NOT NULL PRIMARY KEY REFERENCES studios (studio_id),
  looked_at TEXT NOT NULL
) STRICT;
`;
