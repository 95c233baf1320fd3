/**
 * What the wood does to the string: a few resonances beside the plain sound, and a gentle loss of
 * the highest tones. The lowest three stand where violins have theirs, the air at 275 Hz and the
 * two first modes of the body near 460 and 550 Hz, with the broad "bridge hill" about 2.5 kHz (J. Curtin
 * and T. D. Rossing, "Violin", in T. D. Rossing, editor, The Science of String Instruments, Springer 2010;
 * cited from memory). The fourth is ours. Strengths and widths are ours, by ear and by measurement.
 */
interface Resonance {
  readonly hertz: number;
  readonly q: number;
  readonly gain: number;
}

const resonances: readonly Resonance[] = [
  { hertz: 275, q: 5, gain: 1.1 },
  { hertz: 460, q: 6, gain: 1.2 },
  { hertz: 550, q: 6, gain: 1.1 },
  { hertz: 1050, q: 3, gain: 0.5 },
  { hertz: 2500, q: 1.6, gain: 0.8 },
];
const direct = 0.42;

/** A band-pass of peak gain 1: y = b (x - x₂) - a₁ y₁ - a₂ y₂. */
export interface BandPass {
  readonly b: number;
  readonly a1: number;
  readonly a2: number;
  readonly gain: number;
}

/** The filters for a sample rate. The constant-peak band-pass is the bilinear transform's. */
export function bodyFilters(rate: number): readonly BandPass[] {
  return resonances.map(({ hertz, q, gain }) => {
    const w = (2 * Math.PI * hertz) / rate;
    const alpha = Math.sin(w) / (2 * q);
    return {
      b: alpha / (1 + alpha),
      a1: (-2 * Math.cos(w)) / (1 + alpha),
      a2: (1 - alpha) / (1 + alpha),
      gain,
    };
  });
}

export const directShare = direct;

/** How much louder the body makes a tone of so many hertz: a plain number, phases counted in. */
export function bodyResponse(hertz: number): number {
  let [re, im] = [direct, 0];
  for (const r of resonances) {
    // A band-pass is 1 / (1 + j q (f/f₀ - f₀/f)).
    const x = r.q * (hertz / r.hertz - r.hertz / hertz);
    re += r.gain / (1 + x * x);
    im -= (r.gain * x) / (1 + x * x);
  }
  return Math.hypot(re, im);
}
