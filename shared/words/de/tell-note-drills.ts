import type { CallDrill, GapsDrill, StartDrill } from '../../drills/drill.ts';
import { firstFullNote, strokesIntoBar } from '../../drills/drill-places.ts';
import type { Stop } from '../../fingering/fingering.ts';
import { letterOf } from '../lay-beads.ts';
import type { ToldDrill, ToldItem, ToldSource } from '../told-drill.ts';
import { noteWords, spokenFinger, stringNames } from './bound.ts';
import {
  barsDative,
  barsOfNotes,
  barsWords,
  beadsOf,
  bowWords,
  saidNote,
  shortStops,
} from './drill-beads.ts';
import { counted, strokes as strokeCount } from './grammar.ts';

/** What a kind of drill says; its name and level are added to all alike. */
export type Telling = Omit<ToldDrill, 'kind' | 'level' | 'title' | 'levelSays'>;

export function tellCall(source: ToldSource, drill: CallDrill): Telling {
  const { bars, asked, choices, right } = drill;
  const call = barsWords(source, bars);
  const answer = choices[right] ?? [];
  const sorted = (notes: readonly number[]): string => [...notes].sort((a, b) => a - b).join();
  const not = (notes: readonly number[]): string => {
    if (sorted(notes) !== sorted(answer)) {
      return `Das sind die Noten von ${barsOfNotes(source, notes)}.`;
    }
    const at = notes.findIndex((e, i) => e !== answer[i]);
    return `Dort haben Note ${at + 1} und ${at + 2} die Plätze getauscht.`;
  };
  return {
    question: [
      `Spiel ${bars.length > 1 ? 'die ' : ''}${call} einmal, oder lass es dir vorspielen. Schau weg, antworte mit deiner Geige aus dem Gedächtnis, dann wähle.`,
    ],
    chains: [],
    items: [
      {
        ask: `Welche Auswahl hat die Noten von ${barsDative(source, asked)}?`,
        form: 'buttons',
        choices: choices.map((notes, i) => ({
          label: `Auswahl ${i + 1}`,
          beads: beadsOf(source, notes, { noBars: true, where: true }),
          not: not(notes),
        })),
        right,
        why: null,
      },
    ],
    mend: null,
    answer: [`Auswahl ${right + 1}.`],
    why: `${barsWords(source, asked)}: ${answer.map(e => letterOf(source, e)).join(' ')}.`,
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
      `In ${barsDative(source, bars)} ${gaps.length === 1 ? 'ist' : 'sind'} ${counted(gaps.length, 'Note', 'Noten')} von ${notes.length} weggelassen. Spiel alles mit allen Noten durch, dann trag ein, was fehlt.`,
    ],
    chains: [{ name: null, beads: beadsOf(source, notes, { hidden: new Set(gaps), where: true }) }],
    items: gaps.map((gap, i) => ({
      ask: noteWords(source.tune, gap),
      form: 'list',
      choices: choices.map((e, at) => ({ label: label(e, at), beads: null, not: '' })),
      right: right[i] ?? -1,
      why: null,
    })),
    mend: null,
    answer: gaps.map(gap => `${noteWords(source.tune, gap)}: ${saidNote(source, gap)}.`),
    why: 'Durchgangsnoten werden zuerst weggelassen und Phrasenanfänge zuletzt, denn das Gedächtnis hält sich an die Anfänge.',
  };
}

export function tellStart(source: ToldSource, drill: StartDrill): Telling {
  const { event, notes, fingers, strings, strokes, right, varying } = drill;
  const { tune, map, tuning } = source;
  const names = stringNames(tuning, source.names);
  const phrase = map.phrases.find(
    p => p.first === event || firstFullNote(source, p.bars) === event,
  );
  const where = phrase ? `, wo Phrase ${phrase.label} beginnt` : '';
  const time = varying ? ', beim ersten Mal' : '';
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
    question: [`Beginn bei ${place}${where}${time}. Setz Finger und Bogen, bevor du antwortest.`],
    chains: [],
    items: [
      item(
        'Welche Note?',
        notes.map(e => letterOf(source, e)),
        right.note,
        `Es ist ${said.split(', ')[0]}.`,
        'Dort steht eine andere Note.',
      ),
      item(
        'Welche Saite?',
        strings.map(s => names[s - 1] ?? ''),
        right.string,
        `Sie liegt auf der ${names[(strings[right.string] ?? 1) - 1]}-Saite.`,
        'Auf dieser Saite liegt sie nicht.',
      ),
      item(
        'Welcher Finger?',
        fingers.map(finger),
        right.finger,
        `Der Finger: ${finger(event)}.`,
        'Dieser Finger gäbe auf ihrer Saite eine andere Note.',
      ),
      item(
        'Welcher Strich?',
        strokes.map(bowWords),
        right.stroke,
        `Sie kommt im ${bowWords(stroke)}${time}.`,
        'Der Bogen kommt anders herum zu ihr.',
      ),
    ],
    mend: null,
    answer: [`${said}, im ${bowWords(stroke)}${time}.`],
    why: strokeReason(source, event, stroke),
  };
}

/** Why a note has its stroke: the strokes before it in its bar. */
function strokeReason(source: ToldSource, event: number, stroke: 'down' | 'up'): string {
  const { reached, before } = strokesIntoBar(source, event);
  if (before === 0)
    return `Ihr Takt wird im ${bowWords(reached)} erreicht, und das ist der erste Strich des Takts.`;
  return `Ihr Takt wird im ${bowWords(reached)} erreicht, und ${strokeCount(before)} später kommt ein ${bowWords(stroke)}.`;
}
