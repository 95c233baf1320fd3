import { levels } from '../../shared/bowing/settings.ts';
import { drillKinds } from '../../shared/drills/drill.ts';
import { nearest } from '../../shared/nearest.ts';
import { type Problem, problem } from '../../shared/problem.ts';
import { valueReader } from './attribute-values.ts';
import type { DrillBlock, NotesBlock, PlanBlock, StrokeBlock } from './book.ts';
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

/** Drills are told apart by their seed, up to this. */
const mostSeeds = 9999;

/** `of` is the tune that the drill is about, already looked up. `to` must be an anchor of it. */
export function drillBlock(
  directive: Directive,
  of: string | null,
  index: BookIndex,
  problems: Problem[],
): DrillBlock | null {
  const values = valueReader(directive, problems);
  const drill = values.oneOf('kind', drillKinds);
  const to = values.text('to');
  const level = values.oneOf('level', levels);
  const seed = values.count('seed', mostSeeds) ?? 1;
  const at = directive.values.to?.place ?? directive.place;
  if (to !== null && !index.anchors.has(to)) {
    problems.push(unknownName('anchor', to, at, index.anchors));
    return null;
  }
  const other = to === null ? undefined : index.anchorOf.get(to);
  if (to !== null && other !== undefined && of !== null && other !== of) {
    const facts = { anchor: to, tune: of };
    problems.push(problem('drill-anchor', 'error', at, { facts, actual: to, expected: [other] }));
    return null;
  }
  if (drill === null || of === null) return null;
  return { kind: 'drill', place: directive.place, drill, of, to, level, seed };
}
