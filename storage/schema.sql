PRAGMA user_version = 7;

CREATE TABLE calendar_feeds (
  studio_id TEXT NOT NULL PRIMARY KEY REFERENCES studios (studio_id),
  token TEXT NOT NULL UNIQUE,
  made_at TEXT NOT NULL
) STRICT;

CREATE TABLE class_counts (
  studio_id TEXT NOT NULL,
  class_id TEXT NOT NULL,
  sets_by_pattern TEXT NOT NULL CHECK (json_valid(sets_by_pattern)),
  PRIMARY KEY (studio_id, class_id),
  FOREIGN KEY (studio_id, class_id) REFERENCES classes (studio_id, class_id) ON DELETE CASCADE
) STRICT;

CREATE TABLE class_load (
  studio_id TEXT NOT NULL,
  class_id TEXT NOT NULL,
  muscle TEXT NOT NULL,
  sets REAL NOT NULL,
  tension_seconds REAL NOT NULL,
  PRIMARY KEY (studio_id, class_id, muscle),
  FOREIGN KEY (studio_id, class_id) REFERENCES class_counts (studio_id, class_id) ON DELETE CASCADE
) STRICT, WITHOUT ROWID;

CREATE TABLE class_moves (
  studio_id TEXT NOT NULL,
  class_id TEXT NOT NULL,
  move_id TEXT NOT NULL,
  PRIMARY KEY (studio_id, class_id, move_id),
  FOREIGN KEY (studio_id, class_id) REFERENCES class_counts (studio_id, class_id) ON DELETE CASCADE
) STRICT, WITHOUT ROWID;

CREATE INDEX class_moves_by_move ON class_moves (studio_id, move_id);

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

CREATE TRIGGER classes_not_taught_count_nothing AFTER UPDATE OF state ON classes
WHEN NEW.state <> 'taught'
BEGIN
  DELETE FROM class_counts WHERE studio_id = NEW.studio_id AND class_id = NEW.class_id;
END;

CREATE TABLE classes (
  studio_id TEXT NOT NULL REFERENCES studios (studio_id),
  class_id TEXT NOT NULL,
  slot_id TEXT,
  title TEXT,
  starts_date TEXT NOT NULL,
  starts_time TEXT NOT NULL,
  zone TEXT NOT NULL,
  starts_at TEXT NOT NULL,
  starts_ms INTEGER NOT NULL,
  slot_seconds INTEGER NOT NULL CHECK (slot_seconds > 0),
  room TEXT,
  instructor_id TEXT NOT NULL,
  people INTEGER,
  plan_id TEXT,
  state TEXT NOT NULL CHECK (state IN ('planned', 'moved', 'cancelled', 'taught', 'not taught')),
  outcome TEXT CHECK (json_valid(outcome)), cover_open INTEGER NOT NULL DEFAULT 0 CHECK (cover_open IN (0, 1)), confirmed_by TEXT, confirmed_for TEXT, revision INTEGER NOT NULL DEFAULT 0 CHECK (revision >= 0),
  PRIMARY KEY (studio_id, class_id),
  FOREIGN KEY (studio_id, plan_id) REFERENCES plans (studio_id, plan_id)
) STRICT;

CREATE INDEX classes_by_plan ON classes (studio_id, plan_id, starts_ms) WHERE plan_id IS NOT NULL;

CREATE INDEX classes_by_start ON classes (studio_id, starts_ms, state);

CREATE TABLE deliveries (
  studio_id TEXT NOT NULL REFERENCES studios (studio_id),
  delivery_key TEXT NOT NULL,
  sequence INTEGER PRIMARY KEY AUTOINCREMENT,
  kind TEXT NOT NULL CHECK (kind IN ('event', 'interaction')),
  body TEXT,
  received_at TEXT NOT NULL,
  done_at TEXT,
  UNIQUE (studio_id, delivery_key),
  CHECK ((done_at IS NULL) = (body IS NOT NULL))
) STRICT;

CREATE INDEX deliveries_unfinished ON deliveries (studio_id, sequence) WHERE done_at IS NULL;

CREATE TABLE dismissed_findings (
  studio_id TEXT NOT NULL,
  plan_id TEXT NOT NULL,
  sequence INTEGER PRIMARY KEY AUTOINCREMENT,
  code TEXT NOT NULL,
  dismissed_by TEXT NOT NULL,
  reason TEXT NOT NULL,
  dismissed_at TEXT NOT NULL,
  UNIQUE (studio_id, plan_id, code),
  FOREIGN KEY (studio_id, plan_id) REFERENCES plans (studio_id, plan_id) ON DELETE CASCADE
) STRICT;

CREATE TABLE due_marks (
  studio_id TEXT NOT NULL PRIMARY KEY REFERENCES studios (studio_id),
  looked_at TEXT NOT NULL
) STRICT;

CREATE TABLE forgotten_marks (
  studio_id TEXT NOT NULL REFERENCES studios (studio_id),
  mark TEXT NOT NULL,
  forgotten_at TEXT NOT NULL,
  PRIMARY KEY (studio_id, mark, forgotten_at)
) STRICT;

CREATE TABLE missed_told (
  studio_id TEXT NOT NULL REFERENCES studios (studio_id),
  missed TEXT NOT NULL,
  told_at TEXT NOT NULL,
  PRIMARY KEY (studio_id, missed)
) STRICT;

CREATE TABLE notice_choices (
  studio_id TEXT NOT NULL REFERENCES studios (studio_id),
  person_id TEXT NOT NULL,
  kind TEXT NOT NULL,
  PRIMARY KEY (studio_id, person_id, kind)
) STRICT;

CREATE TABLE notices (
  studio_id TEXT NOT NULL REFERENCES studios (studio_id),
  notice_key TEXT NOT NULL,
  sequence INTEGER PRIMARY KEY AUTOINCREMENT,
  goes_to TEXT NOT NULL,
  action TEXT NOT NULL CHECK (json_valid(action)),
  payload TEXT NOT NULL CHECK (json_valid(payload)),
  caused_at TEXT NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('pending', 'sending', 'sent', 'dead')),
  attempts INTEGER NOT NULL CHECK (attempts >= 0),
  retry_at TEXT,
  sending_at TEXT,
  finished_at TEXT,
  sent_place TEXT,
  sent_stamp TEXT,
  last_error TEXT,
  UNIQUE (studio_id, notice_key),
  CHECK ((state IN ('sent', 'dead')) = (finished_at IS NOT NULL)),
  CHECK ((state = 'sent') = (sent_place IS NOT NULL)),
  CHECK ((sent_place IS NULL) = (sent_stamp IS NULL))
) STRICT;

CREATE INDEX notices_by_sent_to ON notices (studio_id, sent_place, sent_stamp) WHERE sent_place IS NOT NULL;

CREATE INDEX notices_unfinished ON notices (studio_id, sequence) WHERE finished_at IS NULL;

CREATE TABLE people (
  studio_id TEXT NOT NULL REFERENCES studios (studio_id),
  person_id TEXT NOT NULL,
  roles TEXT NOT NULL CHECK (json_valid(roles)),
  PRIMARY KEY (studio_id, person_id)
) STRICT;

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

CREATE TRIGGER plan_versions_leave_with_their_plan BEFORE DELETE ON plan_versions
WHEN EXISTS (SELECT 1 FROM plans WHERE studio_id = OLD.studio_id AND plan_id = OLD.plan_id)
BEGIN
  SELECT RAISE(ABORT, 'a version of a plan stays as long as the plan');
END;

CREATE TRIGGER plan_versions_stay BEFORE UPDATE ON plan_versions
BEGIN
  SELECT RAISE(ABORT, 'a version of a plan is never rewritten');
END;

CREATE TABLE plan_versions (
  studio_id TEXT NOT NULL,
  plan_id TEXT NOT NULL,
  version INTEGER NOT NULL CHECK (version >= 1),
  text TEXT NOT NULL,
  plan_shape INTEGER,
  plan TEXT CHECK (json_valid(plan)),
  problem_count INTEGER NOT NULL CHECK (problem_count >= 0),
  catalogue_edition TEXT NOT NULL,
  total_seconds INTEGER NOT NULL,
  load TEXT NOT NULL CHECK (json_valid(load)),
  sets_by_pattern TEXT NOT NULL CHECK (json_valid(sets_by_pattern)),
  finding_codes TEXT NOT NULL CHECK (json_valid(finding_codes)),
  made_by TEXT NOT NULL,
  made_at TEXT NOT NULL,
  cause TEXT NOT NULL CHECK (json_valid(cause)),
  PRIMARY KEY (studio_id, plan_id, version),
  CHECK ((plan IS NULL) = (plan_shape IS NULL)),
  FOREIGN KEY (studio_id, plan_id) REFERENCES plans (studio_id, plan_id) ON DELETE CASCADE
) STRICT;

CREATE TABLE plans (
  studio_id TEXT NOT NULL REFERENCES studios (studio_id),
  plan_id TEXT NOT NULL,
  author_id TEXT NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('draft', 'in review', 'approved')),
  current_version INTEGER NOT NULL CHECK (current_version >= 1),
  approved_version INTEGER,
  home_place TEXT,
  home_thread TEXT,
  created_at TEXT NOT NULL,
  created_ms INTEGER NOT NULL,
  PRIMARY KEY (studio_id, plan_id),
  CHECK ((home_place IS NULL) = (home_thread IS NULL)),
  FOREIGN KEY (studio_id, plan_id, current_version)
    REFERENCES plan_versions (studio_id, plan_id, version) DEFERRABLE INITIALLY DEFERRED,
  FOREIGN KEY (studio_id, plan_id, approved_version)
    REFERENCES plan_versions (studio_id, plan_id, version) DEFERRABLE INITIALLY DEFERRED
) STRICT;

CREATE INDEX plans_by_author ON plans (studio_id, author_id, created_ms);

CREATE UNIQUE INDEX plans_by_home ON plans (studio_id, home_place, home_thread) WHERE home_place IS NOT NULL;

CREATE INDEX plans_by_state ON plans (studio_id, state, created_ms);

CREATE TABLE reviews (
  studio_id TEXT NOT NULL,
  plan_id TEXT NOT NULL,
  sequence INTEGER PRIMARY KEY AUTOINCREMENT,
  kind TEXT NOT NULL
    CHECK (kind IN ('sent', 'approved', 'changes asked', 'withdrawn', 'changed after approval')),
  version INTEGER NOT NULL,
  done_by TEXT NOT NULL,
  done_at TEXT NOT NULL,
  reason TEXT,
  UNIQUE (studio_id, plan_id, version, kind, done_by, done_at),
  FOREIGN KEY (studio_id, plan_id) REFERENCES plans (studio_id, plan_id) ON DELETE CASCADE
) STRICT;

CREATE TABLE saying_decisions (
  studio_id TEXT NOT NULL REFERENCES studios (studio_id),
  saying TEXT NOT NULL,
  goes_on INTEGER NOT NULL CHECK (goes_on IN (0, 1)),
  week TEXT NOT NULL,
  decided_at TEXT NOT NULL,
  PRIMARY KEY (studio_id, saying)
) STRICT;

CREATE TABLE settings (
  studio_id TEXT NOT NULL PRIMARY KEY REFERENCES studios (studio_id),
  settings TEXT NOT NULL CHECK (json_valid(settings)),
  fingerprint TEXT NOT NULL,
  saved_at TEXT NOT NULL
) STRICT;

CREATE TABLE studio_care (
  studio_id TEXT NOT NULL PRIMARY KEY REFERENCES studios (studio_id),
  cared_at TEXT,
  left_at TEXT
) STRICT;

CREATE TABLE studios (
  studio_id TEXT NOT NULL PRIMARY KEY,
  name TEXT NOT NULL,
  created_at TEXT NOT NULL
) STRICT;

CREATE TABLE user_group_members (
  studio_id TEXT NOT NULL REFERENCES studios (studio_id),
  group_id TEXT NOT NULL,
  person_id TEXT NOT NULL,
  PRIMARY KEY (studio_id, group_id, person_id)
) STRICT;

CREATE TABLE week_reports (
  studio_id TEXT NOT NULL REFERENCES studios (studio_id),
  week TEXT NOT NULL,
  told TEXT NOT NULL CHECK (json_valid(told)),
  told_at TEXT NOT NULL,
  PRIMARY KEY (studio_id, week)
) STRICT;
