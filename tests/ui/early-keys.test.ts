// What was keyed before there was a screen is dropped; a STOP among it, and Control-C, are not.
import { describe, expect, it, vi } from 'vitest'
import { dropEarly, earlyOf } from '../../src/ui/early-keys.ts'
import { fakeTerminal } from '../helpers/fake-terminal.ts'

describe('keys that came before the screen', () => {
  it.each([
    ['', { dropped: false, stop: false }],
    ['4071', { dropped: true, stop: false }],
    ['RO\r4071\r', { dropped: true, stop: false }],
    ['no stop\r', { dropped: true, stop: false }],
  ])('%j', (keys, early) => {
    const interrupt = vi.fn()
    expect(earlyOf(keys, interrupt)).toEqual(early)
    expect(interrupt).not.toHaveBeenCalled()
  })

  it('are a STOP where one is among them, with its Enter or without', () => {
    for (const keys of ['stop\r', 'stop', 'RO\r!', '!', 'RO\rstop\r4071'])
      expect([keys, earlyOf(keys, () => undefined)]).toEqual([keys, { dropped: true, stop: true }])
  })

  it('end the program where Control-C is among them', () => {
    const interrupt = vi.fn()
    earlyOf('RO\u0003', interrupt)
    expect(interrupt).toHaveBeenCalledOnce()
  })

  it('are looked for on no other terminal than that of the program', async () => {
    const { stdin } = fakeTerminal({ cols: 80, rows: 24 })
    expect(await dropEarly(stdin)).toEqual({ dropped: false, stop: false })
  })
})
