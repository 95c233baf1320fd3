import { pacesOf } from '../../../shared/bowing/paces.ts';
import type { Drill } from '../../../shared/drills/drill.ts';
import type { DrillSource } from '../../../shared/drills/drill-source.ts';
import { heardStretches } from '../../../shared/drills/heard-stretches.ts';
import { liltAt, liltRange } from '../../../shared/sound/lilt.ts';
import { silenceNotes } from '../../../shared/sound/silence-notes.ts';
import { soundPassage } from '../../../shared/sound/sound-passage.ts';
import { type Playing, playRounds } from '../player/play-rounds.ts';
import { soundOut } from '../player/sound-room.ts';
import { soundsEvent } from '../try/hear-way.ts';

/** Sounds a drill once, at the learning tempo; what is left out of it is silent. */
export interface HearDrill {
  readonly play: (source: DrillSource, drill: Drill) => void;
  readonly stop: () => void;
}

export function hearDrill(playing: (now: boolean) => void): HearDrill {
  let sounding: Playing | null = null;
  /** A start that was overtaken while the browser woke its sound does not begin. */
  let asked = 0;
  const self = {};

  const stop = (): void => {
    asked++;
    sounding?.stop();
    sounding = null;
    playing(false);
  };

  const play = async (source: DrillSource, drill: Drill): Promise<void> => {
    stop();
    const own = asked;
    // So that what sounds elsewhere on the page falls silent.
    document.dispatchEvent(new CustomEvent(soundsEvent, { detail: self }));
    const out = await soundOut();
    if (own !== asked) return;
    const { beat, perMinute } = pacesOf(source.tune, source.settings);
    const lilt = liltRange(source.tune);
    const rounds = heardStretches(source, drill).map(stretch =>
      silenceNotes(
        soundPassage(source, stretch, {
          tempo: { beat, perMinute: perMinute.learning },
          lilt: liltAt(lilt, lilt.usual),
          breath: 1,
          answer: false,
          pulse: false,
        }),
        new Set(stretch.silent),
      ),
    );
    const now = playRounds(out.context as AudioContext, out, round => {
      const heard = rounds[round];
      return heard ? { sounding: heard, forEver: false } : null;
    });
    sounding = now;
    playing(true);
    await now.ended;
    if (sounding === now) stop();
  };

  document.addEventListener(soundsEvent, event => {
    if ((event as CustomEvent).detail !== self && sounding !== null) stop();
  });
  addEventListener('pagehide', stop);
  return { play: (source, drill) => void play(source, drill), stop };
}
