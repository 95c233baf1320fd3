import type { Level } from '../bowing/settings.ts';
import type { DrillKind } from '../drills/drill.ts';
import type { DrillSource } from '../drills/drill-source.ts';
import type { NoteNames } from '../music/note-names.ts';
import type { Direction } from '../music/tune.ts';

/** What a drill is told from: its tune, and what the book calls its notes. */
export interface ToldSource extends DrillSource {
  readonly names: NoteNames;
}

/**
 * A drill in words: what a page or a sheet shows, in the order in which it is read. All that is
 * needed to ask it, to check an answer and to say why; the language is the words' own.
 */
export interface ToldDrill {
  readonly kind: DrillKind;
  readonly level: Level;
  readonly title: string;
  /** What this level asks for. */
  readonly levelSays: string;
  readonly question: readonly string[];
  readonly chains: readonly ToldChain[];
  readonly items: readonly ToldItem[];
  /** To be mended by hand on the last chain; no items then. */
  readonly mend: ToldMend | null;
  /** The whole answer, a sentence each. */
  readonly answer: readonly string[];
  /** One sentence. */
  readonly why: string;
}

/** What a kind of drill says; its name and level are added to all alike. */
export type Telling = Omit<ToldDrill, 'kind' | 'level' | 'title' | 'levelSays'>;

/** Notes as beads on a string. */
export interface ToldChain {
  /** What they are; null where the question says it. */
  readonly name: string | null;
  readonly beads: readonly Bead[];
}

export interface Bead {
  /** Event index. */
  readonly event: number;
  /** As under the staff, octaves told apart; null for a note left out. */
  readonly letter: string | null;
  /** For ears: "note 3 of A6, F sharp, high 2 on D"; of a note left out, its place. */
  readonly said: string;
  /** Finger and string, short, "2 D"; null where it is not shown. */
  readonly where: string | null;
  /** The way the bow goes, its sign over the first bead of a slur; null where it is not shown. */
  readonly stroke: Direction | null;
  /** Held together with the bead before by a slur. */
  readonly slurred: boolean;
  /** The bar that it opens; null within one. */
  readonly bar: string | null;
  /** It is the anchor's. */
  readonly anchored: boolean;
}

export interface ToldItem {
  readonly ask: string;
  /** buttons: one press answers. list: chosen from a list, then checked with the others. */
  readonly form: 'buttons' | 'list';
  readonly choices: readonly ToldChoice[];
  readonly right: number;
  /** Said when it is right; null where the drill's own sentence says it. */
  readonly why: string | null;
}

export interface ToldChoice {
  readonly label: string;
  readonly beads: readonly Bead[] | null;
  /** Said when it is chosen and wrong. */
  readonly not: string;
}

/** The joins of the last chain may be changed, one of them. */
export interface ToldMend {
  /** Events before which the bow may lift. */
  readonly lifts: readonly number[];
}
