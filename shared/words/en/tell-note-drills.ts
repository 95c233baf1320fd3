import type { CallDrill, GapsDrill, StartDrill } from '../../drills/drill.ts';
import { firstFullNote, strokesIntoBar } from '../../drills/drill-places.ts';
import type { Stop } from '../../fingering/fingering.ts';
import { letterOf } from '../lay-beads.ts';
import type { ToldDrill, ToldItem, ToldSource } from '../told-drill.ts';
import { noteWords, spokenFinger, stringNames } from './bound.ts';
import {
  aBow,
  barsOfNotes,
  barsWords,
  beadsOf,
  bowWords,
  capital,
  count,
  saidNote,
  shortStops,
} from './drill-beads.ts';

/** What a kind of drill says; its name and level are added to all alike. */
export type Telling = Omit<ToldDrill, 'kind' | 'level' | 'title' | 'levelSays'>;

export function tellCall(source: ToldSource, drill: CallDrill): Telling {
  const { bars, asked, choices, right } = drill;
  const [call, part] = [barsWords(source, bars), barsWords(source, asked)];
  const answer = choices[right] ?? [];
  const sorted = (notes: readonly number[]): string => [...notes].sort((a, b) => a - b).join();
  const not = (notes: readonly number[]): string => {
    if (sorted(notes) !== sorted(answer)) {
      return `Those are the notes of ${barsOfNotes(source, notes)}.`;
    }
    const at = notes.findIndex((e, i) => e !== answer[i]);
    return `There notes ${at + 1} and ${at + 2} have changed places.`;
  };
  return {
    question: [
      `Play ${call} once, or have it played to you. Look away, answer with your fiddle from memory, then choose.`,
    ],
    chains: [],
    items: [
      {
        ask: `Which choice has the notes of ${part}?`,
        form: 'buttons',
        choices: choices.map((notes, i) => ({
          label: `Choice ${i + 1}`,
          beads: beadsOf(source, notes, { noBars: true, where: true }),
          not: not(notes),
        })),
        right,
        why: null,
      },
    ],
    mend: null,
    answer: [`Choice ${right + 1}.`],
    why: `${capital(part)} goes ${answer.map(e => letterOf(source, e)).join(' ')}.`,
  };
}

export function tellGaps(source: ToldSource, drill: GapsDrill): Telling {
  const { bars, notes, gaps, choices, right } = drill;
  const letters = choices.map(e => letterOf(source, e));
  /** One letter may be two notes where the key changes in the tune: then the finger tells. */
  const label = (e: number, i: number): string => {
    const letter = letters[i] ?? '';
    const isAlone = letters.indexOf(letter) === letters.lastIndexOf(letter);
    return isAlone ? letter : `${letter} ${shortStops(source, e)}`;
  };
  return {
    question: [
      `In ${barsWords(source, bars)}, ${count(gaps.length, 'note')} of ${notes.length} ${gaps.length === 1 ? 'is' : 'are'} left out. Play it through with all its notes, then fill in what is missing.`,
    ],
    chains: [{ name: null, beads: beadsOf(source, notes, { hidden: new Set(gaps), where: true }) }],
    items: gaps.map((gap, i) => ({
      ask: capital(noteWords(source.tune, gap)),
      form: 'list',
      choices: choices.map((e, at) => ({ label: label(e, at), beads: null, not: '' })),
      right: right[i] ?? -1,
      why: null,
    })),
    mend: null,
    answer: gaps.map(gap => `${capital(noteWords(source.tune, gap))}: ${saidNote(source, gap)}.`),
    why: 'Notes that only pass between two others are left out first and phrase starts last, since memory takes hold at the starts.',
  };
}

export function tellStart(source: ToldSource, drill: StartDrill): Telling {
  const { event, notes, fingers, strings, strokes, right, varying } = drill;
  const { tune, map, tuning } = source;
  const names = stringNames(tuning, source.names);
  const phrase = map.phrases.find(
    p => p.first === event || firstFullNote(source, p.bars) === event,
  );
  const where = phrase ? `, where phrase ${phrase.label} begins` : '';
  const time = varying ? ', the first time through' : '';
  const stroke = strokes[right.stroke] ?? 'down';
  const item = (
    ask: string,
    labels: readonly string[],
    at: number,
    why: string,
    not: string,
  ): ToldItem => ({
    ask,
    form: 'buttons',
    choices: labels.map(label => ({ label, beads: null, not })),
    right: at,
    why,
  });
  const finger = (e: number): string => {
    const stop: Stop | null = source.fingering[e]?.[0] ?? null;
    return stop ? spokenFinger(stop) : '';
  };
  const place = noteWords(tune, event);
  const said = saidNote(source, event);
  return {
    question: [`Start at ${place}${where}${time}. Set the finger and the bow before you answer.`],
    chains: [],
    items: [
      item(
        'Which note?',
        notes.map(e => letterOf(source, e)),
        right.note,
        `It is ${said.split(', ')[0]}.`,
        'Another note stands there.',
      ),
      item(
        'Which string?',
        strings.map(s => names[s - 1] ?? ''),
        right.string,
        `It lies on the ${names[(strings[right.string] ?? 1) - 1]} string.`,
        'It does not lie on that string.',
      ),
      item(
        'Which finger?',
        fingers.map(finger),
        right.finger,
        `The finger is ${finger(event)}.`,
        'That finger would give another note on its string.',
      ),
      item(
        'Which stroke?',
        strokes.map(bowWords),
        right.stroke,
        `It comes on ${aBow(stroke)}${time}.`,
        'The bow comes to it the other way.',
      ),
    ],
    mend: null,
    answer: [`${said}, on ${aBow(stroke)}${time}.`],
    why: strokeReason(source, event, stroke),
  };
}

/** Why a note has its stroke: the strokes before it in its bar. */
function strokeReason(source: ToldSource, event: number, stroke: 'down' | 'up'): string {
  const { reached, before } = strokesIntoBar(source, event);
  if (before === 0)
    return `Its bar is reached on ${aBow(reached)}, and this is the first stroke of the bar.`;
  return `Its bar is reached on ${aBow(reached)}, and ${count(before, 'stroke')} later the bow goes ${stroke}.`;
}
