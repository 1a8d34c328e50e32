/** What came too late to be posted and was listed to the coaches: each is listed once. */
export const missedTold = `
CREATE TABLE missed_told (
  studio_id TEXT NOT NULL REFERENCES studios (studio_id),
  missed TEXT NOT NULL,
  told_at TEXT NOT NULL,
  PRIMARY KEY (studio_id, missed)
) STRICT;
`;
