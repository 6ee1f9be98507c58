// What is keyed wrongly at a reading, what is said to it, and how a reading is put right: in a real terminal.
import { describe, expect, it } from 'vitest'
import { EXAMPLE_RUN, logged, TO_BORE, terminals } from '../helpers/pty.ts'

const terminal = terminals()

describe('a reading', () => {
  it('is refused in one sentence when it is no figure, doubted when it cannot be, and corrected in the open', async () => {
    const jobs = terminal.folder()
    const t = terminal.start([...EXAMPLE_RUN, '--jobs', jobs])
    await t.see('Your initials')
    await t.sayAll(TO_BORE)
    await t.see('Reading (in) with M-3')
    const before = logged(jobs).length
    for (const [line, said] of [
      ['', 'Nothing was keyed; key the figures you read.'],
      ['nan', "'nan' is not a number; key the figures you read."],
      ['1e999', "'1e999' is in powers of ten; write it out in full."],
      ['0x10', "'0x10' is not a plain decimal number"],
      ['--', "'--' has no figures in it"],
      ['9,503', "'9,503' could be 9.503 or 9503; key it in full without a comma."],
    ] as const) {
      await t.say(line)
      await t.see(said)
      expect(logged(jobs)).toHaveLength(before)
    }
    await t.say('9.053')
    await t.see('0.4470 in under nominal 9.500 in')
    await expect.poll(() => t.text).toContain('It counts for nothing yet.')
    expect(t.text).not.toMatch(/9\.503 in(?! full)/)
    await t.say('9.503')
    await t.see('Key 1, 2 or 3 first')
    await t.say('2')
    await t.see('Reading (in) with M-3')
    await t.sayAll(['9.5043', '9.5034'])
    await t.see('too far apart')
    await t.sayAll(['correct', '2'])
    await t.see('Why was it wrong?')
    await t.sayAll(['Read it a thousandth out', '9.5033'])
    await t.see('the first value stays in the log')
    await expect.poll(() => t.all).toContain('was 9.5043 in, now 9.5033 in')
    await t.see('Bore, HEAD END of ring travel, SIDE TO SIDE')
    const entries = logged(jobs)
    const [first] = entries.filter((e) => e.typed === '9.5043')
    expect(first?.type).toBe('reading.taken')
    expect(entries.find((e) => e.type === 'reading.corrected')).toMatchObject({
      of: first?.seq,
      typed: '9.5033',
      why: 'Read it a thousandth out',
    })
    expect(entries.filter((e) => e.type === 'reading.doubted').map((e) => e.typed)).toEqual(['9.053'])
    expect(entries.filter((e) => e.type === 'doubt.settled').map((e) => e.choice)).toEqual(['mistyped'])
  })
})
