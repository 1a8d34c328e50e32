import { z } from 'zod';
import { personId, teamId } from './ids.ts';

/** Who interacts, and in which team; `team` is empty where the app is installed for a whole organisation. */
export const interactor = {
  team: z.object({ id: teamId }).nullish(),
  user: z.object({ id: personId, team_id: teamId.nullish() }),
};

/** The team a payload belongs to; throws where it names none. */
export function teamOf(payload: {
  readonly team?: { readonly id: string } | null | undefined;
  readonly user: { readonly team_id?: string | null | undefined };
}): string {
  const id = payload.team?.id ?? payload.user.team_id ?? undefined;
  if (id === undefined) throw new Error('The payload names no team.');
  return id;
}
