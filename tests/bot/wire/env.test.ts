import { describe, expect, test } from 'vitest';
import { readEnv } from '../../../bot/env.ts';

const bare = { host: '127.0.0.1', secrets: [] };

describe('the environment', () => {
  test.each([
    ['nothing: the local workspace', {}, bare],
    ['empty values count as nothing', { SLACK_BOT_TOKEN: ' ', PORT: '' }, bare],
    [
      'Socket Mode',
      { SLACK_BOT_TOKEN: 'xoxb-1', SLACK_APP_TOKEN: 'xapp-1' },
      {
        ...bare,
        access: { kind: 'socket', botToken: 'xoxb-1', appToken: 'xapp-1' },
        secrets: ['xoxb-1', 'xapp-1'],
      },
    ],
    [
      'HTTP',
      { SLACK_BOT_TOKEN: 'xoxb-1', SLACK_SIGNING_SECRET: 'sign', PORT: '3100', HOST: '0.0.0.0' },
      {
        access: { kind: 'http', botToken: 'xoxb-1', signingSecret: 'sign' },
        host: '0.0.0.0',
        port: 3100,
        secrets: ['xoxb-1', 'sign'],
      },
    ],
    [
      'both: Socket Mode is preferred',
      { SLACK_BOT_TOKEN: 'xoxb-1', SLACK_APP_TOKEN: 'xapp-1', SLACK_SIGNING_SECRET: 'sign' },
      {
        ...bare,
        access: { kind: 'socket', botToken: 'xoxb-1', appToken: 'xapp-1' },
        secrets: ['xoxb-1', 'xapp-1', 'sign'],
      },
    ],
    [
      'folders, files and an address',
      { EVENSET_DATA: 'data', EVENSET_SETTINGS: 'studio.json', SLACK_API_URL: 'http://127.0.0.1:4600/api' },
      { ...bare, dataFolder: 'data', settingsFile: 'studio.json', apiUrl: 'http://127.0.0.1:4600/api/' },
    ],
  ])('%s', (_name, environment, env) => {
    expect(readEnv(environment)).toEqual({ kind: 'read', env });
  });

  test.each([
    [
      'a bot token alone',
      { SLACK_BOT_TOKEN: 'x' },
      /^SLACK_BOT_TOKEN is set but SLACK_APP_TOKEN .* or SLACK_SIGNING_SECRET .* is missing/,
    ],
    [
      'an app token alone',
      { SLACK_APP_TOKEN: 'x' },
      /^SLACK_APP_TOKEN is set but SLACK_BOT_TOKEN is missing/,
    ],
    [
      'a signing secret alone',
      { SLACK_SIGNING_SECRET: 'x' },
      /^SLACK_SIGNING_SECRET is set but SLACK_BOT_TOKEN is missing/,
    ],
    ['a port that is none', { PORT: '70000' }, /^PORT must be a number/],
    ['an address that is none', { SLACK_API_URL: 'slack.com' }, /^SLACK_API_URL must be an address/],
  ])('%s stops the start and names what is missing', (_name, environment, problem) => {
    const read = readEnv(environment);
    expect(read.kind === 'unusable' ? read.problems : []).toEqual([expect.stringMatching(problem)]);
  });
});
