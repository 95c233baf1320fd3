import { at } from '../must.ts';
import { isCompound } from './meter.ts';
import type { Tune } from './tune.ts';

/** `p` notes in the time of `q`; `first` and `last` are event indices, both included. */
export interface Tuplet {
  readonly p: number;
  readonly q: number;
  readonly first: number;
  readonly last: number;
}

/** The tuplet of each event in one, by event index. */
export function tupletsOf(tune: Tune): ReadonlyMap<number, Tuplet> {
  const found = new Map<number, Tuplet>();
  tune.events.forEach((event, e) => {
    if (found.has(e)) return;
    const sign = tupletSign(tune.source.text.slice(event.start, event.stop));
    if (!sign) return;
    const bar = at(tune.bars, event.bar);
    const last = Math.min(e + sign.r, bar.end) - 1;
    const q = sign.q ?? timeOf(sign.p, isCompound(bar.meter));
    for (let i = e; i <= last; i++) found.set(i, { p: sign.p, q, first: e, last });
  });
  return found;
}

/** `(p:q:r` before a note (ABC 2.1, section 4.13); `q` null where it is left out. */
function tupletSign(
  span: string,
): { readonly p: number; readonly q: number | null; readonly r: number } | null {
  const bare = span.replace(/"[^"]*"|\{[^}]*\}|![^!\n]*!/g, '');
  const m = /\((\d)(?::(\d*))?(?::(\d*))?/.exec(bare);
  if (!m) return null;
  const p = Number(m[1]);
  return { p, q: m[2] ? Number(m[2]) : null, r: m[3] ? Number(m[3]) : p };
}

/** `q` where it is left out (ABC 2.1, section 4.13). */
function timeOf(p: number, compound: boolean): number {
  if (p === 3 || p === 6) return 2;
  if (p === 2 || p === 4 || p === 8) return 3;
  return compound ? 3 : 2;
}
