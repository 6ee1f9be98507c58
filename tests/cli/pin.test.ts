// barover pin without a terminal: a key from a pipe, and a PIN nowhere but in it.
import { describe, expect, it } from 'vitest'
import { crewSchema } from '../../src/core/definition/crew.ts'
import { pinFits } from '../../src/node/pins.ts'
import { barover } from '../helpers/cli.ts'

describe('barover pin', () => {
  it('makes from a pipe the line that the crew file takes, and says the PIN nowhere', async () => {
    const { code, out, err } = await barover(['pin', 'ro', '--stdin'], { input: '80417\n' })
    expect(code).toBe(0)
    const [, key = ''] = /^pin: "(.*)"\n$/.exec(out) ?? []
    expect(await pinFits('80417', key)).toBe(true)
    expect(await pinFits('80418', key)).toBe(false)
    expect(crewSchema.safeParse({ crew: [{ id: 'RO', name: 'R', role: 'lead', pin: key }] }).success).toBe(
      true,
    )
    expect(err).toBe('In the crew file, with RO:\n')
    expect(out + err).not.toContain('80417')
  })

  it('gives another key each time', async () => {
    const [a, b] = await Promise.all([0, 1].map(() => barover(['pin', '--stdin'], { input: '80417' })))
    expect(a?.out).not.toBe(b?.out)
  })

  it.each(['', '123', '1234567890123', '80 41', '8041a', '8041\n8041', '7777', '1234', '98765', '8901'])(
    'refuses %j in one sentence',
    async (input) => {
      const { code, out, err } = await barover(['pin', '--stdin'], { input })
      expect({ code, out }).toEqual({ code: 1, out: '' })
      expect(err.trim().split('\n')).toHaveLength(1)
      if (input !== '') expect(err).not.toContain(input)
    },
  )

  it('reads no pipe unless it is told to', async () => {
    const { code, out, err } = await barover(['pin'], { input: '80417\n' })
    expect({ code, out }).toEqual({ code: 2, out: '' })
    expect(err).toContain('--stdin takes it from a pipe')
  })

  it('takes no PIN as an argument, and does not say it back', async () => {
    for (const args of [
      ['pin', '80417'],
      ['pin', '--stdin', '80417'],
    ]) {
      const { code, out, err } = await barover(args, { input: '80417\n' })
      expect({ code, out }).toEqual({ code: 2, out: '' })
      expect(err).not.toContain('80417')
    }
  })
})
