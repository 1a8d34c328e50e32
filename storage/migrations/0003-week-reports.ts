/** What each week's report told, and what a coach answered about sayings that come back. */
export const weekReports = `
CREATE TABLE week_reports (
  studio_id TEXT NOT NULL REFERENCES studios (studio_id),
  week TEXT NOT NULL,
  told TEXT NOT NULL CHECK (json_valid(told)),
  told_at TEXT NOT NULL,
  PRIMARY KEY (studio_id, week)
) STRICT;

CREATE TABLE saying_decisions (
  studio_id TEXT NOT NULL REFERENCES studios (studio_id),
  saying TEXT NOT NULL,
  goes_on INTEGER NOT NULL CHECK (goes_on IN (0, 1)),
  week TEXT NOT NULL,
  decided_at TEXT NOT NULL,
  PRIMARY KEY (studio_id, saying)
) STRICT;
`;
