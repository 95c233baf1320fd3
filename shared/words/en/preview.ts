import { playerWords } from './player.ts';

/** What the preview says: in the terminal, over the pages, and on its page to tap along. */
export const previewWords = {
  opened: (title: string, address: string): string => `${title}: ${address}`,
  howToEnd: 'Change the book and the page follows. Ctrl-C ends the preview.',
  notOpened: (address: string): string => `No browser could be opened; open ${address} yourself.`,
  portBusy: (wanted: number, port: number): string =>
    `Port ${wanted} is in use by another program, perhaps another preview; using ${port} instead.`,
  portRefused: (port: number): string =>
    `The system keeps port ${port} for itself. Choose one from 1024 up, such as --port 4280.`,
  portsTaken: (from: number, to: number): string =>
    `Every port from ${from} to ${to} is in use by other programs. Name another with --port.`,
  notWatched: (reason: string): string =>
    `The system does not let the files of the book be watched (${reason}). Other programs may be watching very many; end some of them and begin again.`,
  portUnread: (written: string): string =>
    `--port takes a number from 0 to 65535 (0 for any that is free), not "${written}".`,
  built: (files: number): string =>
    files === 0
      ? 'Built; no page has changed.'
      : `Built; ${files} ${files === 1 ? 'file' : 'files'} changed.`,
  failed: 'The pages shown are still those of the last good book.',
  ended: 'The preview has ended.',

  otherHost: 'This preview answers only the browser on its own machine.',
  readOnly: 'This preview can only be read.',
  noPath: 'That is no address of this preview.',
  notYet: {
    title: 'Not built yet',
    text: 'The book is being built, or has an error that must be mended first. This page follows by itself.',
  },
  leftOut: {
    title: 'Not made in a preview',
    text: 'The PDFs and the zip take long to make, so a preview leaves them out. Run bowbook build to have them.',
  },

  panel: 'Preview',
  working: 'building …',
  fine: 'nothing wrong',
  asBefore: 'With an error in the book the pages stay as they were before it.',
  lost: 'The preview has ended, or cannot be reached. What you see may be old.',
  wholeBook: 'The book as a whole',
  severity: { error: 'Error', warning: 'Warning', note: 'Note' },
  toTap: 'Tap along with a recording',

  tap: {
    title: 'Tap along with a recording',
    lead: 'Play the recording, and at the start of each phrase press the large button or the space bar. What you tap becomes the line to copy into your lesson.',
    back: 'Back to the book',
    tune: 'Tune',
    recording: 'Recording',
    noRecordings:
      'There is no recording in the book’s media folder yet. Put one there and it will appear here.',
    noTunes: 'No tune in the book could be read yet.',
    words: 'What the recording is called',
    learner: 'A learner is heard or seen in it',
    consent: 'Who consented, and when',
    consentHow:
      'Without written consent a learner’s recording is not published. A refusal, by the child or by a parent, is a no. This entry is not published.',
    speed: 'Speed',
    speeds: { 1: 'full', 0.75: 'three quarters', 0.5: 'half' } as Readonly<Record<number, string>>,
    caution: 'Begin quietly. Ears ringing? Quieter, or stop.',
    next: (bar: string): string => `Bar ${bar} begins`,
    phrase: (label: string, bars: string, pass: number): string => {
      const named = `${bars.includes('-') ? 'bars' : 'bar'} ${bars.replace('-', ' to ')}`;
      const again = pass === 1 ? '' : `, ${playerWords.passes(pass)}`;
      return `phrase ${label}, ${named}${again}`;
    },
    done: 'All phrases are tapped',
    space: 'Press here, or the space bar, as the bar begins.',
    undo: 'Undo the last',
    skip: 'Not in the recording',
    restart: 'Begin again',
    cues: 'Cues',
    noCues: 'None yet.',
    earlier: (bar: string): string => `${bar} a little earlier`,
    later: (bar: string): string => `${bar} a little later`,
    hear: (bar: string): string => `Hear from ${bar}`,
    line: 'The line for your lesson',
    copy: 'Copy',
    copied: 'Copied.',
    notCopied: 'It could not be copied by itself: it is marked now, so copy it by keyboard.',
    tapped: (bar: string, time: string): string => `${bar} at ${time}`,
    loading: 'Loading the tune …',
    notLoaded: 'The notes of this tune could not be loaded.',
  },
} as const;
