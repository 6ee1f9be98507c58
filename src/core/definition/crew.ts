// Who may work on the machine and in which role.
import { z } from 'zod'
import { invented, short } from './common.ts'

export const initials = z
  .string()
  .regex(/^[A-Z][A-Z0-9]{1,3}$/, 'is not initials: two to four capitals, digits after the first')
  .meta({ description: 'Initials, two to four capitals; what the person keys to sign.', examples: ['RO'] })
export const role = z.enum(['mechanic', 'trainee', 'lead']).meta({
  description:
    'A mechanic does the work and may witness; a lead may also release a STOP and decide on a verdict; a trainee signs on to PRACTICE only.',
})

/** A key of scrypt (RFC 7914) as a PHC string: parameters, salt and hash in base64 without padding. */
const pin = z
  .string()
  .regex(
    /^\$scrypt\$ln=\d{1,2},r=\d{1,2},p=\d\$[A-Za-z0-9+/]{16,64}\$[A-Za-z0-9+/]{32,128}$/,
    'is not a key made by barover pin',
  )
  .meta({
    description:
      'Key of the PIN this person signs with, made by: barover pin. The PIN itself never stands in a file. Without one, initials alone sign, and the log says so.',
  })

export const crewSchema = z
  .strictObject({
    crew: z
      .array(
        z.strictObject({
          id: initials,
          name: short.meta({ description: 'Name, as others know it.' }),
          role,
          pin: pin.optional(),
        }),
      )
      .min(1, 'names nobody')
      .meta({ description: 'Everybody who may sign on, witness or decide.' }),
    invented,
  })
  .meta({ title: 'Crew', description: 'Who may work on the machine, and in which role.' })

export type Crew = z.output<typeof crewSchema>
export type Person = Crew['crew'][number]
