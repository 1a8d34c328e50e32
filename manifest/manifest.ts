import { commands, shortcuts } from '../bot/ids.ts';
import { type Manifest, scopeReasons } from './scopes.ts';

/** How payloads reach the app: over its own socket, or by HTTP at an address of the studio's. */
export type ManifestDelivery =
  | { readonly kind: 'socket' }
  | { readonly kind: 'http'; readonly requestUrl: string };

/** The app's manifest, from the constants its listeners use. */
export function buildManifest(delivery: ManifestDelivery): Manifest {
  const url = delivery.kind === 'http' ? { url: delivery.requestUrl } : {};
  const requestUrl = delivery.kind === 'http' ? { request_url: delivery.requestUrl } : {};
  return {
    _metadata: { major_version: 2 },
    display_information: {
      name: 'Evenset',
      description: 'Times group strength classes, checks them, and keeps the team and the week in view',
      background_color: '#26413c',
    },
    features: {
      app_home: {
        home_tab_enabled: true,
        messages_tab_enabled: true,
        messages_tab_read_only_enabled: false,
      },
      bot_user: { display_name: 'evenset', always_online: true },
      slash_commands: [
        {
          command: commands.evenset,
          ...url,
          description: 'Plan a timed strength class',
          usage_hint: 'help · week · or a class in shorthand',
          should_escape: true,
        },
      ],
      shortcuts: [
        {
          type: 'message',
          name: 'Read as a class',
          callback_id: shortcuts.draftFromMessage,
          description: 'Reads the class in this message and opens its draft',
        },
      ],
    },
    oauth_config: { scopes: { bot: scopeReasons.map(({ scope }) => scope) } },
    settings: {
      event_subscriptions: {
        ...requestUrl,
        bot_events: [
          'app_home_opened',
          'app_mention',
          'app_uninstalled',
          'message.im',
          'subteam_members_changed',
          'subteam_updated',
          'tokens_revoked',
        ],
      },
      interactivity: { is_enabled: true, ...requestUrl },
      org_deploy_enabled: false,
      socket_mode_enabled: delivery.kind === 'socket',
      token_rotation_enabled: false,
    },
  };
}
