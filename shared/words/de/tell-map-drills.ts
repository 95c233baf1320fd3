import type { ForksDrill, SameDrill } from '../../drills/drill.ts';
import { openingOf } from '../lay-beads.ts';
import type { ToldSource } from '../told-drill.ts';
import { forkSentence, kinSentence, noteWords } from './bound.ts';
import { beadsOf } from './drill-beads.ts';
import { ordinal } from './grammar.ts';
import type { Telling } from './tell-note-drills.ts';

export function tellSame(source: ToldSource, drill: SameDrill): Telling {
  const { tune, map } = source;
  const { earlierNotes, laterNotes, parts, byHeart } = drill;
  const [earlier, later] = [map.phrases[drill.earlier], map.phrases[drill.later]];
  const at = parts === null ? -1 : laterNotes.indexOf(parts);
  const hidden = new Set(byHeart ? [...earlierNotes, ...laterNotes] : []);
  const beads = beadsOf(source, laterNotes, { hidden, where: true });
  const not = (i: number): string => {
    if (at < 0) return 'Dort sind sie gleich, und überall sonst auch.';
    return i < at ? 'Dort sind sie noch gleich.' : 'Sie haben sich schon davor getrennt.';
  };
  return {
    question: [
      `${earlier?.name} und ${later?.name}: Sind sie durchweg gleich, oder bei welcher Note trennen sie sich?`,
      byHeart
        ? 'Spiel beide auswendig, dann zeig auf die Stelle in der zweiten.'
        : 'Spiel beide, dann zeig auf die Stelle in der zweiten.',
    ],
    chains: byHeart
      ? []
      : [{ name: earlier?.name ?? null, beads: beadsOf(source, earlierNotes, { where: true }) }],
    items: [
      {
        ask: `Die zweite, ${later?.name}`,
        form: 'buttons',
        choices: [
          { label: 'durchweg gleich', beads: null, not: 'Irgendwo trennen sie sich.' },
          ...beads.map((bead, i) => ({
            label: noteWords(tune, bead.event),
            beads: [bead],
            not: not(i),
          })),
        ],
        right: at + 1,
        why: null,
      },
    ],
    mend: null,
    answer: [
      parts === null
        ? 'Sie sind durchweg gleich.'
        : `Sie trennen sich bei ${noteWords(tune, parts)}.`,
    ],
    why: later ? kinSentence(tune, map, later, source.names) : '',
  };
}

export function tellForks(source: ToldSource, drill: ForksDrill): Telling {
  const { map } = source;
  const { after, time, choices, right, openings } = drill;
  const here = map.phrases[after];
  const fork = map.forks.find(f => f.label === here?.label);
  const next = map.phrases[choices[right] ?? -1];
  const not = (choice: number): string => {
    const label = map.phrases[choice]?.label;
    const way = fork?.goesOn.find(w => map.phrases[w.to]?.label === label);
    return way
      ? `Phrase ${label} kommt nach ${map.phrases[way.after]?.name}.`
      : `Phrase ${label} kommt nie nach Phrase ${here?.label}.`;
  };
  return {
    question: [
      `Du hast gerade Phrase ${here?.label} bei ${here?.name} gespielt; es ist das ${ordinal(time)} Mal, dass sie im Stück steht. Spiel von dort weiter.`,
    ],
    chains: [],
    items: [
      {
        ask: 'Was kommt als Nächstes?',
        form: 'buttons',
        choices: choices.map(choice => {
          const phrase = map.phrases[choice];
          const bars = (phrase?.bars ?? []).filter(b => source.tune.bars[b]?.pickup === false);
          const opening = openings ? `: ${openingOf(source, bars)} …` : '';
          return { label: `Phrase ${phrase?.label}${opening}`, beads: null, not: not(choice) };
        }),
        right,
        why: null,
      },
    ],
    mend: null,
    answer: [`Phrase ${next?.label}, ${next?.name}.`],
    why: fork ? forkSentence(map, fork) : '',
  };
}
