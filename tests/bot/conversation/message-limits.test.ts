import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { renderOptions, renderSwaps } from '../../../bot/blocks/ask-messages.ts';
import { renderBatch, renderBatchDone } from '../../../bot/blocks/batch-message.ts';
import { renderChange, renderLinesSoFar } from '../../../bot/blocks/change-message.ts';
import { renderComment } from '../../../bot/blocks/comment-messages.ts';
import { renderCardPages, renderDraftCard } from '../../../bot/blocks/draft-card.ts';
import { renderFindings } from '../../../bot/blocks/findings-lines.ts';
import { findingsView } from '../../../bot/blocks/findings-view.ts';
import { readingView } from '../../../bot/blocks/forms.ts';
import {
  renderHelp,
  renderNearestEdit,
  renderThreadHelp,
  renderUnclear,
  renderWholeHelp,
} from '../../../bot/blocks/help-message.ts';
import { musclesLines, renderMuscles } from '../../../bot/blocks/muscles-lines.ts';
import { commentForm } from '../../../bot/blocks/review-forms.ts';
import { renderDifference, renderReview } from '../../../bot/blocks/review-message.ts';
import { renderTimeline, timelineLines } from '../../../bot/blocks/timeline-lines.ts';
import type { OpenPlan } from '../../../bot/flows/open-plan.ts';
import type { ReviewFacts } from '../../../bot/flows/review-facts.ts';
import type { Message } from '../../../bot/handling.ts';
import { english } from '../../../bot/words/en.ts';
import { catalogue } from '../../../domain/catalogue/catalogue.ts';
import { reportOnClass } from '../../../domain/class-report.ts';
import { optionLimits, optionsSheet } from '../../../domain/plan/options-sheet.ts';
import type { LifeStep } from '../../../domain/plan/plan-life.ts';
import { swapsFor } from '../../../domain/plan/swaps-for.ts';
import { defaultSettings } from '../../../domain/settings.ts';
import { changesBetween } from '../../../domain/shorthand/changes-between.ts';
import { limits } from '../../../domain/shorthand/limits.ts';
import { faultsIn } from '../../helpers/conversation.ts';

const show = { words: english, catalogue };
const leftOutEdits = Array(40).fill({
  said: 'title '.concat('x&'.repeat(700)),
  edit: 'title '.concat('x&'.repeat(700)),
});
const context = { catalogue, settings: defaultSettings, now: '2026-11-02T09:00:00.000Z' };

/** A plan as the flows open it, without a store. */
function opened(text: string, version = 1, state: OpenPlan['record']['state'] = 'in review'): OpenPlan {
  const report = reportOnClass(text, context);
  const id = '01JD8Q1ZV6T2Y3W4X5Y6Z7A8B9';
  return {
    record: { id, authorId: 'U1', state, currentVersion: version, createdAt: context.now },
    version: {
      planId: id,
      version,
      text,
      ...(report.plan === undefined ? {} : { plan: report.plan }),
      problemCount: report.kind === 'problems' ? report.problems.length : 0,
      catalogueEdition: catalogue.edition,
      totalSeconds: 0,
      load: [],
      setsByPattern: {},
      findingCodes: [],
      madeBy: 'U1',
      madeAt: context.now,
      cause: { kind: 'written' },
    },
    report,
  };
}

const asked: LifeStep = {
  kind: 'changes asked',
  version: 1,
  by: 'U9',
  at: context.now,
  reason: '<*&_'.repeat(250),
};

const known: ReviewFacts = {
  lastTaught: { date: '2026-10-26', time: '18:00' },
  coveredBy: 'U2',
  newMoves: catalogue.moves.map(({ id }) => id),
  weekPatterns: { squat: 12 },
  clashes: ['Clash: <*&_'.repeat(200)],
  comments: Array.from({ length: 40 }, (_, place) => ({
    id: `c${place}`,
    planId: 'p',
    line: `m${place}`,
    version: 1,
    text: '<*&_'.repeat(250),
    by: 'U9',
    at: context.now,
  })),
};

/** Every message and view the conversation makes of a plan. */
function everything(open: OpenPlan, before: OpenPlan): readonly unknown[] {
  const { plan } = open.version;
  const changes =
    plan === undefined || before.version.plan === undefined
      ? []
      : changesBetween(before.version.plan, plan, catalogue);
  const messages: readonly Message[] = [
    renderDraftCard(open, show),
    ...renderCardPages(open, show),
    ...renderChange(before, open, { changes, leftOut: leftOutEdits }, show),
    renderLinesSoFar(open, show),
    renderReview(open, [asked], undefined, known, show),
    renderReview({ ...open, record: { ...open.record, state: 'draft' } }, [asked], before, known, show),
    ...renderDifference(before, open, show),
    ...renderTimeline(open, show),
    ...renderFindings(open, show),
    renderMuscles(open, show),
    ...known.comments.slice(0, 1).map((comment) => renderComment(open, comment, show)),
    renderBatch(
      {
        clean: Array(70).fill({ open, trouble: '' }),
        toLookAt: Array(70).fill({ open, trouble: 'x'.repeat(300) }),
      },
      show,
    ),
    renderBatchDone(1, Array(70).fill({ open, trouble: '' }), show),
    renderHelp(english),
    renderWholeHelp({ ...show, now: context.now, settings: context.settings }),
    renderThreadHelp(open, english),
    renderUnclear(open, english),
    renderNearestEdit(open, 'swap A1 push-up', english),
    ...(plan === undefined || open.report.kind !== 'report'
      ? []
      : [
          ...(['easier', 'harder', 'no kit'] as const).flatMap((wish) =>
            renderSwaps(open, wish, swapsFor(plan, wish, context), show),
          ),
          ...renderOptions(optionLimits, optionsSheet(plan, optionLimits, context), show),
        ]),
  ];
  const views = [
    findingsView(open, show),
    readingView('Full timeline', timelineLines(open, show), english),
    readingView('Muscles in detail', musclesLines(open, show), english),
  ];
  return [
    ...messages.map(({ text, blocks }) => ({
      method: 'chat.postMessage',
      args: { text, blocks: JSON.stringify(blocks ?? []) },
    })),
    ...[...views, ...[commentForm(open, show) ?? []].flat()].map((view) => ({
      method: 'views.open',
      args: { view: JSON.stringify(view) },
    })),
  ];
}

const faultsOf = (text: string, before = 'circuit x1, 40/20\nplank') =>
  faultsIn(everything(opened(text, 2), opened(before)) as Parameters<typeof faultsIn>[0]);

const times = (count: number, line: (place: number) => string) =>
  Array.from({ length: count }, (_, place) => line(place));

/** As long as the shorthand allows, each in a way of its own. */
const longest: readonly (readonly [string, string])[] = [
  [
    '20 blocks',
    ['Long, 180 min', ...times(20, () => 'circuit x2, 20/10\npush-up + plank\nsquat + dead bug')].join('\n'),
  ],
  [
    '30 letters in each of as many blocks as a message holds',
    ['Long, 180 min', ...times(20, () => ['circuit x1, 5/5', ...times(30, () => 'plank')].join('\n'))].join(
      '\n',
    ),
  ],
  [
    '8 moves in each letter',
    [
      'Long, 180 min',
      ...times(9, () =>
        ['circuit x1, 5/0', ...times(10, () => times(8, () => 'plank').join(' + '))].join('\n'),
      ),
    ].join('\n'),
  ],
  ['the most segments', ['Long, 180 min', 'circuit x50, 1/0', ...times(30, () => 'plank')].join('\n')],
  ['a title of 7,000 characters', `${'*Row_& '.repeat(1_000)}, 40 min\ncircuit x3, 40/20\npush-up`],
  [
    'a focus and an aim of 3,000 characters',
    `Row, 40 min, focus ${'<b> '.repeat(750)}, aim ${'&'.repeat(3_000)}\ncircuit x3, 40/20\npush-up`,
  ],
  ['a note of 7,000 characters', `Row, 40 min\ncircuit x3, 40/20\npush-up (${'slow & low '.repeat(640)})`],
  [
    'words of 7,000 characters',
    `Row, 40 min\nwarm-up 6:00: ${'*joint*_circles_ '.repeat(430)}\ncircuit x3, 40/20\npush-up`,
  ],
  [
    '400 lines nobody can read',
    ['Row, 40 min', 'circuit x3, 40/20', ...times(400, (place) => `gobln <sq*sh> ${place}`)].join('\n'),
  ],
  [
    'one line of 7,900 characters nobody can read',
    `Row, 40 min\ncircuit x3, 40/20\n${'&<*_~`'.repeat(1_316)}`,
  ],
  ['past the most characters', `Row, 40 min\n${'x'.repeat(limits.messageLength + 5)}`],
];

describe('every message of the conversation stays within every limit', () => {
  test.each(longest)('%s', (_what, text) => {
    expect(text.length).toBeLessThanOrEqual(limits.messageLength + 50);
    expect(faultsOf(text)).toEqual([]);
    expect(faultsOf('circuit x1, 40/20\nplank', text)).toEqual([]);
  });

  test('whatever is written', () => {
    const words = fc.constantFrom(
      'push-up',
      'goblet squat',
      'plank + dead bug',
      'burpee',
      '? core',
      'press',
      'gobln',
      '*bold*',
      '<@U1>',
      '&',
      '`x`',
      'kettlebell swing 20s, rest 15',
      'side plank each side',
      'say: long & slow',
      'rest 60',
      'water 45',
      'circuit x3, 40/20',
      'tabata',
      'emom 10',
      '10 push-up',
      'amrap 8',
      'ladder 10 to 1',
      'cool-down to the end',
      'warm-up 6:00: march',
      '🏋️‍♀️',
      '\u0000',
    );
    const lines = fc.array(words, { minLength: 1, maxLength: 120 });
    fc.assert(
      fc.property(lines, lines, (now, before) => {
        expect(faultsOf(`Law, 60 min\n${now.join('\n')}`, `Law, 60 min\n${before.join('\n')}`)).toEqual([]);
      }),
      { numRuns: 100 },
    );
  }, 60_000);
});

describe('the timeline of the longest class', () => {
  // Bouts of a second: about as many segments as 180 minutes hold.
  const block = (rounds: number) => [`circuit x${rounds}, 1/0`, ...times(30, () => 'plank')];
  const text = [
    'Long, 180 min',
    ...Array.from({ length: 7 }, () => block(50)).flat(),
    ...block(9),
    'circuit x1, 29/0',
    'plank',
  ];
  const open = opened(text.join('\n'));
  const segments = open.report.kind === 'report' ? open.report.timeline.segments.length : 0;
  const messages = renderTimeline(open, show);
  const [beginning, file] = messages;

  test('begins in the thread, within the limits, and says what is left', () => {
    expect(segments).toBeGreaterThan(10_700);
    expect(messages).toHaveLength(2);
    const told = beginning?.text.split('\n') ?? [];
    const left = /and (\d+) more lines/.exec(told.at(-1) ?? '')?.[1];
    expect(told.length - 2 + Number(left)).toBe(segments + 9);
    const sent = messages.map(({ text }) => ({ method: 'chat.postMessage', args: { text } }));
    expect(faultsIn(sent)).toEqual([]);
  });

  test('is whole in the file, as plain text in the order taught', () => {
    const lines = file?.file?.content.trimEnd().split('\n') ?? [];
    expect(lines).toHaveLength(segments + 9);
    expect(lines.slice(0, 3)).toEqual([
      'circuit x50, 1/0',
      '  0:00  A plank  0:01 · round 1',
      '  0:01  B plank  0:01 · round 1',
    ]);
    expect(lines.at(-1)).toMatch(/ plank {2}0:29 · round 1$/);
    expect(file?.file).toMatchObject({
      name: 'timeline-v1.txt',
      title: `The whole timeline, ${lines.length} lines`,
    });
  });

  test('fits the view up to what it says is left', () => {
    const view = readingView('Full timeline', timelineLines(open, show), english);
    expect(faultsIn([{ method: 'views.open', args: { view: JSON.stringify(view) } }])).toEqual([]);
    expect(JSON.stringify(view.blocks.at(-1))).toMatch(/and \d+ more lines/);
  });
});

/** The lines a form offers to choose from. */
function offeredIn(form: unknown): readonly string[] {
  return Array.from(JSON.stringify(form).matchAll(/"value":"([^"]+)"/g), ([, value = '']) => value);
}

test.each(longest.slice(0, 3))('each line of %s can be commented', (_what, text) => {
  const open = opened(text);
  const offered = offeredIn(commentForm(open, show));
  const planned =
    open.version.plan?.blocks.flatMap((block) => ('letters' in block ? block.letters : [])) ?? [];
  expect(planned.length).toBeGreaterThan(30);
  expect(offered).toEqual(planned.flatMap(({ moves }) => moves.map(({ id }) => id)));
});

test('of more moves than a view holds the letters can be commented', () => {
  const open = opened(
    `Long, 180 min\n${times(20, () => ['circuit x1, 1/0', ...times(11, () => times(8, () => 'rdl').join('+'))].join('\n')).join('\n')}`,
  );
  const form = commentForm(open, show);
  expect(faultsIn([{ method: 'views.open', args: { view: JSON.stringify(form) } }])).toEqual([]);
  expect(offeredIn(form)).toHaveLength(220);
});

test('a class the card does not hold goes on under it, with no letter lost', () => {
  const text = longest[1]?.[1] ?? '';
  const open = opened(text);
  expect(open.report.kind).toBe('report');
  const card = JSON.stringify(renderDraftCard(open, show).blocks);
  const pages = renderCardPages(open, show).map((page) => page.text);
  expect(pages.length).toBeGreaterThan(0);
  const letters = [card, ...pages].join('\n').match(/\*[A-Z]{1,2}\* plank/g) ?? [];
  const planned =
    open.version.plan?.blocks.flatMap((block) => ('letters' in block ? block.letters : [])) ?? [];
  expect(new Set(letters).size).toBe(planned.length);
});
