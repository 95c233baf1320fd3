import type { Tempo } from '../../shared/music/tune.ts';
import type { Study } from '../../shared/study.ts';
import { exportWords } from '../../shared/words/en/exporting.ts';
import { measureElements } from './musicxml-measures.ts';
import { element, type XmlElement, xmlText } from './xml.ts';

/** Facts that a file for other programs states besides the notes. */
export interface ExportFacts {
  /** The practice tempo. */
  readonly tempo: Tempo;
  /** Source and rights, in one line of text. */
  readonly credits: string;
}

const doctype =
  '<!DOCTYPE score-partwise PUBLIC "-//Recordare//DTD MusicXML 4.0 Partwise//EN" "http://www.musicxml.org/dtds/partwise.dtd">';

/**
 * A tune as MusicXML 4.0, part-wise: bars, repeats and endings as on the page, with strokes,
 * fingers and strings. No date is written, so that the same tune gives the same bytes.
 *
 * MusicXML has no way to say `P:AABA` of parts written once each: the order is given in words
 * above the first bar.
 */
export function musicXml(study: Study, facts: ExportFacts): string {
  const part = element('part', measureElements(study, facts.tempo), { id: 'P1' });
  const score = element('score-partwise', [...headElements(study, facts), part], {
    version: '4.0',
  });
  return xmlText(score, doctype);
}

function headElements({ tune }: Study, { credits }: ExportFacts): readonly XmlElement[] {
  const { composer, source, book } = tune.credits;
  const from = [source, book].filter(s => s !== null).join('; ');
  return [
    element('work', [element('work-title', tune.title)]),
    element('identification', [
      composer === null ? null : element('creator', composer, { type: 'composer' }),
      element('rights', credits),
      element('encoding', [
        element('software', exportWords.software),
        element('supports', '', { element: 'accidental', type: 'yes' }),
      ]),
      from === '' ? null : element('source', from),
    ]),
    element('part-list', [
      element(
        'score-part',
        [
          element('part-name', exportWords.instrument),
          element('score-instrument', [element('instrument-name', exportWords.instrument)], {
            id: 'P1-I1',
          }),
          // Programs count from 1 in MusicXML: 41 is General MIDI's violin.
          element('midi-instrument', [element('midi-program', 41)], { id: 'P1-I1' }),
        ],
        { id: 'P1' },
      ),
    ]),
  ];
}
