// Text for a sheet of fixed columns: cleaned of what could disturb a screen, measured and wrapped by what is seen.
import stringWidth from 'string-width'

/** Control, bidirectional, zero-width and other unseen characters become `?`: the sheet shows what it holds. */
export function clean(text: string): string {
  return text.replace(
    /[\u0000-\u001f\u007f-\u009f\u00ad\u061c\u180e\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb]/g,
    '?',
  )
}

export function widthOf(text: string): number {
  return stringWidth(text)
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

/** Breaks at plain spaces, so a no-break space holds a figure and its unit together; later lines are set in by `hang` columns. A word wider than the line is broken. */
export function wrap(text: string, width: number, hang = 0): string[] {
  const lead = /^ */.exec(text)?.[0] ?? ''
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
