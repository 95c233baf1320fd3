/**
 * The pages' sound: a player with each tune, and the recordings. Nothing is rendered or loaded
 * before something is touched, and no two sound at once.
 */
import { type MountedClip, mountClip } from './player/mount-clip.ts';
import { type MountedPlayer, mountPlayer } from './player/mount-player.ts';

const players: MountedPlayer[] = [];
const clips: MountedClip[] = [];
let last: MountedPlayer | null = null;

function quietOthers(sounding: MountedPlayer | MountedClip): void {
  for (const other of [...players, ...clips]) {
    if (other !== sounding && other.isPlaying()) other.stop();
  }
  document.dispatchEvent(new CustomEvent(soundsEvent, { detail: sounding }));
}

/** Other scripts of the page sound too: they send this when they begin, and fall silent at it. */
const soundsEvent = 'bowbook-sounds';
document.addEventListener(soundsEvent, event => {
  const sounding: unknown = (event as CustomEvent).detail;
  for (const own of [...players, ...clips]) {
    if (own !== sounding && own.isPlaying()) own.stop();
  }
});

for (const form of document.querySelectorAll<HTMLFormElement>('form[data-player]')) {
  const sounds = (player: MountedPlayer): void => {
    quietOthers(player);
    last = player;
  };
  players.push(mountPlayer(form, sounds));
}
for (const section of document.querySelectorAll<HTMLElement>('section[data-clip]')) {
  clips.push(mountClip(section, quietOthers));
}

/** The space bar belongs to what has the focus, if that knows what to do with it. */
const usesSpace =
  'a, button, input, select, textarea, summary, audio, video, [contenteditable], [role]';

addEventListener('keydown', event => {
  if (event.key !== ' ' || event.repeat || event.ctrlKey || event.altKey || event.metaKey) return;
  if (event.target instanceof Element && event.target.closest(usesSpace)) return;
  const sounding = players.find(p => p.isPlaying());
  const player = sounding ?? last ?? players[0];
  if (!player) return;
  event.preventDefault();
  if (sounding) sounding.stop();
  else player.play();
});
addEventListener('pagehide', () => {
  for (const sounding of [...players, ...clips]) sounding.stop();
});
