import { alignChildren, type Gap } from './align-children.ts';

/**
 * Brings a page that is open up to date with its new text without loading it anew, so that nothing
 * jumps: where the reader has scrolled to, what is folded open, what sounds.
 *
 * A page as it stands is no longer the page as it was read, since its scripts have filled it. So a
 * copy is kept of it as it was read, each node of the copy with its twin in the page. The copy is
 * compared with the new text, and what differs is changed in both. For
 *
 *     copy  main ( h1 "Wet rope"  p "Slowly."   section.player … )
 *     new   main ( h1 "Wet rope"  p "Slower!"   section.player … )
 *
 * the children before and after the `p` are equal, so only its text is put in, and the player goes
 * on. Where a change lies in or around something that a script has taken hold of, the page cannot
 * be patched and is loaded anew.
 */
export interface PageTwins {
  /** The body as it was read. */
  readonly read: HTMLElement;
  readonly twins: WeakMap<Node, Node>;
}

/** Keeps the body as it is now. Call it before any script has changed it. */
export function keepTwins(body: HTMLElement): PageTwins {
  const read = body.cloneNode(true) as HTMLElement;
  const twins = new WeakMap<Node, Node>();
  pair(read, body, twins);
  dropUnscripted(read);
  return { read, twins };
}

function pair(read: Node, live: Node, twins: WeakMap<Node, Node>): void {
  twins.set(read, live);
  const lives = [...live.childNodes];
  [...read.childNodes].forEach((child, i) => {
    const twin = lives[i];
    if (twin) pair(child, twin, twins);
  });
}

/** What is for browsers without script is read otherwise by a page and by `DOMParser`. */
function dropUnscripted(body: HTMLElement): void {
  for (const part of [...body.querySelectorAll('noscript')]) part.remove();
}

/** A gap, and the node of the copy in which it is. */
interface Change extends Gap {
  readonly parent: Node;
}

/** Whether the page could be brought up to date with the body of its new text. */
export function patchPage({ read, twins }: PageTwins, next: HTMLElement): boolean {
  dropUnscripted(next);
  // What the body says of the whole page, its scripts have gone by.
  if (!sameShell(read, next)) return false;
  const changes = changesInside(read, next);
  if (changes === null || !changes.every(change => stands(change, twins))) return false;
  for (const { parent, remove, add, after } of changes) {
    for (const node of remove) {
      (twins.get(node) as ChildNode).remove();
      (node as ChildNode).remove();
    }
    const copies = add.map(node => document.importNode(node, true));
    const lives = copies.map(node => node.cloneNode(true));
    copies.forEach((copy, i) => {
      pair(copy, lives[i] as Node, twins);
    });
    insertAfter(parent, after, copies);
    insertAfter(twins.get(parent) as Node, after && (twins.get(after) as Node), lives);
  }
  return true;
}

function insertAfter(parent: Node, after: Node | null, nodes: readonly Node[]): void {
  if (after) (after as ChildNode).after(...nodes);
  else (parent as ParentNode & Node).prepend(...nodes);
}

/** The changes that make a node of the copy equal to a new one of the same kind; null: none can. */
function changesOf(old: Node, next: Node): readonly Change[] | null {
  if (old.isEqualNode(next)) return [];
  return isHeld(old) ? null : changesInside(old, next);
}

function changesInside(old: Node, next: Node): readonly Change[] | null {
  const gaps = alignChildren([...old.childNodes], [...next.childNodes]);
  const changes = gaps?.map(gap => changesIn(gap, old)) ?? [null];
  return changes.some(some => some === null) ? null : changes.flatMap(some => some ?? []);
}

/** A gap closed: by changes inside its nodes where each may stay, else by other nodes. */
function changesIn(gap: Gap, parent: Node): readonly Change[] | null {
  const { remove, add } = gap;
  if (remove.length === add.length && remove.every((node, i) => sameShell(node, add[i]))) {
    const inner = remove.map((node, i) => changesOf(node, add[i] as Node));
    return inner.some(changes => changes === null) ? null : inner.flatMap(changes => changes ?? []);
  }
  return [...remove, ...add].some(holdsHeld) ? null : [{ ...gap, parent }];
}

/** Elements of the same name and attributes, whatever they contain. */
function sameShell(a: Node, b: Node | undefined): boolean {
  return (
    a instanceof Element &&
    b instanceof Element &&
    a.cloneNode(false).isEqualNode(b.cloneNode(false))
  );
}

/** Scripts find what is theirs by its data, and forms by what they are. */
const isHeld = (node: Node): boolean =>
  node instanceof Element &&
  (node.matches('form, button, input, select, audio, video') ||
    node.getAttributeNames().some(name => name.startsWith('data-')));

const holdsHeld = (node: Node): boolean =>
  isHeld(node) || (node instanceof Element && [...node.querySelectorAll('*')].some(isHeld));

/** Whether all that a change touches still is in the page where it was read. */
function stands({ parent, remove, after }: Change, twins: WeakMap<Node, Node>): boolean {
  const live = twins.get(parent);
  return (
    live?.isConnected === true &&
    [...remove, ...(after ? [after] : [])].every(node => twins.get(node)?.parentNode === live)
  );
}
