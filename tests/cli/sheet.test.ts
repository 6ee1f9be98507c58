// barover sheet: a blank sheet to a file or the pipe, and what it refuses.
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { barover, MACHINE } from '../helpers/cli.ts'
import { terminals } from '../helpers/pty.ts'

const { folder } = terminals()
const sheet = (...more: string[]) => barover(['sheet', 'bore-inspection', '--machine', MACHINE, ...more])

describe('barover sheet', () => {
  it('writes a PDF whole, opens no job, and says that nothing is enforced', async () => {
    const into = folder()
    const out = join(into, 'bore.pdf')
    const { code, out: said } = await sheet('--out', out, '--clock', '2026-03-14', '--paper', 'Letter')
    expect(code).toBe(0)
    expect(said).toContain(
      'EXAMPLE  bore_inspection, edition 8; TC-401-1, record edition 4; printed for 2026-03-14',
    )
    expect(said).toContain('HOLD POINTS ON PAPER ARE NOT ENFORCED BY BAROVER.')
    expect(readFileSync(out).subarray(0, 5).toString()).toBe('%PDF-')
    expect(readFileSync(out).toString('latin1')).toContain('/MediaBox [0 0 612 792]')
    expect(readdirSync(into)).toEqual(['bore.pdf'])
    const again = await sheet('--out', out)
    expect([again.code, again.err]).toEqual([
      4,
      expect.stringContaining('--replace puts the sheet in its place'),
    ])
  })

  it('is refused for another paper, without a machine, and as REAL of invented files', async () => {
    const out = join(folder(), 'x.pdf')
    expect((await sheet('--out', out, '--paper', 'a3')).err).toContain(
      '--paper takes a4 or letter, not "a3".',
    )
    expect((await barover(['sheet', 'bore-inspection', '--out', out])).code).toBe(2)
    const real = await sheet('--out', out, '--as', 'real')
    expect([real.code, real.err]).toEqual([1, expect.stringContaining('is marked invented')])
    expect(existsSync(out)).toBe(false)
  })
})
