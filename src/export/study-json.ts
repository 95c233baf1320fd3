import type { LeadIn, Plan, SlurGroup } from '../../shared/bowing/bowing.ts';
import { editAbc } from '../../shared/bowing/offered-mends.ts';
import type { Proposal } from '../../shared/bowing/propose-bowings.ts';
import { editText } from '../../shared/bowing/slur-edits.ts';
import type { Stop, Tuning } from '../../shared/fingering/fingering.ts';
import { fractionText } from '../../shared/music/fraction.ts';
import { noteAt } from '../../shared/music/note-at.ts';
import { pitchName } from '../../shared/music/pitch.ts';
import type { Bar, NoteEvent, Tune } from '../../shared/music/tune.ts';
import { at, got } from '../../shared/must.ts';
import type { Problem } from '../../shared/problem.ts';
import type { Study } from '../../shared/study.ts';
import { spoken } from '../../shared/words/en/spoken.ts';
import { spokenStop } from '../../shared/words/spoken.ts';
import { problemJson } from '../report/problem-json.ts';
import { proposalJson } from './proposal-json.ts';

/**
 * Studies as plain JSON data, format `bowbookStudy` 1, which `docs/study.schema.json` describes: a
 * tune's download, and the output of `explain --json`. Indices become the names that a teacher uses
 * (`A1:3`), fractions become text in lowest terms, and counts become strings, since they may be larger
 * than a JSON number holds exactly.
 */
export function studyJson(
  studies: readonly Study[],
  problems: readonly Problem[],
  proposals: Proposals = new Map(),
): object {
  return {
    bowbookStudy: 1,
    tunes: studies.map(study => tuneJson(study, proposals.get(study) ?? null)),
    problems: problems.map(problemJson),
  };
}

/** Whole bowings of the tunes that they were asked for. */
export type Proposals = ReadonlyMap<Study, readonly Proposal[]>;

function tuneJson(study: Study, proposals: readonly Proposal[] | null): object {
  const { tune, performance, map, bowing } = study;
  const name = (event: number): string => noteName(tune, event);
  const spoken = stopSpeaker(study.tuning);
  return {
    id: tune.id,
    title: tune.title,
    type: tune.type,
    meter: tune.meter.free ? 'none' : `${tune.meter.beats}/${tune.meter.unit}`,
    key: { tonic: tune.key.tonic, mode: tune.key.mode, fifths: tune.key.fifths },
    parts: tune.parts.map((part, i) => ({
      name: part.name,
      bars: part.bars.map(b => at(tune.bars, b).name),
      passes: Math.max(1, bowing.repeats.find(r => r.part === i)?.strokes.length ?? 1),
    })),
    notes: tune.events.flatMap((event, i) =>
      event.kind === 'note' ? [noteJson(tune, event, at(study.fingering, i), spoken)] : [],
    ),
    played: performance.notes.map((n, i) => ({
      note: name(n.event),
      tied: n.tied.map(name),
      pass: n.pass,
      onset: fractionText(n.onset),
      duration: fractionText(n.duration),
      stroke: at(bowing.plan.strokeOf, i),
    })),
    strokes: bowing.plan.strokes.map(s => ({
      direction: s.direction,
      pass: s.pass,
      notes: s.notes.map(n => name(at(performance.notes, n).event)),
      stated: s.stated,
      retake: s.retake,
    })),
    phrases: map.phrases.map(p => ({
      bars: p.name,
      label: p.label,
      kin: p.kin,
      of: p.of === null ? null : at(map.phrases, p.of).name,
      firstDifference: p.firstDifference === null ? null : name(p.firstDifference),
    })),
    forks: map.forks.map(f => ({
      phrase: f.label,
      goesOn: f.goesOn.map(g => ({
        after: at(map.phrases, g.after).name,
        to: at(map.phrases, g.to).label,
      })),
    })),
    repeats: bowing.repeats.map(r => ({
      part: at(tune.parts, r.part).name,
      strokes: r.strokes,
      secondPass: r.secondPass,
      mends: r.mends.map(m => ({ change: editText(tune, m), abc: editAbc(tune, m) })),
    })),
    swaps: bowing.swaps.map(s => ({
      phrase: s.phrase,
      keeps: s.keeps.map(groups => slurNames(tune, groups)),
      flips: s.flips.map(groups => slurNames(tune, groups)),
    })),
    anchors: bowing.anchors.map(a => ({
      id: a.id,
      bars: passageName(tune, a.first, a.last),
      direction: a.direction,
      arrivals: a.arrivals,
      leadIns: a.leadIns.map(l => leadInJson(tune, l)),
      mends: a.mends.map(m => ({ change: editText(tune, m), abc: editAbc(tune, m) })),
      moreMends: a.moreMends,
    })),
    ...(proposals && { proposals: proposals.map(p => proposalJson(tune, p)) }),
  };
}

function noteJson(
  tune: Tune,
  note: NoteEvent,
  stops: readonly (Stop | null)[],
  spoken: (stop: Stop) => string,
): object {
  return {
    id: note.id,
    bar: at(tune.bars, note.bar).name,
    onset: fractionText(note.onset),
    duration: fractionText(note.duration),
    pitches: note.pitches.map((p, i) => {
      const stop = stops[i] ?? null;
      return {
        midi: p.midi,
        name: pitchName(p),
        string: stop?.string ?? null,
        finger: stop?.finger ?? null,
        spoken: stop === null ? null : spoken(stop),
      };
    }),
    line: note.place.line,
    column: note.place.column,
  };
}

/** A function that names stops in English words. A tune has few different stops: each is worded once. */
function stopSpeaker(tuning: Tuning): (stop: Stop) => string {
  const said = new Map<string, string>();
  return stop => {
    const key = `${stop.string} ${stop.finger} ${stop.semitones}`;
    const words = said.get(key) ?? spokenStop({ spoken }, stop, tuning, 'letters');
    said.set(key, words);
    return words;
  };
}

function leadInJson(tune: Tune, l: LeadIn): object {
  return {
    passes: l.passes,
    from: noteName(tune, at(l.notes, 0)),
    to: noteName(tune, got(l.notes.at(-1), 'note in the lead-in')),
    start: l.start,
    notes: l.notes.length,
    strokes: l.strokes,
    groupings: String(l.groupings),
    arriving: String(l.arriving),
    allowed: String(l.allowed),
    allowedArriving: String(l.allowedArriving),
    plans: l.plans.map(p => planJson(tune, p)),
  };
}

function planJson(tune: Tune, p: Plan): object {
  return {
    slurs: slurNames(tune, p.slurs),
    strokes: p.strokes,
    changes: p.changes.map(c => editText(tune, c)),
    bends: p.bends.map(b => editText(tune, b)),
    drift: fractionText(p.drift),
    because: p.because,
  };
}

const noteName = (tune: Tune, event: number): string => noteAt(tune, event).id;

function passageName(tune: Tune, first: number, last: number): string {
  const barOf = (event: number): Bar => at(tune.bars, at(tune.events, event).bar);
  const [from, to] = [barOf(first).name, barOf(last).name];
  const whole = (event: number, edge: 'first' | 'last'): boolean => {
    const own = barOf(event);
    const notes = tune.events.slice(own.first, own.end).filter(e => e.kind === 'note');
    return tune.events[event] === (edge === 'first' ? notes[0] : notes.at(-1));
  };
  if (whole(first, 'first') && whole(last, 'last')) return from === to ? from : `${from}-${to}`;
  return `${noteName(tune, first)}-${noteName(tune, last)}`;
}

const slurNames = (tune: Tune, groups: readonly SlurGroup[]): string[][] =>
  groups.map(g => g.map(e => noteName(tune, e)));
