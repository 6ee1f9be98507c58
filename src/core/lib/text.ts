// Text for a sheet of fixed columns: cleaned of what could disturb a screen, measured and wrapped by what is seen.
import stringWidth from 'string-width'

/** Control, bidirectional, zero-width and other characters that are not seen but change what is. */
const UNSEEN =
  /[\u0000-\u001f\u007f-\u009f\u00ad\u061c\u115f\u1160\u17b4\u17b5\u180e\u200b-\u200f\u2028-\u202e\u2060-\u206f\u3164\ufeff\uffa0\ufff9-\ufffb\u{e0000}-\u{e007f}\p{Cs}]|\u034f/gu

/** Unseen characters become `?`: the sheet shows what it holds. */
export function clean(text: string): string {
  return text.replace(UNSEEN, '?')
}

/** Unseen characters are left out, for a line that is still being keyed. */
export function withoutUnseen(text: string): string {
  return text.replace(UNSEEN, '')
}

const ASCII_TWINS: Readonly<Record<string, string>> = {
  '\u00a0': ' ',
  '\u2018': "'",
  '\u2019': "'",
  '\u201c': '"',
  '\u201d': '"',
  '\u2013': '-',
  '\u2014': '-',
}

/** Quotes, dashes and no-break spaces as ASCII of the same width. What else a person keyed stays as it is. */
export function asciiTwin(text: string): string {
  return text.replace(/[\u00a0\u2018\u2019\u201c\u201d\u2013\u2014]/g, (c) => ASCII_TWINS[c] ?? c)
}

/** What a sheet is made of: Latin letters, quotes and dashes, lines and blocks of drawings. One column each, whatever stands beside them. */
const ONE_EACH =
  /^[\u0020-\u007e\u00a0-\u00ac\u00ae-\u00ff\u2010-\u2015\u2018-\u201f\u2022\u2026\u2190-\u2193\u2500-\u259f]*$/

/** Columns. Most lines are told without a look at each character, as a screen of them is laid out at every key. */
export function widthOf(text: string): number {
  return ONE_EACH.test(text) ? text.length : stringWidth(text)
}

/** Cut to at most `width` columns. */
export function cut(text: string, width: number): string {
  if (widthOf(text) <= width) return text
  let kept = ''
  for (const { segment } of new Intl.Segmenter('en', { granularity: 'grapheme' }).segment(text)) {
    if (widthOf(kept + segment) > width) break
    kept += segment
  }
  return kept
}

/** Cut so that it is seen to be: what is too wide ends in three stops. */
export function cutSeen(text: string, width: number): string {
  return widthOf(text) <= width ? text : `${cut(text, Math.max(0, width - 3)).trimEnd()}...`
}

/** The same at the end of a word, where one ends in the last half of it. */
export function cutWords(text: string, width: number): string {
  if (widthOf(text) <= width) return text
  const kept = cut(text, Math.max(0, width - 3))
  const end = text.startsWith(' ', kept.length) ? kept.length : kept.lastIndexOf(' ')
  return `${(end > kept.length / 2 ? kept.slice(0, end) : kept).replace(/[\s,;:]+$/, '')}...`
}

/** Left out in the middle, between words, so that its end still tells it from others that begin like it. */
export function cutMiddle(text: string, width: number): string {
  if (widthOf(text) <= width) return text
  const words = text.split(/(?<=\S)(?= )/)
  let tail = ''
  for (const word of [...words].reverse()) {
    if (widthOf(word + tail) > (width - 3) / 3) break
    tail = word + tail
  }
  const end = tail.trimStart()
  if (end === '') return cutWords(text, width)
  const room = width - widthOf(end) - 3
  let head = ''
  for (const word of words) {
    if (widthOf(head + word) > room) break
    head += word
  }
  return head === '' ? cutWords(text, width) : `${head.replace(/[\s,;:]+$/, '')}...${end}`
}

/**
 * Breaks at plain spaces, so a no-break space holds a figure and its unit together; later lines are set in by `hang`
 * columns. A word wider than the line is broken. No line is wider than `width`, which is at least 4 more than `hang`.
 */
export function wrap(text: string, width: number, hang = 0): string[] {
  // Leading spaces beyond half the line would leave the words no room.
  const lead = ' '.repeat(Math.min(/^ */.exec(text)?.[0].length ?? 0, Math.max(0, (width >> 1) - hang)))
  const lines: string[] = []
  let line = lead
  let empty = true
  for (const word of text.trim().split(/(?<= )(?=[^ ])/)) {
    let rest = word
    if (!empty && widthOf(line + rest.trimEnd()) > width) {
      lines.push(line.trimEnd())
      line = lead + ' '.repeat(hang)
      empty = true
    }
    while (widthOf(line + rest.trimEnd()) > width) {
      const head = cut(rest, Math.max(1, width - widthOf(line)))
      if (head === '') break
      lines.push(line + head)
      rest = rest.slice(head.length)
      line = lead + ' '.repeat(hang)
    }
    line += rest
    empty = false
  }
  lines.push(line.trimEnd())
  return lines
}
