import { describe, expect, it } from 'vitest';
import { parseBarRange } from '../../shared/music/bar-range.ts';
import { resolvePassage } from '../../shared/music/resolve-passage.ts';
import { readTune } from '../abc/read-abc.ts';

const { tune } = readTune('X:1\nT:T\nM:4/4\nL:1/8\nK:D\nFE|:D4E4|F4G4|[1A6FE:|[2A8|||:z4d4|e4f4:|');
const passage = (text: string) => {
  const range = parseBarRange(text);
  if (!range) throw new Error(`${text} is no passage`);
  const found = resolvePassage(tune, range);
  if ('unknown' in found) return found;
  const id = (i: number) => {
    const event = tune.events[i];
    return event?.kind === 'note' ? event.id : 'rest';
  };
  return `${id(found.first)} ${id(found.last)}`;
};

describe('a passage, ends included', () => {
  it.each([
    ['A1', 'A1:1 A1:2'],
    ['A0', 'A0:1 A0:2'],
    ['A0-A1', 'A0:1 A1:2'],
    ['A1:2-A2:1', 'A1:2 A2:1'],
    ['A3/2', 'A3/2:1 A3/2:1'],
    ['B1', 'B1:1 B1:1'],
    ['A2-A3', 'A2:1 A3/1:3'],
    ['A2-A3/2', 'A2:1 A3/2:1'],
  ])('%s', (text, expected) => expect(passage(text)).toBe(expected));
});

describe('what is not there is named, with what is', () => {
  it.each([
    ['C1', 'C1', 'A1'],
    ['A1-A9', 'A9', 'A2'],
    ['A1:7', 'A1:7', 'A1:2'],
    ['B2-A1', 'B2-A1', 'A1-B2'],
  ])('%s', (text, unknown, known) => {
    const found = passage(text);
    expect(found).toMatchObject({ unknown });
    expect(typeof found === 'string' ? [] : found.known).toContain(known);
  });
});
