const conditions = [
  'pregnan\\p{L}*',
  'postnatal',
  'prenatal',
  'miscarriage',
  'c-section',
  'injur\\p{L}*',
  'surger\\p{L}*',
  'operation',
  'diagnos\\p{L}*',
  'medication',
  'diabet\\p{L}*',
  'asthma\\p{L}*',
  'epilep\\p{L}*',
  'arthritis',
  'osteoporosis',
  'hernia',
  'sciatica',
  'tendonitis',
  'concussion',
  'fractur\\p{L}*',
  'slipped disc',
  'herniated',
  'blood pressure',
  'heart (?:condition|attack|disease|problem)s?',
  'pacemaker',
  'cancer',
  'chemo\\p{L}*',
  'depress(?:ion|ed)',
  'anxiety',
  'eating disorder',
  'obes\\p{L}*',
  'disabilit\\p{L}*',
];

const someonesBody =
  "(?:her|his|their|\\p{L}+['’]s) (?:bad |sore )?(?:knee|back|shoulder|hip|wrist|ankle|neck|heart)s?";

const privateWord = new RegExp(`(?<!\\p{L})(?:${[...conditions, someonesBody].join('|')})(?!\\p{L})`, 'iu');

/** The first words that may tell of someone's health; our own list, common practice. */
export function privateWordIn(text: string): string | undefined {
  return privateWord.exec(text)?.[0];
}

export const privateWords = {
  found: (word: string) =>
    `Not sent: "${word}" may be about someone's health. Keep health details out; write an option instead, like: offer the easier option for B1.`,
} as const;
