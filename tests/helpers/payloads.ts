/** Payloads as the workspace sends them, each with what this app reads and some of what it does not. */
let count = 0;
const next = () => {
  count += 1;
  return count;
};
const trigger = () => `${next()}.trigger`;
const team = { id: 'T1', domain: 'morgen' };
const user = { id: 'U1', team_id: 'T1', name: 'ana' };
const responseUrl = 'https://hooks.slack.com/actions/T1/1/secretpart';

export function commandPayload(text = '', changes: Record<string, unknown> = {}) {
  return {
    token: 'verification',
    team_id: 'T1',
    user_id: 'U1',
    channel_id: 'C1',
    command: '/evenset',
    text,
    trigger_id: trigger(),
    response_url: 'https://hooks.slack.com/commands/T1/1/secretpart',
    is_enterprise_install: 'false',
    ...changes,
  };
}

export function actionPayload(actionId: string, value = '', changes: Record<string, unknown> = {}) {
  return {
    type: 'block_actions',
    team,
    user,
    enterprise: null,
    trigger_id: trigger(),
    response_url: responseUrl,
    channel: { id: 'C1', name: 'team' },
    message: { ts: '1.1', thread_ts: '1.0', text: 'card', bot_id: 'B1' },
    container: { type: 'message', message_ts: '1.1', channel_id: 'C1', thread_ts: '1.0' },
    actions: [{ type: 'button', action_id: actionId, block_id: 'b', value }],
    ...changes,
  };
}

export function viewPayload(
  callbackId: string,
  values: Record<string, Record<string, unknown>>,
  changes: Record<string, unknown> = {},
) {
  return {
    type: 'view_submission',
    team,
    user,
    trigger_id: trigger(),
    view: {
      id: 'V1',
      hash: 'h',
      callback_id: callbackId,
      private_metadata: 'kept',
      state: { values },
      app_installed_team_id: 'T1',
    },
    ...changes,
  };
}

export function shortcutPayload(callbackId: string, text: string) {
  return {
    type: 'message_action',
    callback_id: callbackId,
    team,
    user,
    trigger_id: trigger(),
    response_url: responseUrl,
    channel: { id: 'C1' },
    message: { ts: '9.9', text, user: 'U2' },
  };
}

export function eventPayload(event: Record<string, unknown>, changes: Record<string, unknown> = {}) {
  return {
    type: 'event_callback',
    team_id: 'T1',
    event_id: `Ev${next()}`,
    authorizations: [{ team_id: 'T1', enterprise_id: null, user_id: 'UBOT', is_bot: true }],
    event,
    ...changes,
  };
}

export function messagePayload(text: string, changes: Record<string, unknown> = {}) {
  const ts = `100.${next()}`;
  const event = { type: 'message', channel_type: 'im', channel: 'D1', user: 'U1', text, ts, ...changes };
  return eventPayload({ client_msg_id: `m-${ts}`, ...event });
}
