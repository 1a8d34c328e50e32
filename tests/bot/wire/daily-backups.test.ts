import { expect, test } from 'vitest';
import { startDailyBackups } from '../../../bot/daily-backups.ts';
import { createLog } from '../../../bot/log.ts';

test('looks at once and again each time, and a failure ends nothing', async () => {
  const lines: string[] = [];
  const log = createLog({
    secrets: [],
    destination: {
      write: (line) => {
        lines.push(JSON.parse(line).msg);
      },
    },
  });
  const answers = ['first.sqlite', undefined, new Error('disk full'), 'second.sqlite'];
  const backups = startDailyBackups({
    backUp: async () => {
      const answer = answers.shift();
      if (answer instanceof Error) throw answer;
      return answer;
    },
    log,
    everyMs: 2,
  });
  await expect.poll(() => answers.length).toBe(0);
  await backups.stop();
  expect(lines).toEqual(['backed up', 'not backed up', 'backed up']);
});
