import type { SpokenPhrases } from '../spoken.ts';

const heights = {
  'very-low': 'sehr tiefer',
  low: 'tiefer',
  high: 'hoher',
  'very-high': 'sehr hoher',
};

export const spoken: SpokenPhrases = {
  signs: ['-Doppel-Be', '-Be', '', '-Kreuz', '-Doppelkreuz'],
  strings: { high: 'Hoch-', middle: 'Mittel-', low: 'Tief-' },
  finger: (finger, height) => (height ? `${heights[height]} ${finger}` : `${finger}`),
  openFinger: 'leer',
  stop: (finger, string) => `${finger} auf ${string}`,
  openString: string => `leere ${string}-Saite`,
  outOfPosition: 'nicht in der ersten Lage',
  asIf: note => `gegriffen wie ${note}`,
  and: ' und ',
  together: ' zusammen mit ',
  rest: 'Pause',
  held: note => `${note}, gehalten`,
  notPlayed: 'Nicht gespielt',
  stroke: {
    down: { begins: 'Ab', still: 'Weiter im Abstrich', again: 'Noch einmal ab' },
    up: { begins: 'Auf', still: 'Weiter im Aufstrich', again: 'Noch einmal auf' },
  },
  turned: 'Beim anderen Durchgang sind die Striche umgekehrt.',
};
