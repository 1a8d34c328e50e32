/** A coach's comments on single lines of a plan, by the line's id, until they are resolved. */
export const planComments = `
CREATE TABLE plan_comments (
  studio_id TEXT NOT NULL,
  plan_id TEXT NOT NULL,
  sequence INTEGER PRIMARY KEY AUTOINCREMENT,
  comment_id TEXT NOT NULL,
  line_id TEXT NOT NULL,
  version INTEGER NOT NULL CHECK (version >= 1),
  said TEXT NOT NULL,
  said_by TEXT NOT NULL,
  said_at TEXT NOT NULL,
  resolved_by TEXT,
  resolved_at TEXT,
  UNIQUE (studio_id, comment_id),
  FOREIGN KEY (studio_id, plan_id) REFERENCES plans (studio_id, plan_id) ON DELETE CASCADE,
  CHECK ((resolved_by IS NULL) = (resolved_at IS NULL))
) STRICT;

CREATE INDEX plan_comments_by_plan ON plan_comments (studio_id, plan_id, sequence);
`;
