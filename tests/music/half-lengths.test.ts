import { describe, expect, it } from 'vitest';
import { pacesOf } from '../../shared/bowing/paces.ts';
import { levels } from '../../shared/bowing/settings.ts';
import { drillKinds } from '../../shared/drills/drill.ts';
import { makeDrill } from '../../shared/drills/make-drill.ts';
import { toNumber } from '../../shared/music/fraction.ts';
import { liltAt, liltRange } from '../../shared/sound/lilt.ts';
import { passagesOf } from '../../shared/sound/passage.ts';
import { soundPassage } from '../../shared/sound/sound-passage.ts';
import { type Drilled, withLastBars } from '../drills/drill-sources.ts';
import { onTunes, readTunes } from '../tunes/on-tunes.ts';

/**
 * Old American books write reels and hornpipes in 2/4, their running notes semiquavers (common
 * practice). They are the same tunes as in 4/4, where each length is twice as long.
 */
const inFourFour = /^M: *(?:4\/4|C) *$/m;
/** A second metre or default length, which `halved` would leave. */
const changes = /\[[LM]:|^K:[\s\S]*^[LM]:/m;
const inQuavers = /^L: *1\/8 *$/m;

const types = ['reel', 'hornpipe', 'strathspey', 'march', null];

const withType = (abc: string, type: string | null): string =>
  abc.replace(/^R:.*\n/m, type === null ? '' : `R:${type}\n`);

const halved = (abc: string): string =>
  abc.replace(inFourFour, 'M:2/4').replace(inQuavers, 'L:1/16');

onTunes('a tune in 2/4 is bowed and drilled as in 4/4', 4, tunes => {
  let compared = 0;
  tunes.forEach(({ name, abc }, i) => {
    if (!inFourFour.test(abc) || !inQuavers.test(abc) || changes.test(abc)) return;
    const type = types[i % types.length] ?? null;
    const named = withType(abc, type);
    const [whole, half] = [named, halved(named)].map(text =>
      readTunes([{ name, abc: text }]).map(t => withLastBars(t, i % 2 ? 'up' : 'down', name)),
    ) as [Drilled[], Drilled[]];
    if (!whole[0] || !half[0]) return;
    compared++;
    expect(told(half[0], 2), `${name}, ${type}`).toEqual(told(whole[0], 1));
  });
  expect(compared).toBeGreaterThan(10);
});

/** All that a student is told of a tune and hears of it, with lengths `scale` times as long. */
function told({ source }: Drilled, scale: number) {
  const paces = pacesOf(source.tune, source.settings);
  const whole = passagesOf(source, { kind: 'all' })[0];
  return {
    bowing: scaled(source.bowing, scale),
    map: source.map,
    notesASecond: Object.values(paces.perMinute).map(pace => pace * toNumber(paces.beat) * scale),
    drills: drillKinds.flatMap(kind =>
      levels.map(level => scaled(makeDrill(source, { kind, level, seed: 5, to: null }), scale)),
    ),
    heard:
      whole &&
      soundPassage(source, whole, {
        tempo: { beat: paces.beat, perMinute: paces.perMinute.learning },
        lilt: liltAt(liltRange(source.tune), liltRange(source.tune).usual),
        breath: 0,
        answer: false,
        pulse: false,
      }).notes.map(n => [n.note, n.at, n.until].map(x => Math.round(x * 1e6))),
  };
}

/** The lengths in a study or a drill, so many times as long. */
const scaled = (told: object, scale: number): unknown =>
  JSON.parse(
    JSON.stringify(told, (key, value) =>
      typeof value === 'bigint'
        ? String(value)
        : key === 'drift'
          ? Math.round(toNumber(value) * scale * 1e6)
          : value,
    ),
  );

describe('tempo', () => {
  const tune = (head: string) => {
    const [read] = readTunes([{ name: 't', abc: `X:1\nT:T\n${head}\nK:D\nABAB ABAB|\n` }]);
    if (!read) throw new Error('not read');
    return read;
  };
  const settings = { tempi: { reel: { beat: '1/2', learning: 50, slow: 75, session: 100 } } };
  it.each([
    // head, beat, learning, slow, session
    ['M:6/8', '3/8', 50, 80, 110],
    ['M:6/8\nQ:3/8=88', '3/8', 40, 64, 88],
    ['M:6/8\nQ:1/8=220', '1/8', 100, 160, 220],
    ['M:4/4\nR:reel', '1/2', 50, 75, 100],
    ['M:4/4\nR:reel\nQ:1/4=180', '1/4', 90, 135, 180],
    ['M:4/4\nR:reel\nQ:"Steady"', '1/2', 50, 75, 100],
    ['M:2/4\nL:1/16\nR:reel', '1/4', 50, 75, 100],
    ['M:2/4\nL:1/16', '1/4', 25, 40, 55],
    ['M:2/4\nL:1/8', '1/4', 50, 80, 110],
  ])('%s', (head, beat, learning, slow, session) => {
    const paces = pacesOf(tune(head), settings as never);
    expect({ ...paces.beat }).toEqual({ n: Number(beat[0]), d: Number(beat[2]) });
    expect(paces.perMinute).toEqual({ learning, slow, session });
  });
});
