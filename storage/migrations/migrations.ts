import { firstTables } from './0001-first-tables.ts';
import { timetable } from './0002-timetable.ts';
import { weekReports } from './0003-week-reports.ts';
import { planComments } from './0004-plan-comments.ts';
import { careOfData } from './0005-care-of-data.ts';
import { userGroups } from './0006-user-groups.ts';
import { missedTold } from './0007-missed-told.ts';

/** In order; the n-th brings `user_version` to n. A migration that stands here is never edited: add the next. */
export const migrations: readonly string[] = [
  firstTables,
  timetable,
  weekReports,
  planComments,
  careOfData,
  userGroups,
  missedTold,
];
