/**
 * A bowed string, rendered to samples.
 *
 * Under the bow a string moves in one corner that runs round it (Helmholtz), and pulls at the bridge
 * in a sawtooth: so the string here is a sawtooth, its jump smoothed over two samples (a polynomial
 * in place of an ideal band limit, "polyBLEP") and its highest tones taken off, more of them on an
 * up-bow than on a down-bow. The bow's noise, louder where a stroke begins, is added; the body
 * (`violin-body.ts`) rings to both.
 *
 * What a learner must hear is the stroke. Within one the pitch glides and the loudness stands; where
 * the bow turns the loudness falls by more than ten decibels and the new stroke speaks with noise and
 * a lower or higher edge. All of that is set by four slow curves (loudness, brightness, pitch, noise),
 * which are worked out every `step` samples and drawn straight between.
 *
 * Loudness is evened out from pitch to pitch by what the body would do to each, so that no note
 * jumps out, and nothing is ever louder than full scale.
 */
import { type BowCurve, bowCurves } from './bow-curves.ts';
import type { SoundingPassage, Tick } from './sounding.ts';
import { bodyFilters, directShare } from './violin-body.ts';

/** A passage being rendered. */
export interface Rendering {
  /** Samples of one round. */
  readonly length: number;
  /** Goes on to at least `until`, or to the end; says how far it is. The result is the same however it is cut. */
  readonly advance: (until: number) => number;
}

/** What each string of a double stop gives, so that both are about as loud as one. */
const pairShare = 0.64;
/** Samples between two values of the slow curves. */
const step = 64;

/** Starts to render a passage into `out`, which holds `soundLength` samples. */
export function renderSound(passage: SoundingPassage, rate: number, out: Float32Array): Rendering {
  const length = soundLength(passage, rate);
  const curves = bowCurves(passage, rate);
  const filters = bodyFilters(rate);
  const [f1, f2, f3, f4, f5] = filters;
  if (!f1 || !f2 || !f3 || !f4 || !f5) throw new Error('the body has five resonances');
  const ticks = passage.ticks.map(t => ({ ...t, from: Math.round(t.at * rate) }));

  // The numbers that change with every sample are local to a block and wait here between blocks: a
  // variable that a closure holds is slow to write.
  const state = new Float64Array(17);
  let [at, seed] = [0, 0x2545f491];
  let now: BowCurve = curves.at(0);

  const block = (end: number): void => {
    const next = curves.at(end);
    // What rings on unheard is let go: numbers too small to matter are slow to reckon with.
    if (now.loudness + now.noise + next.loudness + next.noise === 0 && isStill(state)) {
      out.fill(0, at, end);
      state.fill(0);
      now = next;
      at = end;
      return;
    }
    const n = end - at;
    let { loudness, cut, pitch, second, noise, share } = now;
    const dLoud = (next.loudness - loudness) / n;
    const dCut = (next.cut - cut) / n;
    const dPitch = (next.pitch - pitch) / n;
    const dSecond = (next.second - second) / n;
    const dNoise = (next.noise - noise) / n;
    const dShare = (next.share - share) / n;
    // By index: taking a list apart costs more than the samples of a block.
    let phase = state[0] as number;
    let phase2 = state[1] as number;
    let hiss = state[2] as number;
    let low1 = state[3] as number;
    let low2 = state[4] as number;
    let x1 = state[5] as number;
    let x2 = state[6] as number;
    let p1 = state[7] as number;
    let q1 = state[8] as number;
    let p2 = state[9] as number;
    let q2 = state[10] as number;
    let p3 = state[11] as number;
    let q3 = state[12] as number;
    let p4 = state[13] as number;
    let q4 = state[14] as number;
    let p5 = state[15] as number;
    let q5 = state[16] as number;
    let random = seed;
    for (let i = at; i < end; i++) {
      phase += pitch;
      if (phase >= 1) phase -= 1;
      let saw = 2 * phase - 1 - edge(phase, pitch);
      if (share > 0) {
        phase2 += second;
        if (phase2 >= 1) phase2 -= 1;
        saw +=
          share * pairShare * (2 * phase2 - 1 - edge(phase2, second)) -
          share * (1 - pairShare) * saw;
      }
      random = (Math.imul(random, 1664525) + 1013904223) | 0;
      hiss += 0.5 * (random / 2147483648 - hiss);
      low1 += cut * (saw * loudness + hiss * noise - low1);
      low2 += cut * (low1 - low2);
      const d = low2 - x2;
      x2 = x1;
      x1 = low2;
      const y1 = f1.b * d - f1.a1 * p1 - f1.a2 * q1;
      q1 = p1;
      p1 = y1;
      const y2 = f2.b * d - f2.a1 * p2 - f2.a2 * q2;
      q2 = p2;
      p2 = y2;
      const y3 = f3.b * d - f3.a1 * p3 - f3.a2 * q3;
      q3 = p3;
      p3 = y3;
      const y4 = f4.b * d - f4.a1 * p4 - f4.a2 * q4;
      q4 = p4;
      p4 = y4;
      const y5 = f5.b * d - f5.a1 * p5 - f5.a2 * q5;
      q5 = p5;
      p5 = y5;
      out[i] =
        directShare * low2 +
        f1.gain * y1 +
        f2.gain * y2 +
        f3.gain * y3 +
        f4.gain * y4 +
        f5.gain * y5;
      loudness += dLoud;
      cut += dCut;
      pitch += dPitch;
      second += dSecond;
      noise += dNoise;
      share += dShare;
    }
    state[0] = phase;
    state[1] = phase2;
    state[2] = hiss;
    state[3] = low1;
    state[4] = low2;
    state[5] = x1;
    state[6] = x2;
    state[7] = p1;
    state[8] = q1;
    state[9] = p2;
    state[10] = q2;
    state[11] = p3;
    state[12] = q3;
    state[13] = p4;
    state[14] = q4;
    state[15] = p5;
    state[16] = q5;
    seed = random;
    now = next;
    at = end;
  };

  let ticked = 0;
  const advance = (until: number): number => {
    const goal = Math.min(length, until);
    const from = at;
    while (at < goal) block(Math.min(length, at + step, curves.boundaryAfter(at)));
    ticked = addTicks(ticks, ticked, rate, out, from, at);
    return at;
  };
  return { length, advance };
}

/** Samples of one round, to the nearest. */
export const soundLength = (passage: SoundingPassage, rate: number): number =>
  Math.round(passage.length * rate);

/** What the jump of a sawtooth is rounded with, over one sample on either side. */
function edge(phase: number, by: number): number {
  if (phase < by) {
    const t = phase / by;
    return t + t - t * t - 1;
  }
  if (phase > 1 - by) {
    const t = (phase - 1) / by;
    return t * t + t + t + 1;
  }
  return 0;
}

/** The string and the body ring at less than -140 dB. The first three numbers, two phases and the hiss before it is measured out, are not sound. */
const isStill = (state: Float64Array): boolean =>
  state.every((x, i) => i < 3 || Math.abs(x) < 1e-7);

const tickLength = 0.05;

/** Adds the beats that lie in `from` to `to`; a beat may reach over either edge. */
function addTicks(
  ticks: readonly (Tick & { readonly from: number })[],
  first: number,
  rate: number,
  out: Float32Array,
  from: number,
  to: number,
): number {
  const length = Math.round(tickLength * rate);
  let next = first;
  for (let k = first; k < ticks.length; k++) {
    const tick = ticks[k];
    if (!tick || tick.from >= to) break;
    if (tick.from + length <= to) next = k + 1;
    const w = (2 * Math.PI * (tick.strong ? 1568 : 1175)) / rate;
    const end = Math.min(tick.from + length, to);
    for (let i = Math.max(tick.from, from); i < end; i++) {
      const t = i - tick.from;
      const fade = Math.exp(-t / (rate * 0.009)) * Math.min(1, t / (rate * 0.0008));
      out[i] = (out[i] ?? 0) + (tick.strong ? 0.3 : 0.2) * fade * Math.sin(w * t);
    }
  }
  return next;
}
