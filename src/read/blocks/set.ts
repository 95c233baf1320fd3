import { posix } from 'node:path';
import type { Root } from 'hast';
import type { List, ListItem, RootContent } from 'mdast';
import { toString as plainText } from 'mdast-util-to-string';
import { type Place, type Problem, problem } from '../../../shared/problem.ts';
import { type BookNames, unknownName } from '../book-names.ts';
import { resolveLink } from '../resolve-links.ts';
import { slug } from '../slug.ts';
import { placeAt, positionOf, type SourceText } from '../source-text.ts';
import type { BlockBase, BlockContext, BlockSpec } from './block-spec.ts';

/** Tunes played one after another. */
export interface SetBlock extends BlockBase {
  readonly kind: 'set';
  readonly id: string;
  readonly title: string;
  readonly tunes: readonly { readonly of: string; readonly times: number }[];
  /** What the teacher wrote besides the list. */
  readonly body: Root;
}

/** `:::set{#id title="…"}` around a list of tunes, and any words besides. */
export const set: BlockSpec<SetBlock, false> = {
  kind: 'set',
  form: 'container',
  name: 'set',
  attributes: ['id', 'title'],
  required: ['id'],
  defines: 'set',
  isStudied: false,
  read({ place }, context) {
    const { id, values, bodyOf } = context;
    const title = values.text('title') ?? titleFromId(id ?? '');
    const { tunes, rest } = splitSet(place, context);
    const body = bodyOf(rest);
    return id && tunes.length > 0 ? { kind: 'set', place, id, title, tunes, body } : null;
  },
  about: block => block.tunes.map(tune => tune.of),
};

/** Most times that one tune of a set is played. */
const mostTimes = 20;

/**
 * Splits what stands in a `:::set` into its tunes, the first list, and the rest, which is prose.
 * An item names its tune by id, by title or by a link to its page, and may end in the times
 * through: `- the-tide-table x3`, `- [Wet Rope](../tunes/wet-rope.md) × 2`, `- Fog Signal, 3 times`.
 */
function splitSet(
  place: Place,
  { content, source, names, problems }: BlockContext,
): { readonly tunes: SetBlock['tunes']; readonly rest: readonly RootContent[] } {
  const list = content.find((node): node is List => node.type === 'list');
  if (!list) {
    problems.push(problem('set-without-tunes', place));
    return { tunes: [], rest: content };
  }
  const tunes = list.children.flatMap(item => setTune(item, source, names, problems) ?? []);
  return { tunes, rest: content.filter(node => node !== list) };
}

/** `harbour-evening` as a title: "Harbour evening". */
const titleFromId = (id: string): string =>
  id.charAt(0).toUpperCase() + id.slice(1).replaceAll('-', ' ');

function setTune(
  item: ListItem,
  source: SourceText,
  names: BookNames,
  problems: Problem[],
): SetBlock['tunes'][number] | null {
  const [line, ...more] = item.children;
  const { start } = positionOf(line ?? item);
  const place = placeAt(source.file, start.line, start.column);
  if (line?.type !== 'paragraph' || more.length > 0) {
    problems.push(problem('set-item', place));
    return null;
  }
  const { name, times } = splitTimes(plainText(line).trim());
  if (times < 1 || times > mostTimes) {
    const expected = [`${mostTimes}`];
    problems.push(problem('set-times', place, { actual: `${times}`, expected }));
    return null;
  }
  const link = line.children.find(child => child.type === 'link');
  const of = tuneOf(name, names) ?? (link ? linkedTune(link.url, source, place, names) : null);
  if (of === null) {
    problems.push(unknownName('tune', name, place, names.tunes));
    return null;
  }
  return { of, times };
}

/** `Wet Rope × 3` is `Wet Rope` and 3; a tune that says nothing is played once. */
function splitTimes(text: string): { readonly name: string; readonly times: number } {
  const m =
    /^(.+?)[\s,:]*(?:(?<![\p{L}\p{N}])[x×*]\s*(\d{1,4})|(?<!\d)(\d{1,4})\s*(?:[x×]|times?))$/iu.exec(
      text,
    );
  if (m?.[1] === undefined) return { name: text, times: 1 };
  return { name: m[1].trim(), times: Number(m[2] ?? m[3]) };
}

function tuneOf(name: string, names: BookNames): string | null {
  return names.tunes.has(name) ? name : (names.titled.get(slug(name)) ?? null);
}

/** The tune whose page a link leads to. */
function linkedTune(
  url: string,
  source: SourceText,
  place: Place,
  names: BookNames,
): string | null {
  const to = resolveLink(url, 'link', source.file, place, names).url;
  const [folder = ''] = source.file.split('/', 1);
  const path = to === null ? '' : posix.join(folder, decodeURI(to));
  const id = /^tunes\/([^/]+)\.html(?:#.*)?$/.exec(path)?.[1];
  return id !== undefined && names.tunes.has(id) ? id : null;
}
