import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { create } from 'fontkit';
import { got } from '../../shared/must.ts';
import { unwrapFont } from './unwrap-font.ts';

/** The fonts of a print, all under the SIL Open Font Licence, and the characters they hold. */
export interface PrintFonts {
  readonly files: readonly Buffer[];
  /** Family names in the order in which they are asked for a character. */
  readonly reading: readonly string[];
  readonly plain: readonly string[];
  /** Whether some font has a character. */
  has(character: string): boolean;
}

/** Families of the site, with their faces. The package has one file for each face and script. */
const families = [
  { font: 'brygada-1918', name: 'Brygada 1918', faces: ['400-normal', '400-italic', '700-normal'] },
  { font: 'andika', name: 'Andika', faces: ['400-normal', '700-normal'] },
] as const;
const scripts = ['latin', 'latin-ext', 'cyrillic', 'cyrillic-ext', 'vietnamese', 'greek'] as const;

/**
 * Font that is part of the typesetter, under the same licence. It comes last, for what neither family of the
 * site has: sharps, flats and naturals.
 */
const signsFont = 'Libertinus Serif';
const signs = '♯♭♮';

/** Characters without a glyph: spaces, soft hyphens and joiners. */
const blank = /^[\s\u00ad\u200b-\u200d\u2060]$/u;

let loaded: PrintFonts | null = null;

/** Reads the fonts, once in a process. Throws where the installation lacks one. */
export function printFonts(packageRoot: string): PrintFonts {
  loaded ??= readFonts(packageRoot);
  return loaded;
}

function readFonts(packageRoot: string): PrintFonts {
  const held = new Map<string, Set<number>>();
  const files: Buffer[] = [];
  const names = new Map<string, string[]>();
  for (const { font, name, faces } of families) {
    const folder = join(packageRoot, 'node_modules', '@fontsource', font, 'files');
    for (const script of scripts) {
      const family = script === 'latin' ? name : `${name} ${script}`;
      const found = faces.filter(f => existsSync(join(folder, `${font}-${script}-${f}.woff`)));
      if (script === 'latin' && found.length < faces.length) {
        throw new Error(`the font ${name} is not installed in ${folder}`);
      }
      for (const face of found) {
        const file = unwrapFont(
          readFileSync(join(folder, `${font}-${script}-${face}.woff`)),
          family,
        );
        files.push(file);
        const characters = create(file).characterSet;
        // Text may be set in any face, so a character counts only where all faces have it.
        const key = `${name} ${face}`;
        held.set(key, new Set([...(held.get(key) ?? []), ...characters]));
      }
      if (found.length > 0) names.set(name, [...(names.get(name) ?? []), family]);
    }
  }
  const faces = [...held.values()];
  const [reading = [], plain = []] = families.map(f => names.get(f.name) ?? []);
  return {
    files,
    reading: [...reading, signsFont],
    plain: [...plain, signsFont],
    has: character =>
      blank.test(character) ||
      signs.includes(character) ||
      faces.every(face => face.has(got(character.codePointAt(0), 'character'))),
  };
}
