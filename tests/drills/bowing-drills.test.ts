import { beforeAll, expect, test } from 'vitest';
import { applyEdit, editedJoins, withJoins } from '../../shared/bowing/apply-edit.ts';
import type { Direction, Edit } from '../../shared/bowing/bowing.ts';
import { writtenSlurs } from '../../shared/bowing/written-slurs.ts';
import type { ArriveDrill } from '../../shared/drills/drill.ts';
import { judgeMend, type TriedBowing } from '../../shared/drills/judge-mend.ts';
import type { Tune } from '../../shared/music/tune.ts';
import { studyTune } from '../../shared/study.ts';
import { checkDrillsOf, everySource } from './any-drill.ts';
import type { Drilled } from './drill-sources.ts';

let sources: Drilled[];
beforeAll(async () => {
  sources = await everySource();
}, 120_000);

const other = (d: Direction): Direction => (d === 'down' ? 'up' : 'down');

test('count: strokes are the notes less those slurred to the one before; no wrong choice is right', {
  timeout: 120_000,
}, () => {
  const asked = new Map<string, number>();
  const made = checkDrillsOf(sources, 'count', (drill, of) => {
    asked.set(drill.asks, (asked.get(drill.asks) ?? 0) + 1);
    const { tune, bowing } = of.source;
    const anchorStarts = bowing.anchors.map(a => a.first);
    // Depth of slurs at each note, read off the page.
    let depth = 0;
    const slurredOn = tune.events.map((e, i) => {
      if (e.kind !== 'note') return false;
      const on = depth > 0 && !anchorStarts.includes(i);
      depth = Math.max(0, depth + e.slursOpened - e.slursClosed);
      return on;
    });
    const strokes: number[][] = [];
    for (const e of drill.notes) {
      const last = strokes.at(-1);
      if (slurredOn[e] && last) last.push(e);
      else strokes.push([e]);
    }
    expect(drill.strokes, of.name).toEqual(strokes);
    const truth = strokes.length;
    switch (drill.asks) {
      case 'strokes': {
        const counts = drill.choices.map(c => c.count);
        expect(counts[drill.right]).toBe(truth);
        expect(counts.filter(c => c === truth)).toHaveLength(1);
        expect(new Set(counts).size).toBe(counts.length);
        expect(counts.length).toBeGreaterThanOrEqual(3);
        expect(Math.min(...counts)).toBeGreaterThan(0);
        break;
      }
      case 'direction': {
        let way = drill.starts;
        for (let i = 0; i < drill.stroke; i++) way = other(way);
        expect(drill.choices[drill.right]).toBe(way);
        const { notes, bars } = of.source.performance;
        const from = notes.findIndex(
          (n, k) =>
            bars[n.barPlayed]?.pass === drill.pass &&
            drill.notes.every((e, i) => notes[k + i]?.event === e),
        );
        const sounded = from + drill.notes.indexOf(strokes[drill.stroke]?.[0] ?? -1);
        expect(bowing.plan.strokes.find(s => s.notes.includes(sounded))?.direction).toBe(way);
        break;
      }
      case 'slurs': {
        const whole = drill.choices.map(group => strokes.some(s => s.join() === group.join()));
        expect(whole.flatMap((is, i) => (is ? [i] : []))).toEqual([drill.right]);
        expect(drill.choices[drill.right]?.length).toBeGreaterThan(1);
        break;
      }
      case 'notes': {
        const wanted = strokes[drill.stroke]?.join();
        const fits = drill.choices.flatMap((g, i) => (g.join() === wanted ? [i] : []));
        expect(fits).toEqual([drill.right]);
      }
    }
    expect(drill.choices.length).toBeGreaterThan(1);
  });
  expect(made).toBeGreaterThan(900);
  for (const question of ['strokes', 'direction', 'slurs', 'notes']) {
    expect(asked.get(question) ?? 0, question).toBeGreaterThan(15);
  }
});

test('into: begun as told the bow comes to the anchor rightly, begun the other way it does not', {
  timeout: 120_000,
}, () => {
  let misses = 0;
  const made = checkDrillsOf(sources, 'into', (drill, { source, name }) => {
    const { performance, bowing } = source;
    const { strokes, strokeOf } = bowing.plan;
    const end = performance.notes.findIndex(n => n.event === drill.first && n.pass === drill.pass);
    if (!drill.agrees) misses++;
    for (const step of drill.steps) {
      const from = end - step.notes.length;
      expect(performance.notes.slice(from, end).map(n => n.event)).toEqual(step.notes);
      // Stroke by stroke with the bow in hand: turn for each new one, unless it lifts.
      const arrive = (start: Direction): Direction => {
        let way = start;
        for (let k = from + 1; k < end; k++) {
          if (strokeOf[k] === strokeOf[k - 1]) continue;
          if (!strokes[strokeOf[k] ?? -1]?.retake) way = other(way);
        }
        return other(way);
      };
      const laid = strokes[strokeOf[from] ?? -1]?.direction;
      if (drill.agrees) expect(step.start).toBe(laid);
      else expect(step.start).toBe(other(laid ?? 'down'));
      const lifted = strokes[strokeOf[end] ?? -1]?.retake === true && drill.agrees;
      if (!lifted) {
        expect(arrive(step.start), `${name} ${JSON.stringify(drill)}`).toBe(drill.wanted);
        expect(arrive(other(step.start))).not.toBe(drill.wanted);
      }
      expect(new Set(step.notes.map((_, i) => strokeOf[from + i])).size).toBe(step.strokes);
    }
    const lengths = drill.steps.map(s => s.notes.length);
    expect(lengths).toEqual([...new Set(lengths)].sort((a, b) => a - b));
  });
  expect(made).toBeGreaterThan(700);
  expect(misses).toBeGreaterThan(100);
});

/** The tune of a drill, as it is bowed there, with the student's slurs and lifts written into it. */
function written({ source }: Drilled, drill: ArriveDrill, tried: TriedBowing): Tune {
  const tune = drill.broken ? applyEdit(source.tune, drill.broken) : source.tune;
  const slurs = writtenSlurs(tune);
  const joined = [...slurs.joined];
  drill.notes.forEach((e, i) => {
    if (i > 0) joined[e] = tried.joined[i] === true;
  });
  return withJoins(tune, slurs, joined);
}

/** Whether each time through comes to the anchor on its stroke, by a whole new study. */
function arrives(of: Drilled, drill: ArriveDrill, tune: Tune): boolean {
  const { bowing } = studyTune(tune, of.request);
  const anchor = bowing.anchors.find(a => a.id === drill.anchor);
  return anchor?.arrivals.every(a => a.agrees) === true;
}

const asTold = (drill: ArriveDrill): TriedBowing => ({ joined: drill.joined, lifts: [] });

/** What a student does who makes one of the mends. */
function withMend(drill: ArriveDrill, mend: Edit): TriedBowing {
  const joined: boolean[] = [];
  drill.notes.forEach((e, k) => {
    joined[e] = drill.joined[k] === true;
  });
  const next = editedJoins(joined, mend);
  return {
    joined: drill.notes.map((e, k) => k > 0 && next[e] === true),
    lifts: mend.kind === 'retake' ? [mend.before] : [],
  };
}

test('arrive: it is wrong as given; every mend, written into the tune, mends it; all are accepted', {
  timeout: 300_000,
}, () => {
  let mends = 0;
  const made = checkDrillsOf(sources, 'arrive', (drill, of) => {
    expect(judgeMend(of.source, drill, asTold(drill))).toBe('nothing');
    // Whole new studies and long lists of mends take their time: for some of the drills.
    const isStudied = drill.seed % 12 === 0;
    if (isStudied) {
      expect(arrives(of, drill, written(of, drill, asTold(drill))), of.name).toBe(false);
    }
    const judged = drill.seed % 24 === 0 ? drill.mends : drill.mends.slice(0, 1);
    for (const [i, mend] of judged.entries()) {
      const why = `${of.name} ${JSON.stringify(mend)}`;
      expect(judgeMend(of.source, drill, withMend(drill, mend)), why).toBe('mends');
      mends++;
      if (!isStudied || i > 1) continue;
      const base = drill.broken ? applyEdit(of.source.tune, drill.broken) : of.source.tune;
      expect(arrives(of, drill, applyEdit(base, mend)), why).toBe(true);
    }
  });
  expect(made).toBeGreaterThan(700);
  expect(mends).toBeGreaterThan(700);
});

test('arrive: of every way to slur a short way there, the judge accepts just the single changes that arrive', {
  timeout: 300_000,
}, () => {
  let [accepted, refused] = [0, 0];
  const small = sources.filter(s => s.source.bowing.anchors.length > 0).slice(0, 40);
  checkDrillsOf(
    small,
    'arrive',
    (drill, of) => {
      const n = drill.notes.length;
      if (n > 8 || drill.level !== 'beginner') return;
      for (let bits = 0; bits < 2 ** (n - 1); bits++) {
        const joined = drill.notes.map((_, i) => i > 0 && ((bits >> (i - 1)) & 1) === 1);
        const changed = joined.flatMap((x, i) => (x !== drill.joined[i] ? [i] : []));
        const verdict = judgeMend(of.source, drill, { joined, lifts: [] });
        if (changed.length === 0) expect(verdict).toBe('nothing');
        if (changed.length === 0 || verdict === 'several') continue;
        const right = arrives(of, drill, written(of, drill, { joined, lifts: [] }));
        if (verdict === 'mends' || verdict === 'beyond') {
          expect(right).toBe(true);
          accepted++;
        } else {
          if (verdict === 'misses') expect(right).toBe(false);
          refused++;
        }
        // A single junction turned is a single change, and turns the bow.
        if (changed.length === 1 && right) expect(['mends', 'beyond', 'harms']).toContain(verdict);
      }
    },
    130,
  );
  expect(accepted).toBeGreaterThan(40);
  expect(refused).toBeGreaterThan(20);
});
