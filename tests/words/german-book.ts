/**
 * A small book in German, with every kind of block. The tune, the people and the town are invented
 * for this project; its second part has B flat and B in it, which tell the names of notes apart.
 */
export const germanBook = (settings: string): Readonly<Record<string, string>> => ({
  'bowbook.yaml': `title: Geigenabend am Eiskeller
teacher: Wenna Harkle
about: Stücke eines Abendkurses
language: de
rights: own
${settings}`,
  'lessons/2026-09-15-der-eiskeller.md': `---
summary: Wir lernen den ersten Teil.
---

# Der Eiskeller

:::tune{#eiskeller learned-from="Wenna Harkle"}
Ein Stück für kalte Tage[^1].

\`\`\`abc
X:1
T:Der Eiskeller
C:Wenna Harkle
R:reel
M:4/4
L:1/8
K:G
|:G2|(B2 AB) dBAB|GABd e2 dB|(A2 GA) BAGE|D2 EG A2 G2:|
|:B2|dBGB d2 (ef)|gedB A2 GA|_B2 AG FGAF|G2 BG G2:|
\`\`\`
:::

:::anchor{#schluss of=eiskeller bars="B4" start=up}
Hier spielen alle gleich.
:::

::plan{to=schluss}

::map{of=eiskeller}

::drill{kind=call of=eiskeller}

::drill{kind=gaps of=eiskeller}

::drill{kind=count of=eiskeller}

::drill{kind=start of=eiskeller level=advanced}

::drill{kind=into of=eiskeller to=schluss}

::drill{kind=arrive of=eiskeller to=schluss}

::drill{kind=same of=eiskeller}

::clip[So klang es im Herbst]{link=https://example.org/eiskeller of=eiskeller}

:::private
Nicht zu schnell anfangen.
:::

So beginnt es: :notes[G (B_B) A]{from=up}, dann :stroke[down].

[^1]: Und für warme.
`,
  'lessons/2026-09-22-die-treppe.md': `# Die Treppe

:::tune{#treppe show=ear}
\`\`\`abc
X:1
T:Die Treppe
R:jig
M:6/8
L:1/8
K:Bm
|:B|fBB fBB|fgf edc|dcB AFA|B3 B2:|
\`\`\`
:::

:::set{#abend title="Zum Schluss des Abends"}
- eiskeller × 2
- treppe
:::
`,
});
