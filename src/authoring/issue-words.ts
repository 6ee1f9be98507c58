// One sentence for each way a value can fail its schema. The schema's own messages say what is wrong of the author's
// word ("is longer than 72 characters"); the word is put in front here.
import type { z } from 'zod'
import { list, nearest, quote } from '../core/lib/wording.ts'
import { isWritten, itemOf } from './schema-at.ts'

export type Issue = z.core.$ZodIssue

export interface Words {
  readonly code: string
  readonly message: string
  readonly hint?: string
}

export interface Subject {
  readonly value: unknown
  /** The author's spelling of it: source text without its quotes. */
  readonly word: string
  /** The key it stands under; in a list, the key of the list. */
  readonly key: string
  /** What owns it: an id, a key, or `this file`. */
  readonly owner: string
  readonly schema: z.ZodType | undefined
  /** Words that stand behind it in the same braces, with commas between, as if they were keys. */
  readonly strays: readonly string[]
  /** In braces, a key with nothing behind it: likely the rest of a text that held a comma. */
  readonly isAlone: boolean
  /** Of several alternatives the one that the keys beside it ask for. */
  readonly wanted: number | undefined
}

/** Inside braces a word behind a comma reads as a key of its own. */
export const COMMA = 'a comma ends a text inside { }: put text that holds one in quotes'

export function wordsFor(issue: Issue, subject: Subject): Words {
  if (subject.value === null) {
    const words = { code: 'no-value', message: `${quote(subject.key)} has no value.` }
    return subject.isAlone ? { ...words, hint: COMMA } : words
  }
  switch (issue.code) {
    case 'invalid_type':
      return wrongType(issue.expected, subject)
    case 'invalid_value':
      return notAChoice(issue.values.map(String), subject)
    case 'invalid_union':
      return wrongUnion(issue, subject)
    case 'too_small':
      return {
        code: issue.message === NO_EVIDENCE ? 'no-evidence' : 'too-small',
        message: predicate(issue, subject, bound(issue.minimum, issue.origin, 'below')),
      }
    case 'too_big':
      return {
        code: issue.origin === 'string' ? 'too-long' : 'too-large',
        message: predicate(issue, subject, bound(issue.maximum, issue.origin, 'above')),
      }
    case 'custom':
      return issue.params?.sentence === true
        ? split(issue.message)
        : {
            code: subject.word === '' ? 'too-small' : codeOf(issue.message),
            message: predicate(issue, subject, 'does not fit here'),
            ...unitHint(issue.message, subject.word),
          }
    default:
      return {
        code: 'malformed',
        message: predicate(issue, subject, 'does not fit here'),
        ...idHint(issue, subject.word),
      }
  }
}

/** `hold-point` was meant well: the same word as an identifier. */
function idHint(issue: Issue, word: string): { hint?: string } {
  if (!issue.message.startsWith('is not an identifier')) return {}
  const id = word
    .trim()
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '_')
    .replace(/^[_0-9]+|_+$/g, '')
  return id === '' ? {} : { hint: `write ${id}` }
}

/** What the schema of a gate says of an empty list. */
const NO_EVIDENCE = 'asks for no evidence'

/** Codes of keys that no file is safe without; any other missing key is just missing. */
export const MISSING_CODES: ReadonlyMap<string, string> = new Map([
  ['source', 'no-source'],
  ['evidence', 'no-evidence'],
])

function codeOf(message: string): string {
  if (message === 'names no source') return 'no-source'
  return message.startsWith('needs a unit') ? 'no-unit' : 'malformed'
}

/** The figure as it stands, with the first of the units that fit: an example, since nobody can know which was meant. */
function unitHint(message: string, word: string): { hint?: string } {
  const unit = /^needs a unit: ([^,\s]+)/.exec(message)?.[1]
  const figure = /^\s*([-+]?(?:\d+\.?\d*|\.\d+))\s*$/.exec(word)?.[1]
  return unit === undefined || figure === undefined ? {} : { hint: `for example ${figure} ${unit}` }
}

/** Library defaults speak to programmers; ours are the messages that do not begin with a capital. */
function predicate(issue: Issue, subject: Subject, fallback: string): string {
  const says = /^[a-z]/.test(issue.message) ? issue.message : fallback
  if (Array.isArray(subject.value)) return `${subject.owner} ${says}.`
  return `${quote(subject.word === '' ? subject.key : subject.word)} ${says}.`
}

function bound(limit: number | bigint, origin: string, side: string): string {
  if (origin === 'array')
    return side === 'below' ? `has fewer than ${limit} in a list` : `has more than ${limit} in a list`
  return `is ${side} ${limit}`
}

/** A sentence of the unit reader: what is wrong, then what to do. */
function split(sentence: string): Words {
  const [says = '', todo] = sentence.split(/; (?=[^;]*$)/)
  if (todo === undefined) return { code: 'quantity', message: sentence }
  const hint = todo
    .replace(/\.$/, '')
    .replace(/^key /, 'write ')
    .replace(/^read it again.*/, 'correct the figure')
  return {
    code: 'quantity',
    message: `${says}.`,
    hint: hint.replace(' the figures you read', ' figures and a unit'),
  }
}

const NOUN: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  object: 'keys with values',
  record: 'keys with values',
}

function nounOf(value: unknown): string {
  if (Array.isArray(value)) return 'a list'
  return typeof value === 'object' ? 'keys with values' : (NOUN[typeof value] ?? 'something else')
}

function wrongType(expected: string, subject: Subject): Words {
  const { value, key, word, schema } = subject
  if (expected === 'string' && typeof value === 'number' && isWritten(schema)) {
    const failed = schema?.safeParse(word).error?.issues[0]
    if (failed !== undefined) return wordsFor(failed, { ...subject, value: word })
  }
  const takes = NOUN[expected] ?? expected
  const isPlain = typeof value !== 'object'
  if (expected === 'int' && typeof value === 'number')
    return { code: 'wrong-type', message: `${quote(word)} is not a whole number.` }
  const message = isPlain
    ? `${quote(word)} is ${nounOf(value)}, and ${quote(key)} takes ${takes}.`
    : `${quote(key)} holds ${nounOf(value)}, and takes ${takes}.`
  const hint = typeHint(expected, subject, isPlain)
  return { code: 'wrong-type', message, ...(hint !== undefined && { hint }) }
}

function typeHint(expected: string, subject: Subject, isPlain: boolean): string | undefined {
  const { word, key } = subject
  if (expected === 'boolean' && /^(yes|on|y)$/i.test(word)) return 'write true'
  if (expected === 'boolean' && /^(no|off|n)$/i.test(word)) return 'write false'
  if (expected === 'string' && isPlain) return `put it in quotes: "${word.slice(0, 30)}"`
  if (expected === 'array') return listHint(subject)
  if (expected === 'object' && key === 'when' && typeof subject.value === 'string')
    return `write { rule: '${word.replaceAll("'", "''")}', unknown: hold }`
  if (expected === 'record' && key === 'how')
    return 'it takes words by instrument kind: { inside_micrometer: Swing for the MOST. }'
  return undefined
}

/** The words as the list they were meant to be, if each could be an item; a list of keys goes line by line. */
function listHint({ value, schema, strays, word }: Subject): string {
  const items = [typeof value === 'string' ? word : value, ...strays]
  const element = itemOf(schema)
  const isFit = element !== undefined && items.every((item) => element.safeParse(item).success)
  const written = asList([word, ...strays])
  return isFit && written.length <= 72 ? `write ${written}` : 'begin each item with a dash and a space'
}

/** A list in brackets; what holds a mark of YAML's own is put in quotes. */
export function asList(words: readonly string[]): string {
  const items = words.map((one) => (/^[\w./ -]+$/.test(one) ? one : JSON.stringify(one)))
  return `[${items.join(', ')}]`
}

function notAChoice(choices: readonly string[], subject: Subject): Words {
  const { value, key, word } = subject
  if (typeof value === 'object') {
    return {
      code: 'wrong-type',
      message: `${quote(key)} holds ${nounOf(value)}, and takes one of ${list(choices, 'or')}.`,
    }
  }
  const near = nearest(word, choices)
  const message = `${quote(word)} is not one of ${list(choices, 'or')}.`
  return { code: 'unknown-choice', message, ...(near !== undefined && { hint: `did you mean ${near}?` }) }
}

type UnionIssue = Extract<Issue, { code: 'invalid_union' }>

/** What a discriminator may be; nothing for alternatives of another sort. */
export function unionChoices(issue: UnionIssue): readonly unknown[] {
  return (issue as { options?: readonly unknown[] }).options ?? []
}

function wrongUnion(issue: UnionIssue, subject: Subject): Words {
  const options = unionChoices(issue)
  if (options.length > 0) return notAChoice(options.map(String), subject)
  const wanted = subject.wanted === undefined ? undefined : issue.errors[subject.wanted]?.[0]
  if (wanted !== undefined) return wordsFor(wanted, subject)
  const firsts = issue.errors.flatMap((errors) => (errors[0] === undefined ? [] : [errors[0]]))
  // All alternatives are quantities. Told apart by unit: the one that got past the unit knows best.
  const past = firsts.find(
    (one) =>
      one.code === 'custom' && one.params?.sentence === true && !/this takes|is not a unit/.test(one.message),
  )
  const [first, ...others] = firsts
  if (past !== undefined) return wordsFor(past, subject)
  if (first === undefined) return { code: 'malformed', message: `${quote(subject.word)} does not fit here.` }
  if (first.code === 'invalid_type') return wordsFor(first, subject)
  return alsoTakes(wordsFor(first, subject), others)
}

/** Adds what the other alternatives take to the sentence of the first. */
function alsoTakes(words: Words, others: readonly Issue[]): Words {
  const lists = others
    .map((one) => /(?:this takes|needs a unit:) ?(.*?)\.?$/.exec(one.message)?.[1])
    .filter((one) => one !== undefined)
  if (lists.length === 0) return words
  if (words.hint !== undefined) return { ...words, hint: `${words.hint}; or ${lists.join('; or ')}` }
  return { ...words, message: `${words.message.replace(/\.$/, '')}; or ${lists.join('; or ')}.` }
}
