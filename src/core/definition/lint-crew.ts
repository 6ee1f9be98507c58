// Cross-checks of the crew list: initials sign every entry, so no two people may share them, nor the key of a PIN.
import { quote } from '../lib/wording.ts'
import type { Crew } from './crew.ts'
import { type Finding, finding, repeatedIds, repeats } from './lint-common.ts'

/** All findings of one crew list. */
export function lintCrew(crew: Crew): Finding[] {
  const sharedKeys = crew.crew.flatMap((person, at): Finding[] => {
    const first = crew.crew.slice(0, at).find((other) => other.pin === person.pin)
    if (person.pin === undefined || first === undefined) return []
    const message = `${quote(person.id)} has the very key of ${quote(first.id)}, so one PIN would sign for both.`
    return [finding(['crew', at, 'pin'], 'repeated-key', message, 'make one for each with: barover pin')]
  })
  return [...repeatedIds(['crew'], crew.crew, 'person'), ...sharedKeys]
}

/**
 * Under two pairs of initials one person would be their own witness. Capitals, points and gaps make no other name. Told with
 * the job.
 */
export function lintNames({ crew }: Crew): Finding[] {
  const plain = (name: string) =>
    name
      .normalize('NFKC')
      .toLowerCase()
      .replace(/[^\p{L}\p{N}]/gu, '')
  return repeats(crew.map((person) => plain(person.name))).map(({ at, first }) => {
    const [again, before] = [crew[at], crew[first]]
    const message = `${quote(again?.id ?? '')} has the name of ${quote(before?.id ?? '')}, so one person could witness what they did.`
    const hint =
      'one person stands here once; two of one name are told apart, as A. Berg sen. and A. Berg jun.'
    return finding(['crew', at, 'name'], 'same-name', message, hint)
  })
}
