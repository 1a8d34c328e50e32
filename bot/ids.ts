/** Every name the app shares with the workspace; the manifest is built from these. */

export const commands = { evenset: '/evenset' } as const;

export const actions = {
  applyEdit: 'apply-edit',
  chooseMove: 'choose-move',
  undo: 'undo',
  redo: 'redo',
  tryExample: 'try-example',
  timeline: 'show-timeline',
  allFindings: 'show-all-findings',
  openSchedule: 'open-schedule',
  sendForReview: 'send-for-review',
  withdraw: 'withdraw',
  approve: 'approve',
  openAskChanges: 'open-ask-changes',
  openApproveWithNote: 'open-approve-with-note',
  openComment: 'open-comment',
  resolveComment: 'resolve-comment',
  openDismiss: 'open-dismiss',
  approveClean: 'approve-clean',
  muscles: 'show-muscles',
  options: 'show-options',
  taughtAsPlanned: 'taught-as-planned',
  openTaughtWithChanges: 'open-taught-with-changes',
  notTaught: 'not-taught',
  effort: 'effort',
  length: 'length',
  imIn: 'im-in',
  cannotTeach: 'cannot-teach',
  takeBackOffer: 'take-back-offer',
  takePlace: 'take-place',
  takeClass: 'take-class',
  chooseClass: 'choose-class',
  houseClass: 'house-class',
  openChangeClass: 'open-change-class',
  chooseOtherClass: 'choose-other-class',
  applyWeekEdit: 'apply-week-edit',
  goOnSaying: 'go-on-saying',
  stopSaying: 'stop-saying',
  openOwnMove: 'open-own-move',
  openDraft: 'open-draft',
  startAgain: 'start-again',
  openSettings: 'open-settings',
  settingsPart: 'settings-part',
  openNotices: 'open-notices',
  showMyData: 'show-my-data',
  forgetMe: 'forget-me',
} as const;

export const views = {
  draft: 'draft-form',
  schedule: 'schedule-form',
  askChanges: 'ask-changes-form',
  approveWithNote: 'approve-with-note-form',
  comment: 'comment-form',
  dismiss: 'dismiss-form',
  taughtWithChanges: 'taught-with-changes-form',
  ownMove: 'own-move-form',
  changeOwnMove: 'change-own-move-form',
  changeClass: 'change-class-form',
  confirmChange: 'confirm-change-form',
  settings: 'settings-form',
  notices: 'notices-form',
} as const;

export const shortcuts = { draftFromMessage: 'draft-from-message' } as const;

/** Key under which a notice's key stands in a message's metadata. */
export const metadataEventType = 'evenset_notice';
