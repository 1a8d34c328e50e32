import type { MoveId } from './move.ts';

/** Names that instructors use for several moves, with the moves to ask about, likeliest first. */
export const ambiguousNames: readonly {
  readonly names: readonly string[];
  readonly ids: readonly MoveId[];
}[] = [
  {
    names: ['press', 'dumbbell press', 'weighted press'],
    ids: ['dumbbell-shoulder-press', 'dumbbell-floor-press', 'dumbbell-bench-press'],
  },
  {
    names: ['chest press', 'flat press'],
    ids: ['dumbbell-floor-press', 'dumbbell-bench-press', 'band-chest-press'],
  },
  { names: ['barbell press'], ids: ['barbell-overhead-press', 'barbell-bench-press'] },
  { names: ['row', 'dumbbell row'], ids: ['bent-over-row', 'single-arm-row', 'suspension-row'] },
  { names: ['kettlebell row'], ids: ['single-arm-row', 'bent-over-row', 'gorilla-row'] },
  { names: ['raise', 'dumbbell raise'], ids: ['lateral-raise', 'front-raise', 'calf-raise', 'leg-raise'] },
  { names: ['fly', 'dumbbell fly'], ids: ['chest-fly', 'reverse-fly'] },
  { names: ['kickback'], ids: ['triceps-kickback', 'standing-kickback', 'donkey-kick'] },
  { names: ['extension'], ids: ['overhead-triceps-extension', 'prone-chest-lift'] },
  { names: ['jump'], ids: ['squat-jump', 'box-jump', 'jumping-jack'] },
  { names: ['clean'], ids: ['dumbbell-clean', 'kettlebell-clean', 'barbell-power-clean'] },
  { names: ['snatch'], ids: ['dumbbell-snatch', 'kettlebell-snatch'] },
  { names: ['pull'], ids: ['pull-up', 'bent-over-row', 'suspension-row'] },
  { names: ['chop'], ids: ['band-wood-chop', 'medicine-ball-wood-chop'] },
  {
    names: ['throw', 'ball throw'],
    ids: ['medicine-ball-chest-pass', 'medicine-ball-rotational-throw', 'ball-slam'],
  },
  { names: ['hop'], ids: ['pogo-hop', 'lateral-hop'] },
  { names: ['sldl'], ids: ['single-leg-deadlift', 'romanian-deadlift'] },
  { names: ['toe tap'], ids: ['heel-tap', 'step-toe-tap', 'plank-toe-tap'] },
  { names: ['up down'], ids: ['plank-up-down', 'sprawl'] },
  {
    names: ['knee to elbow', 'elbow to knee'],
    ids: ['standing-cross-crunch', 'slow-mountain-climber', 'bicycle-crunch'],
  },
  { names: ['abduction'], ids: ['seated-band-abduction', 'side-lying-leg-raise', 'standing-side-leg-raise'] },
  { names: ['side leg raise', 'side leg lift'], ids: ['side-lying-leg-raise', 'standing-side-leg-raise'] },
  { names: ['adduction'], ids: ['adductor-squeeze', 'inner-thigh-lift'] },
];
