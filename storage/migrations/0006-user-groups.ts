/** Who is in the user groups of the workspace that give a role in the studio. */
export const userGroups = `
CREATE TABLE user_group_members (
  studio_id TEXT NOT NULL REFERENCES studios (studio_id),
  group_id TEXT NOT NULL,
  person_id TEXT NOT NULL,
  PRIMARY KEY (studio_id, group_id, person_id)
) STRICT;
`;
