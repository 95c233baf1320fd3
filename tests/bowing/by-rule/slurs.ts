import type { Tune } from '../../../shared/music/tune.ts';

/**
 * Which written notes are slurred to the note written before them, as the guide has it ("a slur is one
 * stroke"; what is played next after a repeat sign differs from time to time, so no slur crosses one). A
 * later ending follows the notes before the endings, and takes over a slur that ran into the first.
 */
export function slurredTo(tune: Tune): Map<number, number> {
  const before = writtenBefore(tune);
  const slurred = new Map<number, number>();
  const open: number[] = [];
  const chain = (from: number, to: number): void => {
    for (let e = to; e !== from; ) {
      const previous = before.get(e);
      if (previous === undefined) return;
      if (!crossesRepeat(tune, previous, e)) slurred.set(e, previous);
      e = previous;
    }
  };
  tune.events.forEach((event, e) => {
    if (event.kind !== 'note') return;
    for (let i = 0; i < event.slursOpened; i++) open.push(e);
    for (let i = 0; i < event.slursClosed; i++) {
      const from = open.pop();
      if (from !== undefined) chain(from, e);
      else takeOver(tune, before, slurred, e);
    }
  });
  return slurred;
}

const endingOf = (tune: Tune, e: number): string =>
  tune.bars[tune.events[e]?.bar ?? -1]?.endings.join() ?? '';

/** The note written before each note. */
function writtenBefore(tune: Tune): Map<number, number> {
  const before = new Map<number, number>();
  let last: number | undefined;
  let stem: number | undefined;
  tune.events.forEach((event, e) => {
    if (event.kind !== 'note') return;
    const ending = endingOf(tune, e);
    const was = last === undefined ? '' : endingOf(tune, last);
    if (ending !== '' && was === '') stem = last;
    if (ending !== '' && was !== '' && ending !== was) last = stem;
    if (last !== undefined) before.set(e, last);
    last = e;
  });
  return before;
}

function crossesRepeat(tune: Tune, from: number, to: number): boolean {
  const [a, b] = [tune.events[from]?.bar ?? 0, tune.events[to]?.bar ?? 0];
  const intoLater = endingOf(tune, to) !== '' && endingOf(tune, from) === '';
  const bars = intoLater ? [tune.bars[a]] : tune.bars.slice(a, b);
  const closes = a !== b && bars.some(bar => (bar?.closesRepeat ?? 1) > 1);
  const opens = tune.bars.slice(intoLater ? b : a + 1, b + 1).some(bar => bar.opensRepeat);
  return a !== b && (closes || opens);
}

function takeOver(
  tune: Tune,
  before: ReadonlyMap<number, number>,
  slurred: Map<number, number>,
  close: number,
): void {
  const path: number[] = [];
  let e: number | undefined = close;
  while (e !== undefined && endingOf(tune, e) !== '') {
    path.push(e);
    e = before.get(e);
  }
  const ranIn = [...slurred].some(([to, from]) => from === e && endingOf(tune, to) !== '');
  if (e === undefined || path.length === 0 || !ranIn) return;
  for (const note of path) slurred.set(note, before.get(note) ?? -1);
}
