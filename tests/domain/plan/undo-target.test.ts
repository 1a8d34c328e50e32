import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { VersionCause } from '../../../domain/plan/plan-life.ts';
import { firstTarget, redoTarget, undoTarget } from '../../../domain/plan/undo-target.ts';

const written: VersionCause = { kind: 'written' };
const edit: VersionCause = { kind: 'edit', words: 'drop D' };
const undo = (restores: number): VersionCause => ({ kind: 'undo', restores });
const redo = (restores: number): VersionCause => ({ kind: 'redo', restores });
const versions = (...causes: readonly VersionCause[]) =>
  causes.map((cause, place) => ({ version: place + 1, cause }));

describe('undo and redo append', () => {
  test.each<[string, readonly VersionCause[], number | undefined, number | undefined]>([
    ['no version', [], undefined, undefined],
    ['the first', [written], undefined, undefined],
    ['two edits', [written, edit, edit], 2, undefined],
    ['one undone', [written, edit, edit, undo(2)], 1, 3],
    ['both undone', [written, edit, edit, undo(2), undo(1)], undefined, 2],
    ['one redone', [written, edit, edit, undo(2), undo(1), redo(2)], 1, 3],
    ['an edit after an undo ends redo', [written, edit, edit, undo(2), edit], 2, undefined],
    ['back to the first at once', [written, edit, edit, undo(1)], undefined, 2],
  ])('%s', (_, causes, undoes, redoes) => {
    expect([undoTarget(versions(...causes)), redoTarget(versions(...causes))]).toEqual([undoes, redoes]);
  });

  test('back to the first version', () => {
    expect(firstTarget(versions(written, edit, edit))).toBe(1);
    expect(firstTarget(versions(written, edit, undo(1)))).toBeUndefined();
  });

  test('any edits and as many undos end at the first version', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 20 }), (edits) => {
        const history = versions(written, ...Array.from({ length: edits }, () => edit)).slice();
        for (let undone = 0; undone < edits; undone += 1) {
          const target = undoTarget(history);
          if (target === undefined) throw new Error('nothing left to undo');
          history.push({ version: history.length + 1, cause: undo(target) });
        }
        expect(history.at(-1)?.cause).toEqual(undo(1));
        expect(undoTarget(history)).toBeUndefined();
      }),
    );
  });
});
