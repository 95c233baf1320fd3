import type { NoteNames } from '../../shared/music/note-names.ts';
import type { Study } from '../../shared/study.ts';
import type { DrawnCell } from './draw-cell.ts';
import { type MakePaper, plainPaper } from './drawing-surface.ts';
import { step } from './lay-out-lines.ts';
import { layTune } from './lay-tune.ts';
import { staffTop } from './note-places.ts';
import { fingerRow } from './place-above.ts';
import type { Score, ScoreCell } from './score.ts';
import { writeCell, writePrelude } from './write-cell.ts';
import { makeGlyphCase } from './write-shapes.ts';

export interface EngraveOptions {
  /** Layers to draw; each can be hidden later by its class. All by default. */
  readonly marks?: boolean;
  readonly fingers?: boolean;
  readonly letters?: boolean;
  /** What the letters call the notes; letters where it is left out. */
  readonly noteNames?: NoteNames;
  /** Width asked of a full cell, in drawing units; where the notes need more, they get it. */
  readonly cellWidth?: number;
  /** abcjs's parses of a text; made anew where it is left out. */
  readonly parse?: (text: string) => unknown;
  /** A bar in words, by its index; none where it is left out. */
  readonly describe?: (bar: number) => string;
}

/**
 * Draws a tune, a phrase at a time. Throws where abcjs cannot lay it out, or calls for what our surface lacks.
 *
 * abcjs lays out and draws notes, beams, slurs, bar lines and signs, one line a cell, on a surface
 * of ours (`drawing-surface.ts`). Rows of our own stand round them, in this order from the notes
 * outwards: fingers, stroke signs, chord symbols, endings with the letters of part and phrase; below
 * the staff the notes' letters. All cells of a tune have the same height and staff lines, and full
 * ones the same width.
 *
 * Layers have classes, so that a page shows or hides them without drawing again: `layer-marks`
 * with `mark-all`, `mark-change` and `mark-anchor`, `layer-fingers`, `layer-letters`,
 * `layer-labels`. Notes carry `data-n` and bars `data-bar`: see `score.ts`.
 */
export const engraveTune = (study: Study, options: EngraveOptions = {}): Score =>
  engraveOn(plainPaper, study, options);

/** Draws a tune on papers of a kind; all kinds give the same score. */
export function engraveOn(makePaper: MakePaper, study: Study, options: EngraveOptions): Score {
  const { map, tune } = study;
  const { cells, drawn, widths, rows, preludes, preludeOf, letters } = layTune(
    makePaper,
    study,
    options,
  );
  const glyphs = makeGlyphCase();
  const written = preludes.map(line => {
    const width = line.group.w + 2;
    return { svg: writePrelude(line.draw().root, width, rows, glyphs), width: rounded(width) };
  });
  const scoreCells = cells.map((cell, i): ScoreCell => {
    const prelude = written[preludeOf[i] ?? 0];
    const body = drawn[i] as DrawnCell;
    const width = widths[i] ?? 0;
    return {
      name: cell.name,
      bars: cell.bars,
      phrase: cell.phrase,
      part: cell.part,
      partName: tune.parts[cell.part]?.name ?? '',
      opensPart: cell.opensPart,
      label: cell.opensPhrase ? (map.phrases[cell.phrase]?.label ?? null) : null,
      prelude: prelude?.svg ?? '',
      preludeWidth: prelude?.width ?? 0,
      svg: writeCell(study, cell, body, { width, rows, glyphs, letters }),
      spoken: cell.bars.flatMap(b => {
        const text = options.describe?.(b) ?? '';
        return text === '' ? [] : [{ bar: tune.bars[b]?.name ?? '', text }];
      }),
      width,
      height: rows.height,
      staffSpace: 2 * step,
      staffTop: rounded(staffTop + rows.dy),
      lettersHeight: rows.letters === null ? 0 : rows.height - Math.ceil(rows.notesBottom + 2),
      notes: body.notes.map(({ event, left, right }) => ({
        event,
        left: rounded(left),
        right: rounded(right),
      })),
    };
  });
  if (scoreCells.some(hasNoPlace)) throw new Error('a sign of it has no place');
  return {
    symbols: [...glyphs.glyphs.values()].join(''),
    glyphs: glyphs.glyphs,
    cells: scoreCells,
    fingerRow: rounded(fingerRow),
  };
}

/** Whether a number in the drawing is none: a browser would draw that sign anywhere, and paper not at all. */
const hasNoPlace = ({ svg, prelude, width, height }: ScoreCell): boolean =>
  !Number.isFinite(width + height) || /="[^"<>]*NaN/.test(svg) || /="[^"<>]*NaN/.test(prelude);

const rounded = (x: number): number => Math.round(x * 10) / 10;
