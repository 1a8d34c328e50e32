import { z } from 'zod';

export type WorkspaceAccess =
  | { readonly kind: 'socket'; readonly botToken: string; readonly appToken: string }
  | { readonly kind: 'http'; readonly botToken: string; readonly signingSecret: string };

export type Env = {
  /** Absent where no credential is set: the local workspace is served then. */
  readonly access?: WorkspaceAccess;
  readonly apiUrl?: string;
  readonly dataFolder?: string;
  readonly settingsFile?: string;
  readonly host: string;
  readonly port?: number;
  /** Every credential given, so that a log can strike them out. */
  readonly secrets: readonly string[];
};

export type EnvRead =
  | { readonly kind: 'read'; readonly env: Env }
  | { readonly kind: 'unusable'; readonly problems: readonly string[] };

const text = z
  .string()
  .trim()
  .transform((value) => (value === '' ? undefined : value))
  .optional();

const variables = z.object({
  SLACK_BOT_TOKEN: text,
  SLACK_APP_TOKEN: text,
  SLACK_SIGNING_SECRET: text,
  SLACK_API_URL: text.refine(
    (url) => url === undefined || /^https?:\/\/[^/]/.test(url),
    'SLACK_API_URL must be an address such as https://slack.com/api/',
  ),
  EVENSET_DATA: text,
  EVENSET_SETTINGS: text,
  HOST: text,
  PORT: text.refine(
    (port) => port === undefined || (/^\d{1,5}$/.test(port) && Number(port) <= 65_535),
    'PORT must be a number from 0 to 65535, such as 3000',
  ),
});

/** Reads the environment once. Some but not all credentials are a problem that names what is missing. */
export function readEnv(environment: Readonly<Record<string, string | undefined>>): EnvRead {
  const parsed = variables.safeParse(environment);
  if (!parsed.success)
    return { kind: 'unusable', problems: parsed.error.issues.map(({ message }) => message) };
  const given = parsed.data;
  const access = readAccess(given);
  if (typeof access === 'string') return { kind: 'unusable', problems: [access] };
  const { SLACK_API_URL: url, EVENSET_DATA: dataFolder, EVENSET_SETTINGS: settingsFile, PORT: port } = given;
  const secrets = [given.SLACK_BOT_TOKEN, given.SLACK_APP_TOKEN, given.SLACK_SIGNING_SECRET];
  return {
    kind: 'read',
    env: {
      ...(access === undefined ? {} : { access }),
      ...(url === undefined ? {} : { apiUrl: url.endsWith('/') ? url : `${url}/` }),
      ...(dataFolder === undefined ? {} : { dataFolder }),
      ...(settingsFile === undefined ? {} : { settingsFile }),
      host: given.HOST ?? '127.0.0.1',
      ...(port === undefined ? {} : { port: Number(port) }),
      secrets: secrets.filter((secret) => secret !== undefined),
    },
  };
}

function readAccess(given: z.infer<typeof variables>): WorkspaceAccess | string | undefined {
  const { SLACK_BOT_TOKEN: botToken, SLACK_APP_TOKEN: appToken, SLACK_SIGNING_SECRET: signingSecret } = given;
  const other = appToken === undefined ? 'SLACK_SIGNING_SECRET' : 'SLACK_APP_TOKEN';
  if (botToken === undefined) {
    if (appToken === undefined && signingSecret === undefined) return undefined;
    return `${other} is set but SLACK_BOT_TOKEN is missing. Set it too, or unset both for the local workspace.`;
  }
  if (appToken !== undefined) return { kind: 'socket', botToken, appToken };
  if (signingSecret !== undefined) return { kind: 'http', botToken, signingSecret };
  return 'SLACK_BOT_TOKEN is set but SLACK_APP_TOKEN (Socket Mode) or SLACK_SIGNING_SECRET (HTTP) is missing. Set one, or unset SLACK_BOT_TOKEN for the local workspace.';
}
