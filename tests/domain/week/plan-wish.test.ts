import { describe, expect, test } from 'vitest';
import { catalogue } from '../../../domain/catalogue/catalogue.ts';
import { kitForMove } from '../../../domain/catalogue/kit-for-move.ts';
import type { Room } from '../../../domain/settings.ts';
import { planWish } from '../../../domain/week/plan-wish.ts';
import { slot, studio, taught } from './week-builder.ts';

const room = (kit: Room['kit']): Room => ({ name: 'Loft', kit, doorSeconds: 0, clearUpSeconds: 0 });
const [mon, tue] = [slot('Mon'), slot('Tue')];
const classes = [taught(mon, undefined, { room: 'Loft' }).scheduled, taught(tue).scheduled];
const wish = (missing: Parameters<typeof planWish>[0], kit: Room['kit'], open = classes) =>
  planWish(missing, open, { catalogue, settings: { ...studio([mon, tue]), rooms: [room(kit)] } });

describe('what to plan where no plan can take an edit', () => {
  test('is for the first class to come, a move each for the two muscles most short', () => {
    const found = wish(['lats', 'upper back', 'chest'], {
      dumbbell: 20,
      'suspension strap': 10,
      'long band': 10,
    });
    expect(found).toMatchObject({ slotName: 'Mon class', startsAt: classes[0]?.startsAt });
    const moves = found?.moves.map((name) => catalogue.moves.find((move) => move.name === name));
    expect(moves?.map((move) => move?.primeMovers[0])).toEqual(['lats', 'upper back']);
  });

  test('keeps to the kit of the room', () => {
    const names = wish(['chest', 'quadriceps'], {})?.moves ?? [];
    expect(names.length).toBeGreaterThan(0);
    for (const name of names) {
      const move = catalogue.moves.find((each) => each.name === name);
      expect(move && kitForMove(move, () => false)).toBeDefined();
    }
  });

  test('is none where nothing is missing or every class has a plan', () => {
    expect(wish([], { dumbbell: 20 })).toBeUndefined();
    expect(wish(['chest'], { dumbbell: 20 }, [])).toBeUndefined();
  });
});
