// How many people a job takes, and which: said on its first sheet, so that nobody locks a machine and then waits for a witness.
import type { Person } from '../definition/crew.ts'
import type { Definitions } from '../job/definitions.ts'
import { list } from '../lib/wording.ts'
import { kitRoles } from './people.ts'
import { type Steps, stepsText } from './steps.ts'

export const ONE_NEEDED = 'Needed: one, who does the work and keys it.'

const COUNT = ['nobody', 'one', 'two', 'three', 'four']

/** One sentence of how many, then one of each part that somebody else has to take. */
export function neededText(defs: Definitions): string {
  const others = kitRoles(defs).filter(({ second, decides }) => second || decides)
  if (others.length === 0) return ONE_NEEDED
  const more = fewest(others.map(({ roles }) => roles))
  const many = more.length + 1
  const leads = more.filter((role) => role === 'lead').length
  const apart = others.some(({ decides }) => decides) ? ' who does not measure' : ''
  const who = leads === 0 ? '' : `, one of them a lead${apart}`
  const parts = others.map(
    ({ does, roles, steps, second }) =>
      `${steps === null ? '' : `${sheetsText(steps)}: `}a ${list(roles, 'or')} ${second ? 'who did none of it' : 'who did not measure'} ${does}`,
  )
  return `Needed: ${COUNT[many] ?? many} people at least${who}. ${parts.map(upper).join('. ')}.`
}

/** Of many only the first: all of them are in the briefing. */
const MOST_SHEETS = 6

function sheetsText(steps: Steps): string {
  const [first] = steps.numbers
  const more = steps.numbers.length - 1
  const text =
    more < MOST_SHEETS
      ? stepsText(steps)
      : `${stepsText({ numbers: [first ?? 0], perhaps: steps.perhaps })} and ${more} more`
  return text.replace(/\bstep/, 'sheet')
}

const upper = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)

/** The smallest group of roles in which each part has somebody: a lead may witness and decide. */
function fewest(parts: readonly (readonly Person['role'][])[]): readonly Person['role'][] {
  const all = [...new Set(parts.flat())]
  const groups: (readonly Person['role'][])[] = [[]]
  for (const role of all) groups.push(...groups.map((group) => [...group, role]))
  const fits = groups.filter((group) => parts.every((roles) => roles.some((r) => group.includes(r))))
  return fits.sort((a, b) => a.length - b.length)[0] ?? all
}
