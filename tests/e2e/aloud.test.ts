// The program reads aloud with a real speech program on its path, drawn and in plain lines, and ends whatever that one does.
import { chmodSync, existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { EXAMPLE_RUN, terminals } from '../helpers/pty.ts'

const terminal = terminals()

/** A folder with a speech program that writes down what it was given, and a job begun with it. */
async function heard(script: string, ...more: string[]) {
  const folder = terminal.folder()
  const out = join(folder, 'out')
  const file = join(folder, 'espeak-ng')
  writeFileSync(file, `#!/bin/sh\nPATH=/usr/bin:/bin\n${script.replaceAll('$OUT', out)}\n`)
  chmodSync(file, 0o755)
  const t = terminal.start([...EXAMPLE_RUN, '--jobs', terminal.folder(), '--aloud', ...more], {
    env: { PATH: folder },
  })
  await t.see('Read aloud by espeak-ng.')
  await t.see('Your initials')
  return { t, said: () => (existsSync(out) ? readFileSync(out, 'utf8') : '') }
}

const WRITES = 'cat >> $OUT; echo >> $OUT'

describe('with --aloud', () => {
  it('the drawn sheet is read, and a PIN is not', async () => {
    const { t, said } = await heard(WRITES)
    await t.say('RO')
    await t.see('PIN of RO')
    await t.say('4071')
    await t.see('Which machine is this?')
    await expect.poll(said).toMatch(/Which machine is this\?.*Read the tag plate ON THE CYLINDER/)
    expect(said()).toContain('PIN of R O')
    expect(said()).not.toMatch(/4071|four zero seven one/)
  })

  it('plain lines are read, and a program that hangs holds up neither them nor the end', async () => {
    const { t, said } = await heard(`${WRITES}; sleep 600`, '--plain')
    await expect.poll(said).toContain('Read aloud by espeak')
    t.send('leave\r')
    await t.see('Left here.')
    expect((await t.ended()).code).toBe(3)
  })
})
