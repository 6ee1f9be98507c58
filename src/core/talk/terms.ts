// A term of the trade by its own name, word for word, for answers that rest on what it means.
import { GLOSSARY } from '../papers/glossary.ts'
import { DECISION_SAYS } from './decision-words.ts'

/** A decision that shares its word with a verdict: looked up by its own spelling alone, so that the verdict is found first elsewhere. */
const DECISIONS = [{ term: 'rework', says: `A decision of a lead: ${DECISION_SAYS.rework}` }]

/** Two lines, or none where no such term is known. Capitals tell a verdict from a decision only where both are terms. */
export function termLines(name: string): string[] {
  const wanted = name.trim()
  const same = [...GLOSSARY, ...DECISIONS].filter(({ term }) => term.toLowerCase() === wanted.toLowerCase())
  const one = same.find(({ term }) => term === wanted) ?? same[0]
  return one === undefined ? [] : [`Terms of the trade, ${one.term}:`, `  "${one.says}"`]
}
