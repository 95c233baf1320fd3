import * as z from 'zod';
import { defaultBowing } from '../../shared/bowing/default-settings.ts';
import {
  type BowingSettings,
  type Level,
  type Limits,
  levels,
  type Preset,
} from '../../shared/bowing/settings.ts';
import { isHexColour } from '../../shared/contrast.ts';
import { fiddleTuning } from '../../shared/fingering/tunings.ts';
import { parseFraction } from '../../shared/music/fraction.ts';
import { noteNamings, usualNoteNames } from '../../shared/music/note-names.ts';
import { type TuneType, tuneTypes } from '../../shared/music/tune.ts';
import { nearest } from '../../shared/nearest.ts';
import { printKinds, sheetSteps } from '../../shared/print-kinds.ts';
import { type Problem, problem } from '../../shared/problem.ts';
import { expects } from '../../shared/words/en/reading.ts';
import type { BookSettings } from './book.ts';
import { themeOf } from './read-theme.ts';
import { readYaml } from './read-yaml.ts';
import { rightsOf } from './rights.ts';
import type { SourceText } from './source-text.ts';
import { count, tuning, words, yesNo } from './yaml-values.ts';

const seconds = z.number({ error: expects.seconds }).positive(expects.seconds);
const beats = z.number({ error: expects.beats }).min(10, expects.beats).max(400, expects.beats);
const beat = words.refine(text => (parseFraction(text)?.n ?? 0) > 0, { error: expects.beat });

const limits = z.strictObject({
  'longest-slur': count(16).optional(),
  'longest-stroke': seconds.optional(),
});

const onset = /^\d+(\/\d+)?$/;
const pattern = z.union(
  [
    z.enum(['as-printed-1883', 'dotted-pairs', 'short-into-long', 'whole-bar']),
    z.strictObject({
      every: beat,
      slurs: z.array(words.refine(text => text.split('-').every(o => onset.test(o)))).min(1),
    }),
  ],
  { error: expects.pattern },
);

const preset = z.strictObject({
  name: words.optional(),
  'strong-beat': z.enum(['down', 'up']).nullable().optional(),
  'into-beat': yesNo.optional(),
  'phrase-ends-change': yesNo.optional(),
  'longest-slur': count(16).nullable().optional(),
  'longest-stroke': seconds.nullable().optional(),
  pattern: pattern.nullable().optional(),
  pickups: z.enum(['slurred', 'separate']).nullable().optional(),
  'slur-over': z.enum(['nothing', 'half-bar', 'bar']).optional(),
  hooks: yesNo.optional(),
});

const practiceTempo = z.strictObject({
  beat: beat.optional(),
  learning: beats.optional(),
  slow: beats.optional(),
  session: beats.optional(),
});

const colour = words.refine(isHexColour, { error: expects.colour });

const colours = z.strictObject(
  { ink: colour.optional(), paper: colour.optional(), accent: colour.optional() },
  { error: expects.table },
);

const printKind = z.enum(printKinds);
const sheetStep = z.literal([...sheetSteps]);

const settings = z.strictObject(
  {
    title: words.optional(),
    teacher: words.optional(),
    about: words.optional(),
    language: words.refine(isLanguageTag, { error: expects.language }).optional(),
    paper: z.preprocess(lower, z.enum(['a4', 'letter'])).optional(),
    tuning: tuning.optional(),
    level: z.enum(levels).optional(),
    levels: z.partialRecord(z.enum(levels), limits, { error: expects.table }).optional(),
    presets: z.record(z.string(), preset, { error: expects.table }).optional(),
    'preset-for': z.partialRecord(z.enum(tuneTypes), words, { error: expects.table }).optional(),
    tempi: z.partialRecord(z.enum(tuneTypes), practiceTempo, { error: expects.table }).optional(),
    restart: z.enum(['part']).optional(),
    rights: z.enum(['traditional', 'own', 'unknown']).optional(),
    permission: words.optional(),
    'cut-name': words.optional(),
    site: words.refine(isSiteAddress, { error: expects.site }).optional(),
    colours: colours.optional(),
    picture: words.optional(),
    'note-names': z.enum(noteNamings).optional(),
    pdf: z
      .union([z.literal('none'), printKind, z.array(printKind)], { error: expects.pdf })
      .optional(),
    steps: z.union([sheetStep, z.array(sheetStep)], { error: expects.steps }).optional(),
  },
  { error: expects.table },
);

type Written = z.infer<typeof settings>;

/** Settings of a book without `bowbook.yaml`: a fiddle's tuning, A4, English. */
export const defaultSettings: BookSettings = {
  title: 'Tune book',
  teacher: null,
  about: null,
  language: 'en',
  paper: 'a4',
  tuning: fiddleTuning,
  bowing: defaultBowing,
  rights: null,
  cutName: 'cut',
  site: null,
  theme: null,
  noteNames: 'letters',
  print: printKinds,
  steps: sheetSteps,
};

/** The settings of a book, and what is wrong with them. */
export interface SettingsReading {
  readonly settings: BookSettings;
  readonly problems: readonly Problem[];
}

/**
 * Reads `bowbook.yaml`. A setting that is missing has its value of `defaultSettings`; where the file has a
 * fault, all have. `media` are the paths of the book's media files, from its folder.
 */
export function readSettings(
  { file, text }: SourceText,
  media: readonly string[] = [],
): SettingsReading {
  const reading = readYaml({ file, text, firstLine: 1 }, settings);
  const { value, problems, placeOf } = reading;
  if (value === null) return { settings: defaultSettings, problems };
  const bowing = bowingOf(value);
  const known = Object.keys(bowing.presets);
  const unknown = Object.entries(value['preset-for'] ?? {}).filter(
    ([, name]) => !known.includes(name),
  );
  const faults: Problem[] = unknown.map(([type, name]) =>
    problem('setting-value', placeOf(['preset-for', type]), {
      facts: { setting: `preset-for.${type}` },
      actual: name,
      expected: known,
      nearest: nearest(name, known),
    }),
  );
  const { theme, problems: themeProblems } = themeOf(value, media, placeOf);
  faults.push(...themeProblems);
  const twice = value.rights !== undefined && value.permission !== undefined;
  if (twice) faults.push(problem('rights-twice', placeOf(['permission'])));
  return {
    settings: {
      title: value.title ?? defaultSettings.title,
      teacher: value.teacher ?? null,
      about: value.about ?? null,
      language: value.language ?? defaultSettings.language,
      paper: value.paper ?? defaultSettings.paper,
      tuning: value.tuning ?? defaultSettings.tuning,
      bowing,
      rights: rightsOf(value.rights, value.permission),
      cutName: value['cut-name'] ?? defaultSettings.cutName,
      site: value.site === undefined ? null : `${value.site.replace(/\/+$/, '')}/`,
      theme,
      noteNames: value['note-names'] ?? usualNoteNames(value.language ?? defaultSettings.language),
      print: printKinds.filter(kind => [value.pdf ?? printKinds].flat().includes(kind)),
      steps: sheetSteps.filter(step => [value.steps ?? [...sheetSteps]].flat().includes(step)),
    },
    problems: faults,
  };
}

function bowingOf(value: Written): BowingSettings {
  const limitsOf = (level: Level): Limits => ({
    longestSlur: value.levels?.[level]?.['longest-slur'] ?? defaultBowing.limits[level].longestSlur,
    longestStroke:
      value.levels?.[level]?.['longest-stroke'] ?? defaultBowing.limits[level].longestStroke,
  });
  const tempoOf = (type: TuneType) => {
    const { beat, learning, slow, session } = {
      ...defaultBowing.tempi[type],
      ...value.tempi?.[type],
    };
    return { beat: beat ?? defaultBowing.tempi[type].beat, learning, slow, session };
  };
  const presets = Object.entries(value.presets ?? {}).map(([name, p]) => [name, presetOf(name, p)]);
  return {
    level: value.level ?? defaultBowing.level,
    limits: {
      beginner: limitsOf('beginner'),
      improver: limitsOf('improver'),
      advanced: limitsOf('advanced'),
    },
    presets: { ...defaultBowing.presets, ...Object.fromEntries(presets) },
    presetFor: { ...defaultBowing.presetFor, ...value['preset-for'] },
    tempi: Object.fromEntries(
      tuneTypes.map(type => [type, tempoOf(type)]),
    ) as BowingSettings['tempi'],
    restart: value.restart ?? defaultBowing.restart,
  };
}

/** A preset of a known name changes that one; a new name starts from no preference at all. */
function presetOf(key: string, written: z.infer<typeof preset>): Preset {
  const from = defaultBowing.presets[key];
  const { 'strong-beat': strong, 'longest-slur': slur, 'longest-stroke': stroke } = written;
  return {
    name: written.name ?? from?.name ?? key,
    strongBeat: strong === undefined ? (from?.strongBeat ?? null) : strong,
    intoBeat: written['into-beat'] ?? from?.intoBeat ?? false,
    phraseEndsChange: written['phrase-ends-change'] ?? from?.phraseEndsChange ?? false,
    longestSlur: slur === undefined ? (from?.longestSlur ?? null) : slur,
    longestStroke: stroke === undefined ? (from?.longestStroke ?? null) : stroke,
    pattern: written.pattern === undefined ? (from?.pattern ?? null) : written.pattern,
    pickups: written.pickups === undefined ? (from?.pickups ?? null) : written.pickups,
    slurOver: written['slur-over'] ?? from?.slurOver ?? 'half-bar',
    hooks: written.hooks ?? from?.hooks ?? false,
  };
}

function lower(value: unknown): unknown {
  return typeof value === 'string' ? value.toLowerCase() : value;
}

/** Whether a text is a well-formed tag of BCP 47 that begins with a language: dates are written in it. */
function isLanguageTag(text: string): boolean {
  if (!/^[A-Za-z]{2,3}(?:-[A-Za-z0-9]{2,8})*$/.test(text)) return false;
  try {
    return Intl.getCanonicalLocales(text).length === 1;
  } catch {
    return false;
  }
}

/** Whether a text is an address at which a site can be published. */
function isSiteAddress(text: string): boolean {
  return /^https?:\/\/[^/?#\s]+[^?#\s]*$/i.test(text) && URL.canParse(text);
}
