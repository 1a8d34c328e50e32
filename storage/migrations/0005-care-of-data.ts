/**
 * Which notices a person has switched off, which deletions of people this database knows, and what is due for a studio's data
 * as a whole.
 */
export const careOfData = `
CREATE TABLE notice_choices (
  studio_id TEXT NOT NULL REFERENCES studios (studio_id),
  person_id TEXT NOT NULL,
  kind TEXT NOT NULL,
  PRIMARY KEY (studio_id, person_id, kind)
) STRICT;

CREATE TABLE forgotten_marks (
  studio_id TEXT NOT NULL REFERENCES studios (studio_id),
  mark TEXT NOT NULL,
  forgotten_at TEXT NOT NULL,
  PRIMARY KEY (studio_id, mark, forgotten_at)
) STRICT;

CREATE TABLE studio_care (
  studio_id TEXT NOT NULL PRIMARY KEY REFERENCES studios (studio_id),
  cared_at TEXT,
  left_at TEXT
) STRICT;
`;
