import { lookUpMove } from '../../domain/catalogue/look-up-move.ts';
import { changeOwnMove, makeOwnMove, type OwnMoveFacts } from '../../domain/catalogue/make-own-move.ts';
import type { Move } from '../../domain/catalogue/move.ts';
import { type MoveProblem, moveProblems, nameProblemsOf } from '../../domain/catalogue/move-problems.ts';
import { idOfName } from '../../domain/catalogue/move-row.ts';
import { readMoveFacts } from '../../domain/catalogue/read-move-facts.ts';
import type { Settings } from '../../domain/settings.ts';
import type { MoveOrder } from '../../domain/shorthand/read-move-order.ts';
import { readsAsMove } from '../../domain/shorthand/reads-as-move.ts';
import { isHeadCoach, maySet } from '../../domain/who-may.ts';
import { inertText } from '../blocks/escape.ts';
import type { Desk } from '../handling.ts';
import { whyNotKept } from './keep-private.ts';
import { keepSettings } from './keep-settings.ts';

/** What became of it: `desk` knows the change, `text` tells it; `kept` changed nothing and says why. */
export type OwnMoveOutcome =
  | { readonly kind: 'done'; readonly desk: Desk; readonly text: string }
  | { readonly kind: 'kept'; readonly text: string };

/** Anyone on the team may add one, so that a class can go on; the coaches are told. */
export async function addOwnMove(
  desk: Desk,
  by: string,
  name: string,
  like: Move,
  facts: OwnMoveFacts,
): Promise<OwnMoveOutcome> {
  const { ownMove } = desk.words;
  const standing = desk.catalogue.byId.get(idOfName(name));
  if (standing !== undefined) return kept(problemText(desk, { code: 'name-taken', name, by: standing.name }));
  const move = makeOwnMove(name, like, facts);
  const saved = await keepMove(desk, move);
  if (saved.kind === 'kept') return saved;
  await tellCoaches(desk, by, move, like);
  return { ...saved, text: ownMove.added(move, like.name) };
}

/** For those who may set: other facts, out of use, or back. */
export async function changeOurMove(
  desk: Desk,
  by: string,
  name: string,
  change: { readonly facts?: OwnMoveFacts; readonly retired?: boolean },
): Promise<OwnMoveOutcome> {
  const { ownMove } = desk.words;
  if (!maySet(desk.settings, by)) return kept(ownMove.onlyCoaches);
  const move = ourMove(desk, name);
  if (move === undefined) return kept(ownMove.notOurs(inertText(name)));
  const { retired: _, ...told } = changeOwnMove(move, change.facts ?? {});
  const retired = change.retired ?? move.retired ?? false;
  const saved = await keepMove(desk, retired ? { ...told, retired } : told);
  if (saved.kind === 'kept') return saved;
  if (change.retired === undefined) return { ...saved, text: ownMove.changed(told) };
  return { ...saved, text: retired ? ownMove.retiredNow(move.name) : ownMove.broughtBack(move.name) };
}

/** A studio's word for a known move; it wins over the trade's. */
async function giveNickname(desk: Desk, by: string, nickname: string, name: string): Promise<OwnMoveOutcome> {
  const { ownMove } = desk.words;
  if (!maySet(desk.settings, by)) return kept(ownMove.onlyCoaches);
  const found = lookUpMove(name, desk.catalogue);
  if (found.kind !== 'found') return kept(likeUnknownText(desk, name));
  const [problem] = nameProblemsOf(nickname, found.move.id, desk.catalogue).filter(
    ({ code }) => code !== 'name-taken',
  );
  if (problem !== undefined) return kept(problemText(desk, problem));
  const key = nickname.toLowerCase();
  const before = desk.settings.ownNames;
  const next = await keepSettings(desk, withOwn({ ownNames: { ...before, [key]: found.move.id } }));
  if (!readsAsMove(key, found.move, next)) {
    await keepSettings(desk, withOwn({ ownNames: before }));
    return kept(ownMove.nameUnreadable(inertText(nickname)));
  }
  return { kind: 'done', desk: next, text: ownMove.nicknamed(inertText(key), found.move.name) };
}

async function dropNickname(desk: Desk, by: string, nickname: string): Promise<OwnMoveOutcome> {
  const { ownMove } = desk.words;
  if (!maySet(desk.settings, by)) return kept(ownMove.onlyCoaches);
  const { [nickname.toLowerCase()]: dropped, ...ownNames } = desk.settings.ownNames;
  if (dropped === undefined) return kept(ownMove.noSuchNickname(inertText(nickname)));
  const next = await keepSettings(desk, withOwn({ ownNames }));
  return { kind: 'done', desk: next, text: ownMove.nicknameDropped(inertText(nickname)) };
}

/** Carries out a short message and says what came of it. */
export async function carryOutOrder(desk: Desk, by: string, order: MoveOrder): Promise<string> {
  const { ownMove } = desk.words;
  const isPrivate = whyNotKept(desk, Object.values(order).join(' '));
  if (isPrivate !== undefined) return isPrivate.text;
  switch (order.kind) {
    case 'list':
      return ourMovesText(desk);
    case 'new, like what?':
      return ownMove.likeWhat(inertText(order.name));
    case 'new': {
      const like = lookUpMove(order.like, desk.catalogue);
      if (like.kind !== 'found') return likeUnknownText(desk, order.like);
      const { facts, unread } = readMoveFacts(order.facts, desk.catalogue);
      if (unread.length > 0) return ownMove.factsUnread(unread.map(inertText));
      return (await addOwnMove(desk, by, order.name, like.move, facts)).text;
    }
    case 'change': {
      const { facts, unread } = readMoveFacts(order.facts, desk.catalogue);
      if (unread.length > 0) return ownMove.factsUnread(unread.map(inertText));
      return (await changeOurMove(desk, by, order.name, { facts })).text;
    }
    case 'retire':
    case 'bring back':
      return (await changeOurMove(desk, by, order.name, { retired: order.kind === 'retire' })).text;
    case 'nickname':
      return (await giveNickname(desk, by, order.nickname, order.name)).text;
    case 'drop nickname':
      return (await dropNickname(desk, by, order.nickname)).text;
  }
}

/** A name in it stands as typed. */
function problemText({ words }: Desk, problem: MoveProblem): string {
  return words.ownMove.problem('name' in problem ? { ...problem, name: inertText(problem.name) } : problem);
}

/** An own move by its name or a nickname, retired ones too. */
function ourMove(desk: Desk, name: string): Move | undefined {
  const found = lookUpMove(name, desk.catalogue);
  const id = found.kind === 'found' ? found.move.id : idOfName(name);
  return desk.settings.ownMoves.find((move) => move.id === id);
}

function ourMovesText({ settings, catalogue, words: { ownMove } }: Desk): string {
  const names = Object.entries(settings.ownNames);
  if (settings.ownMoves.length === 0 && names.length === 0) return ownMove.none;
  return [
    ...settings.ownMoves.map((move) => ownMove.listMove(move)),
    ...names.map(([name, id]) => ownMove.listName(inertText(name), catalogue.byId.get(id)?.name ?? id)),
    ownMove.listHow,
  ].join('\n');
}

/** Saves the move where it keeps the catalogue's laws and a class that names it is read so. */
async function keepMove(desk: Desk, move: Move): Promise<OwnMoveOutcome> {
  const { ownMove } = desk.words;
  const problems = moveProblems(move, desk.catalogue);
  if (problems.length > 0) return kept(problems.map((problem) => problemText(desk, problem)).join('\n'));
  const { ownMoves } = desk.settings;
  const others = ownMoves.filter(({ id }) => id !== move.id);
  const next = await keepSettings(desk, withOwn({ ownMoves: [...others, move] }));
  const misread = [move.name, ...move.nicknames].find((name) => !readsAsMove(name, move, next));
  if (misread === undefined) return { kind: 'done', desk: next, text: '' };
  await keepSettings(desk, withOwn({ ownMoves }));
  return kept(ownMove.nameUnreadable(misread));
}

function withOwn(own: Partial<Pick<Settings, 'ownMoves' | 'ownNames'>>): (kept: Settings) => Settings {
  return (settings) => ({ ...settings, ...own });
}

async function tellCoaches(desk: Desk, by: string, move: Move, like: Move): Promise<void> {
  const { reviewChannel } = desk.settings;
  if (reviewChannel === undefined || isHeadCoach(desk.settings, by)) return;
  await desk.stores.notices.enqueue(desk.studioId, {
    key: `own-move:${move.id}`,
    to: reviewChannel,
    action: { kind: 'post' },
    payload: { text: desk.words.ownMove.toldCoach(by, move.name, like.name) },
    causedAt: desk.now,
  });
}

function likeUnknownText(desk: Desk, name: string): string {
  const found = lookUpMove(name, desk.catalogue);
  const near = found.kind === 'unknown' ? found.near : found.kind === 'choices' ? found.moves : [];
  return desk.words.ownMove.likeUnknown(
    inertText(name),
    near.map((move) => move.name),
  );
}

function kept(text: string): OwnMoveOutcome {
  return { kind: 'kept', text };
}
