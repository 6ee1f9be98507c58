// Words on a drawing: made plain (one column per character), shortened without becoming another name, wrapped.

/** One line of printable ASCII. Accents come off; a character with no plain form becomes `?`. */
export function plain(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/[^ -~]/gu, '?')
}

/**
 * The forms a name may take, best first. A cut form keeps at least three letters, ends in a full stop and fits no other
 * name: CENTRE never becomes CE, and of STATION 1 and STATION 2 neither is cut.
 */
export function nameForms(name: string, all: readonly string[]): string[] {
  const forms = name === '' ? [] : [name]
  const others = all.filter((other) => other !== name)
  for (let length = name.length - 2; length >= 3; length -= 1) {
    const cut = name.slice(0, length).trimEnd()
    if (others.some((other) => other.startsWith(cut))) break
    forms.push(`${cut}.`)
  }
  return forms
}

/** Breaks at spaces; a word longer than the width is cut. */
export function wrap(text: string, width: number): string[] {
  const lines: string[] = []
  let line = ''
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`
    if (longer.length <= width) {
      line = longer
      continue
    }
    if (line !== '') lines.push(line)
    line = word.slice(0, width)
  }
  if (line !== '') lines.push(line)
  return lines
}
