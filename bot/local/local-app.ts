import { z } from 'zod';

/** The app as the workspace knows it: what its manifest declares, and the identity it got when installed. */
export type LocalApp = {
  readonly id: string;
  readonly name: string;
  readonly botUserId: string;
  readonly botId: string;
  readonly botToken: string;
  readonly scopes: readonly string[];
  readonly events: readonly string[];
  readonly commands: readonly LocalCommand[];
  readonly shortcuts: readonly LocalShortcut[];
  readonly hasHome: boolean;
  readonly acceptsDirectMessages: boolean;
};

export type LocalCommand = {
  readonly command: string;
  readonly description: string;
  readonly usageHint: string;
  readonly shouldEscape: boolean;
};
export type LocalShortcut = {
  readonly kind: 'message' | 'global';
  readonly callbackId: string;
  readonly name: string;
  readonly description: string;
};

const manifest = z.looseObject({
  display_information: z.looseObject({ name: z.string() }),
  features: z
    .looseObject({
      app_home: z
        .looseObject({
          home_tab_enabled: z.boolean().optional(),
          messages_tab_enabled: z.boolean().optional(),
          messages_tab_read_only_enabled: z.boolean().optional(),
        })
        .optional(),
      slash_commands: z
        .array(
          z.looseObject({
            command: z.string(),
            description: z.string(),
            usage_hint: z.string().optional(),
            should_escape: z.boolean().optional(),
          }),
        )
        .optional(),
      shortcuts: z
        .array(
          z.looseObject({
            type: z.enum(['message', 'global']),
            callback_id: z.string(),
            name: z.string(),
            description: z.string(),
          }),
        )
        .optional(),
    })
    .optional(),
  oauth_config: z
    .looseObject({ scopes: z.looseObject({ bot: z.array(z.string()).optional() }).optional() })
    .optional(),
  settings: z
    .looseObject({
      event_subscriptions: z.looseObject({ bot_events: z.array(z.string()).optional() }).optional(),
    })
    .optional(),
});

/** Installs an app from its manifest; throws on a value that is no manifest. */
export const installLocalApp = (
  manifestValue: unknown,
  identity: Pick<LocalApp, 'id' | 'botUserId' | 'botId' | 'botToken'>,
): LocalApp => {
  const read = manifest.parse(manifestValue);
  const home = read.features?.app_home;
  return {
    ...identity,
    name: read.display_information.name,
    scopes: read.oauth_config?.scopes?.bot ?? [],
    events: read.settings?.event_subscriptions?.bot_events ?? [],
    commands: (read.features?.slash_commands ?? []).map((each) => ({
      command: each.command,
      description: each.description,
      usageHint: each.usage_hint ?? '',
      shouldEscape: each.should_escape ?? false,
    })),
    shortcuts: (read.features?.shortcuts ?? []).map((each) => ({
      kind: each.type,
      callbackId: each.callback_id,
      name: each.name,
      description: each.description,
    })),
    hasHome: home?.home_tab_enabled ?? false,
    acceptsDirectMessages:
      (home?.messages_tab_enabled ?? false) && !(home?.messages_tab_read_only_enabled ?? false),
  };
};
