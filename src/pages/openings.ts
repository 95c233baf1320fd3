import type { BuiltTune } from './built-tune.ts';
import { inStaffSpaces } from './notation-view.ts';
import { scriptCall } from './script-call.ts';

/** How a tune opens, drawn: its first phrase, and the glyphs that the drawing uses. */
export interface Opening {
  readonly id: string;
  /** Clef, key and metre, then the phrase. */
  readonly drawing: readonly [prelude: string, music: string];
  readonly glyphs: ReadonlyMap<string, string>;
}

/** The opening of a tune; null where it could not be drawn. The caller checks whether it may be shown. */
export function openingOf({ block, score }: BuiltTune): Opening | null {
  const cell = score?.cells[0];
  if (!cell) return null;
  const prelude = inStaffSpaces(cell.prelude, cell.preludeWidth, cell);
  const music = inStaffSpaces(cell.svg, cell.width, cell);
  return { id: block.id, drawing: [prelude, music], glyphs: score.glyphs };
}

/** Openings in one file: so many that a list of results loads few files, so few that each loads fast on a phone. */
const perFile = 50;

const fileOf = (index: number): string => `openings-${Math.floor(index / perFile) + 1}.js`;

/** The files of openings, each with the tunes that it holds. */
export const openingFiles = (
  ids: readonly string[],
): readonly { readonly path: string; readonly ids: readonly string[] }[] =>
  Array.from({ length: Math.ceil(ids.length / perFile) }, (_, i) => ({
    path: `tunes/${fileOf(i * perFile)}`,
    ids: ids.slice(i * perFile, (i + 1) * perFile),
  }));

/** The file of each opening by id of its tune, from the page that lists all tunes. */
export const openingFileOf = (ids: readonly string[]): ReadonlyMap<string, string> =>
  new Map(ids.map((id, i) => [id, fileOf(i)] as const));

/** Writes drawn openings as a script, which a page can load from a folder too, unlike JSON. */
export function openingsScript(openings: readonly Opening[]): string {
  const glyphs = Object.fromEntries(openings.flatMap(o => [...o.glyphs]));
  const tunes = Object.fromEntries(openings.map(o => [o.id, o.drawing] as const));
  return scriptCall('bowbookOpenings', { glyphs, tunes });
}
