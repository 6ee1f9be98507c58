// What YAML allows and Barover does not: aliases to nowhere or to their own inside, tags, YAML 1.1, keys that are no
// words. Found in the tree before it becomes plain values, since there the place is known.
import { type Document, isAlias, isScalar, type LineCounter, type Node, type Pair, visit } from 'yaml'
import { quote } from '../core/lib/wording.ts'
import type { Diagnostic } from './diagnostic.ts'
import type { Place, Span } from './span.ts'

interface Screened {
  readonly errors: readonly Diagnostic[]
  readonly warnings: readonly Diagnostic[]
}

interface Screen {
  readonly doc: Document
  readonly text: string
  readonly lines: LineCounter
  readonly at: (span: Span) => Place
  readonly errors: Diagnostic[]
  readonly warnings: Diagnostic[]
}

export function screenNodes(
  doc: Document,
  text: string,
  lines: LineCounter,
  at: (span: Span) => Place,
): Screened {
  const screen: Screen = { doc, text, lines, at, errors: [], warnings: [] }
  const yaml = doc.directives?.yaml
  if (yaml?.explicit === true && yaml.version !== '1.2') {
    const message = `YAML ${yaml.version} reads some words otherwise than is meant here.`
    screen.errors.push(problem(screen, lineAt(text, 0), 'yaml-version', message, 'delete the %YAML line'))
  }
  visit(doc, {
    Node: (_key, node, path) => screenNode(screen, node, path),
    Pair: (_key, pair) => screenPair(screen, pair),
  })
  return screen
}

function problem(screen: Screen, span: Span, code: string, message: string, hint?: string): Diagnostic {
  return { ...screen.at(span), code, message, severity: 'error', ...(hint !== undefined && { hint }) }
}

function screenNode(screen: Screen, node: Node, path: readonly unknown[]): void {
  const span: Span = [node.range?.[0] ?? 0, node.range?.[1] ?? 0]
  if (node.tag !== undefined && !isAlias(node)) {
    // The range of a node leaves its tag out; the tag stands in front.
    const before = screen.text.lastIndexOf('!', span[0])
    const start = node.tag.startsWith('!')
      ? screen.text.lastIndexOf(node.tag, span[0])
      : screen.text.lastIndexOf('!!', span[0])
    const from = start === -1 ? Math.max(0, before) : start
    screen.errors.push(
      problem(
        screen,
        wordAt(screen.text, from),
        'tag',
        'A tag stands here, and files have no use for them.',
        'delete the tag',
      ),
    )
  }
  if (isAlias(node)) screenAlias(screen, node.source, node.resolve(screen.doc), span, path)
  else if (isScalar(node)) {
    screenNumber(screen, node.value, span)
    if (node.type === 'PLAIN') screenOldWord(screen, node.value, span)
  }
}

function screenAlias(
  screen: Screen,
  name: string,
  target: Node | undefined,
  span: Span,
  path: readonly unknown[],
): void {
  if (target === undefined) {
    const hint = `an anchor &${name} must stand before it; text that begins with * goes in quotes`
    screen.errors.push(
      problem(screen, span, 'alias', `${quote(`*${name}`)} refers to no anchor above it.`, hint),
    )
  } else if (path.includes(target)) {
    const { line } = screen.lines.linePos(target.range?.[0] ?? 0)
    const message = `${quote(`*${name}`)} stands inside what it repeats, which begins at line ${line}.`
    screen.errors.push(problem(screen, span, 'alias', message))
  }
}

/** YAML 1.2 reads 012 as 12 and 1e3 as 1000: true, but seldom what was meant. */
function screenNumber(screen: Screen, value: unknown, span: Span): void {
  if (typeof value !== 'number') return
  const text = screen.text.slice(span[0], span[1])
  if (!/^[-+]?0[\dxo]/.test(text)) return
  const message = `${quote(text)} is read as ${value}.`
  screen.warnings.push({
    ...problem(screen, span, 'odd-number', message, 'write the number in full, or put text in quotes'),
    severity: 'warning',
  })
}

/** Text to YAML 1.2 and so to us; but editors and scripts on YAML 1.1 make false of no, and 90 of 1:30. */
function screenOldWord(screen: Screen, value: unknown, span: Span): void {
  if (typeof value !== 'string') return
  const sixties = /^\d{1,4}(?::[0-5]?\d){1,3}$/.test(value)
  if (!sixties && !/^(?:yes|no|on|off)$/i.test(value)) return
  const number = value.split(':').reduce((sum, part) => sum * 60 + Number(part), 0)
  const other = sixties ? String(number) : String(/^(?:yes|on)$/i.test(value))
  const message = `${quote(value)} is text here, and ${other} to programs that read older YAML.`
  screen.warnings.push({
    ...problem(screen, span, 'old-yaml', message, `put it in quotes: "${value}"`),
    severity: 'warning',
  })
}

function screenPair(screen: Screen, pair: Pair): void {
  const key = pair.key as Node | null
  const span: Span = [key?.range?.[0] ?? 0, key?.range?.[1] ?? 0]
  if (!isScalar(key)) {
    if (key === null && pair.value === null) return
    const where = key === null ? ((pair.value as Node | null)?.range?.[0] ?? 0) : span[0]
    screen.errors.push(
      problem(screen, [where, span[1]], 'key', 'What stands here is not a plain word as a key.'),
    )
  } else if (key.value === '<<') {
    const message = "'<<' does not merge keys in YAML 1.2."
    screen.errors.push(
      problem(screen, span, 'merge-key', message, 'write the keys out, or repeat a whole value with & and *'),
    )
  } else if (typeof key.value !== 'string') {
    const shown = screen.text.slice(...span).trim()
    const message =
      shown === ''
        ? 'A colon stands here with no key in front.'
        : `${quote(shown)} is not a plain word as a key.`
    screen.errors.push(problem(screen, span, 'key', message))
  }
}

export function wordAt(text: string, start: number): Span {
  const word = /^[^\s,[\]{}]+/.exec(text.slice(start, start + 200))?.[0] ?? ''
  return [start, start + Math.max(1, word.length)]
}

export function lineAt(text: string, start: number): Span {
  const end = text.indexOf('\n', start)
  return [start, end === -1 ? text.length : end]
}
