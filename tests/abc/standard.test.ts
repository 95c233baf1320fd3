/** Values of the ABC standard 2.1; the section is named at each test. */
import { describe, expect, it } from 'vitest';
import { pitchName } from '../../shared/music/pitch.ts';
import { lengths, names, notesOf, playedBars, readTune, rules, sounded } from './read-abc.ts';

const head = 'X:1\nT:T\nM:4/4\nL:1/8\nK:C\n';

describe('bow marks (ABC 2.1, section 4.14)', () => {
  const marks = (abc: string) => notesOf(readTune(abc).tune).map(n => n.mark);
  it('reads vAuBvA as down, up, down', () => {
    expect(marks(`${head}vAuBvA|`)).toEqual(['down', 'up', 'down']);
  });
  it('reads (uBA) and u(BA) alike', () => {
    const [inside, outside] = ['(uBA)', 'u(BA)'].map(x =>
      notesOf(readTune(`${head}${x}|`).tune).map(n => [n.mark, n.slursOpened, n.slursClosed]),
    );
    expect(inside).toEqual([
      ['up', 1, 0],
      [null, 0, 1],
    ]);
    expect(outside).toEqual(inside);
  });
  it('lets U: redefine u (section 4.16)', () => {
    const [note] = notesOf(readTune('X:1\nT:T\nU:u=!trill!\nK:C\nuA|').tune);
    expect([note?.mark, note?.ornament]).toEqual([null, 'trill']);
  });
  it('reads fingers, rolls, dots and breaths', () => {
    const [a, b, c, d] = notesOf(readTune(`${head}!3!A ~B .c !breath!d|`).tune);
    expect([a?.fingers, b?.ornament, c?.staccato, d?.breath]).toEqual([[3], 'roll', true, true]);
  });
});

describe('default note length (ABC 2.1, section 3.1.7)', () => {
  it.each([
    ['2/4', '1/16'],
    ['5/8', '1/16'],
    ['3/4', '1/8'],
    ['6/8', '1/8'],
    ['C', '1/8'],
    ['C|', '1/8'],
    ['none', '1/8'],
  ])('is right for M:%s', (meter, unit) => {
    expect(lengths(`X:1\nT:T\nM:${meter}\nK:C\nA`)).toBe(unit);
    const { n, d } = readTune(`X:1\nT:T\nM:${meter}\nK:C\nA`).tune.unit;
    expect(`${n}/${d}`).toBe(unit);
  });
  it('is 1/8 where there is no M:', () => expect(lengths('X:1\nT:T\nK:C\nA')).toBe('1/8'));
  it('follows a change of L: in the body', () =>
    expect(lengths('X:1\nT:T\nM:4/4\nL:1/8\nK:C\nA [L:1/4]A|')).toBe('1/8 1/4'));
});

describe('broken rhythm (ABC 2.1, section 4.4), in units of L:1/1', () => {
  const unit = 'X:1\nT:T\nM:none\nL:1/1\nK:C\n';
  it.each([
    ['a>b', '3/2 1/2'],
    ['e<<f', '1/4 7/4'],
    ['g>>>a', '15/8 1/8'],
    ['A<{g}A', '1/2 3/2'],
  ])('%s', (abc, expected) => expect(lengths(`${unit}${abc}`)).toBe(expected));
  it('A<{g}A is A/2{g}A3/2', () =>
    expect(lengths(`${unit}A<{g}A`)).toBe(lengths(`${unit}A/2{g}A3/2`)));
});

describe('tuplets (ABC 2.1, section 4.13)', () => {
  const total = (meter: string, p: number): string => {
    const { tune } = readTune(`X:1\nT:T\nM:${meter}\nL:1/1\nK:C\n(${p}${'c'.repeat(p)}`);
    const length = tune.bars[0]?.length;
    return length ? `${length.n}/${length.d}` : '';
  };
  it.each([
    [2, 3],
    [3, 2],
    [4, 3],
    [6, 2],
    [8, 3],
  ])('%i in the time of %i', (p, q) => expect(total('4/4', p)).toBe(`${q}/1`));
  it.each([5, 7, 9])('%i in the time of 2, and of 3 in compound time', p => {
    expect(total('4/4', p)).toBe('2/1');
    for (const meter of ['6/8', '9/8', '12/8']) expect(total(meter, p)).toBe('3/1');
  });
  it('(3::2 is (3:2:2', () => {
    expect(lengths(`${head}(3::2cd e|`)).toBe('1/12 1/12 1/8');
    expect(lengths(`${head}(3::2cd e|`)).toBe(lengths(`${head}(3:2:2cd e|`));
  });
  it('marks the note that opens it', () =>
    expect(notesOf(readTune(`${head}(3cde f|`).tune).map(n => n.tuplet)).toEqual([
      { p: 3, opens: true },
      { p: 3, opens: false },
      { p: 3, opens: false },
      null,
    ]));
});

describe('slurs, ties, chords and graces', () => {
  it('nests slurs: (c d (e) f g a) is legal (section 4.11)', () => {
    expect(rules(`${head}(c d (e) f g a) b2|`)).toEqual([]);
    let depth = 0;
    const depths = notesOf(readTune(`${head}(c d (e) f g a) b2|`).tune).map(n => {
      depth += n.slursOpened;
      const sounding = depth;
      depth -= n.slursClosed;
      return sounding;
    });
    expect(depths).toEqual([1, 1, 2, 1, 1, 1, 0]);
  });
  it('gives an unequal chord the length of its first note (section 4.17)', () =>
    expect(lengths(`${head}[D2F] [DF2]|`)).toBe('1/4 1/8'));
  it('orders a chord from its lowest note', () => expect(names(`${head}[FD]`)).toBe('D4+F4'));
  it('keeps grace notes apart', () => {
    const [note] = notesOf(readTune(`${head}{cB}A`).tune);
    expect(note?.graces.map(pitchName)).toEqual(['C5', 'B4']);
  });
  it('carries an accidental through a tie over the bar line, and no further', () =>
    expect(names(`${head}^f-|f f`)).toBe('F#5 F#5 F5'));
  it('holds an accidental to the bar line', () =>
    expect(names('X:1\nT:T\nK:D\nf =f f|f')).toBe('F#5 F5 F5 F#5'));
  it('holds it in every octave unless told otherwise (section 11.3)', () => {
    expect(names(`${head}^f F|`)).toBe('F#5 F#4');
    expect(names(`X:1\nT:T\n%%propagate-accidentals octave\nK:C\n^f F f|`)).toBe('F#5 F4 F#5');
    expect(names(`X:1\nT:T\n%%propagate-accidentals not\nK:C\n^f F f|`)).toBe('F#5 F4 F5');
    expect(rules(`${head}^f F c2 d4|`)).toEqual(['accidental-elsewhere']);
  });
});

describe('repeats (ABC 2.1, sections 4.8 to 4.10)', () => {
  const four = 'c8|d8|e8|f8';
  it.each([
    ['goes back to |:', `c8|:d8:|`, 'A1 B1 B1'],
    ['without |: goes back to the start', `c8|d8:|`, 'A1 A2 A1 A2'],
    ['without |: goes back to the last repeat end', `c8:|d8:|`, 'A1 A1 B1 B1'],
    ['without |: goes back to the last double bar', `${four}||c8:|`, 'A1 A2 A3 A4 B1 B1'],
    [
      'without |: goes back to the last double bar, which a pickup and a short bar make full',
      `FE|c8|d8|e8|f6||FE|g8|a6:|`,
      'A0 A1 A2 A3 A4 B0 B1 B2 B0 B1 B2',
    ],
    [
      'the same, where the next pickup makes it full',
      `c8|d8|e8|f6||FE|g8|a6:|`,
      'A1 A2 A3 A4 B0 B1 B2 B0 B1 B2',
    ],
    ['without |: goes back to a double bar after the pickup', `FE|]c8|d8:|`, 'A0 A1 A2 A1 A2'],
    ['reads :] and [: (section 4.8: parsers are to be liberal)', `[:c8:]d8:]`, 'A1 A1 B1 B1'],
    ['reads ::', `|:c8::d8:|`, 'A1 A1 B1 B1'],
    ['reads ::| as three times', `|::c8::|`, 'A1 A1 A1'],
    ['reads |[1', `|:c8|[1d8:|[2e8|]`, 'A1 A2/1 A1 A2/2'],
    ['reads | [1', `|:c8| [1d8:| [2e8|]`, 'A1 A2/1 A1 A2/2'],
    ['reads |1 and :|2', `|:c8|1d8:|2e8|]`, 'A1 A2/1 A1 A2/2'],
    ['reads [1,3', `|:c8|[1,3d8:|[2e8:|]`, 'A1 A2/1,3 A1 A2/2 A1 A2/1,3'],
    ['reads [1-3', `|:c8|[1-3d8:|[4e8|]`, 'A1 A2/1,2,3 A1 A2/1,2,3 A1 A2/1,2,3 A1 A2/4'],
    ['reads third endings', `|:c8|[1d8:|[2e8:|[3f8|]`, 'A1 A2/1 A1 A2/2 A1 A2/3'],
    [
      'reads [1,3,5-7',
      `|:c8|[1,3,5-7d8:|[2,4e8:|`,
      [
        'A1 A2/1,3,5,6,7 A1 A2/2,4',
        'A1 A2/1,3,5,6,7 A1 A2/2,4',
        ...Array(3).fill('A1 A2/1,3,5,6,7'),
      ].join(' '),
    ],
  ])('%s', (_, abc, expected) => expect(playedBars(`${head}${abc}`)).toBe(expected));
  it('begins a part by [P:] after a continued line where it stands (sections 4.9, 6.1.1)', () => {
    const { tune } = readTune(`${head}P:A\nc8|d8|\\\n%\n[P:B]e8|\nf8|]`);
    expect(tune.bars.map(b => b.name)).toEqual(['A1', 'A2', 'B1', 'B2']);
  });
  it('| 1 with a space is not an ending', () =>
    expect(readTune(`${head}|:c8| 1 d8:|`).tune.bars.every(b => b.endings.length === 0)).toBe(
      true,
    ));
});

describe('the played order of a whole example, as abc2midi plays it', () => {
  // checks/abc: run with Debian's abc2midi 4.84; the grace note is left out.
  const abc = `X:1\nT:T\nM:4/4\nL:1/8\nK:D\n(uFE)|:vD2 (FA) (3Bcd A2-|A2 {c}BA F>E D2|[1 D4 D2 (FE):|[2 D4 D4|]\n`;
  it('plays the pitches in order, ties merged', () => {
    const body = [62, 66, 69, 71, 73, 74, 69, 71, 69, 66, 64, 62];
    expect(sounded(abc)).toEqual([66, 64, ...body, 62, 62, 66, 64, ...body, 62, 62]);
  });
  it('names its bars and finds nothing wrong', () => {
    const { tune, problems } = readTune(abc);
    expect(tune.bars.map(b => b.name)).toEqual(['A0', 'A1', 'A2', 'A3/1', 'A3/2']);
    expect(problems).toEqual([]);
  });
});
