import { standingBlockId } from '../blocks/change-message.ts';
import type { Desk } from '../handling.ts';
import { changeMessage } from './keep-message.ts';
import { runningAnswer } from './lines-so-far.ts';
import { answerKey } from './post-draft.ts';

/** Takes the buttons off the answer to an earlier change, and where the plan stood then: both are out of date. */
export async function retireAnswer(desk: Desk, planId: string, version: number): Promise<void> {
  const { notices } = desk.stores;
  const first = answerKey(planId, version);
  for (let page = 1; ; page += 1) {
    const key = page === 1 ? first : `${first}:${page}`;
    const posted = await notices.find(desk.studioId, key);
    if (posted === undefined) break;
    const { text, blocks = [] } = posted.payload;
    const left = withoutSteps(blocks);
    if (left.length === blocks.length) continue;
    await notices.enqueue(desk.studioId, {
      key: `${key}:retired`,
      to: posted.to,
      action: { kind: 'update', of: key },
      payload: { text, blocks: left },
      causedAt: desk.now,
    });
  }
  const running = await runningAnswer(desk, planId, version);
  if (running === undefined) return;
  const { text, blocks } = running.payload;
  await changeMessage(desk, running, { text, blocks: withoutSteps(blocks) });
}

function withoutSteps(blocks: readonly unknown[] = []): readonly unknown[] {
  return blocks.filter((block) => !has(block, 'type', 'actions') && !has(block, 'block_id', standingBlockId));
}

function has(block: unknown, name: 'type' | 'block_id', value: string): boolean {
  return typeof block === 'object' && block !== null && Reflect.get(block, name) === value;
}
