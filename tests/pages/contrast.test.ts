import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

/**
 * Contrast of the site's colours, by the formulas of WCAG 2.2 (relative luminance, contrast ratio):
 * 4.5 to 1 for text (success criterion 1.4.3), 3 to 1 for the edges of what can be touched and for
 * signs (1.4.11).
 */
const css = readFileSync(new URL('../../templates/styles/tokens.css', import.meta.url), 'utf8');
const [light = '', dark = ''] = css.split('@media (prefers-color-scheme: dark)');

const tokensOf = (text: string): ReadonlyMap<string, string> =>
  new Map([...text.matchAll(/--([a-z]+): (#[0-9a-f]{6});/g)].map(m => [m[1] ?? '', m[2] ?? '']));

function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map(at => {
    const channel = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a: string, b: string): number {
  const [x, y] = [luminance(a), luminance(b)];
  return (Math.max(x, y) + 0.05) / (Math.min(x, y) + 0.05);
}

const text = [
  ['ink', 'paper'],
  ['ink', 'sheet'],
  ['ink', 'tint'],
  ['ink', 'warm'],
  ['soft', 'paper'],
  ['soft', 'sheet'],
  ['spruce', 'paper'],
  ['spruce', 'sheet'],
  ['spruce', 'warm'],
  ['spruce', 'tint'],
  ['rosin', 'paper'],
  ['rosin', 'sheet'],
  ['rosin', 'tint'],
  ['rosin', 'warm'],
] as const;

test('the formula gives the values that are known: 21 for black on white, 4.48 for #777', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5);
  expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2);
});

describe.each([
  ['light', tokensOf(light)],
  ['dark', tokensOf(dark)],
] as const)('%s', (_, tokens) => {
  test.each(text)('%s on %s can be read', (ink, ground) => {
    const [a, b] = [tokens.get(ink), tokens.get(ground)];
    if (!a || !b) throw new Error(`no token ${ink} or ${ground}`);
    expect(contrast(a, b)).toBeGreaterThanOrEqual(4.5);
  });
});
