import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/**
 * A book written to break out of its pages: in every place that takes words, each of these is tried.
 * `ran(…)` is a function that the test puts into every page; whatever calls it has run. What asks
 * for `evil.example` has reached out. Forms are those of OWASP's guide to cross-site scripting, and of
 * the languages that a site is written in.
 */
export const payloads: readonly ((n: string) => string)[] = [
  n => `<script>ran('${n}')</script>`,
  n => `"><img src=x onerror=ran('${n}')>`,
  n => `'><svg onload=ran('${n}')><use href=https://evil.example/#x>`,
  n => `</title></script></style></textarea><script>ran('${n}')</script>`,
  n =>
    `" onmouseover="ran('${n}')" autofocus onfocus="ran('${n}')" style="background:url(https://evil.example/)`,
  n => `");ran('${n}');//'); ran('${n}');//\u2028ran('${n}')//`,
  n =>
    `{{{ran}}}\${ran('${n}')}</script><!--<script>]]>--><iframe srcdoc="<script>parent.ran('${n}')</script>">`,
  n =>
    `<base href=https://evil.example/><meta http-equiv=refresh content="0;url=https://evil.example/${n}">`,
  n =>
    `#read("/etc/passwd") #import "@preview/evil:1.0.0": * $ ${n} \\ #eval("1") ] #link("javascript:ran()")`,
];

/** Links that must not be followed. */
export const links: readonly string[] = [
  "javascript:ran('link')",
  "JaVaScRiPt:ran('link')",
  'java&#x09;script:ran()',
  '&#106;avascript:ran()',
  'vbscript:ran()',
  'data:text/html,%3Cscript%3Eran()%3C/script%3E',
  'data:image/svg+xml,%3Csvg onload=ran()%3E',
  'blob:https://evil.example/1',
  'file:///etc/passwd',
  'filesystem:https://evil.example/',
  '//evil.example/x',
  '\\\\\\\\evil.example\\\\x',
];

export interface HostileBook {
  /** How many times something was tried in it. */
  readonly injections: number;
}

/** One place after another gets its own number, so that what ran can be told. */
export function writeHostileBook(root: string): HostileBook {
  let injections = 0;
  const put = (path: string, text: string): void => {
    mkdirSync(dirname(join(root, path)), { recursive: true });
    writeFileSync(join(root, path), text);
  };
  payloads.forEach((make, k) => {
    const at = (place: string): string => {
      injections += 1;
      return make(`${place}-${k}`);
    };
    const yaml = (place: string): string => JSON.stringify(at(place));
    const abc = (place: string): string => at(place).replace(/[\n\u2028]/g, ' ');
    const inQuotes = (place: string): string => abc(place).replaceAll('"', "'");
    const attribute = (place: string): string =>
      at(place)
        .replaceAll('\u2028', ' ')
        .replaceAll('"', '&quot;')
        .replaceAll('{', '&#123;')
        .replaceAll('}', '&#125;');
    const prose = (place: string): string => at(place).replace(/<!--|-->/g, '');
    const file = `${at('media name').replace(/[/\\\0]/g, ' ')}.png`;
    const clip = `${at('recording name').replace(/[/\\\0]/g, ' ')}.mp3`;
    put(`media/${file}`, 'no picture');
    put(`media/${clip}`, 'no sound');
    put(
      `tunes/h${k}.md`,
      `---
title: ${yaml('front title')}
summary: ${yaml('front summary')}
permission: ${yaml('permission')}
learned-from: ${yaml('learned-from')}
version: ${yaml('version')}
---

:::tune{#h${k}}
Story ${prose('story')}

\`\`\`abc
X:1
T:${abc('title')}
T:${abc('alias')}
C:${abc('composer')}
O:${abc('origin')}
S:${abc('source')}
B:${abc('book')}
Z:${abc('transcriber')}
N:${abc('notes')}
H:${abc('history')}
R:${abc('rhythm')}
D:${abc('discography')}
%%text ${abc('directive')}
%%begintext
${abc('text')}
%%endtext
M:2/4
L:1/8
Q:"${inQuotes('tempo')}" 1/4=90
P:AB
K:D
P:A
|:"${inQuotes('chord')}"A(B "^${inQuotes('above')}"cd)|"_${inQuotes('below')}"ef ga:|
w:${abc('lyric')}
P:B
|:b2 "@1,2 ${inQuotes('placed')}"af|[r:${abc('remark').replaceAll(']', ')')}]ed A2:|
W:${abc('words')}
\`\`\`
:::
`,
    );
    put(
      `lessons/2026-09-${10 + k}-h.md`,
      `---
title: ${yaml('lesson title')}
summary: ${yaml('lesson summary')}
---

## ${prose('heading')}

${prose('paragraph')} **${prose('strong')}** \`${at('code').replaceAll('`', '')}\`

> - ${prose('list')}

| a | b |
|---|---|
| ${prose('cell').replaceAll('|', '/')} | [${prose('link words').replaceAll(/[[\]]/g, '')}](https://example.org/ "${attribute('link title')}") |

![${prose('alt').replaceAll(/[[\]]/g, '')}](<../media/${encodeURIComponent(file)}> "${attribute('picture title')}")

[^n]

[^n]: ${prose('footnote')}

\`\`\`html ${at('code info').replaceAll('`', '').replaceAll('\u2028', '')}
${at('code block').replaceAll('`', '')}
\`\`\`

${links.map(link => `[${k}](<${link}>) `).join('\n')}

:notes[A (Bc)]{from=up} :notes[${prose('chain').replaceAll(/[[\]{}]/g, '')}]

::tune{of=h${k}}

:::anchor{#a${k} of=h${k} bars=B2 start=up}
${prose('anchor')}
:::

::plan{to=a${k} level=improver}

::map{of=h${k}}

::drill{kind=count of=h${k} seed=1}

::drill{kind=call of=h${k} seed=1}

::clip[${prose('clip words').replaceAll(/[[\]]/g, '')}]{src="media/${clip.replaceAll('"', '&quot;')}" of=h${k} at="A1=0:01" learner consent="${attribute('consent')}"}

::clip[Elsewhere]{link="https://example.org/${attribute('clip link').replaceAll(' ', '')}" of=h${k} start=0:01 tempo=90}

:::set{#s${k} title="${attribute('set title')}"}
- h${k} x2
- h${(k + 1) % payloads.length} x2
:::

:::private
PRIVATE-SENTINEL ${prose('private')}
:::
`,
    );
    put(
      `pages/${at('page name').replace(/[/\0]/g, ' ').slice(0, 80)}.md`,
      `# ${prose('page title')}\n\n${prose('page')}\n`,
    );
    injections += links.length;
  });
  const all = (place: string): string => {
    injections += payloads.length;
    return JSON.stringify(payloads.map((make, k) => make(`${place}-${k}`)).join(' '));
  };
  put(
    'bowbook.yaml',
    `title: ${all('book title')}
teacher: ${all('teacher')}
about: ${all('about')}
cut-name: ${all('cut name')}
site: https://example.org/hostile/
language: en
`,
  );
  return { injections };
}
