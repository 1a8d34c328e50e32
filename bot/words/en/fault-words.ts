/** What people are told when something fails on our side. `id` is the number that stands in the log. */
export const faultWords = {
  unexpected: (id: string) =>
    `That did not work: the fault is on my side, and nothing was changed. Try once more. If it fails again, give whoever runs me this number: ${id}.`,
  notSaved: (id: string) =>
    `Not saved, and nothing you had is lost: I can't write just now. Try again in a moment. If it lasts, whoever runs me should look at the disk (number ${id}).`,
  keptForLater: (id: string) =>
    `Not done yet: I can't write just now. Your message is kept and I try again by myself, no need to send it again (number ${id}).`,
  notHeard: (id: string) =>
    `Not saved yet, and nothing you had is lost: I can't write just now. Send your message again if nothing happens within five minutes (number ${id}).`,
  unknownCommand: (command: string) => `I don't know ${command}. Write /evenset help to see what I can do.`,
  unknownControl:
    'This button or form belongs to an older message of mine. Look at the newest message in the thread and try there.',
  formNotOpened: (id: string) =>
    `The form did not open: the workspace took too long. Tap again (number ${id}).`,
  answerNotShown: (id: string) =>
    `My answer did not get through. What you had is as it was or as you asked: look once more, and ask again if something is missing (number ${id}).`,
  savedWithoutLink: (id: string) =>
    `Saved, no need to send it again. I could not get the link to it: look in your direct messages with me (number ${id}).`,
  savedPostDelayed:
    'Saved. The workspace takes its time with the post; it comes by itself, no need to send anything again.',
  noticeNotPosted: (to: string, code: string, text: string) =>
    `I could not post this to ${to}: the workspace answered “${code}”. Check that I am a member there. It said:\n${text}`,
} as const;
