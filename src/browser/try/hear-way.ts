import { pacesOf } from '../../../shared/bowing/paces.ts';
import { zero } from '../../../shared/music/fraction.ts';
import { liltAt, liltRange } from '../../../shared/sound/lilt.ts';
import { type Passage, passagesOf } from '../../../shared/sound/passage.ts';
import { soundPassage } from '../../../shared/sound/sound-passage.ts';
import type { StudyRequest } from '../../../shared/study.ts';
import type { Outcome } from '../../../shared/trying/trial.ts';
import { type Playing, playRounds } from '../player/play-rounds.ts';
import { soundOut } from '../player/sound-room.ts';

/** Sounds the way to the passage, and the passage, as they are bowed: once, at the learning tempo. */
export interface HearWay {
  /** `from`: event of the note on the way to begin with; null for its first. */
  readonly play: (outcome: Outcome, pass: number, from: number | null) => void;
  readonly stop: () => void;
}

export interface HeardBy {
  readonly playing: (now: boolean) => void;
  /** The event that sounds; null where none does. */
  readonly note: (event: number | null) => void;
}

/** So that what sounds elsewhere on the page falls silent; `player.ts` sends and hears it too. */
export const soundsEvent = 'bowbook-sounds';

export function hearWay(request: StudyRequest, heard: HeardBy): HearWay {
  let sounding: Playing | null = null;
  /** Asked for since: a start that was overtaken while the browser woke its sound does not begin. */
  let asked = 0;

  const stop = (): void => {
    asked++;
    sounding?.stop();
    sounding = null;
    heard.playing(false);
    heard.note(null);
  };

  const play = async (outcome: Outcome, pass: number, from: number | null): Promise<void> => {
    stop();
    const passage = passageInto(outcome, pass, from);
    if (!passage) return;
    const own = asked;
    document.dispatchEvent(new CustomEvent(soundsEvent, { detail: heard }));
    const out = await soundOut();
    if (own !== asked) return;
    const { study } = outcome;
    const { beat, perMinute } = pacesOf(study.tune, request.bowing);
    const sound = soundPassage(study, passage, {
      tempo: { beat, perMinute: perMinute.learning },
      lilt: liltAt(liltRange(study.tune), liltRange(study.tune).usual),
      breath: 0,
      answer: false,
      pulse: false,
    });
    const playing = playRounds(out.context as AudioContext, out, round =>
      round === 0 ? { sounding: sound, forEver: false } : null,
    );
    sounding = playing;
    heard.playing(true);
    const follow = (): void => {
      if (sounding !== playing) return;
      const at = playing.position()?.seconds;
      const note = at === undefined ? undefined : sound.notes.findLast(n => n.at <= at);
      heard.note(note ? (study.performance.notes[note.note]?.event ?? null) : null);
      requestAnimationFrame(follow);
    };
    follow();
    await playing.ended;
    if (sounding === playing) stop();
  };

  document.addEventListener(soundsEvent, event => {
    if ((event as CustomEvent).detail !== heard && sounding !== null) stop();
  });
  addEventListener('pagehide', stop);
  return { play: (outcome, pass, from) => void play(outcome, pass, from), stop };
}

/** Lead-in and passage of one time through, from a note on. */
function passageInto(
  { study, anchor }: Outcome,
  pass: number,
  from: number | null,
): Passage | null {
  const { notes } = study.performance;
  const whole = passagesOf(study, { kind: 'into', anchor: anchor.id }).find(p =>
    notes.slice(p.first, p.end).some(n => n.event === anchor.first && n.pass === pass),
  );
  if (!whole || from === null) return whole ?? null;
  const first = notes.findIndex((n, k) => k >= whole.first && k < whole.end && n.event === from);
  return first < 0 ? whole : { ...whole, first, from: notes[first]?.onset ?? zero };
}
