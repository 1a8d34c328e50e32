import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { createLog } from '../../../bot/log.ts';
import { startReal } from '../../../bot/start-real.ts';
import { type FakeSocket, startFakeSocket } from '../../helpers/fake-socket.ts';
import { openTestStorage } from '../../helpers/open-test-storage.ts';
import { commandPayload, messagePayload } from '../../helpers/payloads.ts';

const access = { kind: 'socket', botToken: 'xoxb-1', appToken: 'xapp-1' } as const;
const methods: string[] = [];
let socket: FakeSocket;

beforeEach(async () => {
  methods.length = 0;
  socket = await startFakeSocket((method) => {
    methods.push(method);
    const self = { team_id: 'T1', team: 'Morgen', user_id: 'UBOT', bot_id: 'B1' };
    return { ok: true, ...self, channel: 'D1', ts: '9.9', view: { id: 'V1' } };
  });
});
afterEach(() => socket.stop());

describe('Socket Mode', () => {
  test('takes commands and events over its socket, acks each, and leaves in order', async () => {
    const storage = await openTestStorage();
    const log = createLog({ secrets: [], destination: { write: () => {} } });
    const env = { access, apiUrl: socket.apiUrl, host: '127.0.0.1', secrets: [] };
    const running = await startReal({ env, access, storage, log });
    expect(running.lines).toEqual(['Evenset serves Morgen over Socket Mode']);
    const responseUrl = { response_url: `${socket.apiUrl}response` };
    socket.send({
      type: 'slash_commands',
      envelope_id: 'one',
      accepts_response_payload: true,
      payload: commandPayload('help', responseUrl),
    });
    socket.send({ type: 'events_api', envelope_id: 'two', payload: messagePayload('help') });
    await expect
      .poll(() => socket.received)
      .toEqual(
        expect.arrayContaining([
          expect.objectContaining({ envelope_id: 'one' }),
          expect.objectContaining({ envelope_id: 'two' }),
        ]),
      );
    await expect.poll(() => methods).toContain('response');
    await running.stop();
    await expect.poll(() => socket.open()).toBe(0);
    expect(await storage.deliveries.listUnfinished('T1')).toEqual([]);
    await storage.close();
  });
});
