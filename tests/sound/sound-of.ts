import { fraction } from '../../shared/music/fraction.ts';
import { type Lilt, liltAt, liltRange } from '../../shared/sound/lilt.ts';
import { type PassageChoice, passagesOf } from '../../shared/sound/passage.ts';
import { type SoundRequest, soundPassage } from '../../shared/sound/sound-passage.ts';
import type { SoundingPassage } from '../../shared/sound/sounding.ts';
import type { Study, StudyRequest } from '../../shared/study.ts';
import { parseTunes } from '../../src/abc/parse-tune.ts';
import { studyOf } from '../bowing/study-of.ts';

/** A tune in a line of ABC, studied. */
export function studyAbc(head: string, body: string, rest: Partial<StudyRequest> = {}): Study {
  const text = `X:1\nT:Trial\n${head}\n${body}\n`;
  const [tune] = parseTunes({ text, file: 'trial.abc', line: 1, indent: 0 }).tunes;
  if (!tune) throw new Error('the trial was not read');
  return studyOf(tune, rest);
}

export const even: Lilt = { kind: 'pairs', ratio: 1, easesDots: false };

/** A crotchet a second, even, with no breath, unless said otherwise. */
export function soundOf(
  study: Study,
  ways: Partial<SoundRequest> & { readonly choice?: PassageChoice; readonly time?: number } = {},
): SoundingPassage {
  const { choice = { kind: 'all' }, time = 0, ...rest } = ways;
  const passage = passagesOf(study, choice)[time];
  if (!passage) throw new Error('the passage is not in the trial');
  return soundPassage(study, passage, {
    tempo: { beat: fraction(1, 4), perMinute: 60 },
    lilt: even,
    breath: 0,
    answer: false,
    pulse: false,
    ...rest,
  });
}

/** The lilt of a tune's type at a setting. */
export const liltOf = (study: Study, amount: number, easesDots = false): Lilt =>
  liltAt(liltRange(study.tune), amount, easesDots);

/** When each note begins, in seconds. */
export const onsetsOf = (sounding: SoundingPassage): readonly number[] =>
  sounding.notes.map(n => Math.round(n.at * 1e9) / 1e9);
