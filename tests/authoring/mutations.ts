// Every way to spoil one node of a YAML file, made one after the other: delete it, have it twice, make it something else,
// misspell its key or its text.
import {
  type Document,
  isAlias,
  isMap,
  isScalar,
  isSeq,
  type Node,
  type Pair,
  parseDocument,
  visit,
} from 'yaml'

export type Mutation = 'delete' | 'twice' | 'retype' | 'misspell-key' | 'misspell-text'

export interface Mutated {
  readonly text: string
  readonly mutation: Mutation
  /** Keys and numbers from the root to the node, joined by slashes. */
  readonly path: string
  /** The value put in its place, for a retype. */
  readonly value?: unknown
}

const VALUES: readonly unknown[] = [
  ...[null, true, 0, -1, 1.5, 12, 1e9, '', 'x', 'not a value', 'yes', '1:30', '9 in', '3 bar', '0 min'],
  ...[[], {}, [[]], ['x'], { a: 1 }, { id: 'x' }],
]

interface Slot {
  readonly parent: Node
  readonly index: number
  readonly path: string
}

function slotsOf(doc: Document): Slot[] {
  const slots: Slot[] = []
  const add = (node: Node | null, path: string): void => {
    if (isMap(node)) {
      node.items.forEach((pair, index) => {
        const key = isScalar(pair.key) ? String(pair.key.value) : ''
        slots.push({ parent: node, index, path: `${path}/${key}` })
        add(pair.value as Node | null, `${path}/${key}`)
      })
    } else if (isSeq(node)) {
      node.items.forEach((item, index) => {
        slots.push({ parent: node, index, path: `${path}/${index}` })
        add(item as Node, `${path}/${index}`)
      })
    }
  }
  add(doc.contents, '')
  return slots
}

/** Does a change and returns how to undo it, or undefined where there is nothing to change. */
type Change = (slot: Slot, doc: Document) => (() => void) | undefined

const DELETE: Change = ({ parent, index }) => {
  const items = itemsOf(parent)
  const [gone] = items.splice(index, 1)
  return () => items.splice(index, 0, gone)
}

const TWICE: Change = ({ parent, index }) => {
  const items = itemsOf(parent)
  items.splice(index, 0, items[index])
  return () => items.splice(index, 1)
}

const MISSPELL_KEY: Change = ({ parent, index }) =>
  misspell(isMap(parent) ? parent.items[index]?.key : undefined)

const MISSPELL_TEXT: Change = ({ parent, index }) => misspell(valueAt(parent, index))

function misspell(node: unknown): (() => void) | undefined {
  if (!isScalar(node) || typeof node.value !== 'string') return undefined
  const before = node.value
  node.value = misspelled(before)
  return () => {
    node.value = before
  }
}

/** A letter put in near the middle, as a slip would. */
export function misspelled(word: string): string {
  const at = Math.ceil(word.length / 2)
  return `${word.slice(0, at)}q${word.slice(at)}`
}

function retype(value: unknown): Change {
  return ({ parent, index }, doc) => {
    const before = valueAt(parent, index) as Node
    put(parent, index, doc.createNode(value))
    return () => put(parent, index, before)
  }
}

const CHANGES: readonly (readonly [Mutation, Change, unknown?])[] = [
  ['delete', DELETE],
  ['twice', TWICE],
  ['misspell-key', MISSPELL_KEY],
  ['misspell-text', MISSPELL_TEXT],
  ...VALUES.map((value) => ['retype', retype(value), value] as const),
]

/** All mutations of the file, or every `stride`-th, beginning at `from`. */
export function* mutationsOf(text: string, stride = 1, from = 0): Generator<Mutated> {
  const doc = parseDocument(text)
  let turn = from
  for (const slot of slotsOf(doc)) {
    for (const [mutation, change, value] of CHANGES) {
      turn += 1
      const undo = turn % stride === 0 ? change(slot, doc) : undefined
      if (undo === undefined) continue
      const spoiled = doc.toString({ verifyAliasOrder: false, lineWidth: 0 })
      undo()
      yield { text: spoiled, mutation, path: slot.path, ...(value !== undefined && { value }) }
    }
  }
}

function itemsOf(parent: Node): unknown[] {
  if (isMap(parent) || isSeq(parent)) return parent.items as unknown[]
  throw new Error('a slot has a map or a list around it')
}

function valueAt(parent: Node, index: number): unknown {
  return isMap(parent) ? (parent.items[index] as Pair | undefined)?.value : itemsOf(parent)[index]
}

function put(parent: Node, index: number, value: Node): void {
  if (isMap(parent)) (parent.items[index] as Pair).value = value
  else itemsOf(parent)[index] = value
}

/** True when the file repeats a value by alias: then a node has more places than one. */
export function hasAliases(text: string): boolean {
  let found = false
  visit(parseDocument(text), {
    Alias: (_key, node) => {
      found = isAlias(node)
      return visit.BREAK
    },
  })
  return found
}
