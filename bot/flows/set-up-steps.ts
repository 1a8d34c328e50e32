import type { Settings } from '../../domain/settings.ts';

export type SetUpStep =
  | 'zone'
  | 'headCoaches'
  | 'reviewChannel'
  | 'teamChannel'
  | 'rooms'
  | 'emergencyCard'
  | 'slots';

/** What a studio still needs, most needed first. */
export function setUpSteps(settings: Settings): readonly SetUpStep[] {
  const open: readonly (readonly [SetUpStep, boolean])[] = [
    ['zone', settings.zone === 'UTC'],
    ['headCoaches', settings.headCoaches.length === 0],
    ['reviewChannel', settings.reviewChannel === undefined],
    ['teamChannel', settings.teamChannel === undefined],
    ['rooms', settings.rooms.length === 0],
    ['emergencyCard', settings.rooms.some(({ emergencyCard }) => emergencyCard === undefined)],
    ['slots', settings.slots.length === 0],
  ];
  return open.flatMap(([step, isOpen]) => (isOpen ? [step] : []));
}
