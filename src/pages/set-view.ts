import {
  type SetJoin,
  type SetStudy,
  type SetTune,
  studySet,
} from '../../shared/sets/set-study.ts';
import { clock } from '../../shared/words/amounts.ts';
import type { Words } from '../../shared/words/words-for.ts';
import type { SetBlock } from '../read/book.ts';
import type { BuiltTune } from './built-tune.ts';
import { titleOf, tuneKind } from './lists-view.ts';
import { claimId, mayShow, type PageContext, tunePath } from './page-context.ts';
import type { Html } from './render.ts';

/** A set of tunes: how long it takes, and what changes for the bow and the hand at each change of tune. */
export interface SetView {
  readonly id: string | null;
  readonly title: string;
  readonly tunes: readonly SetRow[];
  /** null where a tune of the set could not be read. */
  readonly length: LengthView | null;
  readonly joins: readonly JoinView[];
  readonly notice: string | null;
  readonly body: Html | null;
  readonly labels: Words['setWords'];
}

interface SetRow {
  readonly href: string;
  readonly title: string;
  readonly kind: string;
  readonly times: number;
  readonly length: LengthView | null;
}

/** A duration as on a clock, `1:20`, and in words for screen readers. */
interface LengthView {
  readonly slow: string;
  readonly slowHeard: string;
  readonly session: string;
  readonly sessionHeard: string;
}

interface JoinView {
  readonly name: string;
  readonly key: string | null;
  /** null where a tune's rights are not known. */
  readonly manner: 'goes-on' | 'lifts' | null;
  /** What the bow does; left out where a tune's rights are not known. */
  readonly bow: readonly string[];
}

/** Describes a set. `body`: the teacher's text besides the list of tunes. */
export function setView(block: SetBlock, body: Html | null, context: PageContext): SetView {
  const tunes = block.tunes.map(({ of, times }) => {
    const tune = context.input.tunes.get(of);
    if (!tune) throw new Error(`the tune ${of} was not built`);
    return { tune, times };
  });
  const { words } = context;
  const { setWords } = words;
  const shown = tunes.map(({ tune }) => mayShow(tune, context.input));
  const study = studyOf(tunes, context);
  const withheld = shown.includes(false) ? setWords.withheld : null;
  return {
    id: claimId(context, block.id),
    title: block.title,
    tunes: tunes.map(({ tune, times }, i) => ({
      href: context.root + tunePath(tune.block.id),
      title: titleOf(tune),
      kind: tune.study === null ? '' : tuneKind(tune.study, words),
      times,
      length: lengthView(study?.lengths[i], words),
    })),
    length: lengthView(study?.length, words),
    joins: (study?.joins ?? []).map(join =>
      joinView(
        join,
        tunes.map(t => t.tune),
        shown,
        words,
      ),
    ),
    notice: study === null ? setWords.unreadable : withheld,
    body,
    labels: setWords,
  };
}

/** null where a tune could not be read. */
function studyOf(
  tunes: readonly { readonly tune: BuiltTune; readonly times: number }[],
  { input }: PageContext,
): SetStudy | null {
  const known = tunes.flatMap(({ tune: { study, block }, times }): SetTune[] =>
    study === null ? [] : [{ study, start: block.start, restart: block.restart, times }],
  );
  return known.length < tunes.length ? null : studySet(known, input.book.settings.bowing);
}

const lengthView = (
  length: SetStudy['length'] | undefined,
  { durationWords }: Words,
): LengthView | null =>
  length === undefined
    ? null
    : {
        slow: clock(length.slow),
        slowHeard: durationWords(length.slow),
        session: clock(length.session),
        sessionHeard: durationWords(length.session),
      };

function joinView(
  join: SetJoin,
  tunes: readonly BuiltTune[],
  shown: readonly boolean[],
  { setWords, editSentence, keyChangeSentence, noteNames }: Words,
): JoinView {
  const [from, to] = [tunes[join.from], tunes[join.to]];
  const titles = [from, to].map(tune => (tune ? titleOf(tune) : ''));
  const [before = '', after = ''] = titles;
  const mayTell = shown[join.from] === true && shown[join.to] === true;
  const again = join.from === join.to;
  const mend = from?.study && join.mend ? editSentence(from.study.tune, join.mend) : null;
  return {
    name: again ? setWords.again(before) : setWords.join(before, after),
    key: again ? null : keyChangeSentence(join.key, noteNames),
    manner: mayTell ? (join.agrees ? 'goes-on' : 'lifts') : null,
    bow: mayTell
      ? [
          setWords.bow(join),
          ...(join.agrees ? [] : [setWords.lift(join)]),
          ...(mend === null ? [] : [setWords.orMend(mend)]),
        ]
      : [],
  };
}
