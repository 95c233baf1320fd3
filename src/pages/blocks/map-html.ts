import { mapSections } from '../../../shared/sections/map-sections.ts';
import type { MapBlock } from '../../read/book.ts';
import type { BuiltTune } from '../built-tune.ts';
import { titleOf } from '../lists-view.ts';
import { tuneMap } from '../map-view.ts';
import { claimId, type PageContext, tunePath } from '../page-context.ts';
import { render } from '../render.ts';
import { noticeHtml } from './notice-html.ts';

/** Makes the HTML of a map block; its `unit` sets the length of phrases for this map alone. */
export function mapHtml(block: MapBlock, context: PageContext): string {
  const tune = context.input.tunes.get(block.of);
  if (!tune?.study) return noticeHtml(context.words.siteWords.noMap, context);
  const path = `${context.root}${tunePath(block.of)}`;
  return render(
    'parts/map-block',
    {
      id: claimId(context, `map-${block.of}`),
      title: titleOf(tune),
      href: path,
      map: tuneMap(block.unit === null ? tune : mappedBy(block.unit, tune), context, path),
    },
    context.words,
  );
}

/** The tune mapped in phrases of `unit` bars. Its drawing is cut at other phrases, so the map has no links to it. */
function mappedBy(unit: number, tune: BuiltTune): BuiltTune {
  const { study } = tune;
  if (study === null) return tune;
  return { ...tune, score: null, study: { ...study, map: mapSections(study.tune, unit, null) } };
}
