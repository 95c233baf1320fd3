import { parseFraction } from '../../../shared/music/fraction.ts';
import type { PaceName } from '../../../shared/sound/paces.ts';
import type { PassageChoice } from '../../../shared/sound/passage.ts';
import { playerWords } from '../../../shared/words/en/player.ts';
import { loadTune } from '../tune-data.ts';
import { readChoice, touchPhrase } from './choose-phrases.ts';
import { followNotes } from './follow-notes.ts';
import { keep, readKept } from './kept-choices.ts';
import { type Position, playRounds } from './play-rounds.ts';
import { roundsOf, type TuneToPlay, tuneToPlay, type Ways } from './rounds-of.ts';
import { soundOut } from './sound-room.ts';

/** A player on the page, as the page's other scripts may use it. */
export interface MountedPlayer {
  readonly form: HTMLFormElement;
  readonly isPlaying: () => boolean;
  readonly play: () => void;
  readonly stop: () => void;
}

/** Wakes one player. `sounds` is told when it begins, so that no two sound at once. */
export function mountPlayer(
  form: HTMLFormElement,
  sounds: (player: MountedPlayer) => void,
): MountedPlayer {
  const { player: id = '', root = '', title = '', beat = '', beatLength = '' } = form.dataset;
  const shows = (name: string): Element | null => form.querySelector(`[data-shows="${name}"]`);
  const say = (name: string, text: string): void => {
    const place = shows(name);
    if (place && place.textContent !== text) place.textContent = text;
  };
  const field = (name: string): HTMLInputElement | HTMLSelectElement | null =>
    form.querySelector(`[name="${name}"]`);
  const numberIn = (name: string, otherwise: number): number => {
    const value = Number(field(name)?.value);
    return field(name) && Number.isFinite(value) ? value : otherwise;
  };
  const isOn = (name: string): boolean => form.querySelector(`[name="${name}"]:checked`) !== null;

  const places = placesOf(form, id);
  const choiceButtons = [...form.querySelectorAll<HTMLElement>('[data-choice]')];
  const phraseButtons = [...form.querySelectorAll<HTMLElement>('button[data-phrase]')];
  const whole = readChoice(choiceButtons[0]?.dataset.choice ?? 'all');
  let chosen: PassageChoice = whole;
  let stopSound: (() => void) | null = null;
  /** Which press of Play is meant: a later one makes an earlier one, still loading, moot. */
  let asked = 0;

  const pace = (): { name: PaceName; perMinute: number } => {
    const radio = form.querySelector<HTMLInputElement>('[name="pace"]:checked');
    const name = (radio?.value ?? 'learning') as PaceName;
    return { name, perMinute: Number(radio?.dataset.perMinute) };
  };
  const perMinuteOf = (name: string): number =>
    Number(form.querySelector<HTMLElement>(`[name="pace"][value="${name}"]`)?.dataset.perMinute);
  const percent = (): number => numberIn('percent', 100);
  const ways = (): Ways => ({
    choice: chosen,
    pass: numberIn('pass', 1),
    tempo: {
      beat: parseFraction(beatLength) ?? { n: 1, d: 4 },
      perMinute: (pace().perMinute * percent()) / 100,
    },
    climb: isOn('climb')
      ? {
          by: numberIn('climbBy', 2),
          every: numberIn('climbEvery', 2),
          to: perMinuteOf(field('climbTo')?.value ?? 'session'),
        }
      : null,
    lilt: numberIn('lilt', 1),
    easesDots: isOn('dots'),
    breath: numberIn('breath', 1),
    answer: isOn('answer'),
    pulse: isOn('pulse'),
    countIn: isOn('countIn'),
    loop: isOn('loop'),
  });

  const showTempo = (perMinute?: number): void => {
    const { name } = pace();
    const set = ways().tempo.perMinute;
    say('percent', playerWords.clipPercent(percent()));
    const climbing = perMinute !== undefined && Math.abs(perMinute - set) > 0.01;
    say(
      'tempo',
      climbing
        ? playerWords.climbing(beat, Math.round(perMinute))
        : playerWords.tempo(beat, set, name, percent()),
    );
  };

  const showChoice = (): void => {
    const isChosen = (b: HTMLElement): boolean =>
      JSON.stringify(readChoice(b.dataset.choice ?? '')) === JSON.stringify(chosen);
    let name = choiceButtons.find(isChosen)?.textContent ?? '';
    for (const b of choiceButtons) b.setAttribute('aria-pressed', String(isChosen(b)));
    const within = (phrase: number): boolean =>
      chosen.kind === 'phrases' &&
      chosen !== whole &&
      chosen.first <= phrase &&
      phrase <= chosen.last;
    const picked = phraseButtons.filter(b => within(Number(b.dataset.phrase)));
    for (const b of phraseButtons) b.setAttribute('aria-pressed', String(picked.includes(b)));
    const [first, last] = [picked[0], picked.at(-1)];
    if (first && last) {
      name =
        first === last
          ? (first.dataset.name ?? '')
          : playerWords.phrases(first.dataset.bars ?? '', last.dataset.bars ?? '');
    }
    say('what', name);
    for (const [phrase, elements] of places.staves) {
      for (const e of elements) e.classList.toggle('chosen-phrase', within(phrase));
    }
    for (const [phrase, elements] of places.blocks) {
      for (const e of elements) e.classList.toggle('chosen-phrase', within(phrase));
    }
  };

  const stop = (): void => {
    asked++;
    stopSound?.();
    stopSound = null;
    form.dataset.state = 'still';
    say('play', playerWords.play);
    showTempo();
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
      if (mine !== asked) return;
      stopSound = sound(tune, out, again);
    } catch {
      if (mine !== asked) return;
      stop();
      say('said', playerWords.failed);
      say('what', playerWords.failed);
    }
  };

  const sound = (tune: TuneToPlay, out: AudioNode, again: boolean): (() => void) => {
    const set = ways();
    const rounds = roundsOf(tune, again ? { ...set, countIn: false } : set);
    const playing = playRounds(out.context as AudioContext, out, n => rounds(n));
    const follower = followNotes(tune.study, { ...places, player: form });
    let frame = 0;
    const follow = (): void => {
      const at: Position | null = playing.position();
      const round = at && rounds(at.round);
      follower.show(round?.sounding ?? null, at?.seconds ?? 0);
      if (round) showTempo(round.perMinute);
      frame = requestAnimationFrame(follow);
    };
    follow();
    tellDevice(title, () => void play(), stop);
    playing.ended.then(() => {
      if (stopSound === end) stop();
    });
    const end = (): void => {
      cancelAnimationFrame(frame);
      playing.stop();
      follower.show(null, 0);
    };
    return end;
  };

  const choose = (choice: PassageChoice): void => {
    chosen = choice;
    showChoice();
    if (form.dataset.state === 'playing') void play(true);
  };

  let waiting = 0;
  /** What is set while it sounds is heard at once; of a slider that moves, only where it rests. */
  const heardSoon = (): void => {
    if (form.dataset.state !== 'playing') return;
    clearTimeout(waiting);
    waiting = window.setTimeout(() => {
      if (form.dataset.state === 'playing') void play(true);
    }, 180);
  };

  const changed = (): void => {
    showTempo();
    const lilt = field('lilt');
    if (lilt instanceof HTMLInputElement) {
      say(
        'lilt',
        playerWords.liltAt(lilt.dataset.kind === 'threes' ? 'threes' : 'pairs', Number(lilt.value)),
      );
    }
    form.toggleAttribute('data-climbs', isOn('climb'));
  };

  const step = (by: number): void => {
    const slider = field('percent');
    if (!(slider instanceof HTMLInputElement)) return;
    slider.value = String(Math.round((Number(slider.value) + by) / 5) * 5);
    slider.dispatchEvent(new Event('input', { bubbles: true }));
  };

  form.addEventListener('submit', event => event.preventDefault());
  form.addEventListener('input', event => {
    changed();
    heardSoon();
    if (event.target instanceof HTMLInputElement || event.target instanceof HTMLSelectElement) {
      keep(choiceOf(event.target, form));
    }
  });
  form.addEventListener('click', event => {
    const button = event.target instanceof Element ? event.target.closest('button') : null;
    const does = button?.dataset.does;
    if (does === 'play') form.dataset.state === 'playing' ? stop() : void play();
    if (does === 'slower') step(-5);
    if (does === 'faster') step(5);
    if (button?.dataset.choice !== undefined) choose(readChoice(button.dataset.choice));
    if (button?.dataset.phrase !== undefined) {
      choose(touchPhrase(chosen, Number(button.dataset.phrase), whole));
    }
  });
  for (const group of [places.staves, places.blocks]) {
    for (const [phrase, elements] of group) {
      for (const element of elements) {
        element.classList.add('to-touch');
        element.addEventListener('click', () => choose(touchPhrase(chosen, phrase, whole)));
      }
    }
  }

  restore(form);
  changed();
  showChoice();
  form.dataset.state = 'still';
  form.hidden = false;
  const mounted: MountedPlayer = {
    form,
    isPlaying: () => form.dataset.state === 'playing',
    play: () => void play(),
    stop,
  };
  return mounted;
}

interface Places {
  readonly notation: Element | null;
  readonly staves: ReadonlyMap<number, readonly Element[]>;
  readonly blocks: ReadonlyMap<number, readonly Element[]>;
}

/** The notation that stands with the player, and the tune's map wherever it stands on the page. */
function placesOf(form: HTMLFormElement, id: string): Places {
  const section = form.closest('section');
  const notation = section?.querySelector('.notation') ?? null;
  const staves = new Map<number, Element[]>();
  for (const stave of notation?.querySelectorAll<HTMLElement>('.stave[data-phrase]') ?? []) {
    const phrase = Number(stave.dataset.phrase);
    staves.set(phrase, [...(staves.get(phrase) ?? []), stave]);
  }
  const blocks = new Map<number, Element[]>();
  for (const link of document.querySelectorAll<HTMLAnchorElement>('.map a.phrase')) {
    const cell = decodeURIComponent(link.hash.slice(1));
    const phrase = [...staves].find(([, all]) => all.some(s => s.id === cell))?.[0];
    if (cell === '' || phrase === undefined || !cell.startsWith(`${id}-`)) continue;
    // The notation stands on this page: the link need not leave it.
    link.setAttribute('href', `#${cell}`);
    blocks.set(phrase, [...(blocks.get(phrase) ?? []), link]);
  }
  return { notation, staves, blocks };
}

/** A lilt belongs to its kind, and what is heard to its tune: only the rest is kept. */
function choiceOf(
  input: HTMLInputElement | HTMLSelectElement,
  form: HTMLFormElement,
): Record<string, string | number | boolean> {
  if (input.name === 'pass') return {};
  const name = input.name === 'lilt' ? liltKey(form) : input.name;
  const isTick = input instanceof HTMLInputElement && input.type === 'checkbox';
  return { [name]: isTick ? input.checked : input.value };
}

const liltKey = (form: HTMLFormElement): string => {
  const lilt = form.querySelector<HTMLInputElement>('[name="lilt"]');
  return `lilt ${lilt?.dataset.kind} ${lilt?.min}-${lilt?.max}`;
};

function restore(form: HTMLFormElement): void {
  const kept = readKept();
  for (const input of form.querySelectorAll<HTMLInputElement | HTMLSelectElement>('[name]')) {
    const was = kept[input.name === 'lilt' ? liltKey(form) : input.name];
    if (was === undefined || input.name === 'pass') continue;
    if (!(input instanceof HTMLInputElement)) {
      if ([...input.options].some(o => o.value === String(was))) input.value = String(was);
    } else if (input.type === 'checkbox') input.checked = was === true;
    else if (input.type === 'radio') input.checked = input.value === was;
    else input.value = String(was);
  }
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
