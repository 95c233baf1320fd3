import { levels } from '../../shared/bowing/settings.ts';
import { nearest } from '../../shared/nearest.ts';
import { type Problem, problem } from '../../shared/problem.ts';
import { valueReader } from './attribute-values.ts';
import type { NotesBlock, PlanBlock, StrokeBlock } from './book.ts';
import { type BookIndex, unknownName } from './book-index.ts';
import type { Directive } from './read-directive.ts';

/** Blocks without a body or a tune of their own. What is wrong is said, and the block is null. */

export function strokeBlock({ place, label }: Directive, problems: Problem[]): StrokeBlock | null {
  const written = label?.trim() ?? '';
  if (written === 'up' || written === 'down') return { kind: 'stroke', place, direction: written };
  if (written !== '') {
    const expected = ['up', 'down'];
    const rest = { actual: written, expected, nearest: nearest(written, expected) };
    problems.push(problem('stroke-unknown', 'error', place, rest));
  }
  return null;
}

export function notesBlock(directive: Directive, problems: Problem[]): NotesBlock | null {
  // A label may run on to a second line, which in a quotation begins with its sign.
  const abc = directive.label?.replace(/\s*\n[\s>]*/g, ' ').trim() ?? '';
  const from = valueReader(directive, problems).direction('from');
  return abc === '' ? null : { kind: 'notes', place: directive.place, abc, from };
}

export function planBlock(
  directive: Directive,
  index: BookIndex,
  problems: Problem[],
): PlanBlock | null {
  const values = valueReader(directive, problems);
  const to = values.text('to');
  const level = values.oneOf('level', levels);
  const preset = values.oneOf('preset', index.presets);
  if (to === null) return null;
  if (index.anchors.has(to)) return { kind: 'plan', place: directive.place, to, level, preset };
  const at = directive.values.to?.place ?? directive.place;
  problems.push(unknownName('anchor', to, at, index.anchors));
  return null;
}
