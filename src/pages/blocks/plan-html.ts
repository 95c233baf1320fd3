import type { Anchor } from '../../../shared/bowing/bowing.ts';
import { barRangeText } from '../../../shared/music/bar-range.ts';
import type { PlanBlock } from '../../read/book.ts';
import { titleOf } from '../lists-view.ts';
import { claimId, mayShow, type PageContext, tunePath } from '../page-context.ts';
import { planView } from '../plan-view.ts';
import { render } from '../render.ts';
import { tryView } from '../try-view.ts';
import { noticeHtml } from './notice-html.ts';

/** Makes the HTML of a plan block: the ways to its anchor, and the fold to try strokes. */
export function planHtml(block: PlanBlock, context: PageContext): string {
  const anchor = context.references.anchors.get(block.to);
  const tune = anchor && context.input.tunes.get(anchor.of);
  if (!tune) throw new Error(`the anchor ${block.to} is not in the book`);
  const studied = tune.study?.bowing.anchors.find(a => a.id === block.to);
  if (!tune.study || !studied) return noticeHtml(context.words.siteWords.unreadable, context);
  if (!mayShow(tune, context.input)) return noticeHtml(context.words.siteWords.withheld, context);
  return render(
    'parts/plan-block',
    {
      id: claimId(context, `plan-${block.to}`),
      where: context.words.siteWords.anchorOf(titleOf(tune), barRangeText(anchor.bars)),
      href: `${context.root}${tunePath(anchor.of)}#${anchor.id}`,
      plan: planView(
        { ...tune, study: tune.study },
        { ...studied, leadIns: leadInsOf(studied, block) },
        block.level,
        context,
      ),
      trial: tryView({ ...tune, study: tune.study }, studied, block, context),
    },
    context.words,
  );
}

/** The lead-ins under the block's level and preset. */
const leadInsOf = (anchor: Anchor, { level, preset }: PlanBlock): Anchor['leadIns'] =>
  anchor.asked.find(a => a.level === level && a.preset === preset)?.leadIns ?? anchor.leadIns;
