import { type Level, levels } from '../../../shared/bowing/settings.ts';
import type { Drill, DrillAsk, DrillKind } from '../../../shared/drills/drill.ts';
import { type DrillSource, drillSource } from '../../../shared/drills/drill-source.ts';
import { heardStretches } from '../../../shared/drills/heard-stretches.ts';
import { makeDrill, nextDrill } from '../../../shared/drills/make-drill.ts';
import { studyTune } from '../../../shared/study.ts';
import { drillWords, levelSays } from '../../../shared/words/en/drills.ts';
import { tellDrill } from '../../../shared/words/tell-drill.ts';
import type { ToldDrill } from '../../../shared/words/told-drill.ts';
import { noteNames } from '../page-words.ts';
import { button, element } from '../try/element.ts';
import { loadTune } from '../tune-data.ts';
import { askDrill } from './ask-drill.ts';
import { drillLanguage } from './drill-language.ts';
import { hearDrill } from './hear-drill.ts';

const sources = new Map<string, Promise<DrillSource>>();

/** A tune as drills need it, studied once a page. */
function sourceOf(id: string, root: string): Promise<DrillSource> {
  const known = sources.get(id);
  if (known) return known;
  const made = loadTune(id, root).then(({ tune, request }) =>
    drillSource(studyTune(tune, request), request),
  );
  sources.set(id, made);
  made.catch(() => sources.delete(id));
  return made;
}

/** Takes over a drill of the page: the same question first, now to be answered, then others. */
export async function openDrill(section: HTMLElement): Promise<void> {
  const { tune = '', root = '', drill: kind, level, seed, to } = section.dataset;
  const source = await sourceOf(tune, root);
  const ask: DrillAsk = {
    kind: kind as DrillKind,
    level: level as Level,
    seed: Number(seed),
    to: to || null,
  };
  const room = part(section, '.drill-room');
  const answer = part<HTMLDetailsElement>(section, '.drill-answer');
  const levelLine = part(section, '.drill-level');
  const verdict = element('p', { class: 'drill-verdict', role: 'status' });
  const easier = button(drillWords.easier, () => move(-1));
  const harder = button(drillWords.harder, () => move(1));
  const another = button(drillWords.another, () => askAnother());
  let isPlaying = false;
  const hear = hearDrill(now => {
    isPlaying = now;
    listen.textContent = now ? drillWords.stop : drillWords.listen;
  });
  const listen = button(drillWords.listen, () =>
    isPlaying ? hear.stop() : hear.play(source, now),
  );
  const tools = element('div', { class: 'drill-tools' }, listen, another, easier, harder);
  room.after(verdict, tools);
  let now: Drill;

  const attempted = (): void => {
    answer.hidden = false;
  };
  const show = (drill: Drill): void => {
    now = drill;
    hear.stop();
    listen.hidden = heardStretches(source, drill).length === 0;
    const told = tellDrill(drillLanguage, source, drill, noteNames());
    verdict.replaceChildren();
    askDrill(room, { source, drill, told, verdict, attempted });
    fillAnswer(answer, told);
    answer.open = false;
    answer.hidden = true;
    printAnswer(section.dataset.paper, told);
    levelLine.replaceChildren(
      element('b', {}, drillWords.levelIs(drill.level)),
      ` ${levelSays[drill.kind][drill.level]}`,
    );
    const at = levels.indexOf(drill.level);
    easier.setAttribute('aria-disabled', String(at === 0));
    harder.setAttribute('aria-disabled', String(at === levels.length - 1));
  };
  const turnTo = (drill: Drill): void => {
    show(drill);
    room.querySelector<HTMLElement>('.drill-question')?.focus();
  };
  const askAnother = (): void => {
    const next = nextDrill(source, now);
    if (next === now) verdict.replaceChildren(drillWords.onlyOne);
    else turnTo(next);
  };
  const move = (by: number): void => {
    const to = levels[levels.indexOf(now.level) + by];
    if (!to) return;
    const { drill } = makeDrill(source, { ...ask, level: to, seed: now.seed });
    if (drill) turnTo(drill);
    else verdict.replaceChildren(drillWords.noLevel);
  };
  const { drill } = makeDrill(source, ask);
  if (!drill) throw new Error(`${tune} gives no drill ${kind}, though the page has one`);
  show(drill);
}

function part<E extends HTMLElement = HTMLElement>(section: HTMLElement, selector: string): E {
  const found = section.querySelector<E>(selector);
  if (!found) throw new Error(`a drill without ${selector}`);
  return found;
}

function fillAnswer(answer: HTMLElement, { answer: lines, why }: ToldDrill): void {
  answer.querySelector('ul')?.replaceChildren(...lines.map(line => element('li', {}, line)));
  answer.querySelector('p')?.replaceChildren(why);
}

/** The answers that are printed after the page follow the question. */
function printAnswer(id: string | undefined, told: ToldDrill): void {
  const printed = id === undefined ? null : document.getElementById(id);
  if (printed) fillAnswer(printed, told);
}
