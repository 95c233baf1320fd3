import type { MeasureText } from './drawing-surface.ts';

/**
 * Widths of a plain sans in thousandths of its size, by class of character: near enough for chord
 * symbols, endings and part names, which are short and stand apart.
 */
export const measureText: MeasureText = (text, size) => ({
  width: (size * [...text].reduce((sum, c) => sum + widthOf(c), 0)) / 1000,
  height: size * 1.2,
});

function widthOf(c: string): number {
  if (/[ijl.,'’:;|!()[\]]/.test(c)) return 280;
  if (/[frt\s/-]/.test(c)) return 350;
  if (/[mwMW]/.test(c)) return 850;
  if (/[A-Z#♯]/.test(c)) return 640;
  return 540;
}
