import { type Handlers, noReaction } from './handling.ts';

/** The one place where names meet handlers. */
export const handlers: Handlers = {
  commands: {},
  actions: {},
  views: {},
  shortcuts: {},
  message: async () => noReaction,
  home: async () => noReaction,
};
