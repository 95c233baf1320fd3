import { nameBars } from '../../shared/music/name-bars.ts';
import { readPartOrder } from '../../shared/music/part-order.ts';
import type { AbcSource, Bar, Tune, TuneEvent } from '../../shared/music/tune.ts';
import { at } from '../../shared/must.ts';
import type { RawTune } from './abcjs-parse.ts';
import type { DraftBar } from './draft-bar.ts';
import type { Locate } from './locate.ts';
import { fieldText, readAliases, readCredits, readTempo, readUnit } from './read-header.ts';
import { readKey, readMeter } from './read-key.ts';
import { readSigns } from './read-note.ts';
import type { Chunk } from './split-source.ts';
import { tuneType } from './tune-type.ts';

/**
 * Assembles a tune from its header and its drafted bars: names the bars, groups them into parts,
 * and places every event in the teacher's file. `id` is made from the title where it is left out.
 * `unknownParts` are letters in the header's `P:` that no part of the tune has.
 */
export function assembleTune(
  raw: RawTune,
  drafts: readonly DraftBar[],
  chunk: Chunk,
  source: AbcSource,
  locate: Locate,
  id: string | undefined,
): { readonly tune: Tune; readonly unknownParts: readonly string[] } {
  const endings = endingsOf(drafts);
  const { names, parts } = nameBars(
    drafts.map((d, i) => ({
      meter: d.meter,
      length: d.length,
      opensRepeat: d.opensRepeat,
      closesRepeat: d.closesRepeat,
      closesPart: d.closesPart,
      endings: at(endings, i),
      opensEnding: d.opensEnding !== null,
      partName: d.partName,
    })),
  );
  const events: TuneEvent[] = [];
  const bars = drafts.map((draft, i): Bar => {
    const { name, part, number, pickup } = at(names, i);
    const first = events.length;
    addEvents(draft, i, name, chunk, locate, events);
    return {
      name,
      part,
      number,
      pickup,
      endings: at(endings, i),
      meter: draft.meter,
      key: draft.key,
      clef: draft.clef,
      first,
      end: events.length,
      length: draft.length,
      opensRepeat: draft.opensRepeat,
      closesRepeat: draft.closesRepeat,
      closesPart: draft.closesPart,
      closed: draft.closed,
      place: locate(chunk.offset(draft.start)),
    };
  });
  const staff = raw.lines.find(line => line.staff?.[0])?.staff?.[0];
  const meter = readMeter(staff?.meter);
  const unit = readUnit(chunk.abc, meter);
  const title = fieldText(raw.metaText.title) ?? 'Untitled';
  const rhythm = fieldText(raw.metaText.rhythm);
  const written = fieldText(raw.metaText.partOrder);
  const partNames = parts.map(p => p.name);
  const order = written === null ? null : readPartOrder(written, partNames);
  return {
    unknownParts: order?.unknown ?? [],
    tune: {
      id: id ?? (slug(title) || 'tune'),
      title,
      aliases: readAliases(raw),
      type: tuneType(rhythm),
      rhythm,
      meter,
      key: readKey(staff?.key),
      unit,
      tempo: readTempo(raw.metaText.tempo, unit),
      credits: readCredits(raw.metaText),
      bars,
      events,
      parts,
      order: order && order.order.length > 0 ? order.order : null,
      source,
    },
  };
}

/**
 * The ending that each bar belongs to: from where one opens to where it closes. A last ending that
 * no double bar closes would run on to the next repeat sign; where that is a bare `:|`, it is taken
 * to be as long as the first ending, so that the repeat is of what comes after it.
 */
function endingsOf(drafts: readonly DraftBar[]): readonly (readonly number[])[] {
  let current: readonly number[] = [];
  const endings = drafts.map(draft => {
    if (draft.opensRepeat || draft.partName !== null) current = [];
    if (draft.opensEnding) current = draft.opensEnding;
    const own = current;
    if (draft.closesEnding) current = [];
    return own;
  });
  let firstLength = 0;
  for (let i = 0; i < drafts.length; i++) {
    if (!at(drafts, i).opensEnding) continue;
    let end = i + 1;
    while (end < drafts.length && !at(drafts, end).opensEnding && at(endings, end).length > 0) {
      end += 1;
    }
    const isFirst = i === 0 || at(endings, i - 1).length === 0;
    if (isFirst) firstLength = end - i;
    const bare = at(drafts, end - 1).closesRepeat > 1 && !drafts[end]?.opensEnding;
    if (!isFirst && bare) endings.fill([], Math.min(end, i + firstLength), end);
  }
  return endings;
}

/** Adds a bar's events. Each is written out whole: there are hundreds in a tune. */
function addEvents(
  draft: DraftBar,
  bar: number,
  barName: string,
  chunk: Chunk,
  locate: Locate,
  events: TuneEvent[],
): void {
  let number = 0;
  for (const event of draft.events) {
    const start = chunk.offset(event.start);
    const stop = chunk.offset(event.stop);
    const { onset, duration } = event;
    const place = locate(start);
    if (event.rest) {
      closeBefore(events, event.restSlurs.closed);
      const hidden = event.raw.rest?.type.startsWith('invisible') ?? false;
      events.push({ kind: 'rest', hidden, bar, onset, duration, start, stop, place });
      continue;
    }
    number += 1;
    const signs = readSigns(event.raw);
    events.push({
      kind: 'note',
      bar,
      onset,
      duration,
      start,
      stop,
      place,
      id: `${barName}:${number}`,
      pitches: event.pitches,
      graces: event.graces,
      tuplet: event.tuplet,
      tied: signs.tied,
      slursOpened: signs.slursOpened,
      slursClosed: signs.slursClosed,
      mark: signs.mark,
      fingers: signs.fingers,
      ornament: signs.ornament,
      staccato: signs.staccato,
      signs: signs.signs,
      breath: signs.breath,
      lyric: signs.lyric,
      chord: signs.chord,
    });
  }
}

/** Closes slurs that end at a rest on the last note before it. */
function closeBefore(events: TuneEvent[], count: number): void {
  const at = events.findLastIndex(e => e.kind === 'note');
  const note = events[at];
  if (count > 0 && note?.kind === 'note') {
    events[at] = { ...note, slursClosed: note.slursClosed + count };
  }
}

/** A title as an id: `The Lamplighter's Reel` becomes `the-lamplighters-reel`; empty without a letter of a to z. */
const slug = (title: string): string =>
  title
    .normalize('NFD')
    .replace(/[\u0300-\u036f'’]/g, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
