const conditions = [
  'pregnan\\p{L}*',
  'postnatal',
  'postpartum',
  'prenatal',
  'miscarriage',
  'menopaus\\p{L}*',
  'c-section',
  '(?<!avoid |avoids |prevent |prevents |against )injur\\p{L}*(?! prevention)',
  'surger\\p{L}*',
  '(?:an|her|his|their|my|after|hip|knee|heart) operation',
  'diagnos\\p{L}*',
  'medication',
  'diabet\\p{L}*',
  'asthma\\p{L}*',
  'epilep\\p{L}*',
  'seizures?',
  'arthriti\\p{L}*',
  'osteoporosis',
  'hernia',
  'herniated',
  'slipped disc',
  'sciatica',
  'tendonitis',
  'tendinitis',
  'concussion',
  'fractur\\p{L}*',
  'sprain\\p{L}*',
  'migraine\\p{L}*',
  'covid',
  'blood pressure',
  'hypertens\\p{L}*',
  'heart (?:condition|attack|disease|problem)s?',
  'pacemaker',
  'cancer',
  'chemo\\p{L}*',
  '(?:is|was|has|feels|feeling|with|her|his) depress(?:ion|ed)',
  'anxiety',
  'eating disorder',
  'obes\\p{L}*',
  'disabilit\\p{L}*',
];

const bodyPart = '(?:knee|back|shoulder|hip|wrist|ankle|neck|elbow|heart|pelvic floor)s?';
const ails = '(?:bad|sore|dodgy|painful|injured|torn|swollen|weak|replaced|new)';

/** Words with an apostrophe that are nobody's name: `let's hip hinge`, `child's pose`. */
const nobody =
  "(?:let|it|that|there|here|what|who|where|how|he|she|one|everyone|everybody|each|today|women|men|people|person|someone|somebody|casualty|child|children|world|class|studio|coach)['’]s";

const someonesBody = [
  `(?:her|his|my) (?:${ails} )?${bodyPart}`,
  `(?!${nobody})\\p{L}+['’]s (?:${ails} )?${bodyPart}`,
  `(?:their|your) ${ails} ${bodyPart}`,
  `(?:bad|dodgy|painful|injured|torn|swollen|replaced) ${bodyPart}`,
  `${bodyPart} (?:pain|trouble|problem|replacement)s?`,
];

/** A kind of class is nobody's health: `Postnatal Strength`. */
const ofAClass =
  '(?![ -](?:class|classes|strength|strong|circuit|training|fitness|movement|session|group|hour)(?!\\p{L}))';

const alone = (words: readonly string[], behind = '') =>
  new RegExp(`(?<!\\p{L})(?:${words.join('|')})(?!\\p{L})${behind}`, 'iu');

const privateWord = alone([...conditions, ...someonesBody], ofAClass);
const someonesWord = alone(someonesBody);

/** The first words that may tell of someone's health; our own list, common practice. */
export function privateWordIn(text: string): string | undefined {
  return privateWord.exec(text)?.[0];
}

/** The same where conditions are spoken of as such, on an emergency card: what is said of someone alone. */
export function someonesHealthIn(text: string): string | undefined {
  return someonesWord.exec(text)?.[0];
}

const instead = 'Keep health details out; write an option instead';

export const privateWords = {
  hint: 'No names or health details of members: write an option instead.',
  found: (word: string) =>
    `Not sent: "${word}" may be about someone's health. ${instead}, like: offer the easier option for B1.`,
  inForm: (word: string) =>
    `Not saved: "${word}" may be about someone's health. ${instead}, or say it in other words where it is about nobody.`,
  notKept: (word: string) =>
    `Not kept: "${word}" may be about someone's health. ${instead}, such as: push-up, easier knee push-up. Where it is about nobody, say it in other words. Your message stays as you wrote it: put it right there, or send it again.`,
  /** Where what was typed stands nowhere else. */
  withText: (told: string, text: string) => `${told}\n\nYou wrote:\n${text}`,
} as const;
