import { expect, test } from 'vitest';
import { catalogue } from '../../../domain/catalogue/catalogue.ts';
import { reportOnClass, reportOnPlan } from '../../../domain/class-report.ts';
import { labelledLetters } from '../../../domain/plan/labels.ts';
import { withOpenLines } from '../../../domain/plan/with-open-lines.ts';
import { defaultSettings } from '../../../domain/settings.ts';
import { printPlan } from '../../../domain/shorthand/print-plan.ts';
import { wholeClasses } from '../../classes/whole-classes.ts';

const context = { catalogue, settings: defaultSettings, now: '2026-11-02T09:00:00.000Z' };

test.each(Object.entries(wholeClasses))(
  'the structure of %s reads back, every move open',
  (_name, { text }) => {
    const report = reportOnClass(text, context);
    if (report.kind !== 'report') throw new Error('not read');
    const open = reportOnClass(printPlan(withOpenLines(report.plan, catalogue), catalogue), context);
    if (open.kind !== 'report') throw new Error(JSON.stringify(open.problems));
    const kinds = labelledLetters(open.plan).flatMap(({ moves }) =>
      moves.map(({ move }) => move.choice.kind),
    );
    expect(kinds).not.toContain('move');
    expect(kinds).toHaveLength(labelledLetters(report.plan).flatMap(({ moves }) => moves).length);
    expect(reportOnPlan(open.plan, context).timeline.blocks).toHaveLength(report.plan.blocks.length);
  },
);
