import { forgottenPerson } from '../../../domain/ports.ts';

/** A person as the workspace shows them; who is forgotten is told by what they did. */
export function personText(personId: string, as = 'someone'): string {
  return personId === forgottenPerson ? as : `<@${personId}>`;
}
