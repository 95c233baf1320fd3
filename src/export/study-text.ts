import type { Anchor, LeadIn } from '../../shared/bowing/bowing.ts';
import { editAbc } from '../../shared/bowing/offered-mends.ts';
import type { Proposal } from '../../shared/bowing/propose-bowings.ts';
import { editText } from '../../shared/bowing/slur-edits.ts';
import { noteAt } from '../../shared/music/note-at.ts';
import { pitchName } from '../../shared/music/pitch.ts';
import { at } from '../../shared/must.ts';
import type { Study } from '../../shared/study.ts';
import { wordsFor } from '../../shared/words/words-for.ts';
import { proposalText } from './proposal-json.ts';
import type { Proposals } from './study-json.ts';

/** Down-bow and up-bow signs, as near as Unicode text comes to them. */
const sign = { down: '⊓', up: 'V' } as const;

/** Studies as text for a terminal: section map, strokes of each bar, repeats, anchors, whole bowings. */
export function studyText(studies: readonly Study[], proposals: Proposals): string {
  return studies.map(study => one(study, proposals.get(study) ?? [])).join('\n');
}

function one(study: Study, proposals: readonly Proposal[]): string {
  const { tune, bowing } = study;
  const mode = tune.key.mode === 'none' ? '' : ` ${tune.key.mode}`;
  const meter = tune.meter.free ? 'free metre' : `${tune.meter.beats}/${tune.meter.unit}`;
  const about = [tune.type, `${tune.key.tonic}${mode}`, meter].filter(x => x !== null);
  const title = `${tune.title}: ${about.join(', ')}`;
  const blocks = [
    `${title}\n${'='.repeat(title.length)}`,
    section('Map', mapLines(study)),
    section('Strokes, first time through', strokeLines(study)),
    section(
      'Repeats',
      bowing.repeats.map(r => {
        const name = `part ${at(tune.parts, r.part).name}`;
        const counts = r.strokes.map((n, i) => `pass ${i + 1}: ${n} strokes`).join(', ');
        const starts = r.secondPass === 'same' ? 'on the same stroke' : 'reversed';
        const second = r.secondPass === null ? '' : `; the second pass starts ${starts}`;
        return `${name}: ${counts}${second}`;
      }),
    ),
    ...bowing.anchors.map(a => section(`Anchor ${a.id}`, anchorLines(study, a))),
    section(
      'Ways to bow the whole tune',
      proposals.map(p => proposalText(tune, p)),
    ),
  ];
  return `${blocks.filter(b => b !== '').join('\n\n')}\n`;
}

const section = (title: string, lines: readonly string[]): string =>
  lines.length === 0 ? '' : [title, ...lines.map(l => `  ${l}`)].join('\n');

/** `A5-A6   a   The same as A1-A2.` */
function mapLines({ tune, map }: Study): string[] {
  const { kinSentence } = wordsFor('en', 'letters');
  return map.phrases.map(p => {
    const kin = p.kin === 'own' ? '' : kinSentence(tune, map, p, 'letters');
    return `${p.name.padEnd(9)} ${p.label.padEnd(3)} ${kin}`.trimEnd();
  });
}

/** `A1  ⊓D4 V(F4 A4) …`: each bar as first played; `~` where a stroke goes on from the bar before. */
function strokeLines(study: Study): string[] {
  const { tune, performance, bowing } = study;
  const seen = new Set<number>();
  const lines: string[] = [];
  for (const bar of performance.bars) {
    if (seen.has(bar.bar)) continue;
    seen.add(bar.bar);
    const words: string[] = [];
    for (let i = bar.first; i < bar.end; i++) {
      const stroke = at(bowing.plan.strokes, at(bowing.plan.strokeOf, i));
      const note = noteAt(tune, at(performance.notes, i).event);
      const name = note.pitches.map(pitchName).join('+');
      const opens = stroke.notes[0] === i;
      const closes = stroke.notes.at(-1) === i;
      const slurred = stroke.notes.length > 1;
      const head = opens
        ? `${sign[stroke.direction]}${slurred ? '(' : ''}`
        : i === bar.first
          ? '~'
          : '';
      words.push(`${head}${name}${slurred && closes ? ')' : ''}`);
    }
    lines.push(`${at(tune.bars, bar.bar).name.padEnd(6)}${words.join(' ')}`);
  }
  return lines;
}

function anchorLines(study: Study, anchor: Anchor): string[] {
  const arrivals = anchor.arrivals.map(
    a =>
      `pass ${a.pass}: arrives ${a.direction}, ${a.agrees ? 'as asked' : `wanted ${anchor.direction}`}`,
  );
  const mends = anchor.mends.map(
    m => `mend: ${editText(study.tune, m)} (${editAbc(study.tune, m)})`,
  );
  if (anchor.moreMends > 0) mends.push(`mends not listed: ${anchor.moreMends}`);
  return [...arrivals, ...mends, ...anchor.leadIns.flatMap(l => leadInLines(study, l))];
}

function leadInLines(study: Study, l: LeadIn): string[] {
  const passes = l.passes.length === 1 ? `pass ${l.passes[0]}` : `passes ${l.passes.join(', ')}`;
  const counts = `${l.groupings} ways, ${l.arriving} arrive; within the limits ${l.allowed}, ${l.allowedArriving} arrive`;
  const head = `lead-in of ${passes}: ${l.notes.length} notes, ${l.strokes} strokes from ${l.start}: ${counts}`;
  const plans = l.plans.slice(0, 3).map((p, i) => {
    const changes =
      p.changes.length === 0
        ? 'as written'
        : p.changes.map(c => editText(study.tune, c)).join('; ');
    return `  plan ${i + 1}: ${changes} (${p.strokes} strokes)`;
  });
  return [head, ...plans];
}
