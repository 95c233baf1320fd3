import { turned } from '../bowing/lead-in-model.ts';
import type { ArriveDrill, IntoDrill } from '../drills/drill.ts';
import { slursOfWayIn } from '../drills/drill-places.ts';
import { got } from '../must.ts';
import { editSentence } from './bowing.ts';
import { barsOfNotes, beadsOf } from './drill-beads.ts';
import type { DrillLanguage } from './drill-phrases.ts';
import { noteWords } from './note-places.ts';
import { capital } from './text.ts';
import type { Telling, ToldSource } from './told-drill.ts';

/** Ways that are named on paper; the rest are counted. */
const mostMends = 6;

export function tellArrive(
  language: DrillLanguage,
  source: ToldSource,
  drill: ArriveDrill,
): Telling {
  const { arrive } = language.drills;
  const { tune } = source;
  const { notes, first, wanted, joined, lifts, mends } = drill;
  let stroke = drill.start;
  const strokes = notes.map((_, i) => {
    if (i > 0 && !joined[i]) stroke = turned(stroke);
    return stroke;
  });
  const more = mends.length - mostMends;
  const place = noteWords(language, tune, first);
  return {
    question: [
      arrive.question(place, wanted, passOf(source, drill)),
      drill.broken ? arrive.broken : arrive.asBowed,
      lifts.length > 0 ? arrive.changeOrLift : arrive.change,
    ],
    chains: [
      {
        name: arrive.wayThere(barsOfNotes(source, notes)),
        beads: beadsOf(language, source, [...notes, first], {
          where: true,
          strokes: [...strokes, wanted],
          slurred: [...joined, false],
        }),
      },
    ],
    items: [],
    mend: { lifts },
    answer: [
      ...mends.slice(0, mostMends).map(edit => editSentence(language, tune, edit)),
      ...(more > 0 ? [arrive.moreMends(more)] : []),
    ],
    why: arrive.why,
  };
}

export function tellInto(language: DrillLanguage, source: ToldSource, drill: IntoDrill): Telling {
  const { into, beads } = language.drills;
  const { tune } = source;
  const { steps, first, wanted } = drill;
  const shown = steps.at(-1)?.notes ?? [];
  return {
    question: [
      into.question(noteWords(language, tune, first), wanted),
      ...(drill.agrees ? [] : [into.comesTurned(passOf(source, drill))]),
    ],
    chains: [
      {
        name: null,
        beads: beadsOf(language, source, [...shown, first], {
          where: true,
          slurred: [...slursOfWayIn(source, drill), false],
          strokes: [...shown.map(() => null), wanted],
        }),
      },
    ],
    items: steps.map(step => ({
      ask: capital(into.ask(step.bars, noteWords(language, tune, step.from))),
      form: 'buttons',
      choices: (['down', 'up'] as const).map(d => ({
        label: beads.bow[d],
        beads: null,
        not: into.not(turned(wanted)),
      })),
      right: step.start === 'down' ? 0 : 1,
      why: into.itemWhy(step.strokes, step.lifts, wanted),
    })),
    mend: null,
    answer: steps.map(step => capital(into.answer(step.bars, step.start, step.strokes))),
    why: into.why,
  };
}

/** The time through that a drill shows; null where the passage is reached only once. */
function passOf({ bowing }: ToldSource, { anchor, pass }: ArriveDrill | IntoDrill): number | null {
  const { arrivals } = got(
    bowing.anchors.find(a => a.id === anchor),
    `anchor ${anchor}`,
  );
  return arrivals.length > 1 ? pass : null;
}
