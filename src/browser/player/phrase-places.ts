/** Where the phrases of a tune stand on the page, by index in its map. */
export interface PhrasePlaces {
  /** The notation that stands with the player. */
  readonly notation: Element | null;
  readonly staves: ReadonlyMap<number, readonly Element[]>;
  /** The map's blocks, wherever on the page. */
  readonly blocks: ReadonlyMap<number, readonly Element[]>;
}

/** Finds the phrases of the tune `id`: in the notation of the player's section, and in its map. */
export function phrasePlaces(form: HTMLFormElement, id: string): PhrasePlaces {
  const notation = form.closest('section')?.querySelector('.notation') ?? null;
  const staves = new Map<number, Element[]>();
  for (const stave of notation?.querySelectorAll<HTMLElement>('.stave[data-phrase]') ?? []) {
    const phrase = Number(stave.dataset.phrase);
    staves.set(phrase, [...(staves.get(phrase) ?? []), stave]);
  }
  const blocks = new Map<number, Element[]>();
  for (const link of document.querySelectorAll<HTMLAnchorElement>('.map a.phrase')) {
    const cell = decodeURIComponent(link.hash.slice(1));
    const phrase = [...staves].find(([, all]) => all.some(s => s.id === cell))?.[0];
    if (cell === '' || phrase === undefined || !cell.startsWith(`${id}-`)) continue;
    // The notation stands on this page: the link need not leave it.
    link.setAttribute('href', `#${cell}`);
    blocks.set(phrase, [...(blocks.get(phrase) ?? []), link]);
  }
  return { notation, staves, blocks };
}

/** Every place of every phrase. */
export const allPlaces = ({
  staves,
  blocks,
}: PhrasePlaces): readonly { readonly phrase: number; readonly place: Element }[] =>
  [...staves, ...blocks].flatMap(([phrase, places]) => places.map(place => ({ phrase, place })));
