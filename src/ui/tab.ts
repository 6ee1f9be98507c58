// What the key Tab means. It is MAKE SAFE at every prompt, on an empty line, and whenever it is hit twice; only where a path is
// being keyed does a first Tab complete it. So whoever hits the key in alarm has the sheet with the second stroke at the latest.

export interface TabAt {
  /** The prompt asks for a path. */
  readonly path: boolean
  readonly text: string
  /** Several came as one, or no other key came since the Tab before. */
  readonly again: boolean
  /** The screen shows no prompt at all. */
  readonly tooSmall: boolean
}

export function tabMeans({ path, text, again, tooSmall }: TabAt): 'safe' | 'complete' {
  return path && !again && !tooSmall && text.trim() !== '' ? 'complete' : 'safe'
}

/** What fits, in one line; a folder has its stroke. */
export function fitsLine(fits: readonly string[]): string {
  return fits.length === 0 ? 'Nothing begins like that.' : `Fits: ${fits.join('   ')}`
}
