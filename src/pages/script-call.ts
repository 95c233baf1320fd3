/** Writes a classic script that calls a global function of the page's scripts with data. */
export const scriptCall = (name: string, data: unknown): string =>
  // Within a script file only the two line separators of Unicode could break a JSON literal.
  `${name}(${JSON.stringify(data).replace(/[\u2028\u2029]/g, sign =>
    sign === '\u2028' ? '\\u2028' : '\\u2029',
  )});\n`;
