// Who may work on the machine and in which role.
import { z } from 'zod'
import { short } from './common.ts'

export const initials = z
  .string()
  .regex(/^[A-Z][A-Z0-9]{1,3}$/, 'is not initials: two to four capitals, digits after the first')
export const role = z.enum(['mechanic', 'trainee', 'lead'])

export const crewSchema = z.strictObject({
  crew: z.array(z.strictObject({ id: initials, name: short, role })).min(1, 'names nobody'),
})

export type Crew = z.output<typeof crewSchema>
export type Person = Crew['crew'][number]
