import { expect, test } from 'vitest';
import { tuneOf } from './strokes-of.ts';
import { anchorAt, studyOf } from './study-of.ts';

test('an anchor on a note that is tied on is never reached, and that is said', () => {
  const tune = tuneOf('D2 E2 F2 G2-|G2 A2 B2 c2|');
  const study = studyOf(tune, { anchors: [anchorAt('A2', 'up')] });
  expect(study.bowing.anchors[0]?.arrivals).toEqual([]);
  expect(study.problems.map(p => p.rule)).toContain('anchor-not-reached');
});
