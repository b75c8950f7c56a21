/** Words of keeping programmes on this device: the list of them, and every trouble with its way out. */

/** What stands between a person's document and the device. */
export type KeepingTrouble = 'full' | 'closed' | 'silent' | 'conflict' | 'gone' | 'removed';

export const keeping: Readonly<Record<KeepingTrouble, { readonly short: string; readonly what: string }>> = {
  full: {
    short: 'this device’s storage is full',
    what: 'There is no room left on this device, so your last changes stand only on this page. Save a copy as a file; then make room, or remove programmes you no longer need for good, and try again.',
  },
  closed: {
    short: 'this browser does not let us store anything here',
    what: 'This browser does not let the page store anything: a private window, a setting, or a fault of its storage. Everything works, but what you change is gone when the page is closed. Save a copy as a file.',
  },
  silent: {
    short: 'this device’s storage does not answer',
    what: 'This device’s storage does not answer, so your last changes stand only on this page. Save a copy as a file, close other windows of this page, and try again.',
  },
  conflict: {
    short: 'another window has saved this programme',
    what: 'Another window or tab has saved this programme since this one last did. Nothing was overwritten: what you see here stands only on this page. Take theirs (undo brings yours back), or keep yours beside it as a copy.',
  },
  gone: {
    short: 'it is no longer on this device',
    what: 'This programme is no longer on this device: what this site had stored was cleared while the page was open. What you see here is all there is of it.',
  },
  removed: {
    short: 'it was removed in another window',
    what: 'This programme was removed in another window. It is still here, among the removed ones.',
  },
};

export const library = {
  title: 'My programmes',
  startOwn: 'Start my own',
  headline: (kept: number, plans: number): string =>
    kept === 0
      ? 'Nothing of yours is kept on this device yet.'
      : `You keep ${kept === 1 ? 'one programme' : `${String(kept)} programmes`} on this device, with ${plans === 1 ? 'one plan' : `${String(plans)} plans`} in all.`,
  lede: 'Each is saved as you type, with the steps that undo can bring back. They stay in this browser on this device only: save a copy of each as a file every winter, and before you clear the browser’s data.',
  first: 'What you see on the other pages is an invented example. Change anything in it and the changed one is kept here as yours; or start your own.',
  promised: 'This browser has promised to keep them when the disk is full.',
  notPromised: 'This browser may clear them when the disk is full: save a copy now and then.',
  list: 'Programmes',
  plans: (count: number): string => `${String(count)} ${count === 1 ? 'plan' : 'plans'}`,
  changed: (when: string): string => `changed ${when}`,
  openNow: 'open now',
  toMend: 'has something to mend',
  titleField: 'Title',
  open: 'Open',
  copy: 'Copy',
  remove: 'Remove',
  openOf: (title: string): string => `Open ${title}`,
  copyOf: (title: string): string => `Copy ${title}`,
  removeOf: (title: string): string => `Remove ${title}`,
  copied: (title: string): string => `${title} was copied; the copy stands on top of the list.`,
  removedNow: (title: string): string => `${title} was removed.`,
  broughtBack: (title: string): string => `${title} is back in the list.`,
  erased: (title: string): string => `${title} was removed for good.`,
  bringBack: 'Bring back',
  bringBackOf: (title: string): string => `Bring back ${title}`,
  removed: 'Removed',
  removedIntro: 'Kept until you remove them for good.',
  erase: 'Remove for good',
  eraseOf: (title: string): string => `Remove ${title} for good`,
  eraseSure: 'Yes, for good',
  eraseKeep: 'No, keep it',
  unreadable: 'Set aside: cannot be read by this version',
  unreadableIntro: 'Nothing was changed in these. Save the text as a file and open it with the version that wrote it, or show it to somebody who can mend it.',
  unreadableName: (when: string): string => `A text kept ${when}`,
  unknownTime: 'some time ago',
  saveText: 'Save the text as a file',
  saveTextOf: (name: string): string => `Save the text as a file: ${name}`,
  notListed: (reason: string): string => `The list cannot be shown: ${reason}.`,
  today: (time: string): string => `today ${time}`,
  removedOn: (when: string): string => `removed ${when}`,
  renamed: (before: string, after: string): string => `title “${before}” → “${after}”`,
  saveCopyOf: (title: string): string => `Save a copy of ${title}`,
  textFile: 'set-aside.txt',
  notDone: 'That could not be done: this device’s storage refused. Nothing was changed.',
  copySuffix: ', copy',
  mineSuffix: ', mine',
  closedSuffix: ', from a window that closed',
} as const;

/** Where to put the eye when a document is opened, taken or brought back. */
export const opening = {
  opened: (name: string): string => `${name} is open, as one of “My programmes”`,
  lookedAt: (name: string): string => `you are looking at ${name}; it is kept only once you change something`,
  again: (name: string): string => `${name} was among “My programmes” already, and is open now`,
  followed: 'changed in another window just now',
  recovered: 'The last change before this page was closed had not been saved yet. It has been brought back.',
  recoveredAside: 'A window that closed had changes that were never saved. They stand in “My programmes” as a copy.',
  unsavedRecovered: 'The last change before this page was closed is here again, but cannot be saved yet.',
  takenOver: 'What an earlier version kept on this device is now the first of “My programmes”.',
  unreadable:
    'What was kept on this device cannot be read by this version. It has been set aside untouched in “My programmes”, and an invented example is shown instead.',
  missing: 'That programme is no longer on this device.',
  theirs: 'what the other window saved, taken',
  held: (name: string): string =>
    `What you have here is not saved yet. Save a copy as a file before you open ${name}: opening it takes its place on this page.`,
  holdSave: 'Save a copy as a file',
  holdOpen: 'Open it without saving',
  holdStay: 'Stay here',
  whatToDo: 'What to do',
  tryAgain: 'Try again',
  takeTheirs: 'Take theirs',
  keepMine: 'Keep mine as a copy',
  keepAgain: 'Keep it on this device again',
  bringBack: 'Bring it back',
  handed: (name: string): string => `${name} was handed to the browser`,
  undone: (label: string): string => `undone: ${label}`,
  redone: (label: string): string => `done again: ${label}`,
} as const;

/** The panel that an address with a programme in it opens. */
export const link = {
  reading: 'Reading the link…',
  whose: (title: string): string => `Somebody’s programme: ${title}`,
  what: (plans: number): string =>
    `It came with the link you opened, with ${plans === 1 ? 'one plan' : `${String(plans)} plans`}. Nothing of yours was changed.`,
  toMend: 'It has something to mend before it can run.',
  keep: 'Keep it as my own copy',
  look: 'Look only',
  back: 'Go back to mine',
  damaged: 'The programme in this link cannot be read. Your own is untouched.',
  ask: 'Ask for the link again, whole, or for the programme as a file.',
  name: (title: string): string => title,
} as const;
