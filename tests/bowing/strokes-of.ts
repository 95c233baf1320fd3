import type { LayRequest } from '../../shared/bowing/bowing-input.ts';
import { defaultBowing } from '../../shared/bowing/default-settings.ts';
import { playedOrder } from '../../shared/music/played-order.ts';
import type { Tune } from '../../shared/music/tune.ts';
import { parseTunes } from '../../src/abc/parse-tune.ts';
import { layStrokes } from './lay-strokes.ts';

/** The first tune of some ABC; a bare line of notes gets a header. `head` replaces its fields. */
export function tuneOf(abc: string, head = 'M:4/4\nL:1/8'): Tune {
  const text = abc.includes('K:') ? abc : `X:1\nT:Test\n${head}\nK:C\n${abc}`;
  const { tunes } = parseTunes({ text, file: 'test.md', line: 1, indent: 0 });
  const tune = tunes[0];
  if (!tune) throw new Error(`no tune in: ${text}`);
  return tune;
}

/** Strokes of each bar as played, one letter a stroke that begins in it: `DUD UDU`. */
export function strokesOf(tune: Tune, request: LayRequest = {}): string {
  const performance = playedOrder(tune);
  const { plan } = layStrokes(tune, performance, request);
  return performance.bars
    .map(bar =>
      plan.strokes
        .filter(s => (s.notes[0] ?? -1) >= bar.first && (s.notes[0] ?? -1) < bar.end)
        .map(s => (s.direction === 'down' ? 'D' : 'U'))
        .join(''),
    )
    .join(' ');
}

/** The stroke of every sounded note of each bar as played, notes of one stroke in brackets. */
export function notesBowed(tune: Tune, request: LayRequest = {}): string {
  const performance = playedOrder(tune);
  const { plan } = layStrokes(tune, performance, request);
  return performance.bars
    .map(bar => {
      let text = '';
      for (let k = bar.first; k < bar.end; k++) {
        text += plan.strokes[plan.strokeOf[k] ?? -1]?.direction === 'down' ? 'D' : 'U';
      }
      return text;
    })
    .join(' ');
}

export const settings = defaultBowing;
