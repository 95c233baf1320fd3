import type { Study } from '../../shared/study.ts';
import type { DrawnCell } from './draw-cell.ts';
import type { Rows } from './lay-rows.ts';
import { short } from './write-path.ts';

/** A tint behind an anchor, and a bracket round it, open at an edge that it runs over. */
export function writeAnchors(study: Study, drawn: DrawnCell, rows: Rows): string {
  const top = rows.notesTop;
  const bottom = rows.notesBottom;
  return study.bowing.anchors
    .map(anchor => {
      const inside = drawn.notes.filter(n => anchor.first <= n.event && n.event <= anchor.last);
      const [first, last] = [inside[0], inside[inside.length - 1]];
      if (!first || !last) return '';
      const opens = first.event === firstNoteFrom(study, anchor.first);
      const closes = last.event === lastNoteTo(study, anchor.last);
      const left = opens ? first.left - 5 : 0;
      const right = closes ? last.right + 5 : drawn.width;
      const [l, r, t, b] = [short(left), short(right), short(top), short(bottom)];
      const edge = `M${l} ${t}H${r}M${l} ${b}H${r}${opens ? `M${l} ${t}V${b}` : ''}${closes ? `M${r} ${t}V${b}` : ''}`;
      return (
        `<rect class="anchor-band" x="${l}" y="${t}" width="${short(right - left)}" height="${short(bottom - top)}" fill-opacity=".09" stroke="none"/>` +
        `<path class="anchor-edge" fill="none" stroke-width="1.3" d="${edge}"/>`
      );
    })
    .join('');
}

function firstNoteFrom({ tune }: Study, event: number): number {
  return tune.events.findIndex((e, i) => i >= event && e.kind === 'note');
}

function lastNoteTo({ tune }: Study, event: number): number {
  return tune.events.findLastIndex((e, i) => i <= event && e.kind === 'note');
}
