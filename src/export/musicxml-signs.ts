import { element } from './xml.ts';

/** Elements without varying content, made once and shared by all notes. */

export const voice = element('voice', 1);
export const chord = element('chord');
export const dot = element('dot');
export const tie = {
  stop: element('tie', '', { type: 'stop' }),
  start: element('tie', '', { type: 'start' }),
};
export const tied = {
  stop: element('tied', '', { type: 'stop' }),
  start: element('tied', '', { type: 'start' }),
};
export const tuplets = {
  stop: element('tuplet', '', { type: 'stop', number: 1 }),
  start: element('tuplet', '', { type: 'start', number: 1 }),
};
export const fermata = element('fermata');
export const breath = element('articulations', [element('breath-mark')]);
export const staccato = element('articulations', [element('staccato')]);
export const bows = { down: element('down-bow'), up: element('up-bow') };

/**
 * A roll is written as a turn, the nearest sign that MusicXML has, and how rolls are often printed
 * (common practice).
 */
export const ornaments = {
  roll: element('ornaments', [element('turn')]),
  trill: element('ornaments', [element('trill-mark')]),
  mordent: element('ornaments', [element('mordent')]),
  turn: element('ornaments', [element('turn')]),
};
