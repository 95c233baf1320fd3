import { posix } from 'node:path';
import type { ClipCue } from '../../../shared/clips/clip-cue.ts';
import { nearest } from '../../../shared/nearest.ts';
import { type Place, type Problem, problem } from '../../../shared/problem.ts';
import { readTime, valueReader } from '../attribute-values.ts';
import type { BookNames } from '../book-names.ts';
import type { AttributeValue, Directive } from '../directive.ts';
import type { BlockBase, BlockSpec, ReadBlock } from './block-spec.ts';

/** A recording, cued to the map. */
export interface ClipBlock extends BlockBase {
  readonly kind: 'clip';
  readonly of: string;
  /** What the recording is called. */
  readonly words: string;
  /** Media file of the book, from its folder; null where the recording is a link to elsewhere. */
  readonly src: string | null;
  /** Address of a recording hosted elsewhere: a link that the student opens. */
  readonly link: string | null;
  /** `at="A1=0:04 A1/2=0:21"`: seconds at which a bar begins, in the order written. */
  readonly cues: readonly ClipCue[];
  /** `start=0:04 tempo=84`: where the tune begins, and its beats a minute; instead of cues. */
  readonly steady: { readonly start: number; readonly tempo: number } | null;
  /** A learner is heard or seen. Without `consent` it is not published. */
  readonly learner: boolean;
  /** Who consented, and when, in the teacher's words, which are not published. */
  readonly consent: string | null;
  /** No learner is heard in it, or consent is given. It is shown only where its tune may be shown too. */
  readonly published: boolean;
}

/** `::clip[words]{src=media/x.mp3 of=tune at="A1=0:04 B1=0:38"}`. */
export const clip: BlockSpec<ClipBlock, true> = {
  kind: 'clip',
  form: 'leaf',
  name: 'clip',
  attributes: ['src', 'link', 'of', 'at', 'start', 'tempo', 'learner', 'consent'],
  required: [],
  flags: ['learner'],
  label: true,
  isStudied: true,
  read: (directive, { names, problems, tuneNamed }) =>
    clipBlock(directive, tuneNamed(), names, problems),
  about: block => [block.of],
};

/** Endings of sound and film that browsers play without any other program. */
const playable = [
  ...['mp3', 'm4a', 'aac', 'ogg', 'oga', 'opus', 'flac', 'wav'],
  ...['mp4', 'm4v', 'webm', 'ogv'],
] as const;

/** Null where there would be nothing to play; `of` is already looked up. */
function clipBlock(
  directive: Directive,
  of: string | null,
  names: BookNames,
  problems: Problem[],
): ReadBlock<ClipBlock> | null {
  const { place, label } = directive;
  const values = valueReader(directive, problems);
  const file = directive.values.src ? mediaFile(directive.values.src, names, problems) : null;
  const link = directive.values.link ? hostedLink(directive.values.link, problems) : null;
  const cues = directive.values.at ? readCues(directive.values.at, problems) : [];
  const steady = steadyOf(directive, problems);
  const learner = values.flag('learner');
  const consent = values.text('consent');
  const { src, link: hosted, at } = directive.values;
  const say = (
    rule: 'attribute-missing' | 'clip-twice' | 'clip-cued-twice',
    where: Place,
    name: string,
  ): void => {
    problems.push(problem(rule, where, { facts: { block: '::clip', name } }));
  };
  if (!src && !hosted) say('attribute-missing', place, 'src');
  if (src && hosted) say('clip-twice', hosted.place, 'link');
  if (at && steady !== null) say('clip-cued-twice', at.place, 'at');
  const words = label?.trim() ?? '';
  if (of === null || words === '' || (file === null) === (link === null)) return null;
  const published = !learner || consent !== null;
  const heard = { learner, consent, published };
  return { kind: 'clip', place, of, words, src: file, link, cues, steady, ...heard };
}

/** A path of `media`, from the book's folder or, as links are written, from the page. */
function mediaFile(written: AttributeValue, names: BookNames, problems: Problem[]): string | null {
  const text = written.text.trim();
  const fault = (
    rule: 'clip-elsewhere' | 'clip-missing' | 'clip-unplayable',
    expected: readonly string[],
    near: string | null = null,
  ): null => {
    const rest = { actual: text, expected, nearest: near };
    problems.push(problem(rule, written.place, rest));
    return null;
  };
  if (/^(?:[a-z][a-z0-9+.-]*:|[\\/]{2})/i.test(text)) return fault('clip-elsewhere', []);
  const file = posix.normalize(text).replace(/^(?:\.{0,2}\/)+/, '');
  if (!names.media.has(file)) {
    return fault('clip-missing', [...names.media], nearest(file, names.media));
  }
  const ending = /\.([^./]+)$/.exec(file)?.[1]?.toLowerCase();
  if (!playable.some(known => known === ending)) return fault('clip-unplayable', playable);
  return file;
}

/** An address that begins with `https:`, spaces and control characters taken out. */
function hostedLink(written: AttributeValue, problems: Problem[]): string | null {
  const bare = [...written.text].filter(c => c > ' ' && c !== '\u007F').join('');
  if (/^https:\/\/[^/\s]+/i.test(bare) && URL.canParse(bare)) return bare;
  problems.push(problem('clip-link', written.place, { actual: written.text }));
  return null;
}

/** Reads `start` and `tempo`: one without the other is a problem. */
function steadyOf(directive: Directive, problems: Problem[]): ClipBlock['steady'] {
  const values = valueReader(directive, problems);
  const [start, tempo] = [values.time('start'), values.tempo('tempo')];
  const { start: from, tempo: beats } = directive.values;
  if (from && !beats) problems.push(missing(directive, 'tempo'));
  if (beats && !from) problems.push(missing(directive, 'start'));
  return start === null || tempo === null ? null : { start, tempo };
}

const missing = (directive: Directive, name: string): Problem =>
  problem('attribute-missing', directive.place, { facts: { block: '::clip', name } });

/** Reads the cues with their places. One that cannot be read is left out, and becomes a problem. */
function readCues(written: AttributeValue, problems: Problem[]): readonly ClipCue[] {
  const found = [...written.text.matchAll(/[^\s,;](?:[^\s,;]|,(?=\d))*/g)];
  return found.flatMap(({ 0: text, index: offset }) => {
    const { file, line, column } = written.valuePlace;
    const place = { file, line, column: column + offset };
    const m = /^([A-Za-z][A-Za-z']*\d+(?:\/(\d+)(?:,\d+)*)?)=(.+)$/.exec(text);
    const seconds = m?.[3] === undefined ? null : readTime(m[3]);
    if (m?.[1] === undefined || m[2] === '0' || seconds === null) {
      problems.push(problem('cue-unread', place, { actual: text }));
      return [];
    }
    return [{ bar: m[1], pass: Number(m[2] ?? 1), seconds, place }];
  });
}
