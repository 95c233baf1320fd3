/**
 * A text as abcjs reads it rightly: what it would misread is changed without moving anything, so that
 * offsets hold in both. The reading and the drawing both give abcjs this text.
 *
 * - Header fields that the standard does not use are to be passed over (ABC 2.1, section 3): abcjs would
 *   read `Y:AB` as two notes, so they become comments.
 * - `:|:` is to be taken as `::`, and `:]` and `[:` as repeat signs (section 4.8).
 * - A slur that closes after graces, `A{GA})`, closes before them; abcjs would lose its end. Graces at a
 *   note's end are drawn before the next note.
 * - `c>B-)` becomes `c>B)-`: of a note without a length after `>`, abcjs finds a slur's end before the
 *   tie only.
 * - `[P:B]` at the start of a line is lost after a continued line, so the line is not continued.
 */
export const forAbcjs = (text: string): string =>
  text
    .split(/^(?=X:)/m)
    .map(oneTune)
    .join('');

function oneTune(abc: string): string {
  const key = Math.max(0, abc.search(/^K:/m));
  const header = abc.slice(0, key).replace(/^[EJYa-ln-qt-vx-z]:/gm, '%:');
  const music = abc.slice(key);
  if (!misread.test(music)) return header + music;
  return header + music.replace(continued, ' $1').replace(musicLine, musicFor);
}

/** Whether a text may hold something to change. */
const misread = /:\|:|:\]|\[:|\}\)|-\)|\\[^[\\]*\[P:/;

/** The end of a line that is continued by a part's name, with the comments between. */
const continued = /\\([ \t]*(?:%[^\n]*)?\n(?:%[^\n]*\n)*[ \t]*)(?=\[P:)/g;

const musicLine = /^(?![A-Za-z]:[^|:\]]|%).+$/gm;

/** What is to be left alone, or one thing to change. */
const piece =
  /"[^"]*"|![^!]*!|%.*|\[[A-Za-z]:[^\]]*\]|(?<graces>(?<=[^\s(])[ \t]*\{[^{}()]*\})(?<closed>\)+)|(?<=[A-Ga-g][,']*)-(?<tied>\)+)|(?<both>:\|:)|(?<ends>:\])|(?<opens>\[:)/g;

const musicFor = (line: string): string =>
  line.replace(piece, (found, ...rest) => {
    const { graces, closed, tied, both, ends, opens } = rest.at(-1) as Record<string, string>;
    if (graces !== undefined) return `${closed}${graces}`;
    if (tied !== undefined) return `${tied}-`;
    if (both !== undefined) return ':: ';
    if (ends !== undefined) return ':|';
    return opens === undefined ? found : '|:';
  });

const gracesAtEnd = /[ \t]*\{[^{}()\n]*\}\)+/y;

/** Where a note ends in the text as written that ends at `stop` in the text for abcjs: after graces that a slur closes after. */
export function endAsWritten(written: string, abc: string, stop: number): number {
  let core = stop;
  while (/[ \t]/.test(abc[core - 1] ?? '')) core--;
  while (abc[core - 1] === ')' && written[core - 1] !== ')') core--;
  gracesAtEnd.lastIndex = core;
  return abc[core] === ')' && gracesAtEnd.test(written) ? gracesAtEnd.lastIndex : stop;
}
