import { playerWords } from '../../../shared/words/en/player.ts';
import type { MountedPlayer } from './mount-player.ts';

/** Seconds by which a loop may run over its end before it is noticed: a frame of the page. */
const slack = 0.02;

/** A recording that can be stopped when something else sounds. */
export type MountedClip = Pick<MountedPlayer, 'isPlaying' | 'stop'>;

/**
 * Wakes a recording: its phrases play from where they begin to where they end, again and again
 * where that is asked, at half speed to a little over full speed without a change of pitch.
 */
export function mountClip(section: HTMLElement, sounds: (clip: MountedClip) => void): MountedClip {
  const media = section.querySelector<HTMLMediaElement>('.clip-media');
  const panel = section.querySelector<HTMLElement>('.clip-panel');
  if (!media || !panel) throw new Error('a recording has its media and its panel');
  const buttons = [...section.querySelectorAll<HTMLElement>('button[data-from]')];
  const loop = section.querySelector<HTMLInputElement>('[name="clipLoop"]');
  const speed = section.querySelector<HTMLInputElement>('[name="clipSpeed"]');
  const shown = section.querySelector('[data-shows="speed"]');
  let chosen: HTMLElement | null = null;
  let frame = 0;

  const from = (): number => Number(chosen?.dataset.from ?? 0);
  const to = (): number =>
    Math.min(
      Number(chosen?.dataset.to ?? Number.POSITIVE_INFINITY),
      media.duration || Number.POSITIVE_INFINITY,
    );

  const choose = (button: HTMLElement | null): void => {
    chosen = button;
    for (const b of buttons) b.setAttribute('aria-pressed', String(b === button));
  };

  /** Goes round, or stops, where the phrase ends. */
  const watch = (): void => {
    cancelAnimationFrame(frame);
    if (media.paused) return;
    if (chosen && media.currentTime >= to() - slack * media.playbackRate) {
      if (!loop?.checked) {
        media.pause();
        return;
      }
      media.currentTime = from();
    }
    frame = requestAnimationFrame(watch);
  };

  for (const button of buttons) {
    button.addEventListener('click', () => {
      if (chosen === button) {
        choose(null);
        media.pause();
        return;
      }
      choose(button);
      media.currentTime = from();
      void media.play().catch(() => choose(null));
    });
  }
  speed?.addEventListener('input', () => {
    media.preservesPitch = true;
    media.playbackRate = Number(speed.value) / 100;
    if (shown) shown.textContent = playerWords.clipPercent(Number(speed.value));
  });
  media.addEventListener('play', () => {
    sounds(clip);
    watch();
  });
  // Elsewhere in the recording by its own slider: the phrase is let go.
  media.addEventListener('seeking', () => {
    if (chosen && (media.currentTime < from() - 0.5 || media.currentTime > to() + 0.5))
      choose(null);
  });
  media.addEventListener('ended', () => {
    if (!loop?.checked) return;
    media.currentTime = chosen ? from() : 0;
    void media.play().catch(() => choose(null));
  });
  /** A recording of one time through has no second time. */
  const hideMissing = (): void => {
    for (const b of buttons) b.hidden = Number(b.dataset.from) >= media.duration - 0.2;
  };
  media.addEventListener('loadedmetadata', hideMissing);
  if (media.readyState >= 1) hideMissing();
  panel.hidden = false;
  const clip: MountedClip = { isPlaying: () => !media.paused, stop: () => media.pause() };
  return clip;
}
