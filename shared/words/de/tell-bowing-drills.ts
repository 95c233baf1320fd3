import { turned } from '../../bowing/lead-in-form.ts';
import type { ArriveDrill, CountDrill, IntoDrill } from '../../drills/drill.ts';
import { slursOfWayIn } from '../../drills/drill-places.ts';
import type { Direction } from '../../music/tune.ts';
import type { BeadMarks } from '../lay-beads.ts';
import type { ToldChoice, ToldItem, ToldSource } from '../told-drill.ts';
import { editSentence, noteWords, spanWords } from './bound.ts';
import { barsOfNotes, barsWords, beadsOf, bowWords } from './drill-beads.ts';
import { miscountWords } from './drills.ts';
import { counted, ordinal, strokes as strokeCount } from './grammar.ts';
import type { Telling } from './tell-note-drills.ts';

const strokeAt = (first: Direction, i: number): Direction => (i % 2 === 0 ? first : turned(first));

export function tellCount(source: ToldSource, drill: CountDrill): Telling {
  const { notes, strokes, starts, bars, right } = drill;
  const time = drill.pass > 1 ? `, beim ${ordinal(drill.pass, 'n')} Mal` : '';
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
  const begins = `${where}: Der erste Strich ist ein ${bowWords(starts)}.`;
  const groups = (choices: readonly (readonly number[])[], not: string): ToldChoice[] =>
    choices.map(group => ({ label: groupWords(source, group), beads: null, not }));
  switch (drill.asks) {
    case 'strokes': {
      const joined = notes.length - strokes.length;
      return told(
        `${where}: Spiel und zähl die Striche, nicht die Noten.`,
        chain({ slurred }),
        {
          ask: 'Wie viele Striche?',
          choices: drill.choices.map(c => ({
            label: `${c.count}`,
            beads: null,
            not: c.from ? miscountWords[c.from] : '',
          })),
        },
        `${strokeCount(strokes.length)}.`,
        joined === 0
          ? `Es sind ${notes.length} Noten ohne Bindebögen, also hat jede ihren eigenen Strich.`
          : `Es sind ${notes.length} Noten, und ${joined} davon ${joined === 1 ? 'bleibt' : 'bleiben'} im Strich davor; das macht ${strokes.length}.`,
      );
    }
    case 'slurs': {
      const group = drill.choices[right] ?? [];
      return told(
        `${where}, mit der Richtung des Bogens auf jeder Note und ohne Bindebögen.`,
        chain({ strokes: everyStroke }),
        {
          ask: 'Was davon ist genau ein ganzer Strich?',
          choices: groups(
            drill.choices,
            'Diese Noten sind kein ganzer Strich: Schau, wo die Zeichen wechseln.',
          ),
        },
        `${groupWords(source, group)}.`,
        `Durch ${groupWords(source, group)} geht der Bogen in einer Richtung weiter, davor und danach wechselt er; also sind sie ein Strich.`,
      );
    }
    case 'direction': {
      const first = strokes[drill.stroke]?.[0] ?? -1;
      const way = drill.choices[right] ?? starts;
      return told(
        begins,
        chain({ slurred, strokes: firstOnly }),
        {
          ask: `In welchem Strich ist ${noteWords(source.tune, first)}?`,
          choices: drill.choices.map(d => ({
            label: bowWords(d),
            beads: null,
            not: 'Zähl noch einmal: Jeder Strich kehrt den Bogen um, und ein Bindebogen ist ein Strich.',
          })),
        },
        `Im ${bowWords(way)}.`,
        `Es ist der ${ordinal(drill.stroke + 1)} Strich, mit einem ${bowWords(starts)} gezählt, und Striche wechseln sich ab.`,
      );
    }
    case 'notes': {
      const group = drill.choices[right] ?? [];
      const which = ordinal(drill.stroke + 1);
      return told(
        begins,
        chain({ slurred, strokes: firstOnly }),
        {
          ask: `Welche Noten nimmt der ${which} Strich?`,
          choices: groups(
            drill.choices,
            'Zähl Striche und nicht Noten: Ein Bindebogen ist ein Strich.',
          ),
        },
        `${groupWords(source, group)}.`,
        `Nach Strichen gezählt ist der ${which}: ${groupWords(source, group)}.`,
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
  const time = passes > 1 ? ` beim ${ordinal(pass, 'n')} Mal` : '';
  const beads = beadsOf(source, [...notes, first], {
    where: true,
    strokes: [...strokes, wanted],
    slurred: [...joined, false],
  });
  const more = mends.length - mostMends;
  return {
    question: [
      `Die Stelle beginnt bei ${noteWords(tune, first)} im ${bowWords(wanted)}. So gestrichen käme der Bogen${time} im ${bowWords(turned(wanted))} zu ihr.`,
      broken
        ? 'An den eigenen Strichen des Stücks wurde eines geändert, damit es verkehrt ankommt; auch andere Änderungen können es richten.'
        : 'So wird das Stück gestrichen.',
      lifts.length > 0
        ? 'Ändere unterwegs eines: ein Bindebogen mehr, einer weniger, einer länger oder kürzer, oder heb den Bogen ab, wo er sich abheben lässt.'
        : 'Ändere unterwegs eines: ein Bindebogen mehr, einer weniger, einer länger oder kürzer.',
    ],
    chains: [{ name: `Der Weg dorthin, aus ${barsOfNotes(source, notes)}`, beads }],
    items: [],
    mend: { lifts },
    answer: [
      ...mends.slice(0, mostMends).map(edit => editSentence(tune, edit)),
      ...(more > 0
        ? [`${counted(more, 'andere Änderung ginge', 'andere Änderungen gingen')} auch.`]
        : []),
    ],
    why: 'Ein Strich mehr oder weniger kehrt alle Striche danach um, also kommt der Bogen anders herum an.',
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
      `Die Stelle beginnt bei ${noteWords(tune, first)} im ${bowWords(wanted)}. Komm von immer weiter davor in sie hinein, und spiel jeden Weg, bevor du weitergehst.`,
      ...(agrees
        ? []
        : [
            `So, wie das Stück gestrichen wird, kommt der Bogen${passes > 1 ? ` beim ${ordinal(pass, 'n')} Mal` : ''} verkehrt herum hierher; beginn also so, dass er es nicht tut.`,
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
      const way =
        turns % 2 === 0 ? 'wieder in der Richtung des Anfangs' : 'in der anderen Richtung';
      const lifted =
        step.lifts > 0 ? ` und ${counted(step.lifts, 'Mal Abheben', 'Mal Abheben')}` : '';
      return {
        ask: `${counted(step.bars, 'Takt', 'Takte')} davor, ab ${noteWords(tune, step.from)}: In welchem Strich beginnst du?`,
        form: 'buttons',
        choices: (['down', 'up'] as const).map(d => ({
          label: bowWords(d),
          beads: null,
          not: `Dann käme die Stelle im ${bowWords(turned(wanted))}.`,
        })),
        right: step.start === 'down' ? 0 : 1,
        why: `${strokeCount(step.strokes)}${lifted} später geht der Bogen ${way}: ein ${bowWords(wanted)}.`,
      };
    }),
    mend: null,
    answer: steps.map(
      s =>
        `${counted(s.bars, 'Takt', 'Takte')} davor: Beginn im ${bowWords(s.start)}, ${strokeCount(s.strokes)} bis zur Stelle.`,
    ),
    why: 'Eine gerade Zahl von Strichen bringt den Bogen in die Richtung des Anfangs zurück, eine ungerade kehrt ihn um.',
  };
}
