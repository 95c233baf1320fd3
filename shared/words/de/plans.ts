import type { LeadInFacts, NoPlanLanguage, PlanPhrases } from '../plans.ts';
import { capital } from '../text.ts';
import {
  big,
  bow,
  listed,
  notes as noteCount,
  ordinal,
  strokes,
  strokesDative,
} from './grammar.ts';

export const plans: PlanPhrases = {
  arrival: (stroke, agrees, passes) =>
    `${passes ? times(passes) : 'So geschrieben'} kommt der Bogen im ${bow(stroke)} an, ${agrees ? 'wie er soll' : 'also verkehrt herum'}.`,
  leadIn: way =>
    `${way.passes ? `${times(way.passes)}: ` : ''}Der Weg dorthin beginnt bei ${way.place}, im ${bow(way.start)}. ${noteCount(way.notes)} in ${strokesDative(way.strokes)}, ${verdict(way)}.`,
  ways: ({ groupings, arriving, allowed, allowedArriving }) =>
    `Es gibt ${groupings === 1n ? 'eine einzige Art' : `${big(groupings)} Arten`}, diese Noten auf Striche zu verteilen, und ${arriving === 1n ? 'eine davon kommt' : `${big(arriving)} davon kommen`} an wie verlangt. Im Rahmen dessen, was diese Stufe spielt, sind es ${big(allowedArriving)} von ${big(allowed)}.`,
  moreWays: shown => `Das sind ${shown} davon; im Rahmen dieser Stufe kommen noch andere an.`,
  moreMends: n =>
    n === 1
      ? 'Eine weitere Änderung ginge auch; sie steht nicht da.'
      : `${n} weitere Änderungen gingen auch; sie stehen nicht da.`,
  strokeCount: n => `Das ${n === 1 ? 'ist' : 'sind'} ${strokes(n)}.`,
  drawnPlan: passes => `${passes ? `${times(passes)}: der` : 'Der'} erste dieser Wege, in Noten`,
  allOfBar: where => `alle Noten ${where}`,
  notesOfBar: (notes, where) =>
    `${notes.length === 1 ? 'Note' : 'die Noten'} ${listed(notes)} ${where}`,
  varying: places =>
    `Ein Punkt über einem Zeichen heißt: nicht jedes Mal derselbe Strich. Das Zeichen gilt für das erste Mal. Das betrifft ${listed(places)}.`,
  repeatOf: (part, repeat, mend) =>
    `Teil ${part}: ${repeat}${mend ? ` Damit beide gleich beginnen: ${capital(mend)}.` : ''}`,
  slurs: notes => (notes.length === 0 ? 'ohne Bindebögen' : `gebunden: ${notes.join('; ')}`),
};

const verdict = ({ arrives, wanted }: LeadInFacts): string =>
  arrives === wanted
    ? `damit ist der Bogen an der Stelle bereit für einen ${bow(arrives)}, wie er soll`
    : `damit würde der Bogen die Stelle im ${bow(arrives)} beginnen, und es soll ein ${bow(wanted)} sein`;

/** „Beim ersten und zweiten Mal“. */
const times = (passes: readonly number[]): string =>
  `Beim ${listed(passes.map(p => ordinal(p, 'n')))} Mal`;

export const noPlan: NoPlanLanguage['noPlan'] = {
  'no-stroke-begins':
    'An dieser Stelle beginnt kein Strich: Ihre erste Note ist aus dem Takt davor herübergehalten, oder sie wird nie gespielt.',
  'no-way-there':
    'Die Stelle beginnt dort, wo die Striche beginnen; es gibt also keinen Weg zu planen.',
  'beyond-level':
    'Im Rahmen dessen, was diese Stufe spielt, kommt keine Art richtig an, es sei denn, der Bogen wird abgehoben oder längere Bindebögen sind erlaubt.',
  'unlike-starts':
    'Der Bogen bricht einmal auf dem einen und einmal auf dem anderen Strich auf; dieselben Bindebögen können ihn also nicht jedes Mal richtig herbringen.',
  'harms-next-time':
    'Eine Änderung auf dem Weg würde auch den Strich umkehren, auf dem der Weg beginnt, denn der wird von dem aus gezählt, was hier oder danach gespielt wird; so taugt kein Weg allein.',
};
