// Run in the page before its own scripts, to hear what they do: every sound they start is noted,
// and can be rendered again, by the browser's own engine, into samples that a test can measure.

import type { BrowserContext, Page } from 'playwright-core';

/** A sound that a page started. */
export interface StartedSound {
  /** The context's clock, in seconds. */
  readonly when: number;
  /** Samples, and samples a second. */
  readonly length: number;
  readonly rate: number;
  readonly loop: boolean;
}

interface Heard {
  readonly when: number;
  readonly buffer: AudioBuffer;
  readonly loop: boolean;
}

/** Must be called before a page is opened. */
export const listenIn = (context: BrowserContext): Promise<unknown> =>
  context.addInitScript(() => {
    const heard: Heard[] = [];
    const start = AudioBufferSourceNode.prototype.start;
    AudioBufferSourceNode.prototype.start = function (when = 0, ...rest) {
      const isLive = this.context instanceof AudioContext;
      if (this.buffer && isLive) heard.push({ when, buffer: this.buffer, loop: this.loop });
      return start.call(this, when, ...rest);
    };
    Object.assign(globalThis, { heard });
  });

/** Forgets what was heard so far. */
export const forget = (page: Page): Promise<void> =>
  page.evaluate(() => {
    (globalThis as unknown as { heard: Heard[] }).heard.length = 0;
  });

export const startedSounds = (page: Page): Promise<StartedSound[]> =>
  page.evaluate(() =>
    (globalThis as unknown as { heard: Heard[] }).heard.map(({ when, buffer, loop }) => ({
      when,
      length: buffer.length,
      rate: buffer.sampleRate,
      loop,
    })),
  );

/** What was started, as the browser plays it: so many seconds from the first sound. */
export async function samplesHeard(page: Page, seconds: number): Promise<Float32Array> {
  const text = await page.evaluate(async length => {
    const { heard } = globalThis as unknown as { heard: Heard[] };
    const [first] = heard;
    if (!first) return '';
    const { sampleRate } = first.buffer;
    const offline = new OfflineAudioContext(1, Math.round(length * sampleRate), sampleRate);
    for (const { when, buffer, loop } of heard) {
      const source = offline.createBufferSource();
      source.buffer = buffer;
      source.loop = loop;
      source.connect(offline.destination);
      source.start(when - first.when);
    }
    const bytes = new Uint8Array((await offline.startRendering()).getChannelData(0).buffer);
    let binary = '';
    for (let i = 0; i < bytes.length; i += 8192) {
      binary += String.fromCharCode(...bytes.subarray(i, i + 8192));
    }
    return btoa(binary);
  }, seconds);
  const bytes = Buffer.from(text, 'base64');
  return new Float32Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length));
}
