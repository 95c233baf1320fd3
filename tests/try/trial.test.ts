import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { writtenSlurs } from '../../shared/bowing/written-slurs.ts';
import { pastLimits } from '../../shared/trying/past-limits.ts';
import { firstStep, stepBack, stepForward, stepTo } from '../../shared/trying/steps.ts';
import {
  bowingOfPlan,
  leadInOfPass,
  type Outcome,
  openTrial,
  playBowing,
  type Trial,
  tuneWith,
  turnJunction,
} from '../../shared/trying/trial.ts';
import { bowingOfLink, readTrialLink, trialLink } from '../../shared/trying/trial-link.ts';
import { turnedRuns, wayThere } from '../../shared/trying/way-there.ts';
import { onTunes } from '../tunes/on-tunes.ts';
import { requestFor, tideTable, trialOf, tuneOf, withPassage } from './try-tunes.ts';

const tide = trialOf(tideTable, 'B7-B8', 'up');
const named = (trial: Trial, id: string): number =>
  trial.tune.events.findIndex(e => e.kind === 'note' && e.id === id);
const strokes = ({ anchor }: Outcome): number => anchor.leadIns[0]?.strokes ?? 0;
const arrives = ({ anchor }: Outcome): string => anchor.arrivals.map(a => a.direction).join(' ');

describe('trying slurs on the way to a passage', () => {
  it('starts from what is written: 47 notes in 43 strokes, which arrive the wrong way', () => {
    // Counted by hand in the demo lesson: 1 + 6 + 8 + 8 + 6 + 6 + 8.
    expect(tide.junctions).toHaveLength(46);
    expect(strokes(tide.written)).toBe(43);
    expect(arrives(tide.written)).toBe('down down');
  });

  it('one more slur is one stroke fewer, and turns round every note from its second on', () => {
    // An edit turns the bow exactly when it changes an odd number of junctions: docs, "Flips".
    const event = named(tide, 'B2:2');
    const after = playBowing(tide, turnJunction(tide, tide.written.bowing, event, false));
    expect(strokes(after)).toBe(42);
    expect(arrives(after)).toBe('up up');
    const [before, then] = [wayThere(tide.written, 1), wayThere(after, 1)];
    if (!before || !then) throw new Error('no way there');
    expect(turnedRuns(before, then)).toEqual([[event, then.leadIn.notes.at(-1)]]);
  });

  it('like phrases are changed together, so two slurs turn the bow round and back', () => {
    const event = named(tide, 'B2:2');
    const bowing = turnJunction(tide, tide.written.bowing, event, true);
    const changed = tide.junctions.filter((_, i) => bowing[i] !== tide.written.bowing[i]);
    expect(changed).toEqual([event, named(tide, 'B6:2')]);
    const after = playBowing(tide, bowing);
    expect(strokes(after)).toBe(41);
    expect(arrives(after)).toBe('down down');
    const [before, then] = [wayThere(tide.written, 1), wayThere(after, 1)];
    // Round from the first slur's second note to the second slur's first, and no further.
    expect(then && turnedRuns(before, then)).toEqual([[event, named(tide, 'B6:1')]]);
  });

  it('every plan, taken over, arrives with the strokes it promises and keeps within the limits', () => {
    const leadIn = leadInOfPass(tide.written, 1);
    if (!leadIn) throw new Error('no way there');
    expect(leadIn.plans.length).toBeGreaterThan(2);
    for (const plan of leadIn.plans) {
      const after = playBowing(tide, bowingOfPlan(tide, leadIn, plan));
      expect(strokes(after)).toBe(plan.strokes);
      expect(after.anchor.arrivals.every(a => a.agrees)).toBe(true);
      const own = leadInOfPass(after, 1);
      expect(own && pastLimits(after, tide.request, own)).toEqual([]);
    }
  });

  onTunes('every link can be closed: written and read again, it holds', 120, tunes => {
    let links = 0;
    for (const { abc, bars } of withPassage(tunes)) {
      const tune = tuneOf(abc);
      const trial = openTrial(tune, requestFor(bars, 'up'), 'anchor', {
        level: null,
        preset: null,
      });
      if (!trial) continue;
      const { joined } = writtenSlurs(
        tuneWith(
          trial,
          trial.junctions.map(() => true),
        ),
      );
      links += trial.junctions.length;
      expect(trial.junctions.filter(e => !joined[e])).toEqual([]);
    }
    expect(links).toBeGreaterThan(100);
  });

  it('is not opened where there is nothing to change', () => {
    const abc = 'X:1\nT:Made up\nM:4/4\nL:1/8\nK:D\ndefg afge|dBAF D4|]';
    const anchors = requestFor('A1', 'down');
    expect(openTrial(tuneOf(abc), anchors, 'anchor', { level: null, preset: null })).toBeNull();
    expect(openTrial(tuneOf(abc), anchors, 'other', { level: null, preset: null })).toBeNull();
  });
});

describe('the limits', () => {
  it.each([
    ['reel', 'K:D\nA>A BE|(3AAA G,d2|z efa d2|'],
    ['jig', 'K:G\nGGB dBG|A{B}A2 G,2g|fdc AGF|G3 G3|'],
    ['waltz', 'K:A\nA2 BA|cA E2 E2|A6|'],
  ])(
    '%s: of all ways to slur, those that pass none are as many as the planner allows',
    (type, body) => {
      // The planner counts by dynamic programming; here every single bowing is judged.
      const trial = trialOf(
        `X:1\nT:Made up\nR:${type}\nL:1/8\n${body}\n`,
        lastBarOf(type, body),
        'up',
      );
      const n = trial.junctions.length;
      const leadIn = trial.written.anchor.leadIns[0];
      expect(leadIn?.notes.length).toBe(n + 1);
      expect(n).toBeGreaterThan(4);
      let within = 0;
      for (let bits = 0; bits < 2 ** n; bits++) {
        const outcome = playBowing(
          trial,
          trial.junctions.map((_, i) => ((bits >> i) & 1) === 1),
        );
        const own = outcome.anchor.leadIns[0];
        if (own && pastLimits(outcome, trial.request, own).length === 0) within++;
      }
      expect(BigInt(within)).toBe(leadIn?.allowed);
    },
  );
});

function lastBarOf(type: string, body: string): string {
  const tune = tuneOf(`X:1\nT:Made up\nR:${type}\nL:1/8\n${body}\n`);
  return tune.bars[2]?.name ?? '';
}

const bowings = fc.array(fc.boolean(), { minLength: 46, maxLength: 46 });

describe('links', () => {
  it('bring back any bowing, in letters that need no code in an address', () => {
    fc.assert(
      fc.property(bowings, bowing => {
        const hash = trialLink(tide, bowing);
        expect(new URL(`https://a.example/#${hash}`).hash).toBe(`#${hash}`);
        expect(hash.length).toBeLessThan(40);
        const link = readTrialLink(hash);
        if (typeof link !== 'object' || link === null) throw new Error(`${link}`);
        expect(bowingOfLink(tide, link)).toEqual(bowing);
      }),
    );
  });

  it('say what is wrong with them, whatever they hold', () => {
    const good = trialLink(tide, tide.written.bowing);
    expect(readTrialLink('tide-table-B1-B2')).toBeNull();
    expect(readTrialLink('')).toBeNull();
    expect(readTrialLink(good.replace('=1.', '=2.'))).toBe('later-version');
    expect(readTrialLink(good.replace('=1.', '=x.'))).toBe('broken');
    expect(readTrialLink(good.slice(0, good.lastIndexOf('.')))).toBe('broken');
    expect(readTrialLink('try=%')).toBe('broken');
    expect(readTrialLink('try=1.<b>.0.A')).toBe('broken');
    const short = readTrialLink(good.slice(0, -1));
    expect(typeof short === 'object' && short && bowingOfLink(tide, short)).toBe('broken');
    fc.assert(
      fc.property(fc.string(), text => {
        const read = readTrialLink(`try=${text}`);
        if (typeof read === 'object' && read) expect(bowingOfLink(tide, read)).toBeTypeOf('string');
      }),
    );
  });

  it('are refused where the notes have changed since', () => {
    const other = trialOf(tideTable.replace('cAce|fafd', 'cAcd|fafd'), 'B7-B8', 'up');
    const link = readTrialLink(trialLink(tide, tide.written.bowing));
    expect(typeof link === 'object' && link && bowingOfLink(other, link)).toBe('other-notes');
  });
});

describe('steps', () => {
  it('go back through every bowing and forward again', () => {
    fc.assert(
      fc.property(fc.array(fc.array(fc.boolean(), { minLength: 3, maxLength: 3 })), taken => {
        const start = firstStep([false, false, false]);
        let steps = taken.reduce(stepTo, start);
        const seen = [...steps.past, steps.now];
        for (const _ of steps.past) steps = stepBack(steps) ?? steps;
        expect(steps.now).toEqual(start.now);
        expect(stepBack(steps)).toBeNull();
        const again = [steps.now];
        for (let next = stepForward(steps); next; next = stepForward(next)) again.push(next.now);
        expect(again).toEqual(seen);
      }),
    );
  });
});
