import { at } from '../must.ts';
import { hertz, type SoundingPassage, type SoundingStroke, type Tone } from './sounding.ts';
import { bodyResponse } from './violin-body.ts';

/** Where the bow and the left hand are at one sample. */
export interface BowCurve {
  readonly loudness: number;
  /** Share of the distance that the smoothing goes in one sample: brightness. */
  readonly cut: number;
  /** Rounds of the string in one sample; the second string of a double stop likewise. */
  readonly pitch: number;
  readonly second: number;
  /** How much of the second string is heard, 0 to 1. */
  readonly share: number;
  readonly noise: number;
}

export interface BowCurves {
  readonly at: (sample: number) => BowCurve;
  /** The next sample after `sample` at which a curve breaks: a stroke or a tone begins or ends. */
  readonly boundaryAfter: (sample: number) => number;
}

/** How a stroke begins and how it sounds, by direction. Times in seconds, brightness in hertz. */
const manner = {
  down: { attack: 0.022, bright: 5600, bite: 0.5, from: 1.06, to: 0.92 },
  up: { attack: 0.034, bright: 2600, bite: 0.28, from: 0.84, to: 1 },
} as const;

const release = 0.02;
/** What is left of the loudness at the turn of a bow that stays on the string. */
const turnFloor = 0.1;
/** A finger takes so long to fall. */
const glide = 0.011;
/** Full strokes are this loud before the body; set so that nothing passes full scale. */
const plain = 0.45;
const hiss = 0.035;

interface Piece {
  readonly from: number;
  readonly until: number;
  readonly stroke: SoundingStroke;
  readonly strokeFrom: number;
  readonly strokeUntil: number;
  readonly tone: PlacedTone;
  readonly before: PlacedTone | null;
  /** The bow stops at its start, at its end. */
  readonly stopped: boolean;
  readonly stopsAfter: boolean;
}

interface PlacedTone {
  readonly pitch: number;
  readonly second: number;
  readonly share: number;
  /** As a MIDI note number. */
  readonly midi: number;
  /** Times the plain loudness. */
  readonly accent: number;
}

/** The slow curves of a passage at a sample rate. Ask for samples in rising order. */
export function bowCurves(passage: SoundingPassage, rate: number): BowCurves {
  const pieces = passage.strokes.flatMap(s => strokePieces(s, rate));
  const bounds = [...new Set(pieces.flatMap(p => [p.from, p.until]))].sort((a, b) => a - b);
  let [piece, bound] = [0, 0];
  let last: PlacedTone = pieces[0]?.tone ?? {
    pitch: 0.01,
    second: 0.01,
    share: 0,
    midi: 69,
    accent: 1,
  };
  const evened = makeEvened();
  return {
    at: sample => {
      while (piece < pieces.length && at(pieces, piece).until <= sample) piece++;
      const here = pieces[piece];
      if (!here || sample < here.from) return silent(last, rate);
      last = here.tone;
      return curveIn(here, sample, rate, wanderAt(sample / rate), evened);
    },
    boundaryAfter: sample => {
      while (bound < bounds.length && at(bounds, bound) <= sample) bound++;
      return bounds[bound] ?? Number.POSITIVE_INFINITY;
    },
  };
}

const silent = (tone: PlacedTone, rate: number): BowCurve => ({
  loudness: 0,
  cut: smoothing(manner.up.bright, rate),
  pitch: tone.pitch,
  second: tone.second,
  share: tone.share,
  noise: 0,
});

function strokePieces(stroke: SoundingStroke, rate: number): readonly Piece[] {
  const sample = (seconds: number): number => Math.round(seconds * rate);
  const placed = stroke.tones.map(t => placeTone(t, rate));
  return stroke.tones.flatMap((t, i) => {
    const tone = at(placed, i);
    const next = stroke.tones[i + 1];
    const from = sample(t.at);
    const until = Math.min(sample(next?.at ?? stroke.until), sample(stroke.until));
    if (until <= from) return [];
    return [
      {
        from,
        until,
        stroke,
        strokeFrom: sample(stroke.from),
        strokeUntil: sample(stroke.until),
        tone,
        before: placed[i - 1] ?? null,
        stopped: t.stopped,
        stopsAfter: next?.stopped ?? false,
      },
    ];
  });
}

function placeTone({ pitches, accent }: Tone, rate: number): PlacedTone {
  const [first = 69, second = first] = pitches;
  return {
    pitch: hertz(first) / rate,
    second: hertz(second) / rate,
    share: pitches.length > 1 ? 1 : 0,
    midi: first,
    accent: 10 ** (accent / 20),
  };
}

/**
 * The loudness that brings a pitch (MIDI) near the loudness of the others through the body, to a
 * quarter of a semitone, each worked out once.
 */
function makeEvened(): (midi: number) => number {
  const known = new Map<number, number>();
  return midi => {
    const place = Math.round(midi * 4);
    const before = known.get(place);
    if (before !== undefined) return before;
    const f = hertz(place / 4);
    let power = 0;
    for (let k = 1; k * f < 8000; k++) power += (bodyResponse(k * f) / k) ** 2;
    const loudness = power ** -0.45;
    known.set(place, loudness);
    return loudness;
  };
}

function curveIn(
  piece: Piece,
  sample: number,
  rate: number,
  wander: number,
  evened: (midi: number) => number,
): BowCurve {
  const { stroke, tone, before, strokeFrom, strokeUntil } = piece;
  const way = manner[stroke.direction];
  const length = (strokeUntil - strokeFrom) / rate;
  const begun = piece.stopped ? piece.from : strokeFrom;
  const ends = piece.stopsAfter ? piece.until : strokeUntil;
  const since = (sample - begun) / rate;
  const left = (ends - sample) / rate;
  const rise = Math.min(way.attack, (ends - begun) / rate / 3);
  const fall = Math.min(release, (ends - begun) / rate / 5);
  const floor = stroke.runsOn || piece.stopsAfter ? turnFloor : 0;
  const shape = eased(since / rise, turnFloor) * eased(left / fall, floor);
  const swell = way.from + (way.to - way.from) * Math.min(1, (sample - strokeFrom) / rate / length);
  const g = before && !piece.stopped ? Math.min(1, (sample - piece.from) / rate / glide) : 1;
  const mix = (a: number, b: number): number => a + (b - a) * g;
  const was = before ?? tone;
  // While a finger falls the string is between two pitches, and evened out where it is.
  const level = evened(mix(was.midi, tone.midi)) * mix(was.accent, tone.accent);
  const loudness = plain * level * shape * swell * (1 + 0.02 * wander);
  const bite = way.bite * Math.exp(-since / 0.018);
  const cents = 1 + 0.0004 * wander;
  return {
    loudness,
    cut: smoothing(way.bright * (0.75 + 0.25 * shape) * (1 + 0.35 * bite), rate),
    pitch: was.pitch * (tone.pitch / was.pitch) ** g * cents,
    second: was.second * (tone.second / was.second) ** g * cents,
    share: mix(was.share, tone.share),
    noise:
      plain *
      level *
      (hiss * shape + bite * 0.5 * Math.min(1, since / 0.003) * eased(left / fall, 0)),
  };
}

/** From `floor` to 1 as x goes from 0 to 1, without a corner at either end. */
function eased(x: number, floor: number): number {
  if (x >= 1) return 1;
  const y = x <= 0 ? 0 : (1 - Math.cos(Math.PI * x)) / 2;
  return floor + (1 - floor) * y;
}

/** The share of the way that a smoothing with its corner at `cutoff` hertz goes in a sample. */
const smoothing = (cutoff: number, rate: number): number =>
  1 - Math.exp((-2 * Math.PI * cutoff) / rate);

/** A slow, small unsteadiness between -1 and 1, the same each time: no hand is a machine. */
function wanderAt(seconds: number): number {
  const turn = 2 * Math.PI * seconds;
  return (
    0.5 * Math.sin(2.3 * turn) + 0.3 * Math.sin(5.1 * turn + 1) + 0.2 * Math.sin(7.7 * turn + 2)
  );
}
