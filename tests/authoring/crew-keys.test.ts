// Keys of people in the crew file: one for each, and what the example ships is told apart from any other.
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { readDefinition } from '../../src/authoring/definition-file.ts'
import { crewSchema } from '../../src/core/definition/crew.ts'
import { isExampleKey } from '../../src/core/job/example-keys.ts'
import { hashPin, pinFits } from '../../src/node/pins.ts'
import { exampleDefs, pinOf, ROOT } from '../helpers/example.ts'

const TEXT = readFileSync(join(ROOT, 'examples/tc-401/crew.yaml'), 'utf8')
const { crew } = exampleDefs().crew

describe('the example crew', () => {
  it('has a key for everybody, of the PIN that its comment prints', async () => {
    for (const { id, pin } of crew) {
      expect(TEXT).toContain(`${id} ${pinOf(id)}`)
      expect(await pinFits(pinOf(id), pin ?? '')).toBe(true)
    }
  })

  it('of the second machine has them too', async () => {
    const text = readFileSync(join(ROOT, 'examples/rg-27/crew.yaml'), 'utf8')
    const read = readDefinition(text, 'crew.yaml')
    if (!read.ok || read.kind !== 'crew') throw new Error('no crew')
    expect(read.value.crew).toHaveLength(5)
    for (const { id, pin } of read.value.crew) {
      const printed = new RegExp(`\\b${id} (\\d{4})\\b`).exec(text)?.[1] ?? ''
      expect(await pinFits(printed, pin ?? '')).toBe(true)
      expect(isExampleKey(pin)).toBe(true)
    }
  })

  it('has keys that are known as its own, and no other is', async () => {
    expect(crew.map((p) => isExampleKey(p.pin))).toEqual(crew.map(() => true))
    expect(isExampleKey(await hashPin('4071', 10))).toBe(false)
    expect(isExampleKey(undefined)).toBe(false)
  })
})

describe('a crew file', () => {
  it('is refused where two people have one key', () => {
    const [first, second] = crew.map((p) => p.pin ?? '')
    const read = readDefinition(TEXT.replace(second ?? '', first ?? ''), 'crew.yaml')
    expect(read.ok ? [] : read.diagnostics).toMatchObject([
      { code: 'repeated-key', message: "'ML' has the very key of 'RO', so one PIN would sign for both." },
    ])
  })

  it('takes no PIN where a key belongs', () => {
    const person = { id: 'RO', name: 'R', role: 'lead' }
    expect(crewSchema.safeParse({ crew: [{ ...person, pin: '4071' }] }).success).toBe(false)
  })
})
