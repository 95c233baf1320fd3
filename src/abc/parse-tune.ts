import { limits } from '../../shared/limits.ts';
import type { AbcSource, Tune } from '../../shared/music/tune.ts';
import { type Problem, problem } from '../../shared/problem.ts';
import { parseWithAbcjs, type RawTune, readWarning } from './abcjs-parse.ts';
import { assembleTune } from './assemble-tune.ts';
import { checkTune } from './check-tune.ts';
import { collectBars } from './collect-bars.ts';
import { type Locate, locator } from './locate.ts';
import { musicPastLimit, textPastLimit } from './past-limit.ts';
import { fieldText } from './read-header.ts';
import { type Chunk, splitSource } from './split-source.ts';

export interface ParsedTunes {
  readonly tunes: readonly Tune[];
  readonly problems: readonly Problem[];
}

/**
 * Reads every tune of a fence or file. What cannot be read becomes a placed problem, and what can
 * be built still is; nothing throws. `ids.id` names the first tune, and with `-2`, `-3` the others;
 * without it each is named after its title. With `ids.number` only tunes with that `X:` are read.
 */
export function parseTunes(
  source: AbcSource,
  ids: { readonly id?: string; readonly number?: string } = {},
): ParsedTunes {
  const text = source.text.replace(/\r\n?/g, '\n');
  const plain: AbcSource = { ...source, text };
  const locate = locator(plain);
  const tunes: Tune[] = [];
  const problems: Problem[] = [];
  const chunks = splitSource(text);
  const beyond = chunks[limits.tunes];
  if (beyond) {
    const facts = { found: chunks.length, most: limits.tunes };
    problems.push(problem('tunes-past-limit', locate(beyond.offset(0)), { facts }));
  }
  for (const chunk of chunks.slice(0, limits.tunes)) {
    if (ids.number !== undefined && !hasNumber(chunk, ids.number)) continue;
    const count = tunes.length + 1;
    const id = ids.id === undefined || count === 1 ? ids.id : `${ids.id}-${count}`;
    const tune = parseChunk(chunk, plain, locate, id, problems);
    if (tune) tunes.push(tune);
  }
  return { tunes, problems };
}

const hasNumber = (chunk: Chunk, number: string): boolean =>
  /^X:\s*(\d+)/.exec(chunk.abc)?.[1] === number;

function parseChunk(
  chunk: Chunk,
  source: AbcSource,
  locate: Locate,
  id: string | undefined,
  problems: Problem[],
): Tune | null {
  const place = locate(chunk.offset(0));
  const long = textPastLimit(chunk, locate);
  if (long) {
    problems.push(long);
    return null;
  }
  const raw = parseWithAbcjs(chunk.abc);
  if ('failure' in raw) {
    const at = locate(lineStarts(source.text)[chunk.line(raw.line)] ?? 0);
    problems.push(problem('abc-unreadable', at, { actual: raw.failure }));
    return null;
  }
  sayWarnings(raw, chunk, source, locate, problems);
  if (chunk.strayMusic !== null) {
    problems.push(problem('abc-blank-line', locate(chunk.strayMusic)));
  }
  if (raw.lines.some(l => (l.staff?.length ?? 0) > 1 || l.staff?.some(s => s.voices.length > 1))) {
    problems.push(problem('several-voices', place));
  }
  const much = musicPastLimit(raw, chunk, locate);
  if (much) {
    problems.push(much);
    return null;
  }
  const drafts = collectBars(raw, chunk);
  if (drafts.length === 0) {
    const title = fieldText(raw.metaText.title) ?? '';
    problems.push(problem('no-notes', place, { facts: { title } }));
    return null;
  }
  const { tune, unknownParts } = assembleTune(raw, drafts, chunk, source, locate, id);
  for (const part of unknownParts) {
    problems.push(
      problem('part-unknown', place, {
        actual: part,
        expected: tune.parts.map(p => p.name),
      }),
    );
  }
  problems.push(...checkTune(tune, drafts, locate));
  return tune;
}

/** abcjs's own complaints, placed in the teacher's file. */
function sayWarnings(
  raw: RawTune,
  chunk: Chunk,
  source: AbcSource,
  locate: Locate,
  problems: Problem[],
): void {
  if (!raw.warnings) return;
  const said = new Set<string>();
  const starts = lineStarts(source.text);
  for (const warning of raw.warnings.slice(0, limits.messages)) {
    const { line, column, text } = readWarning(warning);
    const at = (starts[chunk.line(line)] ?? source.text.length) + column;
    const key = `${at} ${text}`;
    if (said.has(key)) continue;
    said.add(key);
    problems.push(problem('abc-warning', locate(at), { actual: text }));
  }
}

/** The offset at which each line begins. */
const lineStarts = (text: string): readonly number[] => [
  0,
  ...[...text.matchAll(/\n/g)].map(m => m.index + 1),
];
