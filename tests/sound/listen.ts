// What an ear measures in a rendering: pitch and level. Nothing here knows how the sound is made.

/** Samples a second in these tests. */
export const rate = 44_100;

/**
 * Hertz of a steady tone, by autocorrelation: the lag at which the sound is most like itself, found
 * once, then again at twice that lag, and so on up to 32 periods, which tells it to a hundredth of a
 * cent.
 */
export function pitchOf(samples: Float32Array): number {
  const size = Math.floor(samples.length / 2);
  const likeness = (lag: number): number => {
    let [ab, aa, bb] = [0, 0, 0];
    for (let i = 0; i < size; i++) {
      const [a, b] = [samples[i] ?? 0, samples[i + lag] ?? 0];
      ab += a * b;
      aa += a * a;
      bb += b * b;
    }
    return ab / Math.sqrt(aa * bb);
  };
  const best = (from: number, to: number): number => {
    let lag = from;
    let [most, likes] = [from, Number.NEGATIVE_INFINITY];
    for (; lag <= to; lag++) {
      const l = likeness(lag);
      if (l > likes) [most, likes] = [lag, l];
    }
    const [before, after] = [likeness(most - 1), likeness(most + 1)];
    return most + (before - after) / (2 * (before - 2 * likes + after));
  };
  // The first lag that is nearly as good as any: a longer one may be two periods.
  const all = Array.from({ length: 600 }, (_, lag) => (lag < 30 ? 0 : likeness(lag)));
  const good = Math.max(...all) * 0.97;
  const first = all.findIndex((l, i) => l >= good && l >= (all[i + 1] ?? 0));
  let period = best(first - 2, first + 2);
  for (let k = 2; k <= 32; k *= 2) {
    const lag = Math.round(period * k);
    period = best(lag - 3, lag + 3) / k;
  }
  return rate / period;
}

export const cents = (hertz: number, of: number): number => 1200 * Math.log2(hertz / of);

/** Decibels of full scale, over `length` samples from `from`. */
export function levelAt(samples: Float32Array, from: number, length: number): number {
  let sum = 0;
  for (let i = from; i < from + length; i++) sum += (samples[i] ?? 0) ** 2;
  return 10 * Math.log10(sum / length + 1e-12);
}

/**
 * How far the level falls, in decibels, at a join: the softest moment within `reach` seconds of it,
 * beside the softer of the two steady levels on either side. A moment is two periods long.
 */
export function dipAt(samples: Float32Array, at: number, hertz: number, reach = 0.05): number {
  const moment = Math.round((2 * rate) / hertz);
  const join = Math.round(at * rate);
  const steady = Math.round(0.1 * rate);
  const gap = Math.round(reach * rate);
  const around = Math.min(
    levelAt(samples, join - gap - steady, steady),
    levelAt(samples, join + gap, steady),
  );
  let least = Number.POSITIVE_INFINITY;
  for (let i = join - gap; i < join + gap - moment; i += 16) {
    least = Math.min(least, levelAt(samples, i, moment));
  }
  return around - least;
}

/** Where the middle of the spectrum lies, in hertz: its centroid up to 10 kHz, by plain Fourier sums. */
export function brightnessOf(samples: Float32Array, hertz: number): number {
  let [sum, weighted] = [0, 0];
  for (let f = hertz; f < 10_000; f += hertz) {
    let [re, im] = [0, 0];
    samples.forEach((x, i) => {
      re += x * Math.cos((2 * Math.PI * f * i) / rate);
      im += x * Math.sin((2 * Math.PI * f * i) / rate);
    });
    const power = re * re + im * im;
    sum += power;
    weighted += power * f;
  }
  return weighted / sum;
}
