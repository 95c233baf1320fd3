import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { applyEdit } from '../../shared/bowing/apply-edit.ts';
import { defaultBowing } from '../../shared/bowing/default-settings.ts';
import { type SetTune, studySet } from '../../shared/sets/set-study.ts';
import { type Study, studyTune } from '../../shared/study.ts';
import { studyBook } from '../../src/pipeline/pipeline.ts';

/** Every tune of the demo book joined to every other, in both orders, and to itself. */
const root = join(import.meta.dirname, '../../content');
let tunes: readonly { readonly set: SetTune; readonly again: (study: Study) => Study | null }[];

const reversed = ({ bowing }: Study): number =>
  bowing.repeats.filter(r => r.secondPass === 'reversed').length;
const missed = ({ bowing }: Study): number =>
  bowing.anchors.flatMap(a => a.arrivals).filter(a => !a.agrees).length;

beforeAll(async () => {
  const { tunes: studied } = await studyBook(root, () => {});
  tunes = studied.flatMap(({ study, request, block }) =>
    study === null
      ? []
      : [
          {
            set: { study, start: block.start, restart: block.restart, times: 1 },
            again: (other: Study) => studyTune(other.tune, request),
          },
        ],
  );
}, 60_000);

describe('the joins of the demo tunes', () => {
  it('are of every tune that the book has', () =>
    expect(tunes.length).toBeGreaterThanOrEqual(readdirSync(join(root, 'tunes')).length));

  it('agree just where the strokes alternate, and every mend makes them and harms nothing', () => {
    let mends = 0;
    for (const { set: a, again } of tunes) {
      for (const { set: b } of tunes) {
        const [found] = studySet([a, b], defaultBowing).joins;
        const last = a.study.bowing.plan.strokes.at(-1)?.direction;
        const first = b.study.bowing.plan.strokes[0]?.direction;
        expect(found).toMatchObject({ last, first, agrees: last !== first });
        if (!found?.mend) continue;
        mends += 1;
        const mended = again({ ...a.study, tune: applyEdit(a.study.tune, found.mend) });
        const name = `${a.study.tune.title}, then ${b.study.tune.title}`;
        expect([name, mended?.bowing.plan.strokes.at(-1)?.direction]).toEqual([
          name,
          first === 'down' ? 'up' : 'down',
        ]);
        expect([name, mended && missed(mended)]).toEqual([name, missed(a.study)]);
        expect(mended && reversed(mended)).toBeLessThanOrEqual(reversed(a.study));
      }
    }
    expect(mends).toBeGreaterThan(0);
  }, 60_000);
});
