import { turned } from '../bowing/lead-in-model.ts';
import type { CountDrill } from '../drills/drill.ts';
import { at } from '../must.ts';
import { type BeadMarks, barSpan, beadsOf } from './drill-beads.ts';
import type { DrillLanguage } from './drill-phrases.ts';
import { noteWords, spanWords } from './note-places.ts';
import { capital } from './text.ts';
import type { Telling, ToldChoice, ToldSource } from './told-drill.ts';

export function tellCount(language: DrillLanguage, source: ToldSource, drill: CountDrill): Telling {
  const { count, beads } = language.drills;
  const { notes, strokes, starts, right } = drill;
  const bars = { ...barSpan(source, drill.bars), pass: drill.pass > 1 ? drill.pass : null };
  const slurred = strokes.flatMap(s => s.map((_, i) => i > 0));
  const firstOnly = notes.map((_, i) => (i === 0 ? starts : null));
  const everyStroke = strokes.flatMap((s, i) =>
    s.map(() => (i % 2 === 0 ? starts : turned(starts))),
  );
  const told = (
    question: string,
    marks: BeadMarks,
    ask: string,
    choices: readonly ToldChoice[],
    answer: string,
    why: string,
  ): Telling => ({
    question: [question],
    chains: [{ name: null, beads: beadsOf(language, source, notes, { ...marks, where: true }) }],
    items: [{ ask, choices, form: 'buttons', right, why: null }],
    mend: null,
    answer: [answer],
    why,
  });
  const choice = (label: string, not: string): ToldChoice => ({ label, beads: null, not });
  const group = (events: readonly number[]): string => spanWords(language, source.tune, events);
  switch (drill.asks) {
    case 'strokes':
      return told(
        count.strokes.question(bars),
        { slurred },
        count.strokes.ask,
        drill.choices.map(c => choice(`${c.count}`, c.from ? count.miscounts[c.from] : '')),
        count.strokes.answer(strokes.length),
        count.strokes.why(notes.length, notes.length - strokes.length),
      );
    case 'slurs': {
      const answer = group(at(drill.choices, right));
      return told(
        count.slurs.question(bars),
        { strokes: everyStroke },
        count.slurs.ask,
        drill.choices.map(c => choice(group(c), count.slurs.not)),
        `${capital(answer)}.`,
        count.slurs.why(answer),
      );
    }
    case 'direction':
      return told(
        count.begins(bars, starts),
        { slurred, strokes: firstOnly },
        count.direction.ask(noteWords(language, source.tune, at(at(strokes, drill.stroke), 0))),
        drill.choices.map(d => choice(beads.bow[d], count.direction.not)),
        count.direction.answer(at(drill.choices, right)),
        count.direction.why(drill.stroke + 1, starts),
      );
    case 'notes': {
      const answer = group(at(drill.choices, right));
      return told(
        count.begins(bars, starts),
        { slurred, strokes: firstOnly },
        count.notes.ask(drill.stroke + 1),
        drill.choices.map(c => choice(group(c), count.notes.not)),
        `${capital(answer)}.`,
        count.notes.why(drill.stroke + 1, answer),
      );
    }
  }
}
