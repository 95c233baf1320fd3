import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { beforeAll, describe, expect, it } from 'vitest';
import { explainFile } from '../../src/app/explain.ts';

const root = join(import.meta.dirname, '../..');
const schema = JSON.parse(readFileSync(join(root, 'docs/study.schema.json'), 'utf8'));

/** Of the study as JSON, what the tests read. */
interface StudyData {
  readonly tunes: readonly {
    readonly id: string;
    readonly notes: readonly { readonly id: string; readonly line: number }[];
    readonly played: readonly { readonly note: string; readonly stroke: number }[];
    readonly strokes: readonly { readonly notes: readonly string[] }[];
    readonly proposals: readonly {
      readonly way: string;
      readonly slurs: readonly (readonly string[])[];
    }[];
    readonly phrases: readonly { readonly bars: string; readonly of: string | null }[];
  }[];
}

let study: StudyData;

beforeAll(async () => {
  const { text } = await explainFile(join(root, 'content'), { json: true });
  study = JSON.parse(text);
});

describe('the demo book’s study as JSON', () => {
  it('has the shape that docs/study.schema.json publishes', () => {
    const validate = new Ajv2020({ allErrors: true }).compile(schema);
    validate(study);
    expect(validate.errors ?? []).toEqual([]);
  });

  it('names each written note once, and plays only notes that are written', () => {
    for (const tune of study.tunes) {
      const ids = tune.notes.map(n => n.id);
      expect(new Set(ids).size, tune.id).toBe(ids.length);
      expect(tune.played.filter(p => !ids.includes(p.note))).toEqual([]);
    }
  });

  it('proposes whole bowings of each tune, of notes that are written', () => {
    for (const { id, notes, proposals } of study.tunes) {
      expect(proposals.length, id).toBeGreaterThan(0);
      const slurred = proposals.flatMap(p => p.slurs.flat());
      expect(slurred.filter(note => !notes.some(n => n.id === note))).toEqual([]);
    }
  });

  it('begins with the way that is asked for, and says which is meant by an unknown one', async () => {
    const page = join(root, 'content');
    const { text } = await explainFile(page, { json: true, preset: 'single-strokes' });
    const { tunes } = JSON.parse(text) as StudyData;
    expect(new Set(tunes.map(t => t.proposals[0]?.way))).toEqual(new Set(['single-strokes']));
    await expect(explainFile(page, { json: true, preset: 'single-stroke' })).rejects.toThrow(
      'There is no preset "single-stroke". Did you mean "single-strokes"?',
    );
  });

  it('gives every played note the stroke that holds it', () => {
    for (const tune of study.tunes) {
      const laid = tune.strokes.flatMap((s, i) => s.notes.map(note => ({ note, stroke: i })));
      expect(laid, tune.id).toEqual(tune.played.map(({ note, stroke }) => ({ note, stroke })));
    }
  });
});
