import type { Refusal } from '../../../domain/plan/decide-step.ts';
import type { PlanState } from '../../../domain/plan/plan-life.ts';
import { personFirst, personText } from './person-words.ts';

/** Why a step was not taken, and what would work; told to the person who asked. */
export function refusalText(refusal: Refusal): string {
  switch (refusal.code) {
    case 'setting-missing':
      return refusal.facts.setting === 'headCoaches'
        ? 'Nobody can approve yet: no head coach is named. Name one in Settings, on Evenset’s home.'
        : 'Not sent: no review channel is set. Your draft is kept; choose the channel in Settings, on Evenset’s home.';
    case 'not-a-head-coach':
      return 'Only a head coach approves a plan or asks for changes. You can still write in the thread.';
    case 'own-plan':
      return refusal.facts.soleCoach
        ? 'This is your own plan. As the only coach you may approve it once Settings say so, under Roles.'
        : 'This is your own plan: another head coach approves it.';
    case 'not-your-plan':
      return `This plan is ${personText(refusal.facts.authorId, 'an instructor')}'s. Only they or a head coach can change it.`;
    case 'stale-version':
      return `That was v${refusal.facts.named}. The plan is at v${refusal.facts.current} now: look at it, then decide.`;
    case 'already-decided':
      return `${personFirst(refusal.facts.by, 'a coach')} came first: ${decidedText(refusal.facts.step)} v${refusal.facts.version}. Nothing was changed.`;
    case 'already-in-review':
      return `v${refusal.facts.version} is in review already.`;
    case 'not-in-review':
      return `The plan is ${standsText(refusal.facts.state)}, so there is no review to decide. Its author can send it.`;
    case 'already-approved':
      return `v${refusal.facts.version} is approved already. An edit takes it back to review.`;
    case 'lines-unread':
      return refusal.facts.count === 1
        ? 'Not sent: one line could not be read. Put it right, then send.'
        : `Not sent: ${refusal.facts.count} lines could not be read. Put them right, then send.`;
    case 'reason-needed':
      return 'Say in a few words what to change, so that it can be done.';
  }
}

function decidedText(step: 'approved' | 'changes asked' | 'withdrawn'): string {
  switch (step) {
    case 'approved':
      return 'approved';
    case 'changes asked':
      return 'asked for changes to';
    case 'withdrawn':
      return 'took back';
  }
}

function standsText(state: PlanState): string {
  switch (state) {
    case 'draft':
      return 'a draft';
    case 'in review':
      return 'in review';
    case 'approved':
      return 'approved';
  }
}
