import type { PassageChoice } from '../../../shared/sound/passage.ts';
import { playerWords } from '../../../shared/words/en/player.ts';
import { loadTune } from '../tune-data.ts';
import { readChoice, touchPhrase } from './choose-phrases.ts';
import { followNotes } from './follow-notes.ts';
import { allPlaces, phrasePlaces } from './phrase-places.ts';
import { playRounds } from './play-rounds.ts';
import { type Field, playerForm } from './player-form.ts';
import { roundsOf, type TuneToPlay, tuneToPlay } from './rounds-of.ts';
import { soundOut } from './sound-room.ts';

/** A player on the page, as the page's other scripts may use it. */
export interface MountedPlayer {
  readonly form: HTMLFormElement;
  readonly isPlaying: () => boolean;
  readonly play: () => void;
  readonly stop: () => void;
}

/** Milliseconds for which a slider must rest before what it says is heard. */
const rest = 180;

/** Wakes one player. `sounds` is told when it begins, so that no two sound at once. */
export function mountPlayer(
  form: HTMLFormElement,
  sounds: (player: MountedPlayer) => void,
): MountedPlayer {
  const { player: id = '', root = '', title = '' } = form.dataset;
  const { ways, say, showSettings, stepTempo, keepField, restore } = playerForm(form);
  const places = phrasePlaces(form, id);
  const choices = [...form.querySelectorAll<HTMLElement>('[data-choice]')];
  const phrases = [...form.querySelectorAll<HTMLElement>('button[data-phrase]')];
  const whole = readChoice(choices[0]?.dataset.choice ?? 'all');
  let chosen: PassageChoice = whole;
  let silence: (() => void) | null = null;
  /** Which press of Play is meant: a later one makes an earlier one, still loading, moot. */
  let asked = 0;
  let resting = 0;

  const isPlaying = (): boolean => form.dataset.state === 'playing';

  const stop = (): void => {
    asked++;
    clearTimeout(resting);
    silence?.();
    silence = null;
    form.dataset.state = 'still';
    say('play', playerWords.play);
    showSettings();
  };

  const play = async (again = false): Promise<void> => {
    stop();
    const mine = ++asked;
    sounds(mounted);
    form.dataset.state = 'playing';
    say('play', playerWords.stop);
    say('said', '');
    try {
      const out = await soundOut();
      const tune = tuneToPlay(await loadTune(id, root));
      if (mine === asked) silence = sound(tune, out, again);
    } catch {
      if (mine !== asked) return;
      stop();
      say('what', playerWords.failed);
      say('said', playerWords.failed);
    }
  };

  /** Sounds and is followed until what it answers with is called, or to its end. */
  const sound = (tune: TuneToPlay, out: AudioNode, again: boolean): (() => void) => {
    const set = ways(chosen);
    const roundAt = roundsOf(tune, again ? { ...set, countIn: false } : set);
    const playing = playRounds(out.context as AudioContext, out, roundAt);
    const follower = followNotes(tune.study, { ...places, player: form });
    let frame = 0;
    const follow = (): void => {
      const at = playing.position();
      const round = at && roundAt(at.round);
      follower.show(round?.sounding ?? null, at?.seconds ?? 0);
      if (round) showSettings(round.perMinute);
      frame = requestAnimationFrame(follow);
    };
    const end = (): void => {
      cancelAnimationFrame(frame);
      playing.stop();
      follower.show(null, 0);
    };
    follow();
    tellDevice(title, () => void play(), stop);
    playing.ended.then(() => {
      if (silence === end) stop();
    });
    return end;
  };

  const showChoice = (): void => {
    const isChosen = (b: HTMLElement): boolean =>
      JSON.stringify(readChoice(b.dataset.choice ?? '')) === JSON.stringify(chosen);
    const within = (phrase: number): boolean =>
      chosen.kind === 'phrases' &&
      chosen !== whole &&
      chosen.first <= phrase &&
      phrase <= chosen.last;
    const picked = phrases.filter(b => within(Number(b.dataset.phrase)));
    for (const b of choices) b.setAttribute('aria-pressed', String(isChosen(b)));
    for (const b of phrases) b.setAttribute('aria-pressed', String(picked.includes(b)));
    for (const { phrase, place } of allPlaces(places)) {
      place.classList.toggle('chosen-phrase', within(phrase));
    }
    say('what', nameOf(picked) ?? choices.find(isChosen)?.textContent ?? '');
  };

  const choose = (choice: PassageChoice): void => {
    chosen = choice;
    showChoice();
    if (isPlaying()) void play(true);
  };

  form.addEventListener('submit', event => event.preventDefault());
  form.addEventListener('input', event => {
    showSettings();
    keepField(event.target as Field);
    clearTimeout(resting);
    resting = window.setTimeout(() => {
      if (isPlaying()) void play(true);
    }, rest);
  });
  form.addEventListener('click', event => {
    const button = event.target instanceof Element ? event.target.closest('button') : null;
    const { does, choice, phrase } = button?.dataset ?? {};
    if (does === 'play') isPlaying() ? stop() : void play();
    if (does === 'slower') stepTempo(-5);
    if (does === 'faster') stepTempo(5);
    if (choice !== undefined) choose(readChoice(choice));
    if (phrase !== undefined) choose(touchPhrase(chosen, Number(phrase), whole));
  });
  for (const { phrase, place } of allPlaces(places)) {
    place.classList.add('to-touch');
    place.addEventListener('click', () => choose(touchPhrase(chosen, phrase, whole)));
  }

  restore();
  const mounted: MountedPlayer = { form, isPlaying, play: () => void play(), stop };
  stop();
  showChoice();
  form.hidden = false;
  return mounted;
}

/** `Phrase a, A1-A2`, or `From A1-A2 to A5-A6`; null where no phrase is picked. */
function nameOf(picked: readonly HTMLElement[]): string | null {
  const [first, last] = [picked[0], picked.at(-1)];
  if (!first || !last) return null;
  if (first === last) return first.dataset.name ?? '';
  return playerWords.phrases(first.dataset.bars ?? '', last.dataset.bars ?? '');
}

/** Tells the device what sounds, so that its own play and stop keys work where it has them. */
function tellDevice(title: string, play: () => void, stop: () => void): void {
  const { mediaSession } = navigator;
  if (!mediaSession) return;
  mediaSession.metadata = new MediaMetadata({ title, album: document.title });
  mediaSession.setActionHandler('play', play);
  mediaSession.setActionHandler('pause', stop);
  mediaSession.setActionHandler('stop', stop);
}
