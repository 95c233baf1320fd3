import type { MapPhrases } from '../map.ts';
import { capital } from '../text.ts';
import { numberWord } from './grammar.ts';

export const map: MapPhrases = {
  own: 'Eine eigene Phrase.',
  same: other => `Dasselbe wie ${other}.`,
  kin: {
    ending: (other, difference) => `Beginnt wie ${other} und endet auf eigene Art${difference}.`,
    start: (other, difference) => `Beginnt auf eigene Art und endet wie ${other}${difference}.`,
    varied: (other, difference) => `Eine Abwandlung von ${other}${difference}.`,
    moved: (other, difference) =>
      `${other} auf andere Töne versetzt, im selben Rhythmus${difference}.`,
  },
  atFirstNote: '; schon die erste Note ist anders',
  firstDifference: (place, note) => `; die erste Note, die anders ist, ist ${place}, ${note}`,
  fork: (label, ways, kinds) =>
    `Phrase ${label} geht auf ${numberWord(kinds)} Arten weiter: ${ways.map(w => `nach ${w.after} kommt ${w.label} (${w.bars})`).join(', ')}.`,
  toLearn: (labels, free) => {
    const told = labels.join(', ');
    if (labels.length === 0) return 'Noch ist keine Phrase zu lernen.';
    if (labels.length === 1) return `Eine Phrase ist zu lernen: ${told}.${freeWords(free)}`;
    return `${capital(numberWord(labels.length))} verschiedene Phrasen sind zu lernen, in dieser Reihenfolge: ${told}.${freeWords(free)}`;
  },
};

function freeWords(free: number): string {
  if (free === 0) return '';
  return free === 1
    ? ' Die andere ergibt sich, denn sie kehrt nur wieder.'
    : ` Die anderen ${numberWord(free)} ergeben sich, denn sie kehren nur wieder.`;
}
