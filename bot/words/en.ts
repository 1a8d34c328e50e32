import { askWords } from './en/ask-words.ts';
import {
  cardWords,
  fitText,
  lengthText,
  levelText,
  muscleSetsText,
  patternSetsText,
  peopleText,
  proposalLabel,
  segmentText,
  setsText,
  sideText,
  stateText,
  totalsText,
  workToRestText,
} from './en/card-words.ts';
import { catalogueWords } from './en/catalogue-words.ts';
import { cautionWords } from './en/caution-words.ts';
import { changeText } from './en/change-words.ts';
import { classChangeWords } from './en/class-change-words.ts';
import { classWords } from './en/class-words.ts';
import { coachWeekWords } from './en/coach-week-words.ts';
import { countdownWords } from './en/countdown-words.ts';
import { dataWords } from './en/data-words.ts';
import { dismissWords } from './en/dismiss-words.ts';
import { draftWords } from './en/draft-words.ts';
import { faultWords } from './en/fault-words.ts';
import { findingText, severityText, standingLine } from './en/finding-words.ts';
import { helpWords } from './en/help-words.ts';
import { homeWords } from './en/home-words.ts';
import { noteText } from './en/note-words.ts';
import { ownMoveWords } from './en/own-move-words.ts';
import { personText } from './en/person-words.ts';
import { placeWords } from './en/place-words.ts';
import { privateWordIn, privateWords, someonesHealthIn } from './en/private-words.ts';
import { problemText } from './en/problem-words.ts';
import { refusalText } from './en/refusal-words.ts';
import { coachWords } from './en/review-words.ts';
import { settingsWords } from './en/settings-words.ts';
import { afterWords, editWords, flowWords, formWords, reviewWords, whenText } from './en/talk-words.ts';
import { weekWords } from './en/week-words.ts';

/** Every sentence for people in English, by stage. */
export const english = {
  length: lengthText,
  sets: setsText,
  workToRest: workToRestText,
  level: levelText,
  people: peopleText,
  fit: fitText,
  totals: totalsText,
  patternSets: patternSetsText,
  muscleSets: muscleSetsText,
  state: stateText,
  proposal: proposalLabel,
  segment: segmentText,
  side: sideText,
  round: (round: number) => `round ${round}`,
  when: whenText,
  problem: problemText,
  note: noteText,
  change: changeText,
  finding: findingText,
  catalogue: catalogueWords,
  caution: cautionWords,
  severity: severityText,
  refusal: refusalText,
  standingLine,
  card: cardWords,
  edits: editWords,
  review: reviewWords,
  coach: coachWords,
  person: personText,
  privacy: privateWords,
  privateWordIn,
  someonesHealthIn,
  flow: flowWords,
  help: helpWords,
  asks: askWords,
  draft: draftWords,
  dismiss: dismissWords,
  forms: formWords,
  after: afterWords,
  home: homeWords,
  countdown: countdownWords,
  classes: classWords,
  classChange: classChangeWords,
  place: placeWords,
  week: weekWords,
  coachWeek: coachWeekWords,
  ownMove: ownMoveWords,
  settings: settingsWords,
  data: dataWords,
  faults: faultWords,
} as const;
