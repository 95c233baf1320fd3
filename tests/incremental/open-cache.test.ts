import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { openCache } from '../../src/incremental/open-cache.ts';

const folder = mkdtempSync(join(tmpdir(), 'bowbook-cache-'));
afterAll(() => rmSync(folder, { recursive: true }));

it.each([
  ['short', ['Kelp', 'Lamp']],
  ['long, and so deflated', Array.from({ length: 9000 }, (_, i) => `tune ${i}`)],
])('an entry is read back as it was kept: %s', (name, value) => {
  const cache = openCache(folder);
  const key = name.slice(0, 4).trim();
  cache.write(key, value);
  expect(cache.read(key)).toEqual(value);
});

it('an entry with one letter of a text changed is whole data all the same, and is not taken', () => {
  const cache = openCache(folder);
  cache.write('tune', { title: 'Kelp' });
  const path = join(folder, 'tune');
  const bytes = readFileSync(path);
  bytes.write('H', bytes.indexOf('Kelp'));
  writeFileSync(path, bytes);
  expect(cache.read('tune')).toBeUndefined();
});

it('keeps only what is wanted, and a write leaves nothing half written behind', () => {
  const cache = openCache(folder);
  cache.write('wanted', 1);
  cache.write('unwanted', 2);
  cache.keepOnly(key => key === 'wanted');
  expect(readdirSync(folder)).toEqual(['wanted']);
});
