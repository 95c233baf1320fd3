import type { Pitch } from '../music/pitch.ts';

const signs: Readonly<Record<number, string>> = { [-2]: '♭♭', [-1]: '♭', 1: '♯', 2: '♯♯' };

/**
 * The letter of a note with its sign, for those who play without notation: no key signature stands
 * before it, and its string and finger tell the octave.
 */
export const plainLetter = ({ letter, alter }: Pitch): string => letter + (signs[alter] ?? '');
