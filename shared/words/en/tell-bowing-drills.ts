import { turned } from '../../bowing/lead-in-form.ts';
import type { ArriveDrill, CountDrill, IntoDrill } from '../../drills/drill.ts';
import { slursOfWayIn } from '../../drills/drill-places.ts';
import type { Direction } from '../../music/tune.ts';
import type { BeadMarks } from '../lay-beads.ts';
import type { ToldChoice, ToldItem, ToldSource } from '../told-drill.ts';
import { editSentence, noteWords, spanWords } from './bound.ts';
import {
  aBow,
  barsOfNotes,
  barsWords,
  beadsOf,
  bowWords,
  capital,
  count,
  ordinal,
} from './drill-beads.ts';
import { miscountWords } from './drills.ts';
import type { Telling } from './tell-note-drills.ts';

const strokeAt = (first: Direction, i: number): Direction => (i % 2 === 0 ? first : turned(first));

export function tellCount(source: ToldSource, drill: CountDrill): Telling {
  const { notes, strokes, starts, bars, right } = drill;
  const time = drill.pass > 1 ? `, the ${ordinal(drill.pass)} time through` : '';
  const where = `${barsWords(source, bars)}${time}`;
  const slurred = strokes.flatMap(s => s.map((_, i) => i > 0));
  const firstOnly = notes.map((_, i) => (i === 0 ? starts : null));
  const everyStroke = strokes.flatMap((s, i) => s.map(() => strokeAt(starts, i)));
  const chain = (marks: BeadMarks) => [
    { name: null, beads: beadsOf(source, notes, { ...marks, where: true }) },
  ];
  const told = (
    question: string,
    chains: Telling['chains'],
    item: Omit<ToldItem, 'form' | 'why' | 'right'>,
    answer: string,
    why: string,
  ): Telling => ({
    question: [question],
    chains,
    items: [{ ...item, form: 'buttons', right, why: null }],
    mend: null,
    answer: [answer],
    why,
  });
  const begins = `${capital(where)}${time === '' ? '' : ','} ${bars.length > 1 ? 'begin' : 'begins'} on ${aBow(starts)}.`;
  const groups = (choices: readonly (readonly number[])[], not: string): ToldChoice[] =>
    choices.map(group => ({ label: groupWords(source, group), beads: null, not }));
  switch (drill.asks) {
    case 'strokes': {
      const joined = notes.length - strokes.length;
      return told(
        `${capital(where)}: play ${bars.length > 1 ? 'them' : 'it'} and count the strokes, not the notes.`,
        chain({ slurred }),
        {
          ask: 'How many strokes?',
          choices: drill.choices.map(c => ({
            label: `${c.count}`,
            beads: null,
            not: c.from ? miscountWords[c.from] : '',
          })),
        },
        `${count(strokes.length, 'stroke')}.`,
        joined === 0
          ? `There are ${notes.length} notes and no slurs, so each note has a stroke of its own.`
          : `There are ${notes.length} notes, and ${joined} of them ${joined === 1 ? 'goes' : 'go'} on in the stroke before, which leaves ${strokes.length}.`,
      );
    }
    case 'slurs': {
      const group = drill.choices[right] ?? [];
      return told(
        `Here is ${where}, with the way the bow goes on each note and without slurs.`,
        chain({ strokes: everyStroke }),
        {
          ask: 'Which of these are one whole stroke?',
          choices: groups(
            drill.choices,
            'Those notes are not one whole stroke: look where the signs change.',
          ),
        },
        `${capital(groupWords(source, group))}.`,
        `The bow goes on the same way through ${groupWords(source, group)} and changes before and after, so they are one stroke.`,
      );
    }
    case 'direction': {
      const first = strokes[drill.stroke]?.[0] ?? -1;
      const way = drill.choices[right] ?? starts;
      return told(
        begins,
        chain({ slurred, strokes: firstOnly }),
        {
          ask: `On which stroke is ${noteWords(source.tune, first)}?`,
          choices: drill.choices.map(d => ({
            label: bowWords(d),
            beads: null,
            not: 'Count again: each stroke turns the bow, and a slur is one stroke.',
          })),
        },
        `On ${aBow(way)}.`,
        `It is the ${ordinal(drill.stroke + 1)} stroke from ${aBow(starts)}, and strokes take turns.`,
      );
    }
    case 'notes': {
      const group = drill.choices[right] ?? [];
      const which = ordinal(drill.stroke + 1);
      return told(
        begins,
        chain({ slurred, strokes: firstOnly }),
        {
          ask: `Which notes does the ${which} stroke take?`,
          choices: groups(drill.choices, 'Count strokes and not notes: a slur is one stroke.'),
        },
        `${capital(groupWords(source, group))}.`,
        `Counted by strokes, the ${which} is ${groupWords(source, group)}.`,
      );
    }
  }
}

const groupWords = ({ tune }: ToldSource, group: readonly number[]): string =>
  group.length === 1 ? noteWords(tune, group[0] ?? -1) : spanWords(tune, group);

/** Ways that are named on paper; the rest are counted. */
const mostMends = 6;

export function tellArrive(source: ToldSource, drill: ArriveDrill): Telling {
  const { tune } = source;
  const { notes, first, wanted, start, joined, lifts, mends, broken, pass } = drill;
  let stroke = start;
  const strokes = notes.map((_, i) => {
    if (i > 0 && !joined[i]) stroke = turned(stroke);
    return stroke;
  });
  const passes = source.bowing.anchors.find(a => a.id === drill.anchor)?.arrivals.length ?? 1;
  const time = passes > 1 ? `, the ${ordinal(pass)} time through,` : '';
  const beads = beadsOf(source, [...notes, first], {
    where: true,
    strokes: [...strokes, wanted],
    slurred: [...joined, false],
  });
  const more = mends.length - mostMends;
  return {
    question: [
      `The passage begins at ${noteWords(tune, first)} on ${aBow(wanted)}. As bowed here${time} the bow would come to it on ${aBow(turned(wanted))}.`,
      broken
        ? 'One thing was changed in the tune’s own bowing to turn it wrong; other changes may mend it too.'
        : 'This is how the tune is bowed.',
      lifts.length > 0
        ? 'Make one change on the way: a slur more, a slur less, one longer or shorter, or a lift where the bow may lift.'
        : 'Make one change on the way: a slur more, a slur less, one longer or shorter.',
    ],
    chains: [{ name: `The way there, from ${barsOfNotes(source, notes)}`, beads }],
    items: [],
    mend: { lifts },
    answer: [
      ...mends.slice(0, mostMends).map(edit => editSentence(tune, edit)),
      ...(more > 0 ? [`${count(more, 'other change')} would do too.`] : []),
    ],
    why: 'One stroke more or one stroke less turns round every stroke after it, so the bow arrives the other way.',
  };
}

export function tellInto(source: ToldSource, drill: IntoDrill): Telling {
  const { tune } = source;
  const { steps, first, wanted, agrees, pass } = drill;
  const far = steps.at(-1);
  const shown = far?.notes ?? [];
  const passes = source.bowing.anchors.find(a => a.id === drill.anchor)?.arrivals.length ?? 1;
  const strokes = [...shown.map(() => null), wanted];
  return {
    question: [
      `The passage begins at ${noteWords(tune, first)} on ${aBow(wanted)}. Come into it from farther and farther back, and play each way in before you go on.`,
      ...(agrees
        ? []
        : [
            `As the tune is bowed, the bow comes here the other way round${passes > 1 ? ` the ${ordinal(pass)} time through` : ''}, so begin so that it does not.`,
          ]),
    ],
    chains: [
      {
        name: null,
        beads: beadsOf(source, [...shown, first], {
          where: true,
          slurred: [...slursOfWayIn(source, drill), false],
          strokes,
        }),
      },
    ],
    items: steps.map(step => {
      const turns = step.strokes + step.lifts;
      const way = turns % 2 === 0 ? 'the same way as it began' : 'the other way';
      const lifted = step.lifts > 0 ? ` and ${count(step.lifts, 'lift')}` : '';
      return {
        ask: `${capital(count(step.bars, 'bar'))} before, from ${noteWords(tune, step.from)}: on which stroke do you begin?`,
        form: 'buttons',
        choices: (['down', 'up'] as const).map(d => ({
          label: bowWords(d),
          beads: null,
          not: `Then the passage would come on ${aBow(turned(wanted))}.`,
        })),
        right: step.start === 'down' ? 0 : 1,
        why: `${count(step.strokes, 'stroke')}${lifted} later the bow goes ${way}: ${wanted}.`,
      };
    }),
    mend: null,
    answer: steps.map(
      s =>
        `${capital(count(s.bars, 'bar'))} before: begin on ${aBow(s.start)}, ${count(s.strokes, 'stroke')} to the passage.`,
    ),
    why: 'An even number of strokes brings the bow back to the way it began, and an odd number turns it round.',
  };
}
