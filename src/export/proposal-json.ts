import type { Demand, Edit, SlurGroup } from '../../shared/bowing/bowing.ts';
import type { Bend, Proposal } from '../../shared/bowing/propose-bowings.ts';
import { editText } from '../../shared/bowing/slur-edits.ts';
import { noteAt } from '../../shared/music/note-at.ts';
import type { Tune } from '../../shared/music/tune.ts';
import { at } from '../../shared/must.ts';

/** A proposal in one line: `as printed …, 40 strokes: slur A1:2-A1:3, A4:2-A4:3; bent: slur A4:2-A4:3`. */
export function proposalText(tune: Tune, { name, strokes, slurs, bends, lifts }: Proposal): string {
  const id = (e: number): string => noteAt(tune, e).id;
  const spans = slurs.map(g => `${id(at(g, 0))}-${id(at(g, g.length - 1))}`);
  return [
    `${name}, ${strokes} strokes: ${spans.length > 0 ? `slur ${spans.join(', ')}` : 'no slurs'}`,
    ...(bends.length > 0 ? [`bent: ${bends.map(b => editText(tune, b.edit)).join(', ')}`] : []),
    ...(lifts.length > 0 ? [`lift before ${lifts.map(l => id(l.note)).join(', ')}`] : []),
  ].join('; ');
}

/** A proposal as plain data: notes by name, and sentences for why it bends or lifts. */
export function proposalJson(tune: Tune, proposal: Proposal): object {
  const { way, slurs, hooks, lifts, strokes, bends, name } = proposal;
  return {
    way,
    slurs: slurs.map(g => names(tune, g)),
    hooks: hooks.map(g => names(tune, g)),
    lifts: lifts.map(({ note, demand }) => ({
      note: noteAt(tune, note).id,
      because: `No bowing within the limits comes to ${demandText(tune, demand)}.`,
    })),
    strokes,
    bends: bends.map(bend => bendJson(tune, bend)),
    because: [`The tune is bowed ${name}.`, ...told(proposal)].join(' '),
  };
}

function told({ bends, alike }: Proposal): string[] {
  const bent =
    bends.length === 0
      ? 'It is nowhere bent.'
      : `It is bent at ${bends.length === 1 ? 'one place' : `${bends.length} places`}.`;
  return alike ? [bent] : [bent, 'Like phrases may differ: there are too many to keep alike.'];
}

function bendJson(tune: Tune, { edit, demand }: Bend): object {
  return {
    note: noteAt(tune, firstNote(edit)).id,
    change: editText(tune, edit),
    because: demand
      ? `So that the bow comes to ${demandText(tune, demand)}.`
      : 'A like phrase asks for it.',
  };
}

/** The first note of what an edit makes, or of what it drops. */
function firstNote(edit: Edit): number {
  switch (edit.kind) {
    case 'slur':
    case 'drop':
      return at(edit.notes, 0);
    case 'retake':
      return edit.before;
    case 'lengthen':
    case 'shorten':
    case 'split':
      return at(edit.from, 0);
    case 'merge':
      return at(edit.to, 0);
  }
}

function demandText(tune: Tune, demand: Demand): string {
  switch (demand.kind) {
    case 'anchor':
      return `anchor ${demand.id} on its stroke`;
    case 'sign':
      return `${noteAt(tune, demand.event).id} on the stroke of its sign`;
    case 'repeat':
      return `part ${at(tune.parts, demand.part).name} on its stroke`;
    case 'opening':
      return 'the first full bar on a down-bow';
  }
}

const names = (tune: Tune, group: SlurGroup): string[] => group.map(e => noteAt(tune, e).id);
