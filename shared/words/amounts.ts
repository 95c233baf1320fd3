import type { LiltRange } from '../sound/lilt.ts';

/** `3:05`, of seconds. */
export function clock(seconds: number): string {
  const whole = Math.round(seconds);
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
}

/** Minutes and seconds with their numbers. */
export interface DurationPhrases {
  readonly minutes: (n: number) => string;
  readonly seconds: (n: number) => string;
}

/** A duration for the ear: `3 minutes 5 seconds`; a part that is none is left out. */
export function durationWords(
  { durations }: { readonly durations: DurationPhrases },
  seconds: number,
): string {
  const whole = Math.round(seconds);
  const [minutes, rest] = [Math.floor(whole / 60), whole % 60];
  return [
    ...(minutes === 0 ? [] : [durations.minutes(minutes)]),
    ...(rest === 0 && minutes > 0 ? [] : [durations.seconds(rest)]),
  ].join(' ');
}

/** `2½`: seconds as minutes, to the nearest half. */
export function halfMinutes(seconds: number): string {
  const halves = Math.round(seconds / 30);
  const whole = Math.floor(halves / 2);
  if (halves % 2 === 0) return `${whole}`;
  return whole === 0 ? '½' : `${whole}½`;
}

/** `740 KB`, `2.1 MB`, of bytes. */
export const sizeWords = (decimal: (n: number, places: number) => string, bytes: number): string =>
  bytes < 1_000_000 ? `${Math.ceil(bytes / 1000)} KB` : `${decimal(bytes / 1_000_000, 1)} MB`;

/** `1.50 : 1`, the lengths of a beat's parts to each other; `even` where they are alike. */
export function liltWords(
  {
    even,
    decimal,
  }: { readonly even: string; readonly decimal: (n: number, places: number) => string },
  kind: LiltRange['kind'],
  amount: number,
): string {
  if (amount === (kind === 'pairs' ? 1 : 0)) return even;
  const parts = kind === 'pairs' ? [amount] : [1 + 0.4 * amount, 1 - 0.4 * amount];
  return [...parts.map(n => decimal(n, 2)), '1'].join(' : ');
}
