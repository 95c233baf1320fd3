import type { Level } from '../../../shared/bowing/settings.ts';
import { at, got } from '../../../shared/must.ts';
import {
  firstStep,
  type Steps,
  stepBack,
  stepForward,
  stepTo,
} from '../../../shared/trying/steps.ts';
import {
  type Bowing,
  bowingOfPlan,
  leadInOfPass,
  openTrial,
  playBowing,
  turnJunction,
} from '../../../shared/trying/trial.ts';
import { bowingOfLink, type LinkedTrial, trialLink } from '../../../shared/trying/trial-link.ts';
import { turnedRuns, wayThere } from '../../../shared/trying/way-there.ts';
import type { TuneData } from '../../../shared/tune-data.ts';
import { planSentence } from '../../../shared/words/bowing.ts';
import { tryWords } from '../../../shared/words/en/try.ts';
import { linkFaults } from '../../../shared/words/en/try-link.ts';
import { noPlanSentence } from '../../../shared/words/plans.ts';
import { junctionTurned, turnedTold } from '../../../shared/words/try.ts';
import { noteNames } from '../page-words.ts';
import { chainView } from './chain-view.ts';
import { choicesView } from './choices-view.ts';
import { element } from './element.ts';
import { hearWay } from './hear-way.ts';
import { notationView } from './notation-view.ts';
import { outcomeView } from './outcome-view.ts';
import { printSheet } from './print-sheet.ts';
import { shareView } from './share-view.ts';
import { toolsView } from './tools-view.ts';
import { tryLanguage } from './try-language.ts';

/**
 * Opens the editor for strokes in its fold of the page. Holds all state: the undo history, the pass that
 * is shown, the level. After every change the tune is studied again and all views are updated. `link`
 * is the bowing that the page's address asks for; null for none.
 */
export function openRoom(fold: HTMLElement, data: TuneData, link: LinkedTrial | null): void {
  const { try: anchorId = '', preset = '', level = '', cells = '' } = fold.dataset;
  const wanted = { level: (level || null) as Level | null, preset: preset || null };
  const opened = openTrial(data.tune, data.request, anchorId, wanted);
  const room = fold.querySelector<HTMLElement>('.try-room') ?? fold;
  if (opened === null) {
    room.replaceChildren(element('p', { class: 'notice' }, tryWords.nothingFree));
    return;
  }
  let trial = opened;
  let steps: Steps = firstStep(trial.written.bowing);
  let outcome = trial.written;
  let pass = trial.written.anchor.leadIns[0]?.passes[0] ?? 1;
  let together = true;
  let shownWay = -1;
  let turned: ReadonlySet<number> = new Set();

  const status = element('p', { class: 'unseen', role: 'status' });
  const told = outcomeView(() => trial);
  const chain = chainView(trial, {
    turn(event) {
      const to = turnJunction(trial, steps.now, event, together);
      const places = trial.junctions.filter((_, i) => to[i] !== steps.now[i]);
      const named = places.map(e => ({ before: at(trial.slurs.previous, e), event: e }));
      const slurred = to[trial.junctions.indexOf(event)] === true;
      take(stepTo(steps, to), junctionTurned(tryLanguage, trial.tune, named, slurred, noteNames()));
    },
    touch(event) {
      show(chain.root.querySelector(`[data-bead="${event}"] .unseen`)?.textContent ?? '');
      sound.play(outcome, pass, event);
    },
  });
  const notation = notationView(fold, cells.split(' ').filter(Boolean));
  const share = shareView(() => trialLink(trial, steps.now));
  let isHeard = false;
  const sound = hearWay(trial.request, {
    playing(now) {
      isHeard = now;
      tools.hears(now);
    },
    note: chain.mark,
  });
  const tools = toolsView({
    hear: () => (isHeard ? sound.stop() : sound.play(outcome, pass, null)),
    undo: () => retrace(stepBack(steps), tryWords.undone),
    redo: () => retrace(stepForward(steps), tryWords.redone),
    another: showAnother,
    restart: () => take(stepTo(steps, trial.written.bowing), tryWords.restarted),
    share: share.open,
    print: () => printSheet(data.title, trial, outcome, pass, told, chain.root, notation),
  });
  const choices = choicesView(trial, pass, {
    pass(to) {
      sound.stop();
      pass = to;
      shownWay = -1;
      turned = new Set();
      show('');
    },
    level(to) {
      trial = openTrial(data.tune, data.request, anchorId, { ...wanted, level: to }) ?? trial;
      outcome = playBowing(trial, steps.now);
      shownWay = -1;
      show(tryWords.levelSet(to));
    },
    together(to) {
      together = to;
    },
  });

  /** Goes to a step: studies its bowing, and announces `did` and the strokes that changed. */
  function take(to: Steps, did: string): void {
    sound.stop();
    const before = wayThere(outcome, pass);
    steps = to;
    outcome = playBowing(trial, steps.now);
    share.close();
    const after = wayThere(outcome, pass);
    if (after === null) return;
    const runs = turnedRuns(before, after);
    turned = new Set(after.notes.flatMap(n => (inRuns(n.event, runs) ? [n.event] : [])));
    const last = got(after.leadIn.notes.at(-1), 'note in the lead-in');
    show(`${did} ${turnedTold(tryLanguage, trial.tune, runs, last, noteNames())}`);
  }

  function retrace(to: Steps | null, did: string): void {
    if (to) take(to, did);
  }

  function showAnother(): void {
    const leadIn = leadInOfPass(trial.written, pass);
    const plans = leadIn?.plans ?? [];
    shownWay = plans.length === 0 ? -1 : (shownWay + 1) % plans.length;
    const plan = plans[shownWay];
    if (!leadIn || !plan) {
      show(noPlanSentence(tryLanguage, trial.written.anchor) ?? tryWords.noOther);
      return;
    }
    const to: Bowing = bowingOfPlan(trial, leadIn, plan);
    const sentence = planSentence(tryLanguage, trial.tune, plan);
    take(stepTo(steps, to), tryWords.way(shownWay + 1, plans.length, sentence));
  }

  function show(said: string): void {
    const way = wayThere(outcome, pass);
    if (way === null) return;
    chain.show(outcome.study, way, turned);
    status.textContent = told.show(outcome, way, said);
    notation?.show(outcome.study, way);
    tools.show(steps);
  }

  fold.addEventListener('toggle', sound.stop);
  const body = element('div');
  body.addEventListener('keydown', event => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    const key = event.key.toLowerCase();
    if (key === 'z' && !event.shiftKey) retrace(stepBack(steps), tryWords.undone);
    else if (key === 'y' || key === 'z') retrace(stepForward(steps), tryWords.redone);
    else return;
    event.preventDefault();
  });
  body.append(
    element('p', { class: 'try-how' }, tryWords.how),
    element('p', { class: 'try-how for-keys' }, tryWords.keys),
    choices,
    chain.root,
    element(
      'p',
      { class: 'try-note' },
      element('span', { class: 'turned-sample' }),
      tryWords.turned,
    ),
    told.root,
    told.said,
    tools.root,
    share.root,
    told.limits,
    ...(notation ? [element('p', { class: 'plan-title' }, tryWords.inNotes), notation.root] : []),
    status,
  );
  room.replaceChildren(body);
  const asked = link && bowingOfLink(trial, link);
  if (typeof asked === 'string') show(linkFaults[asked]);
  else if (asked) {
    outcome = playBowing(trial, asked);
    steps = stepTo(steps, asked);
    show(tryWords.opened);
  } else show('');
}

/** Whether an event lies in one of the runs, given by their first and last event. */
const inRuns = (event: number, runs: readonly (readonly [number, number])[]): boolean =>
  runs.some(([from, to]) => from <= event && event <= to);
