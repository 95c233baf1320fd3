import type { TuneData } from '../../shared/tune-data.ts';

/** A tune as the script that the pages load: one call, its data as JSON. */
export const tuneDataScript = (data: TuneData): string =>
  // Within a script file only the two line separators of Unicode could break a JSON literal.
  `bowbookTune(${JSON.stringify(data)
    .replace(/\u2028/g, '\\u2028')
    .replace(/\u2029/g, '\\u2029')});\n`;
