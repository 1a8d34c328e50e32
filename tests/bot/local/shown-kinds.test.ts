import { describe, expect, test } from 'vitest';
import { acceptMessageBlocks } from '../../../bot/local/accepted-blocks.ts';
import { unshownKinds } from '../../helpers/unshown-kinds.ts';
import { everyKind } from './every-kind.ts';

describe('what the page can show', () => {
  test('every kind that the workspace takes', () => {
    expect(acceptMessageBlocks(everyKind)).toMatchObject({ kind: 'accepted' });
    expect(unshownKinds(everyKind)).toEqual([]);
  });

  test('a kind it can not show is named, however deep it lies', () => {
    expect(
      unshownKinds([
        { type: 'video' },
        { type: 'actions', elements: [{ type: 'external_select' }, { type: 'button' }] },
      ]),
    ).toEqual(['video', 'external_select']);
  });
});
