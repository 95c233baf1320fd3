/** Whether a text is a colour such as `#1f5a50`, in either case. */
export const isHexColour = (text: string): boolean => /^#[0-9a-f]{6}$/i.test(text);

/**
 * Contrast ratio of two colours, `#rrggbb`, from 1 to 21 for black and white (WCAG 2.2, "contrast
 * ratio" and "relative luminance").
 */
export function contrastOf(a: string, b: string): number {
  const [dark = 0, light = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (light + 0.05) / (dark + 0.05);
}

function luminance(colour: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map(at => {
    const c = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
