// barover check on real folders: what is printed, and with which code it ends.
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { checkCommand } from '../../src/cli/commands/check.ts'
import { ROOT } from '../helpers/example.ts'

let folder = ''
let printed = ''

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'check-'))
  for (const name of ['procedures', 'examples'])
    cpSync(join(ROOT, name), join(folder, name), { recursive: true })
  printed = ''
  vi.spyOn(process.stdout, 'write').mockImplementation((text) => {
    printed += String(text)
    return true
  })
})

afterEach(() => {
  vi.restoreAllMocks()
  rmSync(folder, { recursive: true, force: true })
})

function change(path: string, from: string, to: string): void {
  const text = readFileSync(join(folder, path), 'utf8')
  if (!text.includes(from)) throw new Error(`${path} holds no ${from}`)
  writeFileSync(join(folder, path), text.replace(from, to))
}

function check(...names: string[]): Promise<number> {
  return checkCommand.run(
    { json: names.includes('--json') },
    names.filter((name) => name !== '--json').map((name) => join(folder, name)),
  )
}

describe('barover check', () => {
  it('finds nothing wrong with what is shipped, each procedure tried on each machine', async () => {
    expect(await check('procedures', 'examples')).toBe(0)
    expect(printed).toMatch(/^Checked as a job on the machine TC-401-1: .*bore_inspection/m)
    expect(printed).toMatch(/^\d+ files checked, 0 errors, 0 warnings\.\n$/m)
  })

  it('fetches what a machine record uses, from where it says', async () => {
    expect(await check('examples/tc-401/machine.yaml')).toBe(0)
    expect(printed).toBe('4 files checked, 0 errors, 0 warnings.\n')
  })

  it('points at the line of a file that is not there, and ends with 1', async () => {
    change('examples/tc-401/machine.yaml', 'crew: crew.yaml', 'crew: crews.yaml')
    expect(await check('examples', 'procedures')).toBe(1)
    expect(printed).toMatch(/machine\.yaml:\d+:9 {2}missing-file {2}'crews\.yaml'\s+is\s+not\s+there/)
    expect(printed).toContain('    crew: crews.yaml\n          ^^^^^^^^^^\n  hint: did you mean crew.yaml?')
    expect(printed).toContain('1 error, 0 warnings.')
  })

  it('closes with a line when errors ended the check early', async () => {
    change('procedures/bore-inspection.yaml', 'kind: gate', 'kind: gat')
    expect(await check('procedures')).toBe(1)
    expect(printed).toMatch(
      /^\d+ files checked, 1 error, 0 warnings\.\nMore may show once these are right\.\n$/m,
    )
  })

  it('says which procedures are not yet checked as jobs, by id and, where that cannot be read, by file', async () => {
    change('procedures/bore-inspection.yaml', 'kind: gate', 'kind: gat')
    change('examples/first-procedure.yaml', 'procedure: first_procedure', 'procedure: 3')
    expect(await check('procedures', 'examples')).toBe(1)
    const waiting = /^Not yet as a job: ([^;]*); errors above\.$/m.exec(
      printed.replace(/\n {2}(?=\S)/g, ' '),
    )?.[1]
    expect(waiting?.split(', ').map((one) => one.replace(`${folder}/`, ''))).toEqual([
      'bore_inspection',
      'examples/first-procedure.yaml',
    ])
    printed = ''
    await check('procedures')
    expect(printed).not.toContain('Not yet')
  })

  it('says in a plain line that a procedure does not take a machine, and ends with 0', async () => {
    change('examples/tc-401/machine.yaml', 'orientation: horizontal', 'orientation: vertical')
    expect(await check('procedures/bore-inspection.yaml', 'examples/tc-401')).toBe(0)
    expect(printed).toBe(
      'bore_inspection does not take the machine TC-401-1: its cylinder is vertical.\n5 files checked, 0 errors, 0 warnings.\n',
    )
  })

  it('gives the same to programs as one JSON object', async () => {
    change('examples/tc-401/crew.yaml', 'role: lead', 'role: leed')
    expect(await check('--json', 'examples/tc-401/crew.yaml')).toBe(1)
    const { files, jobs, refusals, diagnostics } = JSON.parse(printed)
    expect([Object.values(files), jobs, refusals]).toEqual([['crew'], [], []])
    expect(diagnostics).toEqual([
      expect.objectContaining({
        line: 16,
        code: 'unknown-choice',
        hint: 'did you mean lead?',
        severity: 'error',
      }),
    ])
  })

  it('refuses a path where nothing is', async () => {
    await expect(check('nowhere')).rejects.toThrow('there is no such file')
  })
})
