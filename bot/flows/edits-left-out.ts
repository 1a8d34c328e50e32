import type { Context } from '../../domain/context.ts';
import { rebaseEdit } from '../../domain/plan/rebase-edit.ts';
import { editsSinceWritten } from '../../domain/plan/undo-target.ts';
import { editPlan } from '../../domain/shorthand/edit-plan.ts';
import { looksLikeEdit } from '../../domain/shorthand/edit-words.ts';
import { readPlan } from '../../domain/shorthand/read-plan.ts';
import type { LeftOutEdit } from '../blocks/change-message.ts';
import type { Desk } from '../handling.ts';

/** What was edited since the class was last written and does not stand in this text of it. */
export async function editsLeftOut(
  desk: Desk,
  planId: string,
  text: string,
  context: Context,
): Promise<readonly LeftOutEdit[]> {
  const versions = await desk.stores.plans.listVersions(desk.studioId, planId);
  return editsSinceWritten(versions).flatMap((number): readonly LeftOutEdit[] => {
    const place = versions.findIndex(({ version }) => version === number);
    const [cause, madeOn] = [versions[place]?.cause, versions[place - 1]?.plan];
    if (cause?.kind !== 'edit' || madeOn === undefined || !looksLikeEdit(cause.words)) return [];
    const said = cause.words;
    // The letters of the version it was made on are found again in the text by its lines.
    const { plan, problems } = readPlan(text, { ...context, previousPlan: madeOn });
    const edit = plan && problems.length === 0 ? rebaseEdit(said, madeOn, plan) : undefined;
    if (plan === undefined || edit === undefined) return [{ said }];
    const made = editPlan(plan, edit, context);
    if (made.plan === undefined) return [{ said }];
    return made.changes.length === 0 ? [] : [{ said, edit }];
  });
}
