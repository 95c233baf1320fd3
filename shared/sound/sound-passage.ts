import type { Stroke } from '../bowing/bowing.ts';
import { toNumber } from '../music/fraction.ts';
import { meterLength } from '../music/meter.ts';
import { noteAt } from '../music/note-at.ts';
import type { NoteEvent } from '../music/tune.ts';
import { at } from '../must.ts';
import { accentAt } from './accents.ts';
import type { Lilt } from './lilt.ts';
import { noteTones } from './note-tones.ts';
import type { Passage, PlayedTune } from './passage.ts';
import { beforeBar, endOf, type PlayTempo, playTime, secondsPerWhole } from './play-time.ts';
import type { FollowedNote, SoundingPassage, SoundingStroke, Tick, Tone } from './sounding.ts';

export interface SoundRequest {
  readonly tempo: PlayTempo;
  readonly lilt: Lilt;
  /** Beats of silence after the passage; what it takes to keep the beat going round is added. */
  readonly breath: number;
  /** Silence as long as the passage follows it, to be played in. */
  readonly answer: boolean;
  /** The beats are heard. */
  readonly pulse: boolean;
}

/** A dot shortens a note to so much of its length. */
const staccatoShare = 0.6;
/** Before a lift of the bow, a note gives so much of its length, and so many seconds at most. */
const liftShare = 0.25;
const liftMost = 0.09;

/** Times a passage out: notes into strokes and tones, beats into ticks. */
export function soundPassage(
  played: PlayedTune,
  passage: Passage,
  request: SoundRequest,
): SoundingPassage {
  const perWhole = secondsPerWhole(request.tempo);
  const toPlayed = playTime(played, request.lilt);
  const start = toNumber(passage.from);
  const seconds = (whole: number): number => (whole - start) * perWhole;
  const notes: FollowedNote[] = [];
  for (let i = passage.first; i < passage.end; i++) {
    const note = at(played.performance.notes, i);
    const from = seconds(toPlayed(note.onset));
    const until = Math.min(seconds(toPlayed(endOf(note))), seconds(toNumber(passage.to)));
    notes.push({ note: i, at: from, until, stroke: at(played.bowing.plan.strokeOf, i) });
  }
  const times = roundTimes(passage, request);
  return {
    length: times.length * perWhole,
    strokes: soundStrokes(played, notes),
    ticks: request.pulse
      ? beatsIn(played, passage, request, times.length).map(b => ({ ...b, at: b.at * perWhole }))
      : [],
    notes,
  };
}

/** Once round, in whole notes: the passage, the silence to answer in, the breath, filled up to whole beats. */
function roundTimes(passage: Passage, { tempo, breath, answer }: SoundRequest) {
  const own = toNumber(passage.to) - toNumber(passage.from);
  const beat = toNumber(tempo.beat);
  const least = own * (answer ? 2 : 1) + breath * beat;
  const length = breath === 0 ? least : Math.ceil(least / beat - 1e-9) * beat;
  return { own, length };
}

/** Beats of a round, in whole notes from its start: those of its bars, gone on with to its end. */
function beatsIn(
  { tune, performance }: PlayedTune,
  passage: Passage,
  { tempo }: SoundRequest,
  length: number,
): readonly Tick[] {
  const beat = toNumber(tempo.beat);
  const [from, to] = [toNumber(passage.from), toNumber(passage.to)];
  const ticks: Tick[] = [];
  let [grid, barLength] = [from, beat];
  performance.bars.forEach((bar, i) => {
    const onset = toNumber(bar.onset);
    const next = performance.bars[i + 1];
    const end = toNumber(next?.onset ?? performance.length);
    if (end <= from || onset >= to) return;
    const full = meterLength(at(tune.bars, bar.bar).meter);
    grid = onset - beforeBar(tune, bar.bar);
    barLength = full ? toNumber(full) : beat;
    for (let k = 0; grid + k * beat < Math.min(end, to) - 1e-9; k++) {
      const tick = grid + k * beat;
      if (tick >= Math.max(from, onset) - 1e-9) ticks.push({ at: tick - from, strong: k === 0 });
    }
  });
  for (let k = Math.ceil((to - grid) / beat - 1e-9); grid + k * beat < from + length - 1e-9; k++) {
    const inBar = (k * beat) % barLength;
    const strong = inBar < 1e-9 || barLength - inBar < 1e-9;
    ticks.push({ at: grid + k * beat - from, strong });
  }
  return ticks;
}

function soundStrokes(
  played: PlayedTune,
  notes: readonly FollowedNote[],
): readonly SoundingStroke[] {
  const { plan } = played.bowing;
  const groups: FollowedNote[][] = [];
  for (const note of notes) {
    const last = groups.at(-1);
    if (last?.[0]?.stroke === note.stroke) last.push(note);
    else groups.push([note]);
  }
  return groups.map((group, i) => {
    const stroke = at(plan.strokes, at(group, 0).stroke);
    return soundStroke(played, stroke, group, groups[i + 1] ?? null);
  });
}

function soundStroke(
  played: PlayedTune,
  stroke: Stroke,
  group: readonly FollowedNote[],
  next: readonly FollowedNote[] | null,
): SoundingStroke {
  const written = group.map(n => writtenNote(played, n));
  const tones = group.flatMap((n, i) => {
    return tonesOf(played, n, at(written, i), written[i - 1] ?? null);
  });
  const [first, last] = [at(group, 0), at(group, group.length - 1)];
  const { until } = last;
  const following = next && at(next, 0);
  const meets = following !== null && Math.abs(following.at - until) < 1e-6;
  const retakes = following !== null && at(played.bowing.plan.strokes, following.stroke).retake;
  const lifts = !meets || retakes || at(written, group.length - 1).breath;
  const staccato = group.length === 1 && at(written, 0).staccato;
  const length = until - last.at;
  const cut = staccato
    ? length * (1 - staccatoShare)
    : lifts && meets
      ? Math.min(liftMost, length * liftShare)
      : 0;
  return {
    direction: stroke.direction,
    from: first.at,
    until: until - cut,
    runsOn: meets && cut === 0,
    tones,
  };
}

function tonesOf(
  { tune }: PlayedTune,
  followed: FollowedNote,
  note: NoteEvent,
  before: NoteEvent | null,
): readonly Tone[] {
  const bar = at(tune.bars, note.bar);
  const place = toNumber(note.onset) + beforeBar(tune, note.bar);
  const accent = accentAt(tune, bar.meter, place);
  const tones = noteTones(note, bar.key, followed.at, followed.until, accent);
  // Dots under a slur are hooks: the bow stops after each, and goes on the same way.
  return before?.staccato ? tones.map((t, i) => (i === 0 ? { ...t, stopped: true } : t)) : tones;
}

const writtenNote = ({ tune, performance }: PlayedTune, { note }: FollowedNote): NoteEvent =>
  noteAt(tune, at(performance.notes, note).event);

/** The beats before the first round: a bar, and what the passage lacks of the bar it begins in. */
export function countIn(
  { tune, performance }: PlayedTune,
  passage: Passage,
  tempo: PlayTempo,
): SoundingPassage {
  const from = toNumber(passage.from);
  const played = performance.bars.findLast(b => toNumber(b.onset) <= from + 1e-9);
  const bar = played && at(tune.bars, played.bar);
  const beat = toNumber(tempo.beat);
  const full = bar ? meterLength(bar.meter) : null;
  const into = full && played ? from - toNumber(played.onset) + beforeBar(tune, played.bar) : 0;
  const length = (full ? toNumber(full) : 4 * beat) + into;
  const perWhole = secondsPerWhole(tempo);
  const ticks: Tick[] = [];
  for (let k = 0; k * beat < length - 1e-9; k++) {
    const inBar = full ? (k * beat) % toNumber(full) : k * beat;
    ticks.push({ at: k * beat * perWhole, strong: inBar < 1e-9 });
  }
  return { length: length * perWhole, strokes: [], ticks, notes: [] };
}
