import { escapeEntities, readEntities } from './page/read-mrkdwn.ts';
import type { Workspace } from './workspace.ts';

/**
 * What a person typed, as the platform hands it on: entities for & < >, names of people and channels as ids,
 * addresses in angle brackets.
 */
export const encodeTyped = (
  text: string,
  workspace: Pick<Workspace, 'people' | 'channels' | 'app'>,
): string => {
  const names = new Map<string, string>([
    ...workspace.people.map(({ id, name }) => [`@${name.toLowerCase()}`, `<@${id}>`] as const),
    [`@${workspace.app.name.toLowerCase()}`, `<@${workspace.app.botUserId}>`] as const,
    ...workspace.channels.map(({ id, name }) => [`#${name.toLowerCase()}`, `<#${id}|${name}>`] as const),
  ]);
  return escapeEntities(text)
    .replace(/https?:\/\/[^\s<>|]+/g, (url) => `<${url}>`)
    .replace(/[@#][\p{L}\d_-]+/gu, (mention) => names.get(mention.toLowerCase()) ?? mention);
};

/** The other way round, for editing one's own message. */
export const decodeTyped = (
  text: string,
  workspace: Pick<Workspace, 'people' | 'channels' | 'app'>,
): string => {
  const nameOf = (id: string) =>
    id === workspace.app.botUserId
      ? workspace.app.name
      : (workspace.people.find((person) => person.id === id)?.name ?? id);
  return readEntities(
    text
      .replace(/<@(\w+)(?:\|[^>]*)?>/g, (_whole, id: string) => `@${nameOf(id)}`)
      .replace(/<#(\w+)(?:\|([^>]*))?>/g, (_whole, id: string, name?: string) => `#${name ?? id}`)
      .replace(/<(https?:[^>|]+)(?:\|[^>]*)?>/g, '$1'),
  );
};
