import { renderSound, soundLength } from '../../shared/sound/render-sound.ts';
import type { SoundingPassage } from '../../shared/sound/sounding.ts';

/** Renders a whole round at once: samples at `rate` a second. */
export function renderWhole(passage: SoundingPassage, rate: number): Float32Array {
  const out = new Float32Array(soundLength(passage, rate));
  renderSound(passage, rate, out).advance(out.length);
  return out;
}
