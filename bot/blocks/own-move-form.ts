import type { ModalView } from '@slack/types';
import type { Catalogue } from '../../domain/catalogue/catalogue.ts';
import { type KitNeed, kitItems } from '../../domain/catalogue/kit.ts';
import type { Move } from '../../domain/catalogue/move.ts';
import { muscles } from '../../domain/catalogue/muscles.ts';
import { patterns } from '../../domain/catalogue/patterns.ts';
import { views } from '../ids.ts';
import type { Words } from '../words/words.ts';
import { context } from './elements.ts';
import {
  type Choice,
  type ChoiceGroup,
  formView,
  groupedSelectField,
  multiSelectField,
  selectField,
  textField,
} from './form-parts.ts';

function named<Value extends string>(
  values: readonly Value[],
  labelOf: (value: Value) => string,
): readonly Choice[] {
  return values.map((value) => ({ value, label: labelOf(value) }));
}

export const noKit = 'none';

/** `two dumbbell` for a pair; the value of a choice of kit. */
export function kitValue({ item, pieces }: KitNeed): string {
  return pieces === 2 ? `two ${item}` : item;
}

/** A move for the studio's catalogue: a new one under `name`, or `own` with its facts to change. */
export function ownMoveForm(
  metadata: string,
  { name, own }: { readonly name?: string; readonly own?: Move },
  catalogue: Catalogue,
  words: Words,
): ModalView {
  const { ownMove, catalogue: terms } = words;
  const groups = groupsOf(catalogue, words);
  const isNew = own === undefined;
  return formView(
    {
      callbackId: isNew ? views.ownMove : views.changeOwnMove,
      title: isNew ? ownMove.formTitle : ownMove.changeTitle,
      submit: ownMove.submit,
      metadata,
      blocks: [
        ...(isNew
          ? [
              textField({
                id: 'name',
                label: ownMove.name,
                hint: words.privacy.hint,
                most: 60,
                ...(name === undefined ? {} : { value: name }),
              }),
              groupedSelectField({ id: 'like', label: ownMove.like, hint: ownMove.likeHint, groups }),
              context('differs', ownMove.differs),
            ]
          : [
              context('own', `*${own.name}*`),
              selectField({
                id: 'standing',
                label: ownMove.standing,
                value: own.retired ? 'retired' : 'offered',
                choices: [
                  { value: 'offered', label: ownMove.offered },
                  { value: 'retired', label: ownMove.retired },
                ],
              }),
            ]),
        selectField({
          id: 'level',
          label: ownMove.level,
          optional: true,
          choices: [1, 2, 3].map((level) => ({ value: String(level), label: ownMove.levelChoice(level) })),
          ...(isNew ? {} : { value: String(own.level) }),
        }),
        multiSelectField({
          id: 'prime',
          label: ownMove.primeMovers,
          optional: true,
          choices: named(muscles, terms.muscle),
          ...(isNew ? {} : { values: own.primeMovers }),
        }),
        multiSelectField({
          id: 'assisting',
          label: ownMove.assisting,
          optional: true,
          choices: named(muscles, terms.muscle),
          ...(isNew ? {} : { values: own.assisting }),
        }),
        multiSelectField({
          id: 'kit',
          label: ownMove.kit,
          optional: true,
          choices: kitChoices(words),
          ...(isNew ? {} : { values: own.kit.length === 0 ? [noKit] : own.kit.map(kitValue) }),
        }),
        selectField({
          id: 'position',
          label: ownMove.position,
          optional: true,
          choices: named(['standing', 'kneeling', 'seated', 'supine', 'prone', 'side-lying'], terms.position),
          ...(isNew ? {} : { value: own.position }),
        }),
        selectField({
          id: 'sides',
          label: ownMove.sides,
          optional: true,
          choices: named(['both at once', 'alternating by nature', 'one-sided'], terms.sides),
          ...(isNew ? {} : { value: own.sides }),
        }),
        selectField({
          id: 'effort',
          label: ownMove.effort,
          optional: true,
          choices: named(['reps', 'hold', 'conditioning', 'mobility'], terms.effort),
          ...(isNew ? {} : { value: own.effort }),
        }),
        groupedSelectField({
          id: 'easier',
          label: ownMove.easier,
          optional: true,
          groups,
          ...(own?.easier === undefined ? {} : { value: own.easier }),
        }),
        textField({
          id: 'nicknames',
          label: ownMove.nicknames,
          hint: words.privacy.hint,
          optional: true,
          most: 300,
          ...(isNew ? {} : { value: own.nicknames.join(', ') }),
        }),
        textField({
          id: 'cue',
          label: ownMove.cue,
          hint: words.privacy.hint,
          optional: true,
          most: 70,
          ...(isNew ? {} : { value: own.cue }),
        }),
      ],
    },
    words,
  );
}

function groupsOf(catalogue: Catalogue, words: Words): readonly ChoiceGroup[] {
  return patterns.map((pattern) => ({
    label: words.catalogue.pattern(pattern),
    choices: catalogue.moves
      .filter((move) => move.pattern === pattern)
      .map(({ id, name }) => ({ value: id, label: name }))
      .toSorted((one, other) => one.label.localeCompare(other.label, 'en')),
  }));
}

function kitChoices({ ownMove }: Words): readonly Choice[] {
  return [
    { value: noKit, label: ownMove.noKit },
    ...kitItems.flatMap((item) =>
      ([1, 2] as const).map((pieces) => ({
        value: kitValue({ item, pieces }),
        label: ownMove.kitChoice(item, pieces),
      })),
    ),
  ];
}
