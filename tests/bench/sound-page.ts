// Bundled for the browser by `sound.bench.ts`: the page's own rendering, and the reference.

import type { SoundingPassage } from '../../shared/sound/sounding.ts';
import { renderWhole } from '../sound/render-whole.ts';

const rate = 44_100;

Object.assign(globalThis, {
  /** Milliseconds to render a passage. */
  timeRendering: (passage: SoundingPassage): number => {
    const began = performance.now();
    renderWhole(passage, rate);
    return performance.now() - began;
  },
  /** Milliseconds in which the browser's own engine renders as many seconds of a plain sawtooth. */
  timeOscillator: async (seconds: number): Promise<number> => {
    const context = new OfflineAudioContext(1, Math.round(seconds * rate), rate);
    const oscillator = new OscillatorNode(context, { type: 'sawtooth', frequency: 440 });
    oscillator.connect(context.destination);
    oscillator.start();
    const began = performance.now();
    await context.startRendering();
    return performance.now() - began;
  },
});
