import type { AppsManifestValidateArguments } from '@slack/web-api';

/** The platform's own type of an app manifest. */
export type Manifest = AppsManifestValidateArguments['manifest'];

type BotScope = NonNullable<NonNullable<NonNullable<Manifest['oauth_config']>['scopes']>['bot']>[number];

export type ScopeReason = { readonly scope: BotScope; readonly reason: string };

/** The least the app can work with, each with the reason an admin is told. */
export const scopeReasons: readonly ScopeReason[] = [
  { scope: 'commands', reason: 'to offer /evenset and the message shortcut' },
  { scope: 'chat:write', reason: 'to answer, and to post cards, countdowns and reports' },
  { scope: 'app_mentions:read', reason: 'to hear its name in a thread, where commands do not work' },
  { scope: 'im:history', reason: 'to read what people write to it in their direct message' },
  {
    scope: 'im:write',
    reason:
      'to open the direct message a notice goes to, so that its place is known before anything is posted',
  },
  {
    scope: 'usergroups:read',
    reason: 'to know who is in a user group that gives a role; without it roles are given to people by name',
  },
  {
    scope: 'channels:history',
    reason:
      'to look for its own message after an unclear failure in a public channel, so that nothing is posted twice; it does not listen to channels',
  },
  {
    scope: 'groups:history',
    reason: 'the same in a private channel it was invited to',
  },
  {
    scope: 'files:write',
    reason:
      'to post the week’s table as a file, and its chart as a picture where the workspace shows no charts',
  },
];
