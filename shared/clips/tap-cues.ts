import type { Performance } from '../music/performance.ts';
import type { Tune } from '../music/tune.ts';
import { at } from '../must.ts';
import type { SectionMap } from '../sections/section-map.ts';
import type { ClipCue } from './clip-cue.ts';
import { placeCues, plainName } from './place-cues.ts';

/** The start of a phrase in the tune as played: where one taps along with a recording. */
export interface TapPoint {
  /** As a cue names it: `A1`, `A1/2`. */
  readonly bar: string;
  /** Index in `performance.bars`. */
  readonly played: number;
  /** Which time that bar is being played, from 1. */
  readonly pass: number;
  /** The phrase's letter, and its bars: `A1-A2`. */
  readonly label: string;
  readonly bars: string;
}

/** A point that has been tapped. */
export interface TappedCue {
  readonly bar: string;
  /** From the start of the recording. */
  readonly seconds: number;
}

/**
 * Where each phrase begins, in played order. In `AABB` with phrases of two bars these are A1 A3 A5 A7,
 * A1/2 A3/2 …, B1 and so on. A pickup is left out: one taps on the first full bar. A phrase that no
 * cue can name without being taken for another is left out too.
 */
export function tapPoints(
  tune: Tune,
  performance: Performance,
  map: SectionMap,
): readonly TapPoint[] {
  const starting = new Map(
    map.phrases.flatMap(phrase => {
      const first = phrase.name.split('-')[0];
      const bar = phrase.bars.find(b => at(tune.bars, b).name === first);
      return bar === undefined ? [] : [[bar, phrase] as const];
    }),
  );
  return performance.bars.flatMap(({ bar, pass }, played) => {
    const phrase = starting.get(bar);
    const name = phrase && cueName(tune, performance, played);
    return phrase && name
      ? [{ bar: name, played, pass, label: phrase.label, bars: phrase.name }]
      : [];
  });
}

/** The shortest name that a cue can have and mean this bar of the tune as played; null without one. */
function cueName(tune: Tune, performance: Performance, played: number): string | null {
  const names = performance.bars.slice(0, played + 1).map(({ bar }) => at(tune.bars, bar).name);
  const written = at(names, played);
  const plain = plainName(written);
  const times = names.filter(name => plainName(name) === plain).length;
  const known = [times === 1 ? plain : `${plain}/${times}`, written];
  const found = known.find(name => {
    const cue = cueOf({ bar: name, seconds: 0 });
    return placeCues(tune, performance, [cue]).placed[0]?.played === played;
  });
  return found ?? null;
}

/** A tapped cue as the checks of cues take it. It stands in no file, so its place is nowhere. */
export const cueOf = ({ bar, seconds }: TappedCue): ClipCue => ({
  bar,
  pass: Number(bar.split('/')[1]?.split(',')[0] ?? 1),
  seconds,
  place: { file: '', line: 1, column: 1 },
});

/** Seconds as a cue has them, to a hundredth: `0:04.25`, `1:02`. */
export function cueTime(seconds: number): string {
  const hundredths = Math.round(seconds * 100);
  const rest = `${(hundredths % 6000) / 100}`;
  return `${Math.floor(hundredths / 6000)}:${/^\d(?:\.|$)/.test(rest) ? '0' : ''}${rest}`;
}

/** What a `::clip` says besides its cues. */
export interface ClipFacts {
  readonly words: string;
  readonly src: string;
  readonly of: string;
  readonly learner: boolean;
  /** Empty for none. */
  readonly consent: string;
}

/** The line to write into a lesson: `::clip[words]{src=media/x.mp3 of=id at="A1=0:04 …"}`. */
export function clipLine(
  { words, src, of, learner, consent }: ClipFacts,
  cues: readonly TappedCue[],
): string {
  const label = words.replace(/\s+/g, ' ').replace(/\[/g, '(').replace(/\]/g, ')').trim();
  const at = cues.map(({ bar, seconds }) => `${bar}=${cueTime(seconds)}`).join(' ');
  const said = [
    `src=${value(src)}`,
    `of=${value(of)}`,
    ...(cues.length > 0 ? [`at="${at}"`] : []),
    ...(learner ? ['learner'] : []),
    ...(learner && consent.trim() !== '' ? [`consent=${value(consent.trim())}`] : []),
  ];
  return `::clip[${label}]{${said.join(' ')}}`;
}

/** The value of an attribute, in quotation marks where it needs them. */
const value = (text: string): string =>
  /^[\w./-]+$/.test(text)
    ? text
    : `"${text.replace(/\s+/g, ' ').replace(/&/g, '&amp;').replace(/"/g, '&quot;')}"`;
