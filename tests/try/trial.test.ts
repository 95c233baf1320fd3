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
import { requestFor, trialOf, tuneOf, weighbridge, withPassage } from './try-tunes.ts';

const jig = trialOf(weighbridge, 'A5-A6', 'down');
const named = (trial: Trial, id: string): number =>
  trial.tune.events.findIndex(e => e.kind === 'note' && e.id === id);
const strokes = ({ anchor }: Outcome): number => anchor.leadIns[0]?.strokes ?? 0;
const arrives = ({ anchor }: Outcome): string => anchor.arrivals.map(a => a.direction).join(' ');

describe('trying slurs on the way to a passage', () => {
  it('starts from what is written: 23 notes in 19 strokes, which arrive the wrong way', () => {
    // Counted by hand in the demo lesson: 6 + 4 + 6 + 3.
    expect(jig.junctions).toHaveLength(22);
    expect(strokes(jig.written)).toBe(19);
    expect(arrives(jig.written)).toBe('up up');
  });

  it('a slur of three, parted, is one stroke more, and turns round every note after it', () => {
    // An edit turns the bow exactly when it changes an odd number of junctions: docs, "Flips".
    const event = named(jig, 'A4:3');
    const after = playBowing(jig, turnJunction(jig, jig.written.bowing, event, false));
    expect(strokes(after)).toBe(20);
    expect(arrives(after)).toBe('down down');
    const [before, then] = [wayThere(jig.written, 1), wayThere(after, 1)];
    if (!before || !then) throw new Error('no way there');
    expect(turnedRuns(before, then)).toEqual([[event, then.leadIn.notes.at(-1)]]);
  });

  it('a slur of three, taken away, is two strokes more, and turns round its second note alone', () => {
    const [second, third] = [named(jig, 'A4:2'), named(jig, 'A4:3')];
    const parted = turnJunction(jig, jig.written.bowing, third, false);
    const after = playBowing(jig, turnJunction(jig, parted, second, false));
    expect(strokes(after)).toBe(21);
    expect(arrives(after)).toBe('up up');
    const [before, then] = [wayThere(jig.written, 1), wayThere(after, 1)];
    expect(before && then && turnedRuns(before, then)).toEqual([[second, second]]);
  });

  it('phrases that are the same are changed together', () => {
    const polka = 'X:1\nT:Made up\nR:polka\nM:2/4\nL:1/8\nK:D\n';
    const trial = trialOf(`${polka}DF AF|GE FD|DF AF|GE FD|fe de|fd A2|]\n`, 'A5-A6', 'down');
    const event = named(trial, 'A1:4');
    const bowing = turnJunction(trial, trial.written.bowing, event, true);
    const changed = trial.junctions.filter((_, i) => bowing[i] !== trial.written.bowing[i]);
    expect(changed).toEqual([event, named(trial, 'A3:4')]);
    expect(strokes(playBowing(trial, bowing))).toBe(strokes(trial.written) - 2);
  });

  it('every plan, taken over, arrives with the strokes it promises and keeps within the limits', () => {
    const leadIn = leadInOfPass(jig.written, 1);
    if (!leadIn) throw new Error('no way there');
    expect(leadIn.plans.length).toBeGreaterThan(2);
    for (const plan of leadIn.plans) {
      const after = playBowing(jig, bowingOfPlan(jig, leadIn, plan));
      expect(strokes(after)).toBe(plan.strokes);
      expect(after.anchor.arrivals.every(a => a.agrees)).toBe(true);
      const own = leadInOfPass(after, 1);
      expect(own && pastLimits(after, jig.request, own)).toEqual([]);
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

const bowings = fc.array(fc.boolean(), { minLength: 22, maxLength: 22 });

describe('links', () => {
  it('bring back any bowing, in letters that need no code in an address', () => {
    fc.assert(
      fc.property(bowings, bowing => {
        const hash = trialLink(jig, bowing);
        expect(new URL(`https://a.example/#${hash}`).hash).toBe(`#${hash}`);
        expect(hash.length).toBeLessThan(40);
        const link = readTrialLink(hash);
        if (typeof link !== 'object' || link === null) throw new Error(`${link}`);
        expect(bowingOfLink(jig, link)).toEqual(bowing);
      }),
    );
  });

  it('say what is wrong with them, whatever they hold', () => {
    const good = trialLink(jig, jig.written.bowing);
    expect(readTrialLink('weighbridge-B1-B2')).toBeNull();
    expect(readTrialLink('')).toBeNull();
    expect(readTrialLink(good.replace('=1.', '=2.'))).toBe('later-version');
    expect(readTrialLink(good.replace('=1.', '=x.'))).toBe('broken');
    expect(readTrialLink(good.slice(0, good.lastIndexOf('.')))).toBe('broken');
    expect(readTrialLink('try=%')).toBe('broken');
    expect(readTrialLink('try=1.<b>.0.A')).toBe('broken');
    const short = readTrialLink(good.slice(0, -1));
    expect(typeof short === 'object' && short && bowingOfLink(jig, short)).toBe('broken');
    fc.assert(
      fc.property(fc.string(), text => {
        const read = readTrialLink(`try=${text}`);
        if (typeof read === 'object' && read) expect(bowingOfLink(jig, read)).toBeTypeOf('string');
      }),
    );
  });

  it('are refused where the notes have changed since', () => {
    const other = trialOf(weighbridge.replace('cec BdB|(GFE)', 'cec Bdc|(GFE)'), 'A5-A6', 'down');
    const link = readTrialLink(trialLink(jig, jig.written.bowing));
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
