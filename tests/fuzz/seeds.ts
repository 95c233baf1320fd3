import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ownTunes } from '../tunes/own-tunes.ts';
import { realTunes } from '../tunes/real-tunes.ts';

/** What inputs are made from: real ones, whole. */
export interface Seeds {
  /** Tunes, an `X:` each. */
  readonly abc: readonly string[];
  readonly pages: readonly string[];
  readonly settings: readonly string[];
}

const root = join(import.meta.dirname, '../..');

/** Texts of the demo book and of the book that `begin` writes, tunes of our own, and real ones where they are. */
export function gatherSeeds(): Seeds {
  const pages = ['content', 'templates/begin'].flatMap(book =>
    ['lessons', 'tunes', 'pages'].flatMap(folder => textsIn(join(root, book, folder), '.md')),
  );
  const settings = ['content', 'templates/begin'].flatMap(book =>
    textsIn(join(root, book), '.yaml'),
  );
  const own = pages.flatMap(page => [...page.matchAll(/```abc\n(.*?)```/gs)].map(m => m[1] ?? ''));
  return {
    abc: [...own, ...ownTunes.map(t => t.abc), ...realTunes(), ...small],
    pages: [...pages, ...blocks],
    settings: [...settings, ...tables],
  };
}

function textsIn(folder: string, ending: string): readonly string[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .filter(name => name.endsWith(ending))
    .toSorted()
    .map(name => readFileSync(join(folder, name), 'utf8'));
}

/** Signs that the demo book has no need of. */
const small = [
  'X:1\nT:Small\nM:6/8\nL:1/8\nP:A(AB)2\nK:Dmix\nP:A\n|:d|ABc def|[1 g3 a2:|[2 g3 a3||\nP:B\n{ga}b3 [df]3|]\n',
  'X:2\nT:Odd\nM:C|\nQ:1/2=90\nL:1/16\nK:Bb clef=treble\n"Gm"~B4 !trill!c>d e<f|(5:4:5abcde z4 [K:C] x2|Z2|\nw:la la- la * _\n',
  'X:3\nT:Voices\nM:3/4\nK:none\nV:1\nA2 B2 c2|\nV:2\nE6|\n',
  '%abc-2.1\n%%text words\nX:4\nT:A\nT:B\nC:x\nO:y\nS:z\nN:n\nM:none\nK:Hp\nA/B//c3/2 d-|d4 & e4|\n',
];

const blocks = [
  '# T\n\n```abc\nX:1\nT:Short\nM:2/4\nL:1/8\nK:D\n|:AB cd|ef ga:|\n```\n\n:::anchor{#end of=short bars=A2 start=up}\nWhy.\n:::\n\n::plan{to=end level=beginner}\n\n::map{of=short unit=1}\n\n::drill{kind=count of=short seed=3}\n\n:::set{#two title="Two"}\n- [Short](../tunes/short.md) x2\n- short x3\n:::\n',
  '---\ntitle: Clip\n---\n\n```abc\nX:1\nT:Cued\nK:G\n|:GABc dedB:|\n```\n\n::clip[Slow]{src=media/a.mp3 of=cued at="A1=0:04 A1/2=0:09.5"}\n\n::clip[Elsewhere]{link="https://example.org/x" of=cued start=0:01 tempo=90 learner consent="yes"}\n\n:::private\nNot for you :stroke[up] and :notes[A (Bc) d]{from=up}\n:::\n',
  '| a | b |\n|---|:-:|\n| [x](#t) | ![y](../media/p.png "t") |\n\n> - [ ] one[^1]\n>   1. two\n\n[^1]: Note <b>raw</b> <!-- c --> &amp; &#0;\n\n[r]: http://example.org\n',
];

const tables = [
  'title: T\nsite: https://example.org/f/\nrights: traditional\nlanguage: en-GB\npaper: letter\ntuning: [E5, A4, D4, G3]\nlevel: beginner\npdf: [book]\nsteps: [1, 5]\ncolours:\n  ink: "#112233"\n  paper: "#ffffff"\n',
  'title: &a [x]\nteacher: *a\npresets:\n  mine:\n    slurs: 3\n? odd\n: 1\n<<: *a\n',
];
