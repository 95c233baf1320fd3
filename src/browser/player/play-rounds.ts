import { renderSound, soundLength } from '../../../shared/sound/render-sound.ts';
import type { SoundingPassage } from '../../../shared/sound/sounding.ts';

/** A time round, or the count before the first. */
export interface Round {
  readonly sounding: SoundingPassage;
  /** Nothing after it differs from it: it may be looped for ever. */
  readonly forEver: boolean;
}

/** Where the sound is: which round, and seconds into it. */
export interface Position {
  readonly round: number;
  readonly seconds: number;
}

export interface Playing {
  /** null before it begins and when it is over. */
  readonly position: () => Position | null;
  readonly stop: () => void;
  readonly ended: Promise<void>;
}

/** Seconds of sound in the first piece of a round; each later one is twice as long. */
const firstPiece = 0.5;
/** Milliseconds of rendering before the page gets a turn. */
const turn = 12;
/** Seconds between asking and sounding: enough to render the first piece on a slow phone. */
const lead = 0.12;
/** Seconds over which sound that is stopped dies away, so that it does not click. */
const fade = 0.02;

interface Laid {
  readonly round: number;
  /** Of the context's clock, in samples. */
  readonly from: number;
  readonly length: number;
  readonly loops: boolean;
}

/**
 * Plays rounds one after another without a gap, `roundAt(0)` first, until it answers null.
 *
 * A round is rendered in pieces between which the page gets its turn; each piece is started on the
 * very sample at which the one before ends, so the first note sounds at once and no join is heard.
 * While a round sounds the next is made ready. A round that goes on for ever is played once in
 * pieces, and then as one buffer that the browser loops by itself.
 */
export function playRounds(
  context: AudioContext,
  output: AudioNode,
  roundAt: (round: number) => Round | null,
): Playing {
  const rate = context.sampleRate;
  const gain = context.createGain();
  gain.connect(output);
  const sources: AudioBufferSourceNode[] = [];
  const laid: Laid[] = [];
  let next = Math.ceil((context.currentTime + lead) * rate);
  let stopped = false;
  let end: () => void = () => {};
  const ended = new Promise<void>(resolve => {
    end = resolve;
  });

  const start = (samples: AudioBuffer, loops = false): void => {
    // A piece that comes late, on a machine too slow, moves all after it; no sound is lost.
    const now = Math.ceil((context.currentTime + 0.005) * rate);
    if (now > next) next = now;
    const source = context.createBufferSource();
    source.buffer = samples;
    source.loop = loops;
    source.connect(gain);
    source.start(next / rate);
    source.onended = () => {
      source.disconnect();
      sources.splice(sources.indexOf(source), 1);
    };
    sources.push(source);
    next += samples.length;
  };

  const layRound = async (index: number, { sounding, forEver }: Round): Promise<void> => {
    const whole = context.createBuffer(1, Math.max(1, soundLength(sounding, rate)), rate);
    const samples = whole.getChannelData(0);
    const rendering = renderSound(sounding, rate, samples);
    let [from, size] = [0, Math.round(firstPiece * rate)];
    while (from < rendering.length && !stopped) {
      const goal = Math.min(rendering.length, from + size);
      let at = from;
      for (let began = performance.now(); at < goal && !stopped; ) {
        at = rendering.advance(Math.min(goal, at + 2048));
        if (performance.now() - began < turn) continue;
        await aTurn();
        began = performance.now();
      }
      if (stopped) return;
      const piece = context.createBuffer(1, at - from, rate);
      piece.copyToChannel(samples.subarray(from, at), 0);
      start(piece);
      if (from === 0)
        laid.push({
          round: index,
          from: next - piece.length,
          length: rendering.length,
          loops: false,
        });
      from = at;
      size *= 2;
    }
    if (!forEver || stopped) return;
    laid.push({ round: index + 1, from: next, length: rendering.length, loops: true });
    start(whole, true);
  };

  const run = async (): Promise<void> => {
    for (let index = 0; !stopped; index++) {
      const round = roundAt(index);
      if (!round) break;
      await layRound(index, round);
      if (round.forEver) return;
      // Not further ahead than one round: what is set meanwhile is heard soon.
      const begins = laid.at(-1)?.from ?? 0;
      while (!stopped && context.currentTime * rate < begins) await wait(100);
    }
    while (!stopped && context.currentTime * rate < next) await wait(50);
    stop();
  };

  const stop = (): void => {
    if (stopped) return;
    stopped = true;
    gain.gain.setTargetAtTime(0, context.currentTime, fade / 3);
    for (const source of sources) source.stop(context.currentTime + fade * 2);
    setTimeout(() => gain.disconnect(), 200);
    end();
  };

  const position = (): Position | null => {
    const now = (context.currentTime - latencyOf(context)) * rate;
    const here = laid.findLast(l => l.from <= now);
    if (stopped || !here) return null;
    const since = now - here.from;
    const round = here.round + (here.loops ? Math.floor(since / here.length) : 0);
    return { round, seconds: (here.loops ? since % here.length : since) / rate };
  };

  run().catch(error => {
    stop();
    throw error;
  });
  return { position, stop, ended };
}

/** Seconds between the context's clock and the ear, where the browser knows. */
const latencyOf = (context: AudioContext): number =>
  Number.isFinite(context.outputLatency) ? context.outputLatency : 0;

const wait = (ms: number): Promise<void> => new Promise(resolve => setTimeout(resolve, ms));

/** Lets the page do what waits; a message comes sooner than a timer, which browsers hold back. */
const aTurn = (): Promise<void> =>
  new Promise(resolve => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
