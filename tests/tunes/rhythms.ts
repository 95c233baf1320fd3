import type { TuneType } from '../../shared/music/tune.ts';

/** How tunes of a type move: metre, tempo apart, and what can stand on each beat. */
export interface Rhythm {
  readonly meter: string;
  readonly beats: number;
  /** Length of a beat in quavers, the unit that tunes are written in. */
  readonly beat: number;
  /** ABC of one beat or two, `n` for each note. The first is the commonest. */
  readonly cells: readonly string[];
  /** What a part ends on, as long as one beat or two. */
  readonly close: string;
  /** The same, less a pickup of one beat or less. */
  readonly shortClose: string;
  readonly pickup: string;
}

const threes = ['nnn', 'nnn', 'n2n', 'nnn', 'n3', 'n>nn'];

/** Commonest figures of each type, from memory of common practice. */
export const rhythms: Readonly<Record<TuneType, Rhythm>> = {
  reel: {
    meter: '4/4',
    beats: 4,
    beat: 2,
    cells: ['nnnn', 'nnnn', 'n2nn', 'nn', '(3nnn nn', 'n3n', 'n2'],
    close: 'n4',
    shortClose: 'n2',
    pickup: 'nn',
  },
  jig: {
    meter: '6/8',
    beats: 2,
    beat: 3,
    cells: threes,
    close: 'n3',
    shortClose: 'n2',
    pickup: 'n',
  },
  'slip jig': {
    meter: '9/8',
    beats: 3,
    beat: 3,
    cells: threes,
    close: 'n3',
    shortClose: 'n2',
    pickup: 'n',
  },
  hornpipe: {
    meter: '4/4',
    beats: 4,
    beat: 2,
    cells: ['n>nn>n', 'n>n', '(3nnn n>n', 'n2n>n', 'n2', '(3nnn (3nnn'],
    close: 'n2n2',
    shortClose: 'n2',
    pickup: 'n>n',
  },
  polka: {
    meter: '2/4',
    beats: 2,
    beat: 2,
    cells: ['nn', 'n/n/n', 'nn/n/', 'n2', 'n>n', 'n/n/n/n/'],
    close: 'n2',
    shortClose: 'n',
    pickup: 'n',
  },
  slide: {
    meter: '12/8',
    beats: 4,
    beat: 3,
    cells: ['n2n', 'nnn', 'n2n', 'n3', 'nnnn2n'],
    close: 'n3',
    shortClose: 'n2',
    pickup: 'n',
  },
  waltz: {
    meter: '3/4',
    beats: 3,
    beat: 2,
    cells: ['n2', 'nn', 'n3n', 'n2', '(3nnn', 'n4', 'n>n'],
    close: 'n4',
    shortClose: 'n2',
    pickup: 'nn',
  },
  strathspey: {
    meter: '4/4',
    beats: 4,
    beat: 2,
    cells: ['n>n', 'n<n', 'n2', 'n<nn>n', 'n/n/n/n/'],
    close: 'n2n2',
    shortClose: 'n2',
    pickup: 'n>n',
  },
  march: {
    meter: '4/4',
    beats: 4,
    beat: 2,
    cells: ['n2', 'nn', 'n3n', 'n>n', 'n2nn', '(3nnn'],
    close: 'n4',
    shortClose: 'n2',
    pickup: 'nn',
  },
  air: {
    meter: '3/4',
    beats: 3,
    beat: 2,
    cells: ['n2', 'n4', 'n3n', 'nn', 'n>n'],
    close: 'n4',
    shortClose: 'n2',
    pickup: 'n2',
  },
};

/** Quavers that a figure lasts: a triplet of quavers takes two, a broken pair what it would unbroken. */
export function lengthOf(figure: string): number {
  let triplets = 0;
  let sum = 0;
  for (const [, triplet, length] of figure.matchAll(/(\(3)?n(\d|\/)?/g)) {
    if (triplet) triplets++;
    sum += length === '/' ? 0.5 : Number(length ?? 1);
  }
  return sum - triplets;
}
