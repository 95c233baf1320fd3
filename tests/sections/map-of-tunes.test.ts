import { describe, expect } from 'vitest';
import { fractionText } from '../../shared/music/fraction.ts';
import type { NoteEvent, Tune } from '../../shared/music/tune.ts';
import { mapSections } from '../../shared/sections/map-sections.ts';
import type { Phrase, SectionMap } from '../../shared/sections/section-map.ts';
import { type NamedTune, onTunes, readTunes } from '../tunes/on-tunes.ts';

/**
 * A second reading of a phrase, as plainly as can be: for each of its bars, where notes begin and
 * the top pitch of each. Bars shared by endings are put before later endings.
 */
function barsHeard(tune: Tune, phrases: readonly Phrase[], phrase: Phrase): string[] {
  const full = phrase.bars.filter(i => !tune.bars[i]?.pickup);
  const first = tune.bars[full[0] ?? -1];
  let stem: number[] = [];
  if (first && first.endings.length > 0) {
    // The phrase that holds the same bars in the first ending begins with what both share.
    const sibling = phrases.find(
      p =>
        p !== phrase &&
        p.part === phrase.part &&
        p.bars.some(i => tune.bars[i]?.number === first.number && i < (full[0] ?? 0)) &&
        p.bars.some(i => tune.bars[i]?.endings.length === 0),
    );
    stem = sibling?.bars.filter(i => !tune.bars[i]?.endings.length && !tune.bars[i]?.pickup) ?? [];
  }
  const heard = [...stem, ...full];
  return heard.map((index, k) => {
    const bar = tune.bars[index];
    let before: NoteEvent | null = lastNote(tune, k > 0 ? heard[k - 1] : playedBefore(tune, index));
    const notes: string[] = [];
    for (let i = bar?.first ?? 0; i < (bar?.end ?? 0); i++) {
      const e = tune.events[i];
      if (e?.kind !== 'note') {
        before = null;
        continue;
      }
      const midi = Math.max(...e.pitches.map(p => p.midi));
      const goesOn = before?.tied && Math.max(...before.pitches.map(p => p.midi)) === midi;
      before = e;
      if (goesOn && (k > 0 || notes.length > 0)) continue;
      notes.push(`${fractionText(e.onset)} ${goesOn ? 'held' : ''}${midi}`);
    }
    return notes.join(', ');
  });
}

function playedBefore(tune: Tune, index: number): number | undefined {
  const here = tune.bars[index];
  let i = index - 1;
  const other = (): boolean =>
    (tune.bars[i]?.endings.length ?? 0) > 0 &&
    tune.bars[i]?.endings.join() !== here?.endings.join();
  while (here && here.endings.length > 0 && other()) i--;
  return i >= 0 ? i : undefined;
}

function lastNote(tune: Tune, index: number | undefined): NoteEvent | null {
  const bar = tune.bars[index ?? -1];
  const e = bar && bar.end > bar.first ? tune.events[bar.end - 1] : undefined;
  return e?.kind === 'note' ? e : null;
}

const mapped = (tunes: readonly NamedTune[]): { tune: Tune; map: SectionMap }[] =>
  readTunes(tunes).map(tune => ({ tune, map: mapSections(tune) }));

describe('the map', () => {
  onTunes('puts every written bar into one phrase', 1, tunes => {
    for (const { tune, map } of mapped(tunes)) {
      const bars = map.phrases.flatMap(p => p.bars).toSorted((a, b) => a - b);
      expect(bars, tune.title).toEqual([...tune.bars.keys()]);
    }
  });

  onTunes('calls phrases the same when they are equal note for note, and only then', 1, tunes => {
    let pairs = 0;
    for (const { tune, map } of mapped(tunes)) {
      const heard = map.phrases.map(p => barsHeard(tune, map.phrases, p).join(' | '));
      map.phrases.forEach((p, i) => {
        for (let j = 0; j < i; j++) {
          const same = p.label === map.phrases[j]?.label;
          if (same) pairs++;
          if (same !== (heard[i] === heard[j])) {
            throw new Error(`${tune.title}, ${p.name}: ${heard[i]} / ${heard[j]}`);
          }
        }
        if (p.kin === 'same') expect(heard[i]).toBe(heard[p.of ?? -1]);
      });
    }
    expect(pairs).toBeGreaterThan(80);
  });

  onTunes('calls phrases that share a bar at the same place kin', 1, tunes => {
    for (const { tune, map } of mapped(tunes)) {
      const heard = map.phrases.map(p => barsHeard(tune, map.phrases, p));
      map.phrases.forEach((p, i) => {
        if (p.kin !== 'own') return;
        // A letter that has its three forms takes no more (`docs/writing-a-book.md`).
        const before = map.phrases.slice(0, i);
        const isFull = (label: string): boolean =>
          new Set(before.map(q => q.label).filter(l => l[0] === label[0])).size === 3;
        const shared = before.some(
          (q, j) =>
            !isFull(q.label) && heard[j]?.some((bar, k) => bar !== '' && bar === heard[i]?.[k]),
        );
        if (shared) throw new Error(`${tune.title}, ${p.name} shares a bar and is no kin`);
      });
    }
  });

  onTunes('names a first difference in every kin that differs, inside it', 1, tunes => {
    for (const { tune, map } of mapped(tunes)) {
      for (const p of map.phrases) {
        const differs = p.kin !== 'own' && p.kin !== 'same';
        if (!differs) expect(p.firstDifference).toBeNull();
        else if (p.firstDifference !== null) {
          expect(tune.events[p.firstDifference]?.kind, tune.title).toBe('note');
        }
      }
    }
  });
});
