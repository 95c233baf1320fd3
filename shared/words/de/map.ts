import type { NoteNames } from '../../music/note-names.ts';
import type { Tune } from '../../music/tune.ts';
import type { Fork, Phrase, SectionMap } from '../../sections/section-map.ts';
import type { MapSentences } from '../en/map.ts';
import { spokenPitch } from './bound.ts';
import { capital } from './counted.ts';

export function mapSentences(tune: Tune, map: SectionMap, names: NoteNames): MapSentences {
  return {
    phrases: map.phrases.map(p => kinSentence(tune, map, p, names)),
    forks: map.forks.map(f => forkSentence(map, f)),
    toLearn: toLearnSentence(map),
  };
}

/** „Beginnt wie A1-A2 und endet anders; die erste andere Note ist Note 3 in A6, E.“ */
export function kinSentence(tune: Tune, map: SectionMap, phrase: Phrase, names: NoteNames): string {
  const other = phrase.of === null ? undefined : map.phrases[phrase.of];
  if (!other || phrase.kin === 'own') return 'Eine eigene Phrase.';
  const part = differenceWords(tune, phrase, names);
  switch (phrase.kin) {
    case 'same':
      return `Dasselbe wie ${other.name}.`;
    case 'ending':
      return `Beginnt wie ${other.name} und endet auf eigene Art${part}.`;
    case 'start':
      return `Beginnt auf eigene Art und endet wie ${other.name}${part}.`;
    case 'varied':
      return `Eine Abwandlung von ${other.name}${part}.`;
    case 'moved':
      return `${other.name} auf andere Töne versetzt, im selben Rhythmus${part}.`;
  }
}

function differenceWords(tune: Tune, phrase: Phrase, names: NoteNames): string {
  const opening = firstNote(tune, phrase);
  if (opening === phrase.firstDifference) return '; schon die erste Note ist anders';
  const e = tune.events[phrase.firstDifference ?? -1];
  const top = e?.kind === 'note' ? e.pitches.at(-1) : undefined;
  if (e?.kind !== 'note' || !top) return '';
  const [bar, number] = e.id.split(':');
  return `; die erste Note, die anders ist, ist Note ${number} in ${bar}, ${spokenPitch(top, names)}`;
}

/** Event index of a phrase's first note, the pickup into it left out. */
function firstNote(tune: Tune, phrase: Phrase): number | null {
  const full = phrase.bars.map(b => tune.bars[b]).find(bar => bar && !bar.pickup);
  for (let e = full?.first ?? phrase.first; e < phrase.end; e++) {
    if (tune.events[e]?.kind === 'note') return e;
  }
  return null;
}

/** „Phrase a geht auf zwei Arten weiter: nach A1-A2 kommt b (A3-A4), nach …“ */
export function forkSentence(map: SectionMap, fork: Fork): string {
  const ways = fork.goesOn.map(({ after, to }) => {
    const [from, next] = [map.phrases[after], map.phrases[to]];
    return `nach ${from?.name} kommt ${next?.label} (${next?.name})`;
  });
  const count = new Set(fork.goesOn.map(w => map.phrases[w.to]?.label)).size;
  return `Phrase ${fork.label} geht auf ${numberWord(count)} Arten weiter: ${ways.join(', ')}.`;
}

/** „Fünf verschiedene Phrasen sind zu lernen, in dieser Reihenfolge: a, b, c, a′, d.“ */
export function toLearnSentence(map: SectionMap): string {
  const count = map.toLearn.length;
  const free = map.phrases.length - count;
  const labels = map.toLearn.map(i => map.phrases[i]?.label).join(', ');
  if (count === 0) return 'Noch ist keine Phrase zu lernen.';
  if (count === 1) return `Eine Phrase ist zu lernen: ${labels}.${freeWords(free)}`;
  const first = `${capital(numberWord(count))} verschiedene Phrasen sind zu lernen`;
  return `${first}, in dieser Reihenfolge: ${labels}.${freeWords(free)}`;
}

function freeWords(free: number): string {
  if (free === 0) return '';
  return free === 1
    ? ' Die andere ergibt sich, denn sie kehrt nur wieder.'
    : ` Die anderen ${numberWord(free)} ergeben sich, denn sie kehren nur wieder.`;
}

const numbers = 'keine eine zwei drei vier fünf sechs sieben acht neun zehn elf zwölf'.split(' ');
const numberWord = (n: number): string => numbers[n] ?? `${n}`;
