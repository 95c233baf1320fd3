import type { AnchorRequest } from '../../shared/bowing/bowing.ts';
import { defaultBowing } from '../../shared/bowing/default-settings.ts';
import { parseBarRange } from '../../shared/music/bar-range.ts';
import { parsePitch } from '../../shared/music/pitch.ts';
import type { Direction, Tune } from '../../shared/music/tune.ts';
import { type Study, type StudyRequest, studyTune } from '../../shared/study.ts';

export const tuning = ['E5', 'A4', 'D4', 'G3'].map(parsePitch) as unknown as StudyRequest['tuning'];

/** An anchor as a teacher asks for it. */
export function anchorAt(
  bars: string,
  start: Direction | null,
  level: AnchorRequest['level'] = null,
): AnchorRequest {
  const range = parseBarRange(bars);
  if (!range) throw new Error(`no passage: ${bars}`);
  return { id: 'turn', bars: range, start, level, preset: null, place: null };
}

export const studyOf = (tune: Tune, rest: Partial<StudyRequest> = {}): Study =>
  studyTune(tune, { tuning, bowing: defaultBowing, start: null, anchors: [], unit: null, ...rest });
