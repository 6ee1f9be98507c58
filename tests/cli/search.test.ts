// What of a search is kept, and that threads of the built program come to the same.
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { searchJob } from '../../src/cli/search.ts'
import { barover } from '../helpers/cli.ts'
import { ROOT } from '../helpers/example.ts'
import { smallDefs, tell } from '../helpers/small-job.ts'

function keeping() {
  const kept = new Map<string, { readonly states: number; readonly moves: number }>()
  const store = {
    find: (name: string) => kept.get(name) ?? null,
    keep: (name: string, { states, moves }: { readonly states: number; readonly moves: number }) =>
      void kept.set(name, { states, moves }),
  }
  return { kept, keeping: { program: 'this one', store } }
}

describe('a search', () => {
  const small = smallDefs([tell('first'), tell('end')])

  it('keeps what is sound, and nothing else', async () => {
    const { kept, keeping: own } = keeping()
    const { proof } = await searchJob(small, [], { keeping: own, mostStates: 3 })
    expect(proof).toMatchObject({ is: 'not-proved', bound: '3 states' })
    expect(kept.size).toBe(0)
  })

  it('searches once what was found sound, and all of it again when told to', async () => {
    const { kept, keeping: own } = keeping()
    const told: string[] = []
    const onPiece = (done: number, of: number) => told.push(`${done}/${of}`)
    const first = await searchJob(small, [], { keeping: own, onPiece })
    expect(first).toMatchObject({ proof: { is: 'proved' }, pieces: 2, kept: 0 })
    expect(told).toEqual(['1/2', '2/2'])
    expect(kept.size).toBe(1)
    expect(await searchJob(small, [], { keeping: own })).toEqual({ ...first, kept: 1 })
    expect(await searchJob(small, [], { keeping: own, anew: true })).toEqual(first)
  })
})

describe('the built program', () => {
  let folder = ''
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'search-'))
    cpSync(join(ROOT, 'examples'), join(folder, 'examples'), { recursive: true })
    cpSync(join(ROOT, 'procedures'), join(folder, 'procedures'), { recursive: true })
  })
  afterEach(() => rmSync(folder, { recursive: true, force: true }))

  it('searches in threads what has not been searched, and only that', { timeout: 120_000 }, async () => {
    const procedure = join(folder, 'examples/first-procedure.yaml')
    const check = async (...more: string[]) => {
      const env = { XDG_CACHE_HOME: join(folder, 'cache') }
      const ran = await barover(['check', '--json', procedure, join(folder, 'examples/tc-401'), ...more], {
        env,
      })
      expect(ran).toMatchObject({ code: 0, err: '' })
      const [one] = JSON.parse(ran.out).safety
      return one
    }
    const first = await check()
    expect(first).toMatchObject({ is: 'proved', searchedBefore: 0 })
    const kept = readdirSync(join(folder, 'cache/barover/proofs'))
    expect(kept.length).toBe(first.pieces - 1)
    expect(await check()).toEqual({ ...first, searchedBefore: first.pieces - 1 })
    writeFileSync(procedure, `${readFileSync(procedure, 'utf8')}\n# a byte more\n`)
    expect(await check()).toEqual(first)
  })
})
