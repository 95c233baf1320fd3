/** What abcjs knows of a line of music after laying it out: the parts that we read. */
export interface StaffGroup {
  readonly voices: readonly Voice[];
  readonly staffs: readonly { top: number; bottom: number }[];
  /** Right edge. */
  readonly w: number;
  readonly startx: number;
}

export interface Voice {
  readonly children: readonly AbsoluteElement[];
  readonly otherchildren: readonly OtherElement[];
  /** A group of beamed notes each, with the bands of its beams; and what else abcjs keeps there. */
  readonly beams?: readonly {
    readonly stemsUp?: boolean;
    readonly beams?: readonly { startX: number; endX: number }[];
  }[];
}

/** A note, rest, bar line or sign with all that hangs on it. */
export interface AbsoluteElement {
  readonly type: string;
  readonly abcelem: AbcElement;
  readonly x: number;
  readonly w: number;
  /** Least room after it, beyond its own width. */
  minspacing: number;
  readonly heads: readonly RelativeElement[];
  readonly children: readonly RelativeElement[];
  setX(x: number): void;
}

export interface RelativeElement {
  readonly type: string;
  readonly c: string | null;
  readonly name: string;
  readonly x: number;
  readonly w: number;
  pitch: number;
  readonly pitch2?: number;
  readonly top?: number;
  readonly bottom?: number;
  readonly scalex?: number;
  /** Thickness of a stem or a bar line; negative where it grows to the left. */
  linewidth?: number;
}

/** Slurs, ties, endings, triplets. */
export interface OtherElement {
  readonly type?: string;
  pitch?: number;
}

/** An element of abcjs's parse. */
export interface AbcElement {
  readonly el_type: string;
  readonly type?: string;
  readonly startChar?: number;
  readonly endChar?: number;
  readonly rest?: { readonly type: string };
  readonly decoration?: readonly string[];
  readonly gracenotes?: readonly object[] | undefined;
  readonly startEnding?: string;
  readonly endEnding?: boolean;
}
