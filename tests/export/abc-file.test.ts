import { beforeAll, describe, expect, it } from 'vitest';
import type { Study } from '../../shared/study.ts';
import { parseTunes } from '../../src/abc/parse-tune.ts';
import { abcFile } from '../../src/export/abc-file.ts';
import { hasAbc2midi, readWithAbc2midi } from '../abc/read-with-abc2midi.ts';
import { composeStudy } from '../engrave/compose-study.ts';
import { onTunes } from '../tunes/on-tunes.ts';
import { demoStudies, studiesOf, studyOf, studyText } from './exported-studies.ts';

const credits = 'By Wenna Harkle, 2024. Learned from the quay.';

const notesOf = ({ tune }: Study) =>
  tune.events.map(e =>
    e.kind === 'note'
      ? [e.id, e.pitches, e.graces, e.onset, e.duration, e.tied, e.slursOpened, e.slursClosed]
      : [e.kind, e.onset, e.duration],
  );
const barsOf = ({ tune }: Study) =>
  tune.bars.map(b => [b.name, b.endings, b.opensRepeat, b.closesRepeat, b.key, b.meter]);
const mapOf = ({ map }: Study) => map.phrases.map(p => [p.name, p.label, p.kin, p.of]);

/** The stroke of each written note that has the same one each time through. */
function strokesOf({ bowing, performance }: Study): readonly (readonly [number, string])[] {
  const varying = new Set(bowing.varying);
  return bowing.plan.strokes.flatMap(s =>
    s.notes.flatMap(n => {
      const event = performance.notes[n]?.event ?? -1;
      return varying.has(event) ? [] : [[event, s.direction] as const];
    }),
  );
}

function readAgain(text: string): Study {
  const { tunes, problems } = parseTunes({ text, file: 'export.abc', line: 1, indent: 0 });
  const [tune] = tunes;
  if (!tune || tunes.length > 1) throw new Error(`${tunes.length} tunes in ${text}`);
  expect(problems.filter(p => p.rule === 'abc-unreadable')).toEqual([]);
  return studyOf(tune);
}

/** Notes, bars, map, fingers, and strokes wherever all passes agree. */
function compareStudy(
  study: Study,
  asPlain: boolean,
  read: (abc: string) => Study = readAgain,
): void {
  const again = read(abcFile(study, credits));
  const { title } = study.tune;
  expect([title, notesOf(again)]).toEqual([title, notesOf(study)]);
  expect([title, barsOf(again)]).toEqual([title, barsOf(study)]);
  if (asPlain) {
    expect([title, mapOf(again)]).toEqual([title, mapOf(study)]);
    expect([title, again.fingering]).toEqual([title, study.fingering]);
  }
  const same = new Set(strokesOf(study).map(([event, stroke]) => `${event} ${stroke}`));
  const found = new Set(strokesOf(again).map(([event, stroke]) => `${event} ${stroke}`));
  expect([title, [...same].filter(s => !found.has(s))]).toEqual([title, []]);
}

describe('the ABC of an export, read again', () => {
  let demo: readonly Study[];
  beforeAll(async () => {
    demo = await demoStudies();
  });

  it('has the notes, strokes, map and fingers of the demo book', () => {
    for (const study of demo) {
      // A book can label phrases and tune strings in Markdown; ABC holds neither.
      const isPlain = study.tune.id !== 'four-ropes-ashore';
      compareStudy(study, isPlain);
    }
  });

  onTunes('has those of every tune', 4, tunes => {
    for (const study of studiesOf(tunes)) compareStudy(study, true, composeStudy);
  });

  it('says whose it is, and what made it, in the standard’s own directives', () => {
    const text = abcFile(studyText('X:7\nT:One\nK:D\nDEFG|\n'), credits);
    expect(text.split('\n').slice(0, 6)).toEqual([
      '%abc-2.1',
      '%%abc-charset utf-8',
      '%%abc-creator Bowbook',
      `%%abc-copyright ${credits}`,
      '',
      'X:7',
    ]);
  });

  it('keeps the fields that stand before the first tune, and gives a number where there is none', () => {
    const headed = studyText('L:1/16\nM:3/4\n\nX:1\nT:One\nK:D\nDEFG ABcd efga|\n');
    expect(abcFile(headed, credits)).toContain('\nL:1/16\nM:3/4\n\nX:1\n');
    compareStudy(headed, true);
    const bare = studyText('L:1/8\nM:3/4\nK:D\nDE FG AB|\n');
    expect(abcFile(bare, credits)).toContain('\n\nX:1\nL:1/8\n');
    compareStudy(bare, true);
  });

  it.skipIf(!hasAbc2midi())('sounds the same to a second reader as the teacher’s own text', () => {
    for (const study of demo) {
      // abc2midi knows no finger signs, and says so of each. The copy it is given is without
      // staccato dots, which are known by the note after them.
      const plain = (abc: string): string =>
        abc.replace(/![0-5]!/g, '').replace(/\.([uv])/g, '$1.');
      const { errors, notes } = readWithAbc2midi(plain(abcFile(study, credits)));
      const own = readWithAbc2midi(plain(study.tune.source.text));
      expect([study.tune.title, errors, own.errors]).toEqual([study.tune.title, [], []]);
      expect([study.tune.title, notes]).toEqual([study.tune.title, own.notes]);
      expect(notes.length).toBeGreaterThan(0);
    }
  });
});
