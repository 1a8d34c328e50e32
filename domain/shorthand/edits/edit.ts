import type { KitItem } from '../../catalogue/kit.ts';
import type { Tempo } from '../../catalogue/move.ts';
import type {
  BlockKind,
  Interval,
  OpenBlock,
  PlanFacts,
  SideUse,
  TimeBlock,
  Weight,
} from '../../plan/plan.ts';
import type { Span } from '../../span.ts';
import type { BlockLine } from '../blocks/read-block-line.ts';
import type { Duration } from '../durations.ts';
import type { Line } from '../lines-of.ts';

/** A letter or a move by its label in the version the message was written on: `C`, `B1`. */
export type LabelRef = { readonly label: string; readonly span: Span };

/** Words of the message that name one or more moves; read once the block they go to is known. */
type MoveWords = { readonly line: Line };

/** One line of the edit language as read. */
export type Edit =
  | { readonly kind: 'swap'; readonly at: LabelRef; readonly moves: MoveWords }
  | { readonly kind: 'swap with'; readonly at: LabelRef; readonly other: LabelRef }
  | { readonly kind: 'add letter'; readonly place: Place; readonly moves: MoveWords }
  | {
      readonly kind: 'add block';
      readonly place: Place;
      readonly head: BlockLine;
      readonly below: readonly Line[];
      readonly line: Line;
    }
  | { readonly kind: 'drop'; readonly letters: readonly LabelRef[] }
  | { readonly kind: 'drop block'; readonly block: BlockKind; readonly span: Span }
  /** The only block of its kind, by its word and not by a letter. */
  | { readonly kind: 'change block'; readonly block: BlockKind; readonly to: BlockNumber }
  | { readonly kind: 'drop rest'; readonly at: LabelRef }
  | { readonly kind: 'move'; readonly at: LabelRef; readonly place: Place }
  | { readonly kind: 'rounds'; readonly at: LabelRef; readonly rounds: number }
  | { readonly kind: 'interval'; readonly at: LabelRef; readonly interval: Interval }
  | { readonly kind: 'length'; readonly at: LabelRef; readonly length: Duration }
  | { readonly kind: 'work'; readonly at: LabelRef; readonly seconds: number }
  | { readonly kind: 'reps'; readonly at: LabelRef; readonly reps: number }
  | { readonly kind: 'rest'; readonly at: LabelRef; readonly seconds: number }
  | {
      readonly kind: 'time behind';
      readonly time: TimeBlock['kind'];
      readonly at: LabelRef;
      readonly seconds: number;
    }
  | {
      readonly kind: 'between';
      readonly what: 'rounds' | 'letters';
      readonly at: LabelRef;
      readonly seconds: number;
    }
  | { readonly kind: 'open block'; readonly block: OpenBlock }
  | { readonly kind: 'sides'; readonly at: LabelRef; readonly sides: SideUse }
  | { readonly kind: 'weight'; readonly at: LabelRef; readonly weight: Weight }
  | { readonly kind: 'rpe'; readonly at: LabelRef; readonly rpe: number }
  | { readonly kind: 'tempo'; readonly at: LabelRef; readonly tempo: Tempo }
  | { readonly kind: 'option'; readonly option: 'easier' | 'harder'; readonly at: LabelRef }
  | { readonly kind: 'kit'; readonly items: readonly KitItem[] }
  | { readonly kind: 'facts'; readonly facts: Partial<PlanFacts> };

/** What a block's line says of its rounds, its work and rest, or its length. */
export type BlockNumber =
  | { readonly kind: 'rounds'; readonly rounds: number }
  | { readonly kind: 'interval'; readonly interval: Interval }
  | { readonly kind: 'length'; readonly length: Duration };

export type Place = { readonly side: 'before' | 'after'; readonly at: LabelRef };

/** An edit with the line of the message it stands on. */
export type PlacedEdit = { readonly edit: Edit; readonly line: Line };
