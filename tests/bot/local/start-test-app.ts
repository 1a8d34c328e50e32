import { App, HTTPReceiver, LogLevel } from '@slack/bolt';
import type { ConnectedApp, LocalWorkspaceServer } from '../../../bot/local/local-server.ts';
import { botToken, signingSecret } from './start-test-workspace.ts';

/** The real App behind its real HTTP receiver, connected to the workspace; the caller stops it. */
export const startTestApp = async (
  server: LocalWorkspaceServer,
  listen: (app: App) => void,
  connected: Omit<ConnectedApp, 'url'> = {},
): Promise<{ readonly app: App; readonly stop: () => Promise<void> }> => {
  const receiver = new HTTPReceiver({ signingSecret, logLevel: LogLevel.ERROR });
  const app = new App({
    token: botToken,
    receiver,
    logLevel: LogLevel.ERROR,
    clientOptions: { slackApiUrl: server.apiUrl },
  });
  listen(app);
  const listening = await receiver.start({ port: 0, host: '127.0.0.1' });
  const address = listening.address();
  if (typeof address !== 'object' || address === null) throw new Error('a port is bound');
  server.connectApp({ ...connected, url: `http://127.0.0.1:${address.port}/slack/events` });
  return {
    app,
    stop: async () => {
      await app.stop();
    },
  };
};
