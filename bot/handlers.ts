import {
  onEffort,
  onLength,
  onNotTaught,
  onOpenTaughtWithChanges,
  onTaughtAsPlanned,
  onTaughtWithChangesForm,
} from './actions/class-actions.ts';
import { onRedo, onTryExample } from './actions/draft-actions.ts';
import { onOpenDraft, onStartAgain } from './actions/home-actions.ts';
import {
  onAllFindings,
  onApplyEdit,
  onApprove,
  onChooseMove,
  onMuscles,
  onOpenAskChanges,
  onOpenSchedule,
  onOptions,
  onSendForReview,
  onTimeline,
  onUndo,
  onWithdraw,
} from './actions/plan-actions.ts';
import {
  onApproveClean,
  onOpenApproveWithNote,
  onOpenComment,
  onOpenDismiss,
  onResolveComment,
} from './actions/review-actions.ts';
import {
  onCannotTeach,
  onChooseClass,
  onChooseOtherClass,
  onHouseClass,
  onImIn,
  onOpenChangeClass,
  onTakeBackOffer,
  onTakeClass,
  onTakePlace,
} from './actions/timetable-actions.ts';
import { onApplyWeekEdit, onGoOnSaying, onStopSaying } from './actions/week-actions.ts';
import { onEvenset } from './commands/on-evenset.ts';
import { onGroups } from './events/on-groups.ts';
import { onHome } from './events/on-home.ts';
import { onLeft } from './events/on-left.ts';
import type { Handlers } from './handling.ts';
import { actions, commands, shortcuts, views } from './ids.ts';
import { onDraftFromMessage } from './messages/on-draft-from-message.ts';
import { onMessage } from './messages/on-message.ts';
import { onChangeClassForm, onConfirmChange } from './views/class-change-views.ts';
import { onForgetMe, onNoticesForm, onOpenNotices, onShowMyData } from './views/data-views.ts';
import { onChangeOwnMoveForm, onOpenOwnMove, onOwnMoveForm } from './views/own-move-views.ts';
import { onAskChangesForm, onDraftForm, onScheduleForm } from './views/plan-views.ts';
import { onApproveWithNoteForm, onCommentForm, onDismissForm } from './views/review-views.ts';
import { onOpenSettings, onSettingsForm, onSettingsPart } from './views/settings-views.ts';

/** The one place where names meet handlers. */
export const handlers: Handlers = {
  commands: { [commands.evenset]: onEvenset },
  actions: {
    [actions.applyEdit]: onApplyEdit,
    [actions.chooseMove]: onChooseMove,
    [actions.undo]: onUndo,
    [actions.redo]: onRedo,
    [actions.tryExample]: onTryExample,
    [actions.timeline]: onTimeline,
    [actions.allFindings]: onAllFindings,
    [actions.muscles]: onMuscles,
    [actions.options]: onOptions,
    [actions.openSchedule]: onOpenSchedule,
    [actions.sendForReview]: onSendForReview,
    [actions.withdraw]: onWithdraw,
    [actions.approve]: onApprove,
    [actions.openAskChanges]: onOpenAskChanges,
    [actions.openApproveWithNote]: onOpenApproveWithNote,
    [actions.openComment]: onOpenComment,
    [actions.resolveComment]: onResolveComment,
    [actions.openDismiss]: onOpenDismiss,
    [actions.approveClean]: onApproveClean,
    [actions.taughtAsPlanned]: onTaughtAsPlanned,
    [actions.openTaughtWithChanges]: onOpenTaughtWithChanges,
    [actions.notTaught]: onNotTaught,
    [actions.effort]: onEffort,
    [actions.length]: onLength,
    [actions.imIn]: onImIn,
    [actions.cannotTeach]: onCannotTeach,
    [actions.takeBackOffer]: onTakeBackOffer,
    [actions.takeClass]: onTakeClass,
    [actions.takePlace]: onTakePlace,
    [actions.chooseClass]: onChooseClass,
    [actions.houseClass]: onHouseClass,
    [actions.openChangeClass]: onOpenChangeClass,
    [actions.chooseOtherClass]: onChooseOtherClass,
    [actions.applyWeekEdit]: onApplyWeekEdit,
    [actions.goOnSaying]: onGoOnSaying,
    [actions.stopSaying]: onStopSaying,
    [actions.openOwnMove]: onOpenOwnMove,
    [actions.openDraft]: onOpenDraft,
    [actions.startAgain]: onStartAgain,
    [actions.openSettings]: onOpenSettings,
    [actions.settingsPart]: onSettingsPart,
    [actions.showMyData]: onShowMyData,
    [actions.forgetMe]: onForgetMe,
    [actions.openNotices]: onOpenNotices,
  },
  views: {
    [views.draft]: onDraftForm,
    [views.schedule]: onScheduleForm,
    [views.askChanges]: onAskChangesForm,
    [views.approveWithNote]: onApproveWithNoteForm,
    [views.comment]: onCommentForm,
    [views.dismiss]: onDismissForm,
    [views.taughtWithChanges]: onTaughtWithChangesForm,
    [views.ownMove]: onOwnMoveForm,
    [views.changeOwnMove]: onChangeOwnMoveForm,
    [views.changeClass]: onChangeClassForm,
    [views.confirmChange]: onConfirmChange,
    [views.settings]: onSettingsForm,
    [views.notices]: onNoticesForm,
  },
  shortcuts: { [shortcuts.draftFromMessage]: onDraftFromMessage },
  message: onMessage,
  home: onHome,
  left: onLeft,
  groups: onGroups,
};
