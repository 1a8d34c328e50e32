import nock from 'nock';

/** The real hosts, answered by nock: the wire itself is under test. */
const apiHost = 'https://slack.com';
const filesHost = 'https://files.slack.com';
const responseHost = 'https://hooks.slack.com';

export type Call = { readonly method: string; readonly args: Readonly<Record<string, string>> };

export type Posted = {
  readonly channel: string;
  readonly ts: string;
  readonly text: string;
  readonly blocks?: unknown;
  readonly thread?: string;
  readonly key?: string;
  /** Name and content of a file it was posted with. */
  readonly file?: { readonly name: string; readonly content: string };
};

/**
 * `429`, `500` and `refused` do nothing; `hang`, `lost` and `broken` do what was asked and lose the answer.
 */
export type Fault =
  | { readonly kind: '429' | '500' | 'hang' | 'lost' | 'broken' }
  | { readonly kind: 'error'; readonly error: string };

type Reply = [status: number, body: string, headers: Record<string, string>];

const json = (value: unknown): Reply => [200, JSON.stringify(value), { 'content-type': 'application/json' }];

/** A workspace in memory behind the real addresses. `faultFor` decides each call's fault by its place, from 1. */
export function createFakeWorkspace(
  faultFor: (call: Call, place: number) => Fault | undefined = () => undefined,
  onCall: (call: Call) => void = () => {},
) {
  const calls: Call[] = [];
  const posts: Posted[] = [];
  const told: { personId: string; channel: string; text: string; thread?: string }[] = [];
  const responses: { path: string; body: { text: string; response_type: string } }[] = [];
  const files = new Map<string, { readonly name: string; content: Buffer }>();
  let stamps = 0;
  const newStamp = () => {
    stamps += 1;
    return `1780000000.${String(stamps).padStart(6, '0')}`;
  };

  const keyOf = (metadata: string | undefined): string | undefined =>
    metadata === undefined ? undefined : JSON.parse(metadata).event_payload.key;
  const messages = (channel: string | undefined) =>
    posts
      .filter((post) => post.channel === channel)
      .map(({ ts, text, thread, key, file }) => ({
        type: 'message',
        ts,
        text,
        thread_ts: thread,
        files: file === undefined ? undefined : [{ id: 'F', name: file.name }],
        metadata: key === undefined ? undefined : { event_type: 'evenset_notice', event_payload: { key } },
      }));

  const answer = ({ method, args }: Call): unknown => {
    const { channel = '', text = '', thread_ts: thread } = args;
    switch (method) {
      case 'auth.test':
        return {
          ok: true,
          url: 'https://morgen.example/',
          team_id: 'T1',
          team: 'Morgen',
          user_id: 'UBOT',
          bot_id: 'B1',
        };
      case 'conversations.open':
        return { ok: true, channel: { id: `D${args.users?.slice(1)}` } };
      case 'chat.postMessage': {
        const ts = newStamp();
        const place = /^U/.test(channel) ? `D${channel.slice(1)}` : channel;
        const key = keyOf(args.metadata);
        posts.push({
          channel: place,
          ts,
          text,
          ...(args.blocks === undefined ? {} : { blocks: JSON.parse(args.blocks) }),
          ...(thread === undefined ? {} : { thread }),
          ...(key === undefined ? {} : { key }),
        });
        return { ok: true, channel: place, ts };
      }
      case 'chat.update': {
        const at = posts.findIndex((post) => post.channel === channel && post.ts === args.ts);
        const standing = posts[at];
        if (standing === undefined) return { ok: false, error: 'message_not_found' };
        const { blocks: _blocks, ...kept } = standing;
        posts[at] = {
          ...kept,
          text,
          ...(args.blocks === undefined ? {} : { blocks: JSON.parse(args.blocks) }),
        };
        return { ok: true, channel, ts: standing.ts };
      }
      case 'chat.postEphemeral':
        told.push({
          personId: args.user ?? '',
          channel,
          text,
          ...(thread === undefined ? {} : { thread }),
        });
        return { ok: true, message_ts: newStamp() };
      case 'conversations.history':
        return {
          ok: true,
          messages: messages(channel)
            .filter((each) => each.thread_ts === undefined)
            .reverse(),
        };
      case 'conversations.replies':
        return {
          ok: true,
          messages: messages(channel).filter((each) => each.thread_ts === args.ts || each.ts === args.ts),
        };
      case 'files.getUploadURLExternal': {
        const id = `F${files.size + 1}`;
        files.set(id, { name: args.filename ?? '', content: Buffer.of() });
        return { ok: true, file_id: id, upload_url: `${filesHost}/upload/v1/${id}` };
      }
      case 'files.completeUploadExternal': {
        const [{ id }] = JSON.parse(args.files ?? '[{}]');
        const file = files.get(id);
        if (file === undefined) return { ok: false, error: 'file_not_found' };
        if (args.channel_id !== undefined)
          posts.push({
            channel: args.channel_id,
            ts: newStamp(),
            text: args.initial_comment ?? '',
            file: { name: file.name, content: file.content.toString('utf8') },
            ...(thread === undefined ? {} : { thread }),
          });
        return { ok: true, files: [{ id }] };
      }
      case 'chat.getPermalink':
        return { ok: true, permalink: `https://morgen.example/${channel}/${args.message_ts}` };
      case 'views.open':
      case 'views.update':
      case 'views.publish':
        return { ok: true, view: { id: 'V1' } };
      default:
        return { ok: false, error: 'unknown_method' };
    }
  };

  const doesNothing = (fault: Fault | undefined): fault is Fault =>
    fault?.kind === '429' || fault?.kind === '500' || fault?.kind === 'error';

  /** The HTTP reply, or a broken connection, or nothing at all. */
  const replyTo = (call: Call): Reply | Error | undefined => {
    const fault = faultFor(call, calls.push(call));
    onCall(call);
    const given = doesNothing(fault) ? undefined : answer(call);
    switch (fault?.kind) {
      case undefined:
        return json(given);
      case '429':
        return [429, '', { 'retry-after': '2' }];
      case '500':
        return [500, 'no', {}];
      case 'error':
        return json({ ok: false, error: fault.error });
      case 'lost':
        return new Error('socket hang up');
      case 'broken':
        return [200, '{"ok": tr', { 'content-type': 'application/json' }];
      case 'hang':
        return undefined;
    }
  };

  nock(apiHost)
    .persist()
    .post(/^\/api\//)
    .reply((uri, body, done) => {
      const args = Object.fromEntries(new URLSearchParams(String(body)));
      const reply = replyTo({ method: uri.replace('/api/', ''), args });
      if (reply instanceof Error) done(reply, [500, '', {}]);
      else if (reply !== undefined) done(null, reply);
    });
  nock(filesHost)
    .persist()
    .post(/^\/upload\/v1\//)
    .reply((uri, body) => {
      const file = files.get(uri.split('/').at(-1) ?? '');
      const call = { method: 'upload', args: {} };
      const fault = faultFor(call, calls.push(call));
      if (fault !== undefined || file === undefined) return [500, 'no'];
      // nock hands over what is no text as hex.
      file.content = Buffer.from(String(body), /^([0-9a-f]{2})+$/.test(String(body)) ? 'hex' : 'utf8');
      return [200, 'OK'];
    });
  nock(responseHost)
    .persist()
    .post(/.*/)
    .reply((uri, body) => {
      const parsed: { text: string; response_type: string } =
        typeof body === 'string' ? JSON.parse(body) : body;
      responses.push({ path: uri, body: parsed });
      return [200, 'ok'];
    });

  return {
    calls,
    posts,
    files,
    /** What was shown to one person alone in a place. */
    told,
    /** What was sent to response addresses. */
    responses,
    callsOf: (method: string) => calls.filter((call) => call.method === method),
  };
}
