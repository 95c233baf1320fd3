import { checkCues } from '../../../shared/clips/check-cues.ts';
import {
  clipLine,
  cueOf,
  cueTime,
  type TapPoint,
  type TappedCue,
  tapPoints,
} from '../../../shared/clips/tap-cues.ts';
import type { PreviewBook } from '../../../shared/preview-news.ts';
import { type Study, studyTune } from '../../../shared/study.ts';
import { previewWords } from '../../../shared/words/en/preview.ts';
import { wordProblem } from '../../../shared/words/words.ts';
import { loadTune } from '../tune-data.ts';
import { button, element, field, pick } from './tap-parts.ts';

const { tap: words } = previewWords;

/** How far one press moves a cue, in seconds. */
const nudge = 0.05;

/** Seconds of the recording that are heard before a cue. */
const leadIn = 1;

/** What has been tapped of one tune. */
interface Tapping {
  readonly study: Study;
  readonly points: readonly TapPoint[];
  /** One for each point so far: its seconds, or null where the recording has not got it. */
  taps: (number | null)[];
}

/** Fills the page: a tune and a recording to choose, the button to tap, the cues, the line. */
export function openTapping(main: HTMLElement, book: PreviewBook): void {
  const tune = pick(
    words.tune,
    book.tunes.map(t => [t.id, t.title] as const),
  );
  const recording = pick(
    words.recording,
    book.recordings.map(r => [r, r] as const),
  );
  const name = field(words.words, 'text');
  const learner = field(words.learner, 'checkbox');
  const consent = field(words.consent, 'text');
  const consentHow = element('p', 'tap-hint', words.consentHow);
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
  const cueList = element('ol', 'tap-cues');
  const amiss = element('ul', 'tap-amiss');
  const line = document.createElement('textarea');
  line.readOnly = true;
  line.rows = 4;
  line.spellcheck = false;
  line.setAttribute('aria-label', words.line);
  const copy = button(words.copy, 'tap-copy');
  const copied = element('p', 'tap-hint');
  copied.setAttribute('role', 'status');

  let tapping: Tapping | null = null;

  const cues = (): readonly TappedCue[] =>
    tapping?.taps.flatMap((seconds, i) => {
      const point = tapping?.points[i];
      return seconds === null || !point ? [] : [{ bar: point.bar, seconds }];
    }) ?? [];

  const showLine = (): void => {
    line.value = clipLine(
      {
        words: name.input.value || name.input.placeholder,
        src: recording.select.value,
        of: tune.select.value,
        learner: learner.input.checked,
        consent: consent.input.value,
      },
      cues(),
    );
    consent.label.hidden = consentHow.hidden = !learner.input.checked;
    copied.textContent = '';
  };

  const show = (): void => {
    const next = tapping?.points[tapping.taps.length];
    tapButton.disabled = skip.disabled = !next;
    undo.disabled = restart.disabled = !tapping || tapping.taps.length === 0;
    tapName.textContent = next ? words.next(next.bar) : tapping ? words.done : words.loading;
    tapPhrase.textContent = next ? words.phrase(next.label, next.bars, next.pass) : '';
    cueList.replaceChildren(
      ...(tapping?.taps ?? []).flatMap((seconds, i) => {
        const point = tapping?.points[i];
        return seconds === null || !point ? [] : [cueRow(point, seconds, i)];
      }),
    );
    const problems = tapping
      ? checkCues(tapping.study.tune, tapping.study.performance, cues().map(cueOf))
      : [];
    amiss.replaceChildren(
      ...problems.map(p => element('li', '', wordProblem(p).message.replaceAll('`', ''))),
    );
    showLine();
  };

  const cueRow = (point: TapPoint, seconds: number, i: number): HTMLElement => {
    const row = document.createElement('li');
    const move = (by: number) => (): void => {
      if (!tapping) return;
      const moved = Math.max(0, Math.round((seconds + by) * 100) / 100);
      tapping.taps = tapping.taps.map((tap, at) => (at === i ? moved : tap));
      show();
      // The row is a new one: the focus goes on in it.
      cueList.querySelector<HTMLElement>(`[data-moves="${i} ${by}"]`)?.focus();
      said.textContent = words.tapped(point.bar, cueTime(moved));
    };
    const step = (sign: string, label: string, by: number): HTMLButtonElement => {
      const made = button('');
      const shown = element('span', '', sign);
      shown.setAttribute('aria-hidden', 'true');
      made.append(shown, element('span', 'unseen', label));
      made.dataset.moves = `${i} ${by}`;
      made.addEventListener('click', move(by));
      return made;
    };
    const hear = button(words.hear(point.bar));
    hear.addEventListener('click', () => {
      audio.currentTime = Math.max(0, seconds - leadIn);
      void audio.play();
    });
    row.append(
      element('b', '', point.bar),
      element('span', 'tap-letter', point.label),
      element('span', 'tap-time', cueTime(seconds)),
      step('−', words.earlier(point.bar), -nudge),
      step('+', words.later(point.bar), nudge),
      hear,
    );
    return row;
  };

  const tap = (seconds: number | null): void => {
    const point = tapping?.points[tapping.taps.length];
    if (!tapping || !point) return;
    tapping.taps = [...tapping.taps, seconds === null ? null : Math.round(seconds * 100) / 100];
    show();
    if (seconds !== null) said.textContent = words.tapped(point.bar, cueTime(seconds));
  };

  const chooseTune = async (): Promise<void> => {
    const id = tune.select.value;
    tapping = null;
    name.input.placeholder = tune.select.selectedOptions[0]?.textContent ?? '';
    show();
    try {
      const data = await loadTune(id, '/');
      if (tune.select.value !== id) return; // another was chosen meanwhile
      const study = studyTune(data.tune, data.request);
      tapping = { study, points: tapPoints(study.tune, study.performance, study.map), taps: [] };
      show();
    } catch {
      tapName.textContent = words.notLoaded;
    }
  };
  const chooseRecording = (): void => {
    audio.src = `/${recording.select.value.split('/').map(encodeURIComponent).join('/')}`;
    audio.playbackRate = Number(speeds.select.value);
    if (tapping) tapping.taps = [];
    show();
  };

  tune.select.addEventListener('change', () => void chooseTune());
  recording.select.addEventListener('change', chooseRecording);
  speeds.select.addEventListener('change', () => {
    audio.defaultPlaybackRate = audio.playbackRate = Number(speeds.select.value);
  });
  for (const input of [name.input, learner.input, consent.input]) {
    input.addEventListener('input', showLine);
  }
  // When it is pressed, not when it is let go: that is the moment one means.
  tapButton.addEventListener('pointerdown', event => {
    if (event.button === 0) tap(audio.currentTime);
  });
  tapButton.addEventListener('keydown', event => {
    if (event.key === 'Enter' && !event.repeat) tap(audio.currentTime);
  });
  addEventListener('keydown', event => {
    if (event.key !== ' ' || event.repeat || event.ctrlKey || event.altKey || event.metaKey) return;
    const at = event.target;
    if (at instanceof Element && at !== tapButton && at.closest(usesSpace)) return;
    event.preventDefault();
    tap(audio.currentTime);
  });
  undo.addEventListener('click', () => {
    if (!tapping) return;
    tapping.taps = tapping.taps.slice(0, -1);
    show();
  });
  skip.addEventListener('click', () => tap(null));
  restart.addEventListener('click', () => {
    if (tapping) tapping.taps = [];
    audio.currentTime = 0;
    show();
  });
  copy.addEventListener('click', async () => {
    try {
      await navigator.clipboard.writeText(line.value);
      copied.textContent = words.copied;
    } catch {
      line.select();
      copied.textContent = words.notCopied;
    }
  });

  const choose = element('div', 'tap-choose');
  choose.append(tune.label, recording.label, name.label, learner.label, consent.label, consentHow);
  const hearing = element('div', 'tap-hear');
  hearing.append(audio, speeds.label, element('p', 'tap-hint', words.caution));
  const steps = element('div', 'tap-steps');
  steps.append(undo, skip, restart);
  main.append(
    choose,
    hearing,
    tapButton,
    element('p', 'tap-hint', words.space),
    steps,
    said,
    element('h2', '', words.cues),
    cueList,
    amiss,
    element('h2', '', words.line),
    line,
    copy,
    copied,
  );
  chooseRecording();
  void chooseTune();
}

/** What the space bar already does something to. */
const usesSpace = 'a, button, input, select, textarea, summary, audio';
