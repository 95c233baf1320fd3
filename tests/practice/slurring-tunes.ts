import { rhythmPlaces } from '../../shared/bowing/bar-rhythms.ts';
import { type JunctionKind, junctionKind } from '../../shared/bowing/printed-practice.ts';
import { writtenSlurs } from '../../shared/bowing/written-slurs.ts';
import type { Tune } from '../../shared/music/tune.ts';
import { at } from '../../shared/must.ts';
import { parseTunes } from '../../src/abc/parse-tune.ts';
import { bowedTunes } from '../tunes/real-tunes.ts';

/** A junction between two notes written in a row, by event, and whether the book slurs over it. */
export interface PrintedJunction {
  readonly before: number;
  readonly after: number;
  readonly slurred: boolean;
  readonly kind: JunctionKind;
}

export interface PrintedTune {
  readonly tune: Tune;
  readonly junctions: readonly PrintedJunction[];
}

/**
 * The tunes of the book that slur 6 % or more of their junctions, ties left out: where a tune slurs
 * less, the engraver meant "and so on". Every other one is counted, and the rest are kept for trying.
 */
export function slurringTunes(): {
  readonly counted: readonly PrintedTune[];
  readonly kept: readonly PrintedTune[];
} {
  const tunes = bowedTunes().flatMap(text => {
    const [tune] = parseTunes({ text, file: 'ryan-1883.abc', line: 1, indent: 0 }).tunes;
    return tune ? [{ tune, junctions: junctionsOf(tune) }] : [];
  });
  const slurs = ({ junctions }: PrintedTune): boolean =>
    junctions.length > 0 && junctions.filter(j => j.slurred).length >= 0.06 * junctions.length;
  const halves = [0, 1].map(half => tunes.filter((t, i) => i % 2 === half && slurs(t)));
  return { counted: at(halves, 0), kept: at(halves, 1) };
}

function junctionsOf(tune: Tune): PrintedJunction[] {
  const { previous, joined } = writtenSlurs(tune);
  const places = rhythmPlaces(tune);
  return tune.events.flatMap((event, after) => {
    const before = previous[after] ?? -1;
    const from = tune.events[before];
    if (event.kind !== 'note' || from?.kind !== 'note') return [];
    const kind = junctionKind(tune, places, before, after);
    if (!kind || (from.tied && kind.interval === 'same')) return [];
    return [{ before, after, slurred: joined[after] === true, kind }];
  });
}

/** A tune without its slurs and bow signs. */
export const unmarked = (tune: Tune): Tune => ({
  ...tune,
  events: tune.events.map(e =>
    e.kind === 'note' ? { ...e, mark: null, slursOpened: 0, slursClosed: 0 } : e,
  ),
});
