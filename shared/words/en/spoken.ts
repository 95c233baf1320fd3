import type { SpokenPhrases } from '../spoken.ts';

const heights = { 'very-low': 'very low', low: 'low', high: 'high', 'very-high': 'very high' };

export const spoken: SpokenPhrases = {
  signs: [' double flat', ' flat', '', ' sharp', ' double sharp'],
  strings: { high: 'high ', middle: 'middle ', low: 'low ' },
  finger: (finger, height) => (height ? `${heights[height]} ${finger}` : `${finger}`),
  openFinger: 'open',
  stop: (finger, string) => `${finger} on ${string}`,
  openString: string => `open ${string}`,
  outOfPosition: 'out of first position',
  asIf: note => `as if ${note}`,
  and: ' and ',
  together: ' together with ',
  rest: 'Rest',
  held: note => `${note}, held`,
  notPlayed: 'Not played',
  stroke: {
    down: { begins: 'Down', still: 'Still down', again: 'Down again' },
    up: { begins: 'Up', still: 'Still up', again: 'Up again' },
  },
  turned: 'Another time through, the strokes are turned round.',
};
