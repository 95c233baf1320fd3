import type { PaceName } from '../../../shared/bowing/paces.ts';
import { parseFraction } from '../../../shared/music/fraction.ts';
import type { PassageChoice } from '../../../shared/sound/passage.ts';
import { liltWords } from '../../../shared/words/amounts.ts';
import { playerWords } from '../../../shared/words/en/player.ts';
import { type Kept, keep, readKept } from './kept-choices.ts';
import type { Ways } from './rounds-of.ts';

/** What stands in a player's form, read and written. */
export interface PlayerForm {
  /** All that is set, for a passage. */
  readonly ways: (choice: PassageChoice) => Ways;
  /** Writes into the place `data-shows` of that name; what stands there already is left alone. */
  readonly say: (name: string, text: string) => void;
  /** Shows what is set in words; `perMinute` is the tempo that sounds, where it climbs. */
  readonly showSettings: (perMinute?: number) => void;
  /** Moves the tempo by hundredths, to the next five. */
  readonly stepTempo: (by: number) => void;
  /** Keeps what one field says, on the device. */
  readonly keepField: (field: Field) => void;
  /** Sets every field as it was kept. */
  readonly restore: () => void;
}

export type Field = HTMLInputElement | HTMLSelectElement;

export function playerForm(form: HTMLFormElement): PlayerForm {
  const { beat = '', beatLength = '' } = form.dataset;
  const field = (name: string): Field | null => form.querySelector(`[name="${name}"]`);
  const numberIn = (name: string, otherwise: number): number => {
    const value = Number(field(name)?.value);
    return field(name) && Number.isFinite(value) ? value : otherwise;
  };
  const isOn = (name: string): boolean => form.querySelector(`[name="${name}"]:checked`) !== null;
  const percent = (): number => numberIn('percent', 100);
  const perMinuteOf = (pace: string): number =>
    Number(form.querySelector<HTMLElement>(`[name="pace"][value="${pace}"]`)?.dataset.perMinute);
  const pace = (): PaceName =>
    (form.querySelector<HTMLInputElement>('[name="pace"]:checked')?.value ??
      'learning') as PaceName;
  const perMinute = (): number => (perMinuteOf(pace()) * percent()) / 100;

  const ways = (choice: PassageChoice): Ways => ({
    choice,
    pass: numberIn('pass', 1),
    tempo: { beat: parseFraction(beatLength) ?? { n: 1, d: 4 }, perMinute: perMinute() },
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

  const say = (name: string, text: string): void => {
    const place = form.querySelector(`[data-shows="${name}"]`);
    if (place && place.textContent !== text) place.textContent = text;
  };

  const showSettings = (sounding?: number): void => {
    const set = perMinute();
    const climbs = isOn('climb') && sounding !== undefined && Math.abs(sounding - set) > 0.01;
    say('percent', playerWords.clipPercent(percent()));
    say(
      'tempo',
      climbs
        ? playerWords.climbing(beat, Math.round(sounding))
        : playerWords.tempo(beat, set, pace(), percent()),
    );
    const kind = field('lilt')?.dataset.kind === 'threes' ? 'threes' : 'pairs';
    say('lilt', liltWords(playerWords, kind, numberIn('lilt', 1)));
    form.toggleAttribute('data-climbs', isOn('climb'));
  };

  const stepTempo = (by: number): void => {
    const slider = field('percent');
    if (!slider) return;
    slider.value = String(Math.round((percent() + by) / 5) * 5);
    slider.dispatchEvent(new Event('input', { bubbles: true }));
  };

  /** A lilt belongs to its kind and range, and which time through to its tune: that is not kept. */
  const keyOf = (input: Field): string | null => {
    if (input.name === 'pass') return null;
    if (!(input instanceof HTMLInputElement) || input.name !== 'lilt') return input.name;
    return `lilt ${input.dataset.kind} ${input.min}-${input.max}`;
  };

  const keepField = (input: Field): void => {
    const key = keyOf(input);
    const isTick = input instanceof HTMLInputElement && input.type === 'checkbox';
    if (key !== null) keep({ [key]: isTick ? input.checked : input.value });
  };

  const restore = (): void => {
    const kept: Kept = readKept();
    for (const input of form.querySelectorAll<Field>('[name]')) {
      const was = kept[keyOf(input) ?? ''];
      if (was === undefined) continue;
      if (input instanceof HTMLSelectElement) {
        if ([...input.options].some(o => o.value === String(was))) input.value = String(was);
      } else if (input.type === 'checkbox') input.checked = was === true;
      else if (input.type === 'radio') input.checked = input.value === was;
      else input.value = String(was);
    }
  };

  return { ways, say, showSettings, stepTempo, keepField, restore };
}
