import type { Draft, DraftBar } from './phrase.ts';
import { lengthOf, type Rhythm } from './rhythms.ts';

/** Bars in ABC, four to a line. A bar that is short of a beat is written in a metre of its own. */
export function writeBars(rhythm: Rhythm, bars: readonly DraftBar[]): string {
  return bars
    .map((bar, i) => {
      const end = i === bars.length - 1 ? '' : i % 4 === 3 ? '|\n' : '|';
      const length = lengthOf(bar.map(n => `${n.opensTriplet ? '(3' : ''}n${n.length}`).join(''));
      const isShort = length < rhythm.beats * rhythm.beat;
      const text = isShort ? `[M:${shortMeter(rhythm)}]${writeBar(bar)}` : writeBar(bar);
      return text + end + (isShort ? `[M:${rhythm.meter}]` : '');
    })
    .join('');
}

/** Notes in ABC, with a space before each beam but the first. */
export const writeBar = (bar: DraftBar): string => bar.map(writeNote).join('').trim();

function writeNote(note: Draft): string {
  const pitch = note.double
    ? `[${letter(note.pitch)}${letter(note.pitch + 4)}]`
    : letter(note.pitch);
  return [
    note.spaced ? ' ' : '',
    note.opensSlur ? '(' : '',
    note.opensTriplet ? '(3' : '',
    note.signs,
    pitch,
    note.length,
    note.tied ? '-' : '',
    note.closesSlur ? ')' : '',
  ].join('');
}

/** A pitch by its steps from middle C: `G,`, `C`, `c`. */
function letter(steps: number): string {
  const name = 'CDEFGAB'[((steps % 7) + 7) % 7] ?? '';
  return steps < 0 ? `${name},` : steps < 7 ? name : name.toLowerCase();
}

const shortMeter = ({ beats, beat }: Rhythm): string =>
  beat === 3 ? `${3 * (beats - 1)}/8` : `${beats - 1}/4`;
