import type { Messages } from '../problem-words.ts';

/** Seconds as `0:04.5`. */
function clock(seconds: number): string {
  const tenths = Math.round(seconds * 10);
  const rest = (tenths % 600) / 10;
  return `${Math.floor(tenths / 600)}:${rest < 10 ? '0' : ''}${rest}`;
}

/** Messages about the cues of recordings, held to the tune's map. */
export const clipMessages = {
  'cue-bar': p => ({
    message: `The cue \`${p.actual}\` names a bar that the tune has not: its bars run from \`${p.expected[0]}\` to \`${p.expected.at(-1)}\`.`,
    mend: p.nearest
      ? `Did you mean \`${p.nearest}\`?`
      : 'Name a bar as the map does; the figure after the stroke says which time through.',
  }),
  'cue-pass': p => ({
    message: `The cue \`${p.actual}\` asks for time ${p.facts.pass} through, but ${p.facts.bar} is played ${p.expected.join('')} ${p.expected[0] === '1' ? 'time' : 'times'}.`,
    mend: 'Count the times through of one round of the tune; cue only the first round.',
  }),
  'cue-overlap': p => ({
    message: `The cue \`${p.actual}\` at ${clock(p.facts.seconds)} stands on the cue \`${p.facts.other}\` at ${clock(p.facts.from)}.`,
    mend: 'Give each bar one cue, and each cue a moment of its own.',
  }),
  'cue-backwards': p => ({
    message: `The cue \`${p.actual}\` at ${clock(p.facts.seconds)} comes before \`${p.facts.other}\` at ${clock(p.facts.from)}, which is played first.`,
    mend: 'Look at the minutes and seconds of both.',
  }),
  'cue-stray': p => ({
    message: `The cue \`${p.actual}\` at ${clock(p.facts.seconds)} comes ${p.facts.percent} % ${p.facts.way}: at the recording’s pace it would be about ${clock(p.facts.expected)}.`,
    mend: 'Tap it again; if the players really pause or change pace there, leave it, and this is only said.',
  }),
} satisfies Partial<Messages>;
