import type { ForksDrill, SameDrill } from '../../drills/drill.ts';
import { openingOf } from '../lay-beads.ts';
import type { ToldSource } from '../told-drill.ts';
import { forkSentence, kinSentence, noteWords } from './bound.ts';
import { beadsOf, ordinal } from './drill-beads.ts';
import type { Telling } from './tell-note-drills.ts';

export function tellSame(source: ToldSource, drill: SameDrill): Telling {
  const { tune, map } = source;
  const { earlierNotes, laterNotes, parts, byHeart } = drill;
  const [earlier, later] = [map.phrases[drill.earlier], map.phrases[drill.later]];
  const at = parts === null ? -1 : laterNotes.indexOf(parts);
  const hidden = new Set(byHeart ? [...earlierNotes, ...laterNotes] : []);
  const beads = beadsOf(source, laterNotes, { hidden, where: true });
  const not = (i: number): string => {
    if (at < 0) return 'They are alike there, and all the way.';
    return i < at ? 'They are still alike there.' : 'They have parted before that.';
  };
  return {
    question: [
      `${earlier?.name} and ${later?.name}: are they the same all the way, or at which note do they part?`,
      byHeart
        ? 'Play both from memory, then point to the place in the second.'
        : 'Play both, then point to the place in the second.',
    ],
    chains: byHeart
      ? []
      : [{ name: earlier?.name ?? null, beads: beadsOf(source, earlierNotes, { where: true }) }],
    items: [
      {
        ask: `The second, ${later?.name}`,
        form: 'buttons',
        choices: [
          { label: 'the same all the way', beads: null, not: 'They part somewhere.' },
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
      parts === null ? 'They are the same all the way.' : `They part at ${noteWords(tune, parts)}.`,
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
      ? `Phrase ${label} follows after ${map.phrases[way.after]?.name}.`
      : `Phrase ${label} never follows phrase ${here?.label}.`;
  };
  return {
    question: [
      `You have just played phrase ${here?.label} at ${here?.name}, the ${ordinal(time)} time that it stands in the tune. Go on from there.`,
    ],
    chains: [],
    items: [
      {
        ask: 'What comes next?',
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
