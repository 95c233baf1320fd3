import type { Direction } from '../../music/tune.ts';
import type { BowingPhrases, EditPhrases } from '../bowing.ts';
import { capital } from '../text.ts';
import { bow, listed, strokes } from './grammar.ts';

export const edits: EditPhrases = {
  slur: notes => `binde ${notes}`,
  drop: notes => `nimm den Bindebogen über ${notes} weg`,
  lengthen: (from, to) => `verlängere den Bindebogen über ${from}, sodass er ${to} umfasst`,
  shorten: (from, to) => `verkürze den Bindebogen über ${from}, sodass er nur ${to} umfasst`,
  split: (from, to) => `teile den Bindebogen über ${from}: binde ${to.join(' und ')}`,
  merge: from => `mach einen einzigen Bindebogen aus ${from.join(' und ')}`,
  retake: ({ note, direction, after, opening }) => {
    const writing = [
      ...(after === null ? [] : [`!breath! vor ${after}`]),
      `${signOf(direction)} vor ${note}`,
      ...(opening ? [`${signOf(opening.direction)} vor ${opening.note}`] : []),
    ];
    return `heb den Bogen vor ${note} ab und setz ihn im ${bow(direction)} neu an: schreib ${listed(writing)}`;
  },
};

const signOf = (direction: Direction): string => (direction === 'up' ? 'u' : 'v');

export const bowing: BowingPhrases = {
  asWritten: 'So, wie es dasteht, kommt der Bogen richtig an.',
  arrives: {
    'flips-once': 'das kehrt den Bogen einmal um, also kommt er richtig an',
    'two-flips': 'das kehrt den Bogen um und wieder zurück, also kommt er richtig an',
    'many-flips': 'zusammen lässt das den Bogen richtig herum gehen, also kommt er an, wie er soll',
    keeps: 'das lässt den Bogen richtig herum gehen, also kommt er weiterhin an, wie er soll',
  },
  besides: {
    'beats-down': 'jeder betonte Schlag ist ein Abstrich',
    'beats-up': 'jeder betonte Schlag ist ein Aufstrich',
    'into-beats': 'jeder Bindebogen führt in einen Schlag hinein',
    stepwise: 'die Bindebögen gehen schrittweise und bleiben auf einer Saite',
    'phrases-alike': 'gleiche Phrasen bleiben gleich',
    'phrases-untied': 'gleiche Phrasen können nicht alle gleich bleiben',
    'phrases-untried':
      'gleiche Phrasen bleiben nicht alle gleich, denn für einen Versuch sind es zu viele',
  },
  plan: ({ changes, arrives, besides }) =>
    `${listed(changes, ', dann ')}: ${capital(arrives.join(', '))}${besides.length > 0 ? `; ${listed(besides)}` : ''}.`,
  ownWay: bends =>
    bends.length === 0
      ? 'In der Strichart des Stücks: Der Bogen kommt richtig an.'
      : `In der Strichart des Stücks, nur damit der Bogen richtig ankommt: ${bends.join('; ')}.`,
  singleStrokes: slurs =>
    slurs.length === 0
      ? 'Lauter Einzelstriche: Der Bogen kommt richtig an.'
      : `Einzelstriche, und ein Bindebogen über ${listed(slurs)}, damit der Bogen richtig ankommt.`,
  onceThrough: n => `Ein Durchgang hat ${strokes(n)}`,
  eachTime: n => `Jeder Durchgang hat ${strokes(n)}`,
  unlikeTimes: counts => `Die Durchgänge haben ${listed(counts.map(String))} Striche`,
  secondTime: {
    same: ', und der zweite beginnt auf demselben Strich wie der erste',
    reversed: ', und der zweite beginnt auf dem anderen Strich',
  },
  whole: {
    nothing: 'Nichts muss geändert werden.',
    solved: edits => `So kommt das ganze Stück auf einmal in Ordnung: ${edits.join('; ')}.`,
    contradiction: demands =>
      `Keine Bindebögen können das ${demands.length === 1 ? '' : 'zusammen '}erfüllen: ${demands.join('; ')}.`,
    'beyond-limits':
      'Es lässt sich auf einmal in Ordnung bringen, aber nicht mit so kurzen Bindebögen, wie diese Stufe sie spielt.',
    'too-many':
      'Es gibt zu viele Arten, das ganze Stück auf einmal in Ordnung zu bringen; nimm eine Stelle nach der anderen.',
    'unlike-passes':
      'Ein Haltebogen über ein Wiederholungszeichen macht die Durchgänge ungleich; nimm eine Stelle nach der anderen.',
  },
  demands: {
    anchor: (id, pass) => `die Stelle „${id}“ auf ihrem Strich erreichen, Durchgang ${pass}`,
    sign: (note, pass) => `das Zeichen auf ${note}, Durchgang ${pass}`,
    repeat: part => `Teil ${part} beim zweiten Mal wie beim ersten beginnen`,
    opening: 'den ersten vollen Takt im Abstrich beginnen',
  },
};
