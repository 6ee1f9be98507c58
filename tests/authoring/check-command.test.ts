// barover check on real folders: what is printed, and with which code it ends.
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { definitionsFrom, type JobCopy } from '../../src/authoring/definitions.ts'
import { checkCommand } from '../../src/cli/commands/check.ts'
import type { Definitions } from '../../src/core/job/definitions.ts'
import type { Breach } from '../../src/core/proof/explore.ts'
import { piecesOf } from '../../src/core/proof/prove.ts'
import { readJobFiles } from '../../src/node/definition-files.ts'
import { pieceName } from '../../src/node/kept-proofs.ts'
import { ROOT } from '../helpers/example.ts'

/** What the search comes to; it has tests of its own (tests/core/proof), so here it is made only where asked for. */
const search = vi.hoisted(() => ({
  breach: null as Breach | null,
  bound: null as string | null,
  isReal: false,
  kept: 0,
  /** Names of the pieces of the last job that was to be searched. */
  names: [] as string[],
}))
vi.mock('../../src/cli/search.ts', async (original) => {
  const real = await original<typeof import('../../src/cli/search.ts')>()
  const searchJob: typeof real.searchJob = async (defs, files, options) => {
    search.names = namesOf(defs, files)
    if (search.isReal) return real.searchJob(defs, files, options)
    const seen = { states: 12_345, moves: 1_234_567 }
    const pieces = { pieces: 9, kept: search.kept }
    if (search.breach !== null) return { proof: { is: 'refuted', breach: search.breach, ...seen }, ...pieces }
    return search.bound === null
      ? { proof: { is: 'proved', ...seen }, ...pieces }
      : { proof: { is: 'not-proved', bound: search.bound, ...seen }, ...pieces }
  }
  return { ...real, searchJob }
})

function namesOf(defs: Definitions, files: readonly JobCopy[]): string[] {
  return piecesOf(defs).flatMap(({ small }) => (small === null ? [] : pieceName('this', files, small)))
}

let folder = ''
let printed = ''

beforeEach(() => {
  Object.assign(search, { breach: null, bound: null, isReal: false, kept: 0 })
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

/** What was printed, with lines that were broken at the edge made whole. */
const flat = () => printed.replace(/\n {2}(?=\S)/g, ' ')

function check(...names: string[]): Promise<number> {
  return checkCommand.run(
    { json: names.includes('--json') },
    names.filter((name) => name !== '--json').map((name) => join(folder, name)),
  )
}

describe('barover check', () => {
  it('finds nothing wrong with what is shipped, each procedure tried on each machine', async () => {
    expect(await check('procedures', 'examples')).toBe(0)
    for (const machine of ['TC-401-1', 'RG-27-1'])
      expect(flat()).toMatch(
        new RegExp(`^Checked as a job on the machine ${machine}: .*bore_inspection`, 'm'),
      )
    expect(printed).toMatch(/^\d+ files checked, 0 errors, 0 warnings\.\n$/m)
  })

  it('fetches what a machine record uses, from where it says', async () => {
    expect(await check('examples/tc-401/machine.yaml')).toBe(0)
    expect(printed).toBe('4 files checked, 0 errors, 0 warnings.\n')
  })

  it('points at the line of a file that is not there, and ends with 1', async () => {
    change('examples/tc-401/machine.yaml', 'crew: crew.yaml', 'crew: crews.yaml')
    expect(await check('examples', 'procedures')).toBe(1)
    expect(printed).toMatch(/machine\.yaml:\d+:9 {2}missing-file\s+'crews\.yaml'\s+is\s+not\s+there/)
    expect(printed).toContain('    crew: crews.yaml\n          ^^^^^^^^^^\n  hint: did you mean crew.yaml?')
    expect(printed).toContain('1 error, 0 warnings.')
  })

  it('closes with a line when errors ended the check early', async () => {
    change('procedures/bore-inspection.yaml', 'kind: gate', 'kind: gat')
    expect(await check('procedures')).toBe(1)
    expect(printed).toMatch(
      /^\d+ files checked, 2 errors, 0 warnings\.\nMore may show once these are right\.\n$/m,
    )
  })

  it('says which procedures are not yet checked as jobs, by id and, where that cannot be read, by file', async () => {
    change('procedures/bore-inspection.yaml', 'kind: gate', 'kind: gat')
    change('examples/first-procedure.yaml', 'procedure: first_procedure', 'procedure: 3')
    expect(await check('procedures', 'examples')).toBe(1)
    const waiting = /^Not yet as a job: ([^;]*); errors above\.$/m.exec(flat())?.[1]
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
      'bore_inspection does not take the machine TC-401-1: its cylinder is vertical.\nSafety of bore_inspection: NOT SEARCHED. Check it together with the record of a\n  machine it takes.\n5 files checked, 0 errors, 0 warnings.\n',
    )
  })

  it('says how much was searched for a way past a gate', { timeout: 240_000 }, async () => {
    search.isReal = true
    expect(await check('examples/first-procedure.yaml', 'examples/tc-401')).toBe(0)
    expect(flat()).toMatch(
      /^Safety of first_procedure on TC-401-1: [\d,]{3,} states and \d+,\d{3} moves searched in \d+\.\d s; nobody is sent to a hazard whose gate is not fresh\.$/m,
    )
  })

  it('says how much of it had been searched before', async () => {
    search.kept = 8
    expect(await check('examples/first-procedure.yaml', 'examples/tc-401')).toBe(0)
    expect(flat()).toMatch(
      /moves searched, 8 of 9 pieces of them earlier, the rest in \d+\.\d s; nobody is sent/,
    )
  })

  it('prints the answers that lead past a gate at the step they lead to, and ends with 1', async () => {
    search.breach = {
      rule: 'hazard',
      say: 'hold_point is asked, and no gate that is fresh holds back start',
      step: 'hold_point',
      path: [
        { says: 'M1 signs on', step: null },
        { says: 'NO START', step: 'hold_point' },
      ],
    }
    expect(await check('examples/first-procedure.yaml', 'examples/tc-401')).toBe(1)
    expect(flat()).toMatch(
      /first-procedure\.yaml:33:9 {2}unsafe-hazard {2}It can come to this: hold_point is/,
    )
    expect(printed).toContain(
      '  M is a mechanic, L a lead, T a trainee:\n  1  M1 signs on\n  2  hold_point: NO START\n',
    )
    expect(printed).toContain('REFUTED after 12,345 states')
    expect(printed).toMatch(/^5 files checked, 1 error, 0 warnings\.$/m)
  })

  it('says NOT PROVED with the bound that was hit, and ends with 1', async () => {
    search.bound = '60000 states'
    expect(await check('examples/first-procedure.yaml', 'examples/tc-401')).toBe(1)
    expect(flat()).toMatch(/not-proved {2}The safety of 'first_procedure' is NOT PROVED/)
    expect(flat()).toContain('NOT PROVED, bound of 60000 states')
    expect(await check('--json', 'examples/first-procedure.yaml', 'examples/tc-401')).toBe(1)
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

  it('searches the very pieces that a job on these files is opened by', async () => {
    const [procedure, machine] = ['procedures/piston-pull.yaml', 'examples/tc-401/machine.yaml'] as const
    expect(await check(procedure, machine)).toBe(0)
    const { files } = readJobFiles(join(folder, procedure), join(folder, machine))
    const opened = definitionsFrom(files)
    if (!opened.ok) throw new Error('the files do not hold together')
    expect(search.names.length).toBeGreaterThan(40)
    expect(search.names).toEqual(namesOf(opened.defs, files))
  })

  it('takes a shipped procedure by its name', async () => {
    await checkCommand.run({}, ['bore_inspection', join(folder, 'examples/tc-401')])
    expect(flat()).toMatch(/^Safety of bore_inspection on TC-401-1: /m)
  })

  it('refuses a path where nothing is', async () => {
    await expect(check('nowhere')).rejects.toThrow('there is no such file')
  })
})
