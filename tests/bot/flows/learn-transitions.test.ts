import { expect, test } from 'vitest';
import { renderDraftCard } from '../../../bot/blocks/draft-card.ts';
import { musclesLines } from '../../../bot/blocks/muscles-lines.ts';
import { learnTransitions } from '../../../bot/flows/learn-transitions.ts';
import { markClass } from '../../../bot/flows/mark-class.ts';
import { startDraft } from '../../../bot/flows/start-draft.ts';
import type { Desk } from '../../../bot/handling.ts';
import { demoChannels, demoPeople, demoSettings } from '../../../bot/local/demo/demo-studio.ts';
import { atDesk } from '../../helpers/at-desk.ts';

const mira = demoPeople.instructor.id;
const tomas = demoPeople.coach.id;
const text =
  'Swaps, 30 min\nwarm-up 6:00\ncircuit x3, 40/20\nkettlebell swing\npush-up\ncool-down to the end';

/** The demo's taught classes, so many of them marked as having run over. */
async function ranOver(desk: Desk, count: number): Promise<void> {
  const taught = await desk.stores.classes.listBetween(desk.studioId, '2026-09-01T00:00:00.000Z', desk.now);
  for (const { id } of taught.slice(0, count)) await markClass(desk, id, tomas, { length: 'over' });
}

test('classes that ran over move the factor by one step; coaches and card say why', () =>
  atDesk(async (desk) => {
    await ranOver(desk, 12);
    const after = await learnTransitions(desk);
    expect(after.settings.transitions).toEqual({ ...demoSettings.transitions, factor: 1.05 });
    expect((await desk.stores.settings.find(desk.studioId))?.settings.factorMove).toMatchObject({
      from: 1,
      to: 1.05,
      over: 12,
    });
    expect(await desk.stores.notices.find(desk.studioId, `factor:${desk.now}`)).toMatchObject({
      to: demoChannels.review.id,
      payload: { text: expect.stringMatching(/× 1\.05 instead of × 1: 12 of the last \d+ classes ran over/) },
    });
    const card = renderDraftCard(await startDraft(after, { personId: mira, text }), after);
    expect(JSON.stringify(card.blocks)).toMatch(/Change-overs × 1\.05: 12 of the last \d+ classes ran over/);
    // Those classes have been heard; without new ones it stays.
    expect((await learnTransitions(after)).settings.transitions.factor).toBe(1.05);
  }));

test('classes on time leave it, and the card says nothing of it', () =>
  atDesk(async (desk) => {
    expect(await learnTransitions(desk)).toBe(desk);
    const card = renderDraftCard(await startDraft(desk, { personId: mira, text }), desk);
    expect(JSON.stringify(card.blocks)).not.toContain('Change-overs');
  }));

test('energy is on the card and under muscles once it is on, as a range and an estimate', () =>
  atDesk(async (desk) => {
    const shown = async (energyOn: boolean) => {
      const at = { ...desk, settings: { ...demoSettings, energyOn } };
      const open = await startDraft(at, { personId: mira, text });
      return [JSON.stringify(renderDraftCard(open, at).blocks), musclesLines(open, at).join('\n')];
    };
    for (const said of await shown(false)) expect(said).not.toContain('kcal');
    for (const said of await shown(true))
      expect(said).toMatch(/Energy, an estimate: \d+–\d+ kcal for 55–95 kg/);
    const { notices } = await desk.stores.care.exportStudio(desk.studioId);
    const toTeam = (notices ?? []).filter((row) => JSON.stringify(row).includes(demoChannels.team.id));
    expect(JSON.stringify(toTeam)).not.toContain('kcal');
  }));
