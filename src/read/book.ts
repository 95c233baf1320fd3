import type { Root } from 'hast';
import type { BowingSettings, Level } from '../../shared/bowing/settings.ts';
import type { ClipCue } from '../../shared/clips/clip-cue.ts';
import type { DrillKind } from '../../shared/drills/drill.ts';
import type { Tuning } from '../../shared/fingering/fingering.ts';
import type { BarRange } from '../../shared/music/bar-range.ts';
import type { NoteNames } from '../../shared/music/note-names.ts';
import type { Direction, TuneType } from '../../shared/music/tune.ts';
import type { Place, Problem } from '../../shared/problem.ts';
import type { Rights } from '../../shared/rights.ts';
import type { HookName } from '../../shared/sections/hook-names.ts';
import type { LabelRequest } from '../../shared/sections/phrase-labels.ts';
import type { PageHashes } from './page-hash.ts';

/** A book as its teacher wrote it, checked. */
export interface Book {
  /** Folder of the book. */
  readonly root: string;
  readonly settings: BookSettings;
  /** Newest lesson first. */
  readonly lessons: readonly Page[];
  readonly tunePages: readonly Page[];
  readonly pages: readonly Page[];
  /** Paths of media files, from the book's folder, with forward slashes. */
  readonly media: readonly string[];
  /** Those of `media` that nothing published refers to. */
  readonly privateMedia: readonly string[];
  readonly problems: readonly Problem[];
}

export interface BookSettings {
  readonly title: string;
  readonly teacher: string | null;
  readonly about: string | null;
  /** BCP 47. */
  readonly language: string;
  readonly paper: 'a4' | 'letter';
  readonly tuning: Tuning;
  readonly bowing: BowingSettings;
  /** Rights of tunes that say nothing of their own. */
  readonly rights: Rights | null;
  /** What this book calls a cut. */
  readonly cutName: string;
  /** Address at which the site will stand, ending in `/`; null where the teacher has not said. */
  readonly site: string | null;
  /** null: the book's looks are Bowbook's own. */
  readonly theme: Theme | null;
  /** What the notes are called in words: B and B flat, H and B, or si and si flat. */
  readonly noteNames: NoteNames;
  /** What to make for paper, as PDF. */
  readonly print: readonly PrintKind[];
  /** Which of the five fading steps each tune's sheets are made in, from 1, everything, to 5, the title. */
  readonly steps: readonly SheetStep[];
}

/** Colours as `#rrggbb`, and a picture in `media`; null for what the teacher leaves to us. */
export interface Theme {
  readonly ink: string | null;
  readonly paper: string | null;
  readonly accent: string | null;
  readonly picture: string | null;
}
export type PrintKind = 'book' | 'sheets' | 'pocket';
export type SheetStep = 1 | 2 | 3 | 4 | 5;

/** null, rights unknown: notation and sound are withheld from the published site. */
export type { Rights };

/** One Markdown file. */
export interface Page {
  readonly kind: 'lesson' | 'tune' | 'page';
  /** From the book's folder, with forward slashes: `lessons/2026-09-15-first-evening.md`. */
  readonly file: string;
  /** Its name in links: `2026-09-15-first-evening`. */
  readonly slug: string;
  readonly title: string;
  /** `2026-09-15`, of lessons. */
  readonly date: string | null;
  /** Its front matter says that it is unfinished: only a book read with its drafts has it. */
  readonly draft?: true;
  readonly summary: string | null;
  /**
   * The body, sanitised, with an element `bow-block` (property `dataBlock`, an index as string
   * into `blocks`) where each block stands.
   */
  readonly body: Root;
  readonly blocks: readonly Block[];
  readonly hashes: PageHashes;
}

/** Containers hold a body of their own, whose `bow-block`s point into the page's `blocks` too. */
export type Block =
  | TuneBlock
  | ShowTuneBlock
  | AnchorBlock
  | PlanBlock
  | MapBlock
  | DrillBlock
  | ClipBlock
  | SetBlock
  | PrivateBlock
  | StrokeBlock
  | NotesBlock;

interface BlockBase {
  readonly place: Place;
  /** It stands inside a private note: nothing outside that note may tell of it. */
  readonly hidden?: true;
}

/** Defines a tune. */
export interface TuneBlock extends BlockBase {
  readonly kind: 'tune';
  readonly id: string;
  readonly abc: Fence;
  readonly rights: Rights | null;
  /** Who it was learned from, and where. */
  readonly learnedFrom: string | null;
  readonly version: string | null;
  readonly type: TuneType | null;
  readonly start: Direction | null;
  readonly restart: 'part' | null;
  readonly tuning: Tuning | null;
  readonly unit: number | null;
  /** What the teacher calls the phrases. */
  readonly labels: LabelRequest | null;
  /** `show=ear`: by ear first, the notation hidden until it is asked for. */
  readonly byEar: boolean;
  /** The story around the fence. */
  readonly body: Root;
}

export interface Fence {
  readonly text: string;
  readonly file: string;
  /** Line of the file on which `text` begins, from 1. */
  readonly line: number;
  readonly indent: number;
}

/** Shows a tune defined elsewhere. `of` is known to name a tune of the book. */
export interface ShowTuneBlock extends BlockBase {
  readonly kind: 'show-tune';
  readonly of: string;
  readonly bars: BarRange | null;
  readonly byEar: boolean;
}

export interface AnchorBlock extends BlockBase {
  readonly kind: 'anchor';
  readonly id: string;
  readonly of: string;
  readonly bars: BarRange;
  readonly start: Direction | null;
  /** Which facts to show of what stands out in it; null where the teacher leaves it to us. */
  readonly hooks: readonly HookName[] | null;
  /** Why. */
  readonly body: Root;
}

export interface PlanBlock extends BlockBase {
  readonly kind: 'plan';
  /** Id of an anchor of the book. */
  readonly to: string;
  readonly level: Level | null;
  readonly preset: string | null;
}

export interface MapBlock extends BlockBase {
  readonly kind: 'map';
  readonly of: string;
  /** Bars a phrase in this map alone; null for the tune's own. */
  readonly unit: number | null;
}

/** `::drill{kind=gaps of=id}`: a drill on a tune, with its answer. */
export interface DrillBlock extends BlockBase {
  readonly kind: 'drill';
  readonly drill: DrillKind;
  readonly of: string;
  /** The anchor of that tune that the drill is about; null where the drill may choose. */
  readonly to: string | null;
  /** null for the book's own. */
  readonly level: Level | null;
  /** Same seed, same drill. */
  readonly seed: number;
}

/** A recording, cued to the map. */
export interface ClipBlock extends BlockBase {
  readonly kind: 'clip';
  readonly of: string;
  /** What the recording is called. */
  readonly words: string;
  /** Media file of the book, from its folder; null where the recording is a link to elsewhere. */
  readonly src: string | null;
  /** Address of a recording hosted elsewhere: a link that the student opens. */
  readonly link: string | null;
  /** `at="A1=0:04 A1/2=0:21"`: seconds at which a bar begins, in the order written. */
  readonly cues: readonly ClipCue[];
  /** `start=0:04 tempo=84`: where the tune begins, and its beats a minute; instead of cues. */
  readonly steady: { readonly start: number; readonly tempo: number } | null;
  /** A learner is heard or seen. Without `consent` it is not published. */
  readonly learner: boolean;
  /** Who consented, and when, in the teacher's words, which are not published. */
  readonly consent: string | null;
  /** No learner is heard in it, or consent is given. Whether it is shown hangs on its tune too. */
  readonly published: boolean;
}

/** Tunes played one after another. */
export interface SetBlock extends BlockBase {
  readonly kind: 'set';
  readonly id: string;
  readonly title: string;
  readonly tunes: readonly { readonly of: string; readonly times: number }[];
  /** What the teacher wrote besides the list. */
  readonly body: Root;
}

export interface PrivateBlock extends BlockBase {
  readonly kind: 'private';
  readonly body: Root;
}

/** Inline: a stroke sign in running text. */
export interface StrokeBlock extends BlockBase {
  readonly kind: 'stroke';
  readonly direction: Direction;
}

/** Inline: a note chain in ABC, drawn with strings, fingers and strokes. */
export interface NotesBlock extends BlockBase {
  readonly kind: 'notes';
  /** The ABC as written between the brackets. */
  readonly abc: string;
  readonly from: Direction | null;
}
