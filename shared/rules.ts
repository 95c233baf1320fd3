/**
 * The catalogue of rules: for each what may be wrong with a book, how much it weighs, and the facts that
 * its sentence is made from. `shared/words/` holds a sentence for each and `docs/rules/` a page; a rule
 * without a sentence does not compile, and one without a page fails `tests/rules/rules.test.ts`.
 */

/** error: nothing is written. warning: built, and said. note: worth knowing. */
export type Severity = 'error' | 'warning' | 'note';

/** `facts` is for the compiler alone, and is never there when the program runs. */
interface RuleSpec<F extends object> {
  readonly severity: Severity;
  readonly facts?: F;
}

/** What was found and what there may be. */
interface Amount {
  readonly found: number;
  readonly most: number;
}

type None = Readonly<Record<never, never>>;

const error = <F extends object = None>(): RuleSpec<F> => ({ severity: 'error' });
const warning = <F extends object = None>(): RuleSpec<F> => ({ severity: 'warning' });
const note = <F extends object = None>(): RuleSpec<F> => ({ severity: 'note' });

export const rules = {
  // The settings and the files of a book.
  'settings-missing': error(),
  'yaml-broken': error(),
  'yaml-repeated': error(),
  'setting-unknown': error<{ under: string }>(),
  'setting-value': error<{ setting: string }>(),
  'setting-missing': error<{ setting: string }>(),
  'colour-faint': warning<{ name: string; paper: string; contrast: number; least: number }>(),
  'picture-missing': error(),
  'file-name-empty': error(),
  'file-name-repeated': error<{ other: string }>(),
  'file-unread': warning(),
  'outside-the-book': error(),
  'media-name': warning<{ sign: string }>(),
  'media-name-impossible': error<{ sign: string }>(),
  'media-runs': error(),

  // Pages and their prose.
  'front-matter-unclosed': error(),
  'rights-twice': error(),
  'lesson-date-missing': error(),
  'tune-page-empty': warning(),
  'fence-stray': error(),
  'fence-unclosed': error(),
  'fence-length': error<{ name: string; opened: number }>(),
  'fence-nested': error<{ around: string; opened: number; colons: number }>(),
  'fence-indented': error(),
  'fence-unread': error<{ why: 'space' | 'name' | 'rest' }>(),
  'fence-in-code': error<{ opened: number }>(),
  'fence-in-text': error(),
  'fence-ambiguous': error<{ name: string; opened: number; closed: number }>(),
  'private-unread': error(),
  'code-fence-unclosed': error(),
  'code-fence-in-code': error<{ opened: number }>(),
  'comment-broken': error(),
  'reference-into-private': error(),
  'defined-in-private': error(),
  'footnote-unknown': warning(),
  'html-dropped': warning(),
  'link-unsafe': warning(),
  'image-elsewhere': warning(),
  'link-missing': error(),
  'link-to-unfinished': error(),
  'link-to-no-tune': error(),

  // Blocks and their attributes.
  'block-unknown': error(),
  'block-in-prose': error(),
  'attribute-unknown': error<{ block: string; name: string }>(),
  'attribute-repeated': error<{ block: string; name: string }>(),
  'attribute-empty': error<{ block: string; name: string }>(),
  'attribute-missing': error<{ block: string; name: string }>(),
  'attribute-value': error<{ block: string; name: string }>(),
  'label-missing': error<{ block: string }>(),
  'label-unwanted': error<{ block: string }>(),
  'of-missing': error<{ block: string }>(),
  'of-unclear': error<{ block: string }>(),
  'id-repeated': error<{ file: string; line: number }>(),
  'tune-unknown': error(),
  'anchor-unknown': error(),
  'tune-without-abc': error(),
  'tune-twice': error(),
  'tune-without-id': error(),
  'abc-meta': error(),
  'abc-file-header': warning(),
  'stroke-unknown': error(),
  'drill-anchor': error<{ anchor: string; tune: string }>(),
  'set-without-tunes': error(),
  'set-item': error(),
  'set-times': error(),
  'clip-twice': error<{ block: string; name: string }>(),
  'clip-cued-twice': error<{ block: string; name: string }>(),
  'clip-elsewhere': error(),
  'clip-missing': error(),
  'clip-unplayable': error(),
  'clip-link': error(),
  'clip-consent': warning(),
  'cue-unread': error(),

  // Recordings against their tunes.
  'cue-bar': warning(),
  'cue-pass': warning<{ bar: string; pass: number }>(),
  'cue-overlap': warning<{ other: string; from: number; seconds: number }>(),
  'cue-backwards': warning<{ other: string; from: number; seconds: number }>(),
  'cue-stray': warning<{
    seconds: number;
    expected: number;
    percent: number;
    way: 'late' | 'early';
  }>(),

  // The ABC of a tune. `note` names a note, as in `A1:3`.
  'abc-unreadable': warning(),
  'abc-warning': warning(),
  'abc-blank-line': warning(),
  'no-notes': warning<{ title: string }>(),
  'several-voices': warning(),
  'part-unknown': warning(),
  'too-long-to-play': warning<{ notes: number }>(),
  'bar-length': warning<{ bar: string; meter: string; by: 'long' | 'short' }>(),
  'endings-mismatch': warning<{ bar: string }>(),
  'slur-open': warning<{ note: string }>(),
  'slur-not-opened': warning<{ note: string }>(),
  'slur-over-repeat': warning<{ note: string; bar: string }>(),
  'slur-over-rest': warning<{ note: string; bar: string }>(),
  'slur-on-rest': warning<{ bar: string }>(),
  'mark-inside-slur': warning<{ note: string; mark: string; first: string }>(),
  'mark-on-tied-note': warning<{ note: string; mark: string }>(),
  'tie-to-nothing': warning<{ note: string }>(),
  'accidental-elsewhere': note<{ note: string }>(),

  // Bowing, fingering, maps and drills.
  'stroke-conflict': warning<{
    note: string;
    passes: string;
    since: number;
    counted: string;
    /** The first edit that mends it, as `editText` writes it; empty where there is none. */
    mend: string;
    /** The same as ABC, as `editAbc` writes it. */
    abc: string;
    mends: number;
  }>(),
  'anchor-not-in-tune': error<{ anchor: string; bars: string }>(),
  'anchor-without-stroke': error<{ anchor: string; bars: string }>(),
  'anchor-against-mark': warning<{
    anchor: string;
    /** The anchor's first note, and the note with the sign. */
    note: string;
    sign: string;
    /** Strokes from the one to the other; 0 where the sign stands on the anchor's first note. */
    strokes: number;
  }>(),
  'anchor-not-reached': warning<{ anchor: string; note: string }>(),
  'slur-into-anchor': warning<{ anchor: string; note: string }>(),
  'arrival-missed': warning<{
    anchor: string;
    note: string;
    passes: string;
    /** The first edit that mends it, as `editText` writes it; empty where there is none. */
    mend: string;
    /** The same as ABC, as `editAbc` writes it. */
    abc: string;
    mends: number;
  }>(),
  'finger-mark': warning<{ note: string; pitch: string }>(),
  'chord-strings': warning<{ note: string; strings: 'apart' | 'too-few' }>(),
  'out-of-reach': warning<{
    note: string;
    pitch: string;
    times: number;
    where: 'below' | 'above';
    /** How to take it with a shift, where it lies above. */
    position?: number;
    finger?: number;
    string?: number;
  }>(),
  'labels-count': warning<{ given: number; phrases: number; bars: string }>(),
  /** `why`: a `NoDrill`. */
  'drill-impossible': warning<{ tune: string; why: string }>(),

  // What a build, an import, an export or a print leaves out.
  'rights-unknown': warning<{ tune: string }>(),
  'drawing-failed': warning<{ tune: string }>(),
  'site-unwritable': error<{ reason: string }>(),
  'source-gone': error<{ reason: string }>(),
  'unfinished-needed': warning<{ rule: string }>(),
  'print-character': warning<{ where: string }>(),
  'print-picture': warning<{ why: 'kind' | 'missing' | 'broken' }>(),
  'print-long': note<{ tune: string }>(),
  'import-encoding': note(),
  'import-no-tune': warning(),
  'import-words-left': note(),
  'import-same-notes': note<{ title: string; other: string; where: string }>(),
  'import-same-title': note<{ title: string; other: string; where: string }>(),
  'import-same-twice': note<{ title: string; other: string; where: string }>(),
  'export-withheld': warning<{ tune: string }>(),
  'export-unreadable': warning<{ tune: string }>(),

  // What is too much; the numbers are those of `limits`.
  'tune-past-limit': warning<
    Amount & {
      what:
        | 'length'
        | 'line'
        | 'notes'
        | 'meter'
        | 'chord'
        | 'graces'
        | 'note-length'
        | 'rest-bars';
    }
  >(),
  'tunes-past-limit': warning<Amount>(),
  'page-past-limit': error<Amount>(),
  'lines-past-limit': error<Amount>(),
  'line-past-limit': error<Amount>(),
  'nested-past-limit': error<{ most: number }>(),
  'table-past-limit': error<Amount>(),
  'link-past-limit': warning<Amount>(),
  'media-past-limit': error<Amount & { what: 'picture' | 'recording' }>(),
  'files-past-limit': error<Amount>(),
  'abc-past-limit': warning<Amount>(),
} as const;

/** Kebab-case name of a rule. */
export type Rule = keyof typeof rules;

export const ruleNames = Object.keys(rules) as readonly Rule[];

/** The facts that a rule's sentence is made from. */
export type FactsOf<R extends Rule> = R extends Rule
  ? (typeof rules)[R] extends RuleSpec<infer F>
    ? Readonly<F>
    : never
  : never;
