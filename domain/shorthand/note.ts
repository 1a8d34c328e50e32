import type { BlockKind, WallTime } from '../plan/plan.ts';
import type { Span } from '../span.ts';

/** What was assumed while reading; never stops a plan. */
export type Note = { readonly span?: Span } & NoteKind;

export type NoteKind =
  // The first line
  | { readonly code: 'slot-assumed'; readonly slotSeconds: number }
  | { readonly code: 'title-missing' }
  /** Talk above the title line. `line` counts from 1. */
  | { readonly code: 'line-left-out'; readonly line: number; readonly text: string }
  | { readonly code: 'fact-in-title'; readonly fact: string }
  | { readonly code: 'next-such-time'; readonly startsAt: WallTime }
  /** What the line leaves out, taken from the timetable's class of that moment. */
  | {
      readonly code: 'from-timetable';
      readonly room?: string;
      readonly people?: number;
      readonly slotSeconds?: number;
    }
  // Readings
  | { readonly code: 'read-as'; readonly read: string; readonly as: string }
  /** A studio's own move that is offered nowhere is read by its whole name. */
  | { readonly code: 'retired-move'; readonly move: string }
  | { readonly code: 'bare-seconds'; readonly seconds: number }
  | { readonly code: 'back-to-back'; readonly sign: string; readonly moves: readonly string[] }
  | { readonly code: 'joined'; readonly labels: readonly string[] }
  | {
      readonly code: 'joined-rests';
      readonly keptSeconds: number;
      readonly droppedSeconds: readonly number[];
    }
  | {
      readonly code: 'rest-once';
      readonly seconds: number;
      readonly before: BlockKind;
      readonly name?: string;
    }
  | { readonly code: 'words-kept'; readonly words: readonly string[] }
  | { readonly code: 'option-kept'; readonly text: string }
  | { readonly code: 'sides-assumed'; readonly move: string }
  | { readonly code: 'last-pause-assumed' }
  | { readonly code: 'distance-fills-interval'; readonly seconds: number }
  | { readonly code: 'inside-times'; readonly sumSeconds: number; readonly blockSeconds: number }
  | { readonly code: 'bouts-too-few'; readonly moves: number; readonly bouts: number };
