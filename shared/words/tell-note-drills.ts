import type { CallDrill, GapsDrill, StartDrill } from '../drills/drill.ts';
import { firstFullNote, strokesIntoBar } from '../drills/drill-places.ts';
import { noteAt } from '../music/note-at.ts';
import { at } from '../must.ts';
import { barSpan, barsOfNotes, beadsOf, letterOf, saidNote, shortStops } from './drill-beads.ts';
import type { DrillLanguage } from './drill-phrases.ts';
import { noteWords } from './note-places.ts';
import { spokenFinger, spokenPitches, stringNames } from './spoken.ts';
import { capital } from './text.ts';
import type { Telling, ToldItem, ToldSource } from './told-drill.ts';

export function tellCall(language: DrillLanguage, source: ToldSource, drill: CallDrill): Telling {
  const { call } = language.drills;
  const { bars, asked, choices, right } = drill;
  const part = barSpan(source, asked);
  const answer = at(choices, right);
  const sorted = (notes: readonly number[]): string => [...notes].sort((a, b) => a - b).join();
  const not = (notes: readonly number[]): string => {
    if (sorted(notes) !== sorted(answer)) return call.notesOf(barsOfNotes(source, notes));
    const place = notes.findIndex((e, i) => e !== answer[i]);
    return call.swapped(place + 1, place + 2);
  };
  return {
    question: [call.question(barSpan(source, bars))],
    chains: [],
    items: [
      {
        ask: call.ask(part),
        form: 'buttons',
        choices: choices.map((notes, i) => ({
          label: call.choice(i + 1),
          beads: beadsOf(language, source, notes, { noBars: true, where: true }),
          not: not(notes),
        })),
        right,
        why: null,
      },
    ],
    mend: null,
    answer: [`${call.choice(right + 1)}.`],
    why: call.why(part, answer.map(e => letterOf(source, e)).join(' ')),
  };
}

export function tellGaps(language: DrillLanguage, source: ToldSource, drill: GapsDrill): Telling {
  const said = language.drills.gaps;
  const { bars, notes, gaps, choices, right } = drill;
  const letters = choices.map(e => letterOf(source, e));
  /** One letter may be two notes where the key changes in the tune: then the finger tells. */
  const labels = letters.map((letter, i) =>
    letters.indexOf(letter) === letters.lastIndexOf(letter)
      ? letter
      : `${letter} ${shortStops(language, source, at(choices, i))}`,
  );
  const hidden = new Set(gaps);
  const place = (gap: number): string => capital(noteWords(language, source.tune, gap));
  return {
    question: [said.question(barSpan(source, bars), gaps.length, notes.length)],
    chains: [{ name: null, beads: beadsOf(language, source, notes, { hidden, where: true }) }],
    items: gaps.map((gap, i) => ({
      ask: place(gap),
      form: 'list',
      choices: labels.map(label => ({ label, beads: null, not: '' })),
      right: at(right, i),
      why: null,
    })),
    mend: null,
    answer: gaps.map(gap => `${place(gap)}: ${saidNote(language, source, gap)}.`),
    why: said.why,
  };
}

export function tellStart(language: DrillLanguage, source: ToldSource, drill: StartDrill): Telling {
  const { start, beads } = language.drills;
  const { event, right, varying } = drill;
  const { tune, map, names } = source;
  const phrase = map.phrases.find(
    p => p.first === event || firstFullNote(source, p.bars) === event,
  );
  const stroke = at(drill.strokes, right.stroke);
  const strings = stringNames(language, source.tuning, names);
  const string = (s: number): string => at(strings, s - 1);
  const finger = (e: number): string => {
    const stop = source.fingering[e]?.[0];
    return stop ? spokenFinger(language, stop) : '';
  };
  const item = (
    { ask, not }: { readonly ask: string; readonly not: string },
    labels: readonly string[],
    answer: number,
    why: string,
  ): ToldItem => ({
    ask,
    form: 'buttons',
    choices: labels.map(label => ({ label, beads: null, not })),
    right: answer,
    why,
  });
  const { asks } = start;
  const name = spokenPitches(language, noteAt(tune, event).pitches, names);
  const { reached, before } = strokesIntoBar(source, event);
  return {
    question: [start.question(noteWords(language, tune, event), phrase?.label ?? null, varying)],
    chains: [],
    items: [
      item(
        asks.note,
        drill.notes.map(e => letterOf(source, e)),
        right.note,
        asks.note.why(name),
      ),
      item(
        asks.string,
        drill.strings.map(string),
        right.string,
        asks.string.why(string(at(drill.strings, right.string))),
      ),
      item(asks.finger, drill.fingers.map(finger), right.finger, asks.finger.why(finger(event))),
      item(
        asks.stroke,
        drill.strokes.map(d => beads.bow[d]),
        right.stroke,
        asks.stroke.why({ stroke, varying }),
      ),
    ],
    mend: null,
    answer: [start.answer(saidNote(language, source, event), stroke, varying)],
    why: start.why(reached, before, stroke),
  };
}
