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

/** null where the tune could not be drawn. Whether it may be shown, the caller knows. */
export function openingOf({ block, score }: BuiltTune): Opening | null {
  const cell = score?.cells[0];
  if (!cell) return null;
  const prelude = inStaffSpaces(cell.prelude, cell.preludeWidth, cell);
  const music = inStaffSpaces(cell.svg, cell.width, cell);
  return { id: block.id, drawing: [prelude, music], glyphs: score.glyphs };
}

/** Openings in one file: enough that a list asks for few, few enough that a phone has them soon. */
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

/** In which file the opening of each tune stands, from the page of all tunes. */
export const openingFileOf = (ids: readonly string[]): ReadonlyMap<string, string> =>
  new Map(ids.map((id, i) => [id, fileOf(i)] as const));

/** Drawn openings as a script that a page loads from a folder too. */
export function openingsScript(openings: readonly Opening[]): string {
  const glyphs = Object.fromEntries(openings.flatMap(o => [...o.glyphs]));
  const tunes = Object.fromEntries(openings.map(o => [o.id, o.drawing] as const));
  return scriptCall('bowbookOpenings', { glyphs, tunes });
}
