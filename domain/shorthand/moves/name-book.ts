import type { Catalogue } from '../../catalogue/catalogue.ts';
import { extendCatalogue } from '../../catalogue/extend-catalogue.ts';
import { lookUpMove, type MoveLookUp } from '../../catalogue/look-up-move.ts';
import type { Move } from '../../catalogue/move.ts';
import type { Context } from '../../context.ts';
import type { NearName } from '../problem.ts';

/** Looks names up while one draft is read; a name met twice is looked up once. */
export type NameBook = {
  readonly catalogue: Catalogue;
  readonly find: (words: string) => MoveLookUp;
};

/** The catalogue with the studio's own moves and nicknames. */
export function nameBook({ catalogue: given, settings }: Pick<Context, 'catalogue' | 'settings'>): NameBook {
  const ownNames = new Map(Object.entries(settings.ownNames));
  const hasOwn = settings.ownMoves.length > 0 || ownNames.size > 0;
  const catalogue =
    hasOwn && given.ownNames === undefined ? extendCatalogue(given, settings.ownMoves, ownNames) : given;
  const known = new Map<string, MoveLookUp>();
  return {
    catalogue,
    find: (words) => {
      const found = known.get(words) ?? lookUpMove(words, catalogue);
      known.set(words, found);
      return found;
    },
  };
}

export function nearNameOf({ id, name }: Move): NearName {
  return { moveId: id, name };
}
