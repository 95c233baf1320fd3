import type { Tuning } from '../../shared/fingering/fingering.ts';
import { fiddleTuning } from '../../shared/fingering/tunings.ts';
import { signatureOf } from '../../shared/music/key-names.ts';
import { letters } from '../../shared/music/pitch.ts';
import type { Key, Meter } from '../../shared/music/tune.ts';
import { at } from '../../shared/must.ts';
import { element, type XmlElement } from './xml.ts';

/** The `key` element: a count of sharps or flats, or letter by letter where `K:` adds accidentals. */
export function keyElement(key: Key): XmlElement {
  const usual = signatureOf(key.fifths);
  const altered = letters.filter(letter => key.alters[letter] !== 0);
  if (letters.every(letter => key.alters[letter] === usual[letter]) || altered.length === 0) {
    const fifths = altered.length === 0 ? 0 : key.fifths;
    return element('key', [element('fifths', fifths), element('mode', key.mode)]);
  }
  return element(
    'key',
    altered.flatMap(letter => [
      element('key-step', letter),
      element('key-alter', key.alters[letter]),
    ]),
  );
}

/** The `time` element; an unprinted `senza-misura` for a free metre. */
export function timeElement({ beats, unit, sign, free }: Meter): XmlElement {
  if (free) return element('time', [element('senza-misura')], { 'print-object': 'no' });
  return element(
    'time',
    [element('beats', beats), element('beat-type', unit)],
    sign === null ? {} : { symbol: sign },
  );
}

/** The tuning as `scordatura`; null for standard tuning. */
export function tuningElement(tuning: Tuning): XmlElement | null {
  if (tuning.every((open, i) => open.midi === at(fiddleTuning, i).midi)) return null;
  const accords = tuning.map((open, i) =>
    element(
      'accord',
      [
        element('tuning-step', open.letter),
        open.alter === 0 ? null : element('tuning-alter', open.alter),
        element('tuning-octave', open.octave),
      ],
      { string: i + 1 },
    ),
  );
  return element('direction', [element('direction-type', [element('scordatura', accords)])], {
    placement: 'above',
  });
}
