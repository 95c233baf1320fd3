import { describe, expect, it } from 'vitest';
import { defaultBowing } from '../../shared/bowing/default-settings.ts';
import { checkCues } from '../../shared/clips/check-cues.ts';
import type { ClipCue } from '../../shared/clips/clip-cue.ts';
import { clipTimes } from '../../shared/clips/clip-times.ts';
import { placeCues } from '../../shared/clips/place-cues.ts';
import { playedOrder } from '../../shared/music/played-order.ts';
import { readTune } from '../abc/read-abc.ts';

/** Two parts of two bars, the first with two endings, gone through once: A1 A2/1 A1 A2/2 B1 B2. */
const { tune } = readTune('X:1\nT:T\nR:reel\nM:4/4\nL:1/8\nK:D\n|:D8|[1E8:|[2F8||G8|A8|]');
const performance = playedOrder(tune);

function cues(text: string): readonly ClipCue[] {
  return text.split(' ').map((cue, i) => {
    const [bar = '', seconds] = cue.split('=');
    const place = { file: 'lesson.md', line: 1, column: i + 1 };
    return { bar, pass: Number(bar.split('/')[1] ?? 1), seconds: Number(seconds), place };
  });
}

const rules = (text: string): readonly string[] =>
  checkCues(tune, performance, cues(text)).map(p => `${p.rule} ${p.actual}`);

const times = (text: string) =>
  clipTimes(tune, performance, { cues: cues(text), steady: null }, defaultBowing);

describe('cues', () => {
  it('find their bar by time through, or by ending', () => {
    expect(performance.bars.map(b => tune.bars[b.bar]?.name).join(' ')).toBe(
      'A1 A2/1 A1 A2/2 B1 B2',
    );
    const found = (text: string) => placeCues(tune, performance, cues(text)).placed[0]?.played;
    expect(['A1', 'A1/1', 'A1/2', 'A2/1', 'A2/2', 'B2'].map(bar => found(`${bar}=0`))).toEqual([
      0, 0, 2, 1, 3, 5,
    ]);
  });

  it('that go evenly are right, whatever the pace and the order they are written in', () => {
    expect(rules('A1=4 A1/2=8 B1=12')).toEqual([]);
    expect(rules('B1=12 A1=4 A1/2=8')).toEqual([]);
    expect(rules('A1=0 A2/1=3.1 A1/2=6 A2/2=9.1 B1=12 B2=14.8')).toEqual([]);
  });

  it('of bars and times through that the tune has not are said', () => {
    expect(rules('A1=0 C1=9')).toEqual(['cue-bar C1']);
    expect(rules('A1=0 A1/3=9')).toEqual(['cue-pass A1/3']);
    expect(rules('A1=0 B1/2=9')).toEqual(['cue-pass B1/2']);
  });

  it('that stand on one another, or run backwards, are said', () => {
    expect(rules('A1=0 A1/1=4')).toEqual(['cue-overlap A1/1']);
    expect(rules('A1=4 A1/2=4')).toEqual(['cue-overlap A1/2']);
    expect(rules('A1=8 A1/2=4')).toEqual(['cue-backwards A1/2']);
  });

  it('stray from a tenth of their stretch on', () => {
    // Two seconds a bar. A2/2 should be at 6; the stretch to it is two seconds long.
    expect(rules('A1=0 A2/1=2 A1/2=4 A2/2=6.19 B1=8 B2=10')).toEqual([]);
    expect(rules('A1=0 A2/1=2 A1/2=4 A2/2=6.25 B1=8 B2=10')).toEqual(['cue-stray A2/2']);
    expect(rules('A1=0 A2/1=2 A1/2=4 A2/2=5.75 B1=8 B2=10')).toEqual(['cue-stray A2/2']);
  });

  it('stray once where the players pause, and are measured from there', () => {
    expect(rules('A1=0 A2/1=2 A1/2=7 A2/2=9 B1=11 B2=13')).toEqual(['cue-stray A1/2']);
  });
});

describe('the times of a recording', () => {
  it('run evenly between cues, and on at the pace beside', () => {
    expect(times('A1=4 A1/2=8 B1=14')).toEqual([4, 6, 8, 11, 14, 17, 20]);
  });

  it('follow from a start and a tempo: a reel’s beat is a minim, half of these bars', () => {
    const steady = { start: 2, tempo: 60 };
    expect(clipTimes(tune, performance, { cues: [], steady }, defaultBowing)).toEqual([
      2, 4, 6, 8, 10, 12, 14,
    ]);
  });

  it('are unknown with fewer than two cues', () => expect(times('A1=4')).toBeNull());
});
