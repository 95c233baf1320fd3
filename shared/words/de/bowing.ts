import type {
  Demand,
  Edit,
  Plan,
  Reason,
  RepeatStudy,
  SlurGroup,
  WholeTune,
} from '../../bowing/bowing.ts';
import type { Tune } from '../../music/tune.ts';
import { capital, listed, strokes } from './counted.ts';

/** „Binde Note 2 und 3 in B5.“ One sentence for an edit. */
export const editSentence = (tune: Tune, edit: Edit): string => {
  return `${capital(editWords(tune, edit))}.`;
};

/** The same as it stands within a sentence: „binde Note 2 und 3 in B5“. */
export function editWords(tune: Tune, edit: Edit): string {
  const span = (g: SlurGroup): string => spanWords(tune, g);
  const slur = (g: SlurGroup): string => `den Bindebogen über ${span(g)}`;
  switch (edit.kind) {
    case 'slur':
      return `binde ${span(edit.notes)}`;
    case 'drop':
      return `nimm ${slur(edit.notes)} weg`;
    case 'lengthen':
      return `verlängere ${slur(edit.from)}, sodass er ${span(edit.to)} umfasst`;
    case 'shorten':
      return `verkürze ${slur(edit.from)}, sodass er nur ${span(edit.to)} umfasst`;
    case 'split':
      return `teile ${slur(edit.from)}: binde ${edit.to.map(span).join(' und ')}`;
    case 'merge':
      return `mach einen einzigen Bindebogen aus ${edit.from.map(span).join(' und ')}`;
    case 'retake':
      return `heb den Bogen vor ${noteWords(tune, edit.before)} ab und setz ihn im ${strokeName(edit.direction)} neu an`;
  }
}

const strokeName = (d: 'down' | 'up'): string => (d === 'down' ? 'Abstrich' : 'Aufstrich');

/** „Note 2 und 3 in B5“, „Note 8 in B5 bis Note 1 in B6“. */
export function spanWords(tune: Tune, group: SlurGroup): string {
  const [first, last] = [idParts(tune, group[0]), idParts(tune, group.at(-1))];
  if (first.bar === last.bar) {
    const joint = Number(last.note) - Number(first.note) === 1 ? 'und' : 'bis';
    return `Note ${first.note} ${joint} ${last.note} in ${first.bar}`;
  }
  return `Note ${first.note} in ${first.bar} bis Note ${last.note} in ${last.bar}`;
}

/** „Note 3 in B5“. */
export const noteWords = (tune: Tune, e: number): string => {
  const { bar, note } = idParts(tune, e);
  return `Note ${note} in ${bar}`;
};

function idParts(
  tune: Tune,
  e: number | undefined,
): { readonly bar: string; readonly note: string } {
  const event = tune.events[e ?? -1];
  const [bar, note] = event?.kind === 'note' ? event.id.split(':') : [];
  return { bar: bar ?? '', note: note ?? '' };
}

const clauses: Readonly<Partial<Record<Reason, string>>> = {
  'flips-once': 'das kehrt den Bogen einmal um, also kommt er richtig an',
  'two-flips': 'das kehrt den Bogen um und wieder zurück, also kommt er richtig an',
  'many-flips': 'zusammen lässt das den Bogen richtig herum gehen, also kommt er an, wie er soll',
  keeps: 'das lässt den Bogen richtig herum gehen, also kommt er weiterhin an, wie er soll',
};

const extras: Readonly<Partial<Record<Reason, string>>> = {
  'beats-down': 'jeder betonte Schlag ist ein Abstrich',
  'beats-up': 'jeder betonte Schlag ist ein Aufstrich',
  'into-beats': 'jeder Bindebogen führt in einen Schlag hinein',
  stepwise: 'die Bindebögen gehen schrittweise und bleiben auf einer Saite',
  'phrases-alike': 'gleiche Phrasen bleiben gleich',
  'phrases-untied': 'gleiche Phrasen können nicht alle gleich bleiben',
};

/** One plain sentence for a plan: what it changes, and why it arrives. */
export function planSentence(tune: Tune, plan: Plan): string {
  if (plan.changes.length === 0) return 'So, wie es dasteht, kommt der Bogen richtig an.';
  const changes = plan.changes.map((edit, i) =>
    i === 0 ? editSentence(tune, edit).slice(0, -1) : editWords(tune, edit),
  );
  const why = plan.because.flatMap(reason => clauses[reason] ?? []);
  const more = plan.because.flatMap(reason => extras[reason] ?? []);
  return `${listed(changes, ', dann ')}: ${capital(why.join(', '))}${more.length > 0 ? `; ${listed(more)}` : ''}.`;
}

/** „Jeder Durchgang hat 33 Striche, darum beginnt der zweite umgekehrt.“ */
export function repeatSentence(repeat: RepeatStudy): string {
  const counts = [...new Set(repeat.strokes)];
  const each =
    repeat.strokes.length < 2
      ? `Ein Durchgang hat ${strokes(counts[0] ?? 0)}`
      : counts.length === 1
        ? `Jeder Durchgang hat ${strokes(counts[0] ?? 0)}`
        : `Die Durchgänge haben ${listed(repeat.strokes.map(String))} Striche`;
  const second =
    repeat.secondPass === null
      ? ''
      : repeat.secondPass === 'same'
        ? ', und der zweite beginnt auf demselben Strich wie der erste'
        : ', und der zweite beginnt auf dem anderen Strich';
  return `${each}${second}.`;
}

/** How the whole tune can be mended at once, or what stands in the way. */
export function wholeTuneSentence(tune: Tune, whole: WholeTune): string {
  switch (whole.kind) {
    case 'solved':
      return whole.changes.length === 0
        ? 'Nichts muss geändert werden.'
        : `So kommt das ganze Stück auf einmal in Ordnung: ${whole.changes.map(e => editWords(tune, e)).join('; ')}.`;
    case 'contradiction':
      return whole.demands.length === 1
        ? `Keine Bindebögen können das erfüllen: ${demandWords(tune, whole.demands[0] as Demand)}.`
        : `Keine Bindebögen können das zusammen erfüllen: ${whole.demands.map(d => demandWords(tune, d)).join('; ')}.`;
    case 'beyond-limits':
      return 'Es lässt sich auf einmal in Ordnung bringen, aber nicht mit so kurzen Bindebögen, wie diese Stufe sie spielt.';
    case 'too-many':
      return 'Es gibt zu viele Arten, das ganze Stück auf einmal in Ordnung zu bringen; nimm eine Stelle nach der anderen.';
    case 'unlike-passes':
      return 'Ein Haltebogen über ein Wiederholungszeichen macht die Durchgänge ungleich; nimm eine Stelle nach der anderen.';
  }
}

function demandWords(tune: Tune, demand: Demand): string {
  switch (demand.kind) {
    case 'anchor':
      return `die Stelle „${demand.id}“ auf ihrem Strich erreichen, Durchgang ${demand.pass}`;
    case 'sign':
      return `das Zeichen auf ${noteWords(tune, demand.event)}, Durchgang ${demand.pass}`;
    case 'repeat':
      return `Teil ${tune.parts[demand.part]?.name ?? ''} beim zweiten Mal wie beim ersten beginnen`;
    case 'opening':
      return 'den ersten vollen Takt im Abstrich beginnen';
  }
}
