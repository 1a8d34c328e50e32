import { z } from 'zod';
import type { ViewRequest } from '../handling.ts';
import { formState, readFormValues } from './form-values.ts';
import { teamId, triggerId } from './ids.ts';
import type { Incoming } from './incoming.ts';
import { interactor, teamOf } from './team-of.ts';

const payload = z.object({
  type: z.literal('view_submission'),
  ...interactor,
  trigger_id: triggerId,
  view: z.object({
    id: z.string(),
    callback_id: z.string(),
    private_metadata: z.string().default(''),
    state: formState.nullish(),
    app_installed_team_id: teamId.nullish(),
  }),
});

/**
 * Throws on a payload that is no submitted form. The key is the trigger: a form handed in again after field
 * errors keeps its id and hash, and must count as new.
 */
export function readView(body: unknown): Incoming<ViewRequest> {
  const read = payload.parse(body);
  const values = readFormValues(read.view.state ?? undefined);
  const [formBlock] = Object.keys(values);
  return {
    studioId: read.view.app_installed_team_id ?? teamOf(read),
    key: `view:${read.trigger_id}`,
    asker: { personId: read.user.id, ...(formBlock === undefined ? {} : { formBlock }) },
    request: {
      kind: 'view',
      callbackId: read.view.callback_id,
      viewId: read.view.id,
      metadata: read.view.private_metadata,
      values,
      personId: read.user.id,
      triggerId: read.trigger_id,
    },
  };
}
