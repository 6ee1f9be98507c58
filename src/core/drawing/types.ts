// What a drawing is made from (places along the bore, lines across it) and what it is: lines of text.

/** A place along the bore where the instrument goes. */
export interface DrawnStation {
  readonly id: string
  /** Short name under the mark. Characters that are not plain ASCII are replaced. */
  readonly label: string
  /** The place in full, where a list has room for it; without it the label serves. */
  readonly words?: string
  /** Along ring travel: 0 is its head end limit, 1 its crank end limit; below 0 or above 1 lies outside it. */
  readonly at: number
  /** The reading already taken here, short text such as `9.5062`. Present means the place is filled in. */
  readonly value?: string
  /** Only outside ring travel: the place is in the counterbore, not on the unswept strip at bore diameter. */
  readonly inCounterbore?: boolean
}

/** A line of measurement across the bore, by two clock positions seen from the head end. 10.5 is half past ten. */
export interface DrawnAxis {
  readonly id: string
  readonly label: string
  readonly from: number
  readonly to: number
}

export interface DrawOptions {
  /** Only ASCII signs; the same information as with box signs. */
  readonly ascii: boolean
  /** Columns available. Below 24 there is no picture, only words. */
  readonly width: number
  /** Lines available; none stated means no limit. */
  readonly height?: number
}

export interface Drawing {
  /** One column per character, no trailing spaces, each at most the width asked for. */
  readonly lines: string[]
  /** Columns of the widest line. */
  readonly width: number
}
