import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { parse } from 'musicxml-io';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { toNumber } from '../../shared/music/fraction.ts';
import { pitch } from '../../shared/music/pitch.ts';
import type { Study } from '../../shared/study.ts';
import { musicXml } from '../../src/export/musicxml.ts';
import { onTunes } from '../tunes/on-tunes.ts';
import { standard, standardsMissing } from '../tunes/real-tunes.ts';
import { demoStudies, studiesOf, studyText } from './exported-studies.ts';

const hasXmllint = spawnSync('xmllint', ['--version']).error === undefined;
const cannotValidate =
  standardsMissing ?? (hasXmllint ? null : 'skipped: no xmllint (Debian’s libxml2-utils)');

/** MusicXML 4.0 as the W3C Music Notation Community Group publishes it. */
const schema = cannotValidate === null ? standard('musicxml/musicxml.xsd') : '';

const work = mkdtempSync(join(tmpdir(), 'bowbook-musicxml-'));
afterAll(() => rmSync(work, { recursive: true, force: true }));

const facts = { tempo: { beat: { n: 1, d: 2 }, bpm: 78 }, credits: 'By permission: & <ours>' };

/** What xmllint says against the schema; empty where all of it is valid. */
function faults(studies: readonly Study[]): string {
  const folder = mkdtempSync(join(work, 'files-'));
  for (const [i, study] of studies.entries()) {
    writeFileSync(join(folder, `${i}.musicxml`), musicXml(study, facts));
  }
  const catalog = join(dirname(schema), 'catalog.xml');
  const env = existsSync(catalog) ? { XML_CATALOG_FILES: catalog } : {};
  const { status, stderr } = spawnSync(
    'xmllint',
    ['--nonet', '--noout', '--schema', schema, ...readdirSync(folder)],
    { cwd: folder, encoding: 'utf8', env: { ...process.env, ...env }, maxBuffer: 1 << 28 },
  );
  const said = stderr.split('\n').filter(line => line !== '' && !line.endsWith(' validates'));
  return status === 0 ? said.join('\n') : said.slice(0, 20).join('\n') || `xmllint: ${status}`;
}

describe('MusicXML against its schema', () => {
  beforeEach(context => context.skip(cannotValidate !== null, cannotValidate ?? ''));

  it('says so where a file is not valid', () => {
    const broken = musicXml(studyText('X:1\nK:D\nDEFG|\n'), facts).replace(
      '<step>D</step>',
      '<step>H</step>',
    );
    const path = join(work, 'broken.musicxml');
    writeFileSync(path, broken);
    const { status } = spawnSync('xmllint', ['--nonet', '--noout', '--schema', schema, path]);
    expect(status).not.toBe(0);
  });

  it('is valid for every tune of the demo book', async () => {
    expect(faults(await demoStudies())).toBe('');
  });

  onTunes('is valid', 4, tunes => expect(faults(studiesOf(tunes))).toBe(''));
});

let demo: readonly Study[];
beforeAll(async () => {
  demo = await demoStudies();
});

describe('MusicXML', () => {
  it('is the same each time', () => {
    for (const study of demo) expect(musicXml(study, facts)).toBe(musicXml(study, facts));
  });
});

/** What a second reader, npm `musicxml-io`, finds on the notes of a file, in order. */
function readBack(xml: string): readonly ReadNote[] {
  const [part] = parse(xml).parts;
  const open = new Map<number, number>();
  const notes: ReadNote[] = [];
  for (const measure of part?.measures ?? []) {
    for (const entry of measure.entries) {
      if (entry.type !== 'note' || entry.grace || entry.rest || !entry.pitch) continue;
      const { step, alter, octave } = entry.pitch;
      const found = pitch(step, alter ?? 0, octave).midi;
      const technical = (entry.notations ?? []).filter(n => n.type === 'technical');
      const finger = technical.find(t => t.technical === 'fingering')?.text;
      const string = technical.find(t => t.technical === 'string')?.string;
      const stop = `${finger ?? '-'} on ${string ?? '-'}`;
      if (entry.chord) {
        const last = notes.at(-1);
        last?.pitches.push(found);
        last?.stops.push(stop);
        continue;
      }
      const at = notes.length;
      const stroke = technical.find(t => ['up-bow', 'down-bow'].includes(t.technical))?.technical;
      const slurs: number[] = [];
      for (const n of entry.notations ?? []) {
        if (n.type !== 'slur') continue;
        if (n.slurType === 'start') open.set(n.number ?? 1, at);
        else slurs.push(open.get(n.number ?? 1) ?? -1);
      }
      const tied = (entry.notations ?? []).flatMap(n => (n.type === 'tied' ? [n.tiedType] : []));
      notes.push({
        pitches: [found],
        stops: [stop],
        stroke: stroke === undefined ? null : stroke === 'up-bow' ? 'up' : 'down',
        slursFrom: slurs,
        tiedOn: tied.includes('stop'),
        crotchets: entry.duration / divisionsOf(xml),
      });
    }
  }
  return notes;
}

interface ReadNote {
  readonly pitches: number[];
  readonly stops: string[];
  readonly stroke: 'down' | 'up' | null;
  /** The notes on which the slurs that end here began. */
  readonly slursFrom: readonly number[];
  readonly tiedOn: boolean;
  readonly crotchets: number;
}

const divisionsOf = (xml: string): number => Number(/<divisions>(\d+)</.exec(xml)?.[1]);

/** The same of a study. A note written in several tied values counts as its first. */
function expected(study: Study): readonly Omit<ReadNote, 'tiedOn'>[] {
  const { tune, bowing, performance, fingering } = study;
  const indices = tune.events.flatMap((e, i) => (e.kind === 'note' ? [i] : []));
  const directions = new Map<number, Set<'down' | 'up'>>();
  for (const s of bowing.plan.strokes) {
    const event = performance.notes[s.notes[0] ?? -1]?.event ?? -1;
    directions.set(event, (directions.get(event) ?? new Set()).add(s.direction));
  }
  const open: number[] = [];
  return indices.map((e, at) => {
    const event = tune.events[e];
    if (event?.kind !== 'note') throw new Error('a rest');
    for (let i = 0; i < event.slursOpened; i++) open.push(at);
    const closed = Array.from({ length: event.slursClosed }, () => open.pop() ?? -1);
    const own = [...(directions.get(e) ?? [])];
    const laid = own.length === 1 && !bowing.varying.includes(e) ? (own[0] ?? null) : null;
    return {
      pitches: event.pitches.map(p => p.midi),
      stops: event.pitches.map((_, i) => {
        const stop = fingering[e]?.[i];
        return stop ? `${stop.finger} on ${stop.string}` : '- on -';
      }),
      stroke: event.mark ?? laid,
      slursFrom: closed.filter(from => from >= 0 && from !== at),
      crotchets: toNumber(event.duration) * 4,
    };
  });
}

/** Values tied into one note, as `joined` notes are in the study: written ties stay apart. */
function compareStudy(study: Study): void {
  const read = readBack(musicXml(study, facts));
  const wanted = expected(study);
  const title = study.tune.title;
  let at = 0;
  /** Index of the read note that each written note begins on. */
  const begins: number[] = [];
  for (const note of wanted) {
    const first = read[at];
    begins.push(at);
    let crotchets = 0;
    const stroke = first?.stroke ?? null;
    const slurs: number[] = [];
    do {
      crotchets += read[at]?.crotchets ?? Number.NaN;
      slurs.push(...(read[at]?.slursFrom ?? []));
      at += 1;
    } while (crotchets < note.crotchets - 1e-9);
    expect({ title, pitches: first?.pitches, stops: first?.stops, stroke, slurs }).toEqual({
      title,
      pitches: note.pitches,
      stops: note.stops,
      stroke: note.stroke,
      slurs: note.slursFrom.map(n => begins[n]),
    });
    expect(crotchets).toBeCloseTo(note.crotchets, 9);
  }
  expect(at).toBe(read.length);
}

describe('MusicXML read back by musicxml-io', () => {
  it('has the notes, strokes, slurs, fingers and strings of the demo book', () => {
    for (const study of demo) compareStudy(study);
  });

  onTunes('has those of every tune', 4, tunes => {
    for (const study of studiesOf(tunes)) compareStudy(study);
  });

  it('writes nested slurs, chords, ties, tuplets with rests, odd lengths and graces', () => {
    compareStudy(
      studyText(
        'X:1\nM:4/4\nL:1/8\nK:D\n(D (EF) G) [DA]2- [DA]2|(3zAB (3ABz A5/1 z3|{/g}A5 {fg}B3|A/3B/3c/3 d3 (5ABcde f2|\n',
      ),
    );
  });

  it('gives the tempo by its own beat, or in crotchets where no note value is as long', () => {
    const metronome = (beat: { n: number; d: number }): string => {
      const xml = musicXml(studyText('X:1\nK:D\nDEFG|\n'), { ...facts, tempo: { beat, bpm: 60 } });
      return (/<metronome>[\s\S]*<\/metronome>/.exec(xml)?.[0] ?? '').replace(
        /\s+|<\/?metronome>/g,
        '',
      );
    };
    expect(metronome({ n: 3, d: 8 })).toBe(
      '<beat-unit>quarter</beat-unit><beat-unit-dot/><per-minute>60</per-minute>',
    );
    // 60 beats of five quavers are 150 crotchets.
    expect(metronome({ n: 5, d: 8 })).toBe(
      '<beat-unit>quarter</beat-unit><per-minute>150</per-minute>',
    );
  });
});
