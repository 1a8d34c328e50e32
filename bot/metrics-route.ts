import type { IncomingMessage, ServerResponse } from 'node:http';
import type { Storage } from '../domain/ports.ts';
import type { Counters } from './counters.ts';
import { errorFacts, type Log } from './log.ts';
import type { Clock } from './make-desk.ts';

/** OpenMetrics 1.0, section "Overall Structure". */
const contentType = 'application/openmetrics-text; version=1.0.0; charset=utf-8';

export type MetricsRoute = {
  readonly path: '/metrics';
  readonly method: 'GET';
  readonly handler: (request: IncomingMessage, response: ServerResponse) => void;
};

type Metric = {
  readonly name: string;
  readonly help: string;
  readonly value: number;
} & ({ readonly type: 'counter' } | { readonly type: 'gauge'; readonly unit?: 'seconds' });

/** What was counted in this process, and what waits in storage at the moment of asking; no labels. */
export function metricsRoute(parts: {
  readonly counters: Counters;
  readonly storage: Storage;
  readonly clock: Clock;
  readonly log: Log;
}): MetricsRoute {
  const { counters, storage, clock, log } = parts;

  const metrics = async (): Promise<readonly Metric[]> => {
    const counts = counters.read();
    const waiting = await waitingIn(storage);
    const ageMs = waiting.notices === 0 ? 0 : Date.parse(clock.now()) - waiting.oldestMs;
    return [
      { name: 'evenset_drafts', type: 'counter', help: 'Drafts kept.', value: counts.drafts },
      { name: 'evenset_posts', type: 'counter', help: 'Messages posted or updated.', value: counts.posts },
      { name: 'evenset_retries', type: 'counter', help: 'Posts tried again.', value: counts.retries },
      {
        name: 'evenset_dead_notices',
        type: 'counter',
        help: 'Notices given up for good.',
        value: counts['dead notices'],
      },
      {
        name: 'evenset_waiting_notices',
        type: 'gauge',
        help: 'Due notices not sent yet.',
        value: waiting.notices,
      },
      {
        name: 'evenset_oldest_due_notice_age_seconds',
        type: 'gauge',
        unit: 'seconds',
        help: 'Since when the oldest due notice waits; 0 when none does.',
        value: Math.max(0, ageMs / 1_000),
      },
    ];
  };

  return {
    path: '/metrics',
    method: 'GET',
    handler: (_request, response) => {
      metrics().then(
        (all) => {
          response.writeHead(200, { 'content-type': contentType, 'cache-control': 'no-store' });
          response.end(printMetrics(all));
        },
        (error: unknown) => {
          log.error('metrics not read', errorFacts(error));
          response.writeHead(503, { 'cache-control': 'no-store' });
          response.end();
        },
      );
    },
  };
}

async function waitingIn(storage: Storage) {
  let notices = 0;
  let oldestMs = Number.POSITIVE_INFINITY;
  for (const { id } of await storage.studios.list()) {
    const waiting = await storage.notices.measureUnfinished(id);
    if (waiting === undefined) continue;
    notices += waiting.count;
    oldestMs = Math.min(oldestMs, Date.parse(waiting.oldestCausedAt));
  }
  return { notices, oldestMs };
}

/** OpenMetrics 1.0 text: the metadata of each family, its one sample, and the end. */
function printMetrics(metrics: readonly Metric[]): string {
  const lines = metrics.flatMap((metric) => [
    `# TYPE ${metric.name} ${metric.type}`,
    ...('unit' in metric ? [`# UNIT ${metric.name} ${metric.unit}`] : []),
    `# HELP ${metric.name} ${metric.help}`,
    `${metric.name}${metric.type === 'counter' ? '_total' : ''} ${metric.value}`,
  ]);
  return `${[...lines, '# EOF'].join('\n')}\n`;
}
