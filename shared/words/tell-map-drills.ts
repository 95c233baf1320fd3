import type { ForksDrill, SameDrill } from '../drills/drill.ts';
import { at, got } from '../must.ts';
import { beadsOf, openingOf } from './drill-beads.ts';
import type { DrillLanguage } from './drill-phrases.ts';
import { forkSentence, kinSentence } from './map.ts';
import { noteWords } from './note-places.ts';
import type { Telling, ToldSource } from './told-drill.ts';

export function tellSame(language: DrillLanguage, source: ToldSource, drill: SameDrill): Telling {
  const { same } = language.drills;
  const { tune, map } = source;
  const { earlierNotes, laterNotes, parts, byHeart } = drill;
  const [earlier, later] = [at(map.phrases, drill.earlier), at(map.phrases, drill.later)];
  const parting = parts === null ? -1 : laterNotes.indexOf(parts);
  const hidden = new Set(byHeart ? [...earlierNotes, ...laterNotes] : []);
  const beads = beadsOf(language, source, laterNotes, { hidden, where: true });
  const not = (i: number): string => {
    if (parting < 0) return same.not.alike;
    return i < parting ? same.not['still-alike'] : same.not.parted;
  };
  const shown = {
    name: earlier.name,
    beads: beadsOf(language, source, earlierNotes, { where: true }),
  };
  return {
    question: [same.question(earlier.name, later.name), byHeart ? same.byHeart : same.byNotes],
    chains: byHeart ? [] : [shown],
    items: [
      {
        ask: same.ask(later.name),
        form: 'buttons',
        choices: [
          { label: same.sameThroughout, beads: null, not: same.not.parts },
          ...beads.map((bead, i) => ({
            label: noteWords(language, tune, bead.event),
            beads: [bead],
            not: not(i),
          })),
        ],
        right: parting + 1,
        why: null,
      },
    ],
    mend: null,
    answer: [parts === null ? same.answerSame : same.answerParts(noteWords(language, tune, parts))],
    why: kinSentence(language, tune, map, later, source.names),
  };
}

export function tellForks(language: DrillLanguage, source: ToldSource, drill: ForksDrill): Telling {
  const { forks } = language.drills;
  const { tune, map } = source;
  const { after, time, choices, right, openings } = drill;
  const here = at(map.phrases, after);
  const fork = got(
    map.forks.find(f => f.label === here.label),
    `fork after phrase ${here.label}`,
  );
  const next = at(map.phrases, at(choices, right));
  const not = (label: string): string => {
    const way = fork.goesOn.find(w => at(map.phrases, w.to).label === label);
    return way
      ? forks.follows(label, at(map.phrases, way.after).name)
      : forks.neverFollows(label, here.label);
  };
  return {
    question: [forks.question(here.label, here.name, time)],
    chains: [],
    items: [
      {
        ask: forks.ask,
        form: 'buttons',
        choices: choices.map(choice => {
          const { label, bars } = at(map.phrases, choice);
          const full = bars.filter(b => !at(tune.bars, b).pickup);
          const opening = openings ? openingOf(source, full) : null;
          return { label: forks.choice(label, opening), beads: null, not: not(label) };
        }),
        right,
        why: null,
      },
    ],
    mend: null,
    answer: [forks.answer(next.label, next.name)],
    why: forkSentence(language, map, fork),
  };
}
