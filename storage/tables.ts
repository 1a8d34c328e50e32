import type { Generated } from 'kysely';

/** The columns as SQLite gives them; each store parses its rows before use. */
export type Tables = {
  studios: { studio_id: string; name: string; created_at: string };
  people: { studio_id: string; person_id: string; roles: string };
  settings: { studio_id: string; settings: string; fingerprint: string; saved_at: string };
  plans: PlanTable;
  plan_versions: PlanVersionTable;
  dismissed_findings: DismissedFindingTable;
  reviews: ReviewTable;
  classes: ClassTable;
  class_counts: { studio_id: string; class_id: string; sets_by_pattern: string };
  class_load: ClassLoadTable;
  class_moves: { studio_id: string; class_id: string; move_id: string };
  notices: NoticeTable;
  deliveries: DeliveryTable;
  week_reports: { studio_id: string; week: string; told: string; told_at: string };
  saying_decisions: {
    studio_id: string;
    saying: string;
    goes_on: number;
    week: string;
    decided_at: string;
  };
  calendar_feeds: { studio_id: string; token: string; made_at: string };
  plan_comments: PlanCommentTable;
  notice_choices: { studio_id: string; person_id: string; kind: string };
  forgotten_marks: { studio_id: string; mark: string; forgotten_at: string };
  studio_care: { studio_id: string; cared_at: string | null; left_at: string | null };
  user_group_members: { studio_id: string; group_id: string; person_id: string };
  due_marks: { studio_id: string; looked_at: string };
  missed_told: { studio_id: string; missed: string; told_at: string };
};

type PlanTable = {
  studio_id: string;
  plan_id: string;
  author_id: string;
  state: string;
  current_version: number;
  approved_version: number | null;
  home_place: string | null;
  home_thread: string | null;
  created_at: string;
  created_ms: number;
};

type PlanVersionTable = {
  studio_id: string;
  plan_id: string;
  version: number;
  text: string;
  plan_shape: number | null;
  plan: string | null;
  problem_count: number;
  catalogue_edition: string;
  total_seconds: number;
  load: string;
  sets_by_pattern: string;
  finding_codes: string;
  made_by: string;
  made_at: string;
  cause: string;
};

type DismissedFindingTable = {
  studio_id: string;
  plan_id: string;
  sequence: Generated<number>;
  code: string;
  dismissed_by: string;
  reason: string;
  dismissed_at: string;
};

type PlanCommentTable = {
  studio_id: string;
  plan_id: string;
  sequence: Generated<number>;
  comment_id: string;
  line_id: string;
  version: number;
  said: string;
  said_by: string;
  said_at: string;
  resolved_by: string | null;
  resolved_at: string | null;
};

type ReviewTable = {
  studio_id: string;
  plan_id: string;
  sequence: Generated<number>;
  kind: string;
  version: number;
  done_by: string;
  done_at: string;
  reason: string | null;
};

type ClassTable = {
  studio_id: string;
  class_id: string;
  slot_id: string | null;
  title: string | null;
  starts_date: string;
  starts_time: string;
  zone: string;
  starts_at: string;
  starts_ms: number;
  slot_seconds: number;
  room: string | null;
  instructor_id: string;
  people: number | null;
  plan_id: string | null;
  state: string;
  outcome: string | null;
  cover_open: Generated<number>;
  confirmed_by: string | null;
  confirmed_for: string | null;
  revision: Generated<number>;
};

type ClassLoadTable = {
  studio_id: string;
  class_id: string;
  muscle: string;
  sets: number;
  tension_seconds: number;
};

type NoticeTable = {
  studio_id: string;
  notice_key: string;
  sequence: Generated<number>;
  goes_to: string;
  action: string;
  payload: string;
  caused_at: string;
  state: string;
  attempts: number;
  retry_at: string | null;
  sending_at: string | null;
  finished_at: string | null;
  sent_place: string | null;
  sent_stamp: string | null;
  last_error: string | null;
};

type DeliveryTable = {
  studio_id: string;
  delivery_key: string;
  sequence: Generated<number>;
  kind: string;
  body: string | null;
  received_at: string;
  done_at: string | null;
};
