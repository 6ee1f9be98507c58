// When a step is done, in words a crew can read and sign: what an earlier step has to come to, by its number and title. The
// text of a rule is its author's and is never shown to anybody else.
import { list } from '../lib/wording.ts'
import type { RuleTerm } from '../rules/terms.ts'
import type { Definitions, PlacedStep } from './definitions.ts'
import { stepsBehind } from './values.ts'

/** A clause to stand behind "only if", without a full stop. Empty for a step without a rule. */
export function ruleWords(defs: Definitions, { rule, scope }: PlacedStep): string {
  return rule === null ? '' : termWords(defs, scope, rule.term(), false)
}

function termWords(defs: Definitions, scope: string, term: RuleTerm, inside: boolean): string {
  switch (term.is) {
    case 'all':
    case 'any': {
      const parts = term.of.map((one) => termWords(defs, scope, one, true))
      const joined = parts.join(term.is === 'all' ? '; and ' : '; or ')
      // Titles hold commas already, so that what belongs together is put in brackets.
      return inside ? `(${joined})` : joined
    }
    case 'word':
      return wordWords(defs, scope, term) ?? decides(defs, scope, [term.name])
    case 'other':
      return decides(defs, scope, term.names)
  }
}

type WordTerm = Extract<RuleTerm, { is: 'word' }>

/** Null where the name is no step of this job and no word of the machine record. */
function wordWords(defs: Definitions, scope: string, { name, words, not }: WordTerm): string | null {
  const but = not ? 'anything but ' : ''
  const said = list(words.map(plain), 'or')
  if (name.startsWith(FACT)) return `the machine record gives ${factWord(name)} as ${but}${said}`
  const placed = defs.steps.find(({ id }) => id === scope + name)
  if (placed === undefined) return null
  const { step } = placed
  const at = named(placed)
  switch (step.kind) {
    case 'confirm':
      return `${at}, is ${not ? 'not ' : ''}seen to be so`
    case 'observe': {
      const labels = words.map((word) => step.conditions.find(({ id }) => id === word)?.label ?? plain(word))
      return `${at}, finds ${but}${labels.map((label) => `"${label}"`).join(' or ')}`
    }
    case 'judge':
      return `${at}, comes to ${but}${list(words, 'or')}`
    case 'decide':
      return `a lead decides ${but}${said} at ${at}`
    default:
      return null
  }
}

/** What it rests on, where how is not told in a few words. */
function decides(defs: Definitions, scope: string, names: readonly string[]): string {
  const ids = stepsBehind(
    defs,
    scope,
    names.filter((name) => !name.startsWith(FACT)),
  )
  const steps = defs.steps.filter(({ id }) => ids.includes(id)).map(named)
  const facts = names.some((name) => name.startsWith(FACT)) ? ['the machine record'] : []
  const all = [...steps, ...facts]
  if (all.length === 0) return 'what was found before asks for it'
  return `${all.join(', and ')}${all.length === 1 && steps.length === 1 ? ',' : ''} ${all.length === 1 ? 'asks' : 'ask'} for it`
}

const FACT = 'machine.'

const plain = (word: string) => word.replaceAll('_', ' ')

const factWord = (name: string) => `its ${plain(name.slice(FACT.length))}`

const named = ({ number, step }: PlacedStep) => `step ${number}, ${step.title}`
