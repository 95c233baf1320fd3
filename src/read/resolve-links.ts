import { posix } from 'node:path';
import type { Heading, Nodes, Root, RootContent } from 'mdast';
import { toString as plainText } from 'mdast-util-to-string';
import { limits } from '../../shared/limits.ts';
import { nearest } from '../../shared/nearest.ts';
import { type Place, type Problem, problem } from '../../shared/problem.ts';
import type { BookNames } from './book-names.ts';
import { slug } from './slug.ts';

/** Prefix of the ids of headings, which keeps them different from the ids of the page's frame. */
const headingPrefix = 'at-';

/** Gives every heading an id made of its words, and returns their names without the prefix. */
export function nameHeadings(tree: Root): ReadonlySet<string> {
  const names = new Set<string>();
  const name = (heading: Heading): void => {
    const base = slug(plainText(heading)) || 'section';
    let unique = base;
    for (let n = 2; names.has(unique); n++) unique = `${base}-${n}`;
    names.add(unique);
    heading.data = { ...heading.data, hProperties: { id: `${headingPrefix}${unique}` } };
  };
  const look = (node: Nodes): void => {
    if (node.type === 'heading') name(node);
    // Headings in private notes are not to be found by a link from outside.
    const hidden = node.type === 'containerDirective' && node.name === 'private';
    if ('children' in node && !hidden) for (const child of node.children) look(child);
  };
  look(tree);
  return names;
}

/** A link that a reader follows, or the picture that a page shows. */
export type LinkKind = 'link' | 'image';

/** Where a link leads on the site. */
export interface ResolvedLink {
  /** Address from the page of the site; null where the link is dropped and only its text stays. */
  readonly url: string | null;
  /** Path of the media file that it leads to; null for other targets. */
  readonly media: string | null;
  readonly problem: Problem | null;
}

/**
 * Turns the target of a link in `file` into one that works in the built site. Pages, tunes, lessons
 * and media stand one folder deep there, as they do in the book, so paths keep their shape.
 */
export function resolveLink(
  url: string,
  kind: LinkKind,
  file: string,
  place: Place,
  names: BookNames,
): ResolvedLink {
  if (url.length > limits.linkLength) {
    const facts = { found: url.length, most: limits.linkLength };
    return {
      url: null,
      media: null,
      problem: problem('link-past-limit', place, { facts }),
    };
  }
  const bare = [...url].filter(c => c > ' ' && c !== '\u007F').join('');
  const scheme = /^([a-z][a-z0-9+.-]*):/i.exec(bare)?.[1]?.toLowerCase();
  const elsewhere = scheme !== undefined || /^[\\/]{2}/.test(bare);
  const drop = (rule: 'image-elsewhere' | 'link-unsafe'): ResolvedLink => ({
    url: null,
    media: null,
    problem: problem(rule, place, { actual: url }),
  });
  if (elsewhere && kind === 'image') return drop('image-elsewhere');
  if (elsewhere) {
    return scheme && ['http', 'https', 'mailto', 'tel'].includes(scheme)
      ? { url: bare, media: null, problem: null }
      : drop('link-unsafe');
  }
  if (url === '' || url.startsWith('#')) {
    const headings = names.pages.get(file)?.headings;
    return { url: withFragment('', url.slice(1), headings), media: null, problem: null };
  }
  return resolveInBook(url, kind, file, place, names);
}

function resolveInBook(
  url: string,
  kind: LinkKind,
  file: string,
  place: Place,
  names: BookNames,
): ResolvedLink {
  const [, path = '', fragment = ''] = /^([^?#]*)(?:\?[^#]*)?(?:#(.*))?$/s.exec(url) ?? [];
  const target = posix.normalize(posix.join(posix.dirname(file), decoded(path)));
  const page = names.pages.get(target);
  const fault = (
    rule: 'link-to-unfinished' | 'link-to-no-tune' | 'link-missing',
    near: string | null = null,
  ): ResolvedLink => ({
    url: null,
    media: null,
    problem: problem(rule, place, { actual: url, nearest: near }),
  });
  if (names.unfinished.has(target)) return fault('link-to-unfinished');
  if (page && kind === 'link') {
    if (page.sitePath === null) return fault('link-to-no-tune');
    return {
      url: withFragment(relative(file, page.sitePath), fragment, page.headings),
      media: null,
      problem: null,
    };
  }
  const isMedia = names.media.has(target);
  if (isMedia || (kind === 'link' && isBuilt(target, names))) {
    const found = withFragment(relative(file, target), fragment, undefined);
    return { url: found, media: isMedia ? target : null, problem: null };
  }
  const known = kind === 'image' ? [...names.media] : [...names.pages.keys(), ...names.media];
  const near = nearest(target, known);
  return fault('link-missing', near && posix.relative(posix.dirname(file), near));
}

/** Whether a path is that of a page of the site, as a teacher may have copied it from there. */
function isBuilt(target: string, names: BookNames): boolean {
  const tune = /^tunes\/(.+)\.html$/.exec(target)?.[1];
  if (target === 'index.html' || (tune !== undefined && names.tunes.has(tune))) return true;
  return [...names.pages.values()].some(page => page.sitePath === target);
}

/**
 * From a page of the book to a path of the site, where its page stands in a folder of the same name
 * but never deeper.
 */
function relative(file: string, target: string): string {
  const [folder = ''] = file.split('/', 1);
  return encodeURI(posix.relative(folder, target)).replace(/[?#]/g, encodeURIComponent);
}

function withFragment(
  path: string,
  fragment: string,
  headings: ReadonlySet<string> | undefined,
): string {
  if (fragment === '') return path || '#';
  const name = decoded(fragment);
  return `${path}#${headings?.has(name) ? headingPrefix : ''}${encodeURIComponent(name)}`;
}

function decoded(path: string): string {
  try {
    return decodeURIComponent(path);
  } catch {
    return path;
  }
}

/** Whether a node carries a target to resolve. */
export const hasTarget = (
  node: RootContent,
): node is Extract<RootContent, { type: 'link' | 'image' | 'definition' }> =>
  node.type === 'link' || node.type === 'image' || node.type === 'definition';
