// Files checked as they lie in a folder: what they name is fetched, and every procedure meets every machine.
import { readFileSync } from 'node:fs'
import { join, normalize } from 'node:path'
import { describe, expect, it } from 'vitest'
import { sourceLine } from '../../src/authoring/diagnostic.ts'
import type { Disk } from '../../src/authoring/folder.ts'
import { checkTogether } from '../../src/authoring/together.ts'

function good(name: string): string {
  return readFileSync(new URL(`../fixtures/files/good-${name}.yaml`, import.meta.url), 'utf8')
}

const PART = '  - id: turning\n    kind: part\n    title: Turn it\n    use: turn_by_hand\n'

/** The good files as a folder would hold them; the paths are those that the machine record names. */
function folder(changes: Readonly<Record<string, (text: string) => string | undefined>> = {}) {
  const files = new Map<string, string>()
  for (const name of ['procedure', 'part', 'machine', 'instruments', 'crew', 'limit-book']) {
    const path = `site/good-${name}.yaml`
    const text = changes[name] === undefined ? good(name) : changes[name](good(name))
    if (text !== undefined) files.set(path, text)
  }
  const disk: Disk = {
    read: (path) => files.get(path),
    resolve: (from, name) => normalize(join(from, '..', name)),
    beside: (path) => [...files.keys()].filter((one) => join(one, '..') === join(path, '..')),
  }
  const check = (...names: string[]) => {
    const given = names.map((name) => ({
      path: `site/good-${name}.yaml`,
      text: files.get(`site/good-${name}.yaml`) ?? '',
    }))
    const result = checkTogether(given, disk)
    const said = result.diagnostics.map((one) => {
      const line = sourceLine(files.get(one.file) ?? '', one.line)
      const name = one.file.replace(/^site\/good-|\.yaml$/g, '')
      return [name, one.code, line.slice(one.column - 1, one.endColumn - 1), one.hint ?? '']
        .join(' | ')
        .replace(/ \| $/, '')
    })
    return { ...result, said }
  }
  return check
}

const change = (from: string, to: string) => (text: string) => {
  if (!text.includes(from)) throw new Error(`the file holds no ${from}`)
  return text.replace(from, to)
}
const withPart = change('  - id: strip\n', `${PART}  - id: strip\n`)

describe('files together', () => {
  it('are checked with what they name, once each', () => {
    const check = folder({ procedure: withPart })
    const { said, files, jobs, kinds } = check('machine', 'procedure')
    expect(said).toEqual([])
    expect(files.map((file) => file.path).sort()).toEqual([
      'site/good-crew.yaml',
      'site/good-instruments.yaml',
      'site/good-limit-book.yaml',
      'site/good-machine.yaml',
      'site/good-part.yaml',
      'site/good-procedure.yaml',
    ])
    expect(jobs).toEqual([{ procedure: 'small_bore_check', machine: 'XC-8' }])
    expect(kinds.get('site/good-crew.yaml')).toBe('crew')
  })

  it('need no machine for what a procedure and its parts say of each other', () => {
    const check = folder({ procedure: withPart, part: change('holds: [pinch]', 'holds: [pinched]') })
    expect(check('procedure').said).toEqual([
      'procedure | in-part | turn_by_hand | see site/good-part.yaml:19:13',
      'part | unknown-hazard | pinched | did you mean pinch?',
      'part | not-held | pinch | put a gate that holds it before the first step that exposes people to it',
    ])
  })

  it('are not a job while a part does not hold', () => {
    const check = folder({ procedure: withPart, part: change('kind: gate', 'kind: gat') })
    const { said, jobs } = check('machine', 'procedure')
    expect(said).toEqual([
      'procedure | in-part | turn_by_hand | see site/good-part.yaml:17:11',
      'part | unknown-choice | gat | did you mean gate?',
    ])
    expect(jobs).toEqual([])
  })

  it('say that a part is not beside the procedure', () => {
    const check = folder({ procedure: withPart, part: () => undefined })
    expect(check('procedure').said).toEqual([
      'procedure | unknown-part | turn_by_hand | procedures beside this one: none',
    ])
  })

  it('offer the procedures beside this one for a misspelled part, used by nobody yet', () => {
    const check = folder({
      procedure: (text) => withPart(text).replace('use: turn_by_hand', 'use: turn_by_hnd'),
    })
    const expected = ['procedure | unknown-part | turn_by_hnd | did you mean turn_by_hand?']
    expect(check('procedure').said).toEqual(expected)
    expect(check('machine', 'procedure').said).toEqual(expected)
    const far = folder({ procedure: (text) => withPart(text).replace('use: turn_by_hand', 'use: lunch') })
    expect(far('procedure').said).toEqual([
      'procedure | unknown-part | lunch | procedures beside this one: turn_by_hand',
    ])
  })

  it('name the key that a test for flammables lacks, with the oxygen test of its place', () => {
    const check = folder({ procedure: change(', with: meter, oxygen: oxygen }', ', with: meter }') })
    expect(check('machine', 'procedure').said).toEqual([
      'procedure | oxygen-first | burns | add oxygen: oxygen, the oxygen evidence taken before it at the same place',
    ])
  })

  it('say whether errors ended a check before its later checks', () => {
    const ended = (procedure: (text: string) => string, ...names: string[]) =>
      folder({ procedure })(...names).isStoppedEarly
    const shapeless = change('kind: gate', 'kind: gat')
    const unsound = change('holds: [rotation', 'holds: [rotaton')
    expect(ended(shapeless, 'procedure')).toBe(true)
    expect(ended(unsound, 'procedure')).toBe(false)
    expect(ended(unsound, 'machine', 'procedure')).toBe(true)
    expect(ended((text) => text, 'machine', 'procedure')).toBe(false)
  })

  it('say what is wrong with the job of a procedure and a machine', () => {
    const check = folder({ machine: change('id: oxygen_air', 'id: oxygen_breathing') })
    expect(check('machine', 'procedure').said).toEqual([
      'procedure | unknown-gas-limit | oxygen_air | choose by gas and place: oxygen_breathing (oxygen, breathing zone) or flammable_air (flammable, breathing zone)',
    ])
    expect(check('machine').said).toEqual([])
  })

  it('say in a plain line that a procedure does not take a machine', () => {
    const check = folder({ machine: change('orientation: horizontal', 'orientation: vertical') })
    const { said, refusals, jobs } = check('machine', 'procedure')
    expect([said, jobs]).toEqual([[], []])
    expect(refusals).toEqual(['small_bore_check does not take the machine XC-8: its cylinder is vertical.'])
  })
})

describe('what a machine record uses', () => {
  it.each([
    [
      'crew',
      'crew: good-crew.yaml',
      'crew: good-crw.yaml',
      'missing-file | good-crw.yaml | did you mean good-crew.yaml?',
    ],
    [
      'instruments',
      'instruments: good-instruments.yaml',
      'instruments: register.yaml',
      'missing-file | register.yaml | files are looked for beside this one',
    ],
    [
      'a book',
      '[good-limit-book.yaml]',
      '[../books/a.yaml]',
      'missing-file | ../books/a.yaml | files are looked for beside this one',
    ],
    [
      'another kind',
      'crew: good-crew.yaml',
      'crew: good-instruments.yaml',
      'other-kind | good-instruments.yaml',
    ],
  ])('is an error at its line when it is not there: %s', (_name, from, to, expected) => {
    const { said, jobs } = folder({ machine: change(from, to) })('machine', 'procedure')
    expect(said).toEqual([`machine | ${expected}`])
    expect(jobs).toEqual([])
  })

  it('is checked too, and there is no job while it does not hold', () => {
    const { said, jobs } = folder({ crew: change('role: lead', 'role: boss') })('machine', 'procedure')
    expect(said).toEqual(['crew | unknown-choice | boss'])
    expect(jobs).toEqual([])
  })
})
