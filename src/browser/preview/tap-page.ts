import { checkCues } from '../../../shared/clips/check-cues.ts';
import { cueOf, cueTime, type TapPoint, tapPoints } from '../../../shared/clips/tap-cues.ts';
import type { PreviewBook } from '../../../shared/preview-news.ts';
import { type Study, studyTune } from '../../../shared/study.ts';
import { previewWords } from '../../../shared/words/en/preview.ts';
import { wordProblem } from '../../../shared/words/words.ts';
import { loadTune } from '../tune-data.ts';
import { type ShownTap, tapCueList } from './tap-cue-list.ts';
import { tapLine } from './tap-line.ts';
import { button, element, pick } from './tap-parts.ts';

const { tap: words } = previewWords;

/** Seconds of the recording that are heard before a cue. */
const leadIn = 1;

/** What has been tapped of one tune. */
interface Tapping {
  readonly study: Study;
  readonly points: readonly TapPoint[];
  /** One for each point so far: its seconds, or null where the recording has not got it. */
  taps: readonly (number | null)[];
}

/** Fills the page: a tune and a recording to choose, the button to tap, the cues, the line. */
export function openTapping(main: HTMLElement, book: PreviewBook): void {
  let tapping: Tapping | null = null;
  const audio = document.createElement('audio');
  audio.controls = true;
  audio.preload = 'auto';
  const speeds = pick(
    words.speed,
    Object.entries(words.speeds).sort(([a], [b]) => Number(b) - Number(a)),
  );
  const tapButton = button('', 'tap-button');
  const tapName = element('span', 'tap-next');
  const tapPhrase = element('span', 'tap-phrase');
  tapButton.append(tapName, tapPhrase);
  const undo = button(words.undo);
  const skip = button(words.skip);
  const restart = button(words.restart);
  const said = element('p', 'unseen');
  said.setAttribute('role', 'status');
  const amiss = element('ul', 'tap-amiss');
  const line = tapLine(book, () => show());
  const cues = tapCueList({
    move(tap, to) {
      setTaps(tapping?.taps.map((was, i) => (i === tap.index ? hundredths(to) : was)) ?? []);
      said.textContent = words.tapped(tap.point.bar, cueTime(to));
    },
    hear({ seconds }) {
      audio.currentTime = Math.max(0, seconds - leadIn);
      void audio.play();
    },
  });

  const tapped = (): readonly ShownTap[] =>
    tapping?.taps.flatMap((seconds, index) => {
      const point = tapping?.points[index];
      return seconds === null || !point ? [] : [{ index, point, seconds }];
    }) ?? [];

  const show = (): void => {
    const shown = tapped();
    const named = shown.map(({ point, seconds }) => ({ bar: point.bar, seconds }));
    const next = tapping?.points[tapping.taps.length];
    tapButton.disabled = skip.disabled = !next;
    undo.disabled = restart.disabled = !tapping?.taps.length;
    tapName.textContent = next ? words.next(next.bar) : tapping ? words.done : words.loading;
    tapPhrase.textContent = next ? words.phrase(next.label, next.bars, next.pass) : '';
    cues.show(shown);
    const { tune, performance } = tapping?.study ?? {};
    const problems = tune && performance ? checkCues(tune, performance, named.map(cueOf)) : [];
    amiss.replaceChildren(
      ...problems.map(p => element('li', '', wordProblem(p).message.replaceAll('`', ''))),
    );
    line.show(named);
  };
  const setTaps = (taps: Tapping['taps']): void => {
    if (tapping) tapping.taps = taps;
    show();
  };
  const tap = (seconds: number | null): void => {
    const point = tapping?.points[tapping.taps.length];
    if (!tapping || !point) return;
    setTaps([...tapping.taps, seconds === null ? null : hundredths(seconds)]);
    if (seconds !== null) said.textContent = words.tapped(point.bar, cueTime(seconds));
  };

  const chooseTune = async (): Promise<void> => {
    const id = line.tune.value;
    tapping = null;
    show();
    try {
      const data = await loadTune(id, '/');
      if (line.tune.value !== id) return; // another was chosen meanwhile
      const study = studyTune(data.tune, data.request);
      tapping = { study, points: tapPoints(study.tune, study.performance, study.map), taps: [] };
      show();
    } catch {
      tapName.textContent = words.notLoaded;
    }
  };
  const chooseSpeed = (): void => {
    audio.defaultPlaybackRate = audio.playbackRate = Number(speeds.select.value);
  };
  const chooseRecording = (): void => {
    audio.src = `/${line.recording.value.split('/').map(encodeURIComponent).join('/')}`;
    chooseSpeed();
    setTaps([]);
  };

  line.tune.addEventListener('change', () => void chooseTune());
  line.recording.addEventListener('change', chooseRecording);
  speeds.select.addEventListener('change', chooseSpeed);
  // When it is pressed, not when it is let go: that is the moment one means.
  tapButton.addEventListener('pointerdown', event => {
    if (event.button === 0) tap(audio.currentTime);
  });
  let isKeyDown = false;
  addEventListener('keydown', event => {
    if (event.ctrlKey || event.altKey || event.metaKey) return;
    const at = event.target instanceof Element ? event.target : null;
    const isOwn = at === tapButton && (event.key === ' ' || event.key === 'Enter');
    if (!isOwn && (event.key !== ' ' || at?.closest(usesSpace))) return;
    event.preventDefault();
    isKeyDown = true;
    if (!event.repeat) tap(audio.currentTime);
  });
  addEventListener('keyup', () => {
    // After the click that some browsers still make of the key.
    setTimeout(() => {
      isKeyDown = false;
    });
  });
  // A screen reader presses a button with neither pointer nor key.
  tapButton.addEventListener('click', event => {
    if (event.detail === 0 && !isKeyDown) tap(audio.currentTime);
  });
  undo.addEventListener('click', () => setTaps(tapping?.taps.slice(0, -1) ?? []));
  skip.addEventListener('click', () => tap(null));
  restart.addEventListener('click', () => {
    audio.currentTime = 0;
    setTaps([]);
  });

  const hearing = element('div', 'tap-hear');
  hearing.append(audio, speeds.label, element('p', 'tap-hint', words.caution));
  const steps = element('div', 'tap-steps');
  steps.append(undo, skip, restart);
  const howTo = element('p', 'tap-hint', words.space);
  main.append(line.fields, hearing, tapButton, howTo, steps, said);
  main.append(element('h2', '', words.cues), cues.list, amiss);
  main.append(element('h2', '', words.line), ...line.line);
  chooseRecording();
  void chooseTune();
}

const hundredths = (seconds: number): number => Math.round(seconds * 100) / 100;

/** What the space bar already does something to. */
const usesSpace = 'a, button, input, select, textarea, summary, audio';
