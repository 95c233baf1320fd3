import type { Tuning } from '../../shared/fingering/fingering.ts';
import { type BarRange, parseBarRange } from '../../shared/music/bar-range.ts';
import type { Direction } from '../../shared/music/tune.ts';
import { nearest } from '../../shared/nearest.ts';
import { type Problem, problem } from '../../shared/problem.ts';
import { type LabelRequest, parseLabels } from '../../shared/sections/phrase-labels.ts';
import { type StandoutName, standoutNames } from '../../shared/sections/standout-names.ts';
import { expects } from '../../shared/words/en/reading.ts';
import { blockSign, type Directive } from './directive.ts';
import { slug } from './slug.ts';
import { readTuning } from './yaml-values.ts';

/** Reads the values of one directive by name: null where one is left out, or is wrong, which becomes a problem. */
export interface ValueReader {
  readonly text: (name: string) => string | null;
  readonly id: () => string | null;
  readonly oneOf: <T extends string>(name: string, allowed: readonly T[]) => T | null;
  readonly direction: (name: string) => Direction | null;
  readonly bars: (name: string) => BarRange | null;
  readonly tuning: (name: string) => Tuning | null;
  readonly labels: (name: string) => LabelRequest | null;
  readonly facts: (name: string) => readonly StandoutName[] | null;
  readonly count: (name: string, most: number) => number | null;
  /** Beats a minute, from 10 to 400. */
  readonly tempo: (name: string) => number | null;
  /** `0:04`, `1:02.5` or `62.5`, as seconds. */
  readonly time: (name: string) => number | null;
  /** The name alone, or `yes` or `no`. */
  readonly flag: (name: string) => boolean;
}

/** Makes the reader of one directive's values; each fault is added to `problems`. */
export function valueReader(directive: Directive, problems: Problem[]): ValueReader {
  const block = blockSign(directive.form, directive.name);

  function bad(name: string, expected: readonly string[], near: string | null = null): null {
    const value = directive.values[name];
    problems.push(
      problem('attribute-value', value?.place ?? directive.place, {
        facts: { block, name },
        actual: value?.text ?? null,
        expected,
        nearest: near,
      }),
    );
    return null;
  }

  function text(name: string): string | null {
    return directive.values[name]?.text.trim() || null;
  }

  function read<T>(name: string, parse: (written: string) => T | null, wanted: string): T | null {
    const written = text(name);
    return written === null ? null : (parse(written) ?? bad(name, [wanted]));
  }

  function oneOf<T extends string>(name: string, allowed: readonly T[]): T | null {
    const written = text(name);
    if (written === null) return null;
    const known = allowed.find(value => value === written);
    return known ?? bad(name, allowed, nearest(written, allowed));
  }

  /** `no`, or names of facts with spaces or commas between them. */
  function facts(name: string): readonly StandoutName[] | null {
    const written = text(name);
    if (written === null) return null;
    if (written === 'no') return [];
    const words = written.split(/[\s,]+/);
    const unknown = words.find(word => !standoutNames.some(known => known === word));
    if (unknown === undefined) return standoutNames.filter(known => words.includes(known));
    return bad(name, ['no', ...standoutNames], nearest(unknown, standoutNames));
  }

  return {
    text,
    id() {
      const written = text('id');
      if (written === null) return null;
      return written === slug(written) ? written : bad('id', [expects.id], slug(written) || null);
    },
    oneOf,
    direction: name => oneOf(name, ['down', 'up'] as const),
    bars: name => read(name, parseBarRange, expects.bars),
    tuning: name => read(name, readTuning, expects.tuning),
    labels(name) {
      const labels = read(name, parseLabels, expects.labels);
      return labels && { labels, place: directive.values[name]?.place ?? directive.place };
    },
    facts,
    count: (name, most) => read(name, written => wholeNumber(written, most), expects.count(most)),
    tempo: name => read(name, readTempo, expects.beats),
    time: name => read(name, readTime, expects.time),
    flag(name) {
      const value = directive.values[name];
      if (value === undefined) return false;
      return value.text === '' || oneOf(name, ['yes', 'no'] as const) === 'yes';
    },
  };
}

function readTempo(written: string): number | null {
  const value = /^\d{1,3}(?:\.\d+)?$/.test(written) ? Number(written) : 0;
  return value >= 10 && value <= 400 ? value : null;
}

/** Seconds of `0:04`, `1:02.5`, `1:00:00` or `62.5`; null when it is no time. */
export function readTime(written: string): number | null {
  const m = /^(?:(?:(\d{1,2}):)?(\d{1,3}):(?=\d\d(?:\.|$)))?(\d{1,5}(?:\.\d+)?)$/.exec(written);
  if (!m) return null;
  const [hours, minutes, seconds] = [Number(m[1] ?? 0), Number(m[2] ?? 0), Number(m[3])];
  if (m[2] !== undefined && seconds >= 60) return null;
  return hours * 3600 + minutes * 60 + seconds;
}

function wholeNumber(written: string, most: number): number | null {
  const value = /^\d{1,6}$/.test(written) ? Number(written) : 0;
  return value >= 1 && value <= most ? value : null;
}
