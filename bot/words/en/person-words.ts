import { forgottenPerson } from '../../../domain/ports.ts';

/** Who did something, where nobody can tell any more who it was. */
export type Role = 'someone' | 'a coach' | 'an instructor';

/** A person as the workspace shows them; who is forgotten is told by what they did. */
export function personText(personId: string, as: Role = 'someone'): string {
  return personId === forgottenPerson ? as : `<@${personId}>`;
}

/** The same where it opens a sentence. */
export function personFirst(personId: string, as: Role = 'someone'): string {
  const text = personText(personId, as);
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
