// Passages found for a question: word for word, only of this job and this machine, and none where none fits.

import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { definitionsFrom } from '../../../src/authoring/definitions.ts'
import type { Definitions } from '../../../src/core/job/definitions.ts'
import { aboutOf, stem } from '../../../src/core/papers/ask-words.ts'
import { findPassages, MOST_QUOTED } from '../../../src/core/papers/find.ts'
import { GLOSSARY } from '../../../src/core/papers/glossary.ts'
import { passagesOf } from '../../../src/core/papers/passages.ts'
import { exampleDefs, fileCopies, ROOT } from '../../helpers/example.ts'
import { shippedDefs } from '../../helpers/shipped-jobs.ts'

const pull = shippedDefs('piston-pull.yaml')
const bore = exampleDefs()
const ask = (defs: Definitions, question: string) => findPassages(defs, question, null)
const told = (defs: Definitions, question: string) =>
  ask(defs, question).map(({ from, text }) => `${from}: ${text}`)

/** Everything that a passage may be part of, as the definitions hold it. */
function sourcesOf(defs: Definitions): string {
  return JSON.stringify([
    defs.steps.map(({ step }) => step),
    defs.machine.limits,
    defs.machine.bore,
    defs.instruments,
    defs.machine.site.gas,
    defs.limitBooks,
    GLOSSARY,
  ])
}

describe('the glossary', () => {
  it('explains about sixty terms, each once, in few sentences, and with no figure that has no source beside it', () => {
    expect(GLOSSARY.length).toBeGreaterThanOrEqual(60)
    expect(new Set(GLOSSARY.map(({ term }) => term)).size).toBe(GLOSSARY.length)
    for (const { term, says } of GLOSSARY) {
      expect([term, /^[A-Z]?[a-z -]+$|^[A-Z]+$|^H2S$/.test(term)]).toEqual([term, true])
      const [words = ''] = says.split(' Ceiling ')
      expect([term, words.split(/[.;:]\s/).length <= 4 && says.endsWith('.')]).toEqual([term, true])
      expect([term, /\d/.test(words.replace(/29 CFR [\d.]+(?:\(\w+\))*/g, ''))]).toEqual([term, false])
    }
    expect(
      GLOSSARY.filter(({ says }) => / Ceiling /.test(says)).map(({ says }) => /CFR|NIOSH/.test(says)),
    ).toEqual([true])
  })

  it('stands in the order of the alphabet', () => {
    const terms = GLOSSARY.map(({ term }) => term)
    expect(terms).toEqual([...terms].sort((a, b) => a.localeCompare(b, 'en')))
  })

  it.each([
    ['what does runout mean', 'runout'],
    ['what is a counterbore?', 'counterbore'],
    ['what is the LEL', 'LEL'],
    ['what is a pellistor', 'catalytic sensor'],
    ['what are rider bands', 'rider band'],
    ['What is a hold point?', 'hold point'],
    ['what is volumetric efficiency', 'volumetric efficiency'],
    ['what does as found mean?', 'as found'],
    ['what is HE and CE', 'head end'],
    ['what does CE mean?', 'crank end'],
    ['what is ovality', 'ovality'],
    ['what is fallback?', 'fall-back limit'],
    ['what does most and least mean', 'most and least'],
    ['what is swept length', 'swept length'],
    ['what is a core plug', 'core plug'],
    ['what is a stroke', 'stroke'],
    ['why try a start?', 'try-start'],
    ['what is a standard', 'standard'],
    ['there is no plate?', 'tag plate'],
    ['what does MONITOR mean?', 'MONITOR'],
    ['monitor?', 'MONITOR'],
    ['what does a nonconformance under MONITOR mean?', 'MONITOR'],
    ['what does HOLD mean', 'HOLD'],
    ['what does ACCEPT mean', 'ACCEPT'],
    ['what is REPLACE', 'REPLACE'],
    ['what is REWORK', 'REWORK'],
    ['what does PRACTICE mean?', 'PRACTICE'],
    ['what is H2S?', 'H2S'],
    ['does H2S kill?', 'H2S'],
    ['what is hydrogen sulfide', 'H2S'],
    ['what is inert gas?', 'inert gas'],
    ['what is scoring', 'scoring'],
    ['how bad is a scratch?', 'scoring'],
    ['what is a bore?', 'bore'],
    ['why the temperature of the gauge?', 'gauge temperature'],
    ['why do I measure at six places?', 'places of measuring'],
    ['why two readings?', 'repeats'],
    ['which one counts?', 'repeats'],
    ['what is a set-check?', 'set-check'],
    ['what is a nonconformance', 'nonconformance'],
  ])('%s: first of all %s', (question, term) => {
    expect(ask(bore, question)[0]?.from).toBe(`Terms of the trade, ${term}`)
  })
})

describe('what is found', () => {
  it.each([
    ['what gap is too much', /^Limit of this machine|^Fall-back limit/],
    ['how much taper is allowed', /^Fall-back limit, named by a lead, taper/],
    ['how worn may the bore diameter be at most', /^Limit of this machine, largest/],
    ['what bore is too big', /^Limit of this machine, largest/],
    ['how much oxygen is too little', /^Gas limit of this site, oxygen/],
    ['how big is the standard', /^Register of instruments, setting standard of M-\d/],
  ])('%s: a limit with its source', (question, from) => {
    const [first] = ask(pull, question)
    expect(first?.from).toMatch(from)
    expect(first?.text).toMatch(/Source: \S/)
  })

  it.each([
    ['why is oxygen read first', /oxygen comes first because some meters/],
    ['how do I swing the micrometer', /Swing it across for the MOST/],
    ['can I use gasoline to wipe', /never gasoline or kerosene/],
    ['where do I hold the thermometer', /Hold the thermometer on/],
    ['why a tried start', /a tried start tells that/],
    ['what is a clean bore?', /Bore dry and bright/],
    ['is kerosene ok?', /never gasoline or kerosene/],
    ['why is it measured twice?', /instrument out between|instrument lifted out between/],
  ])('%s: the words of the step', (question, words) => {
    expect(told(bore, question).join('\n')).toMatch(words)
  })

  it('is found with a letter wrong in a long word too', () => {
    expect(ask(bore, 'what is a countrebore')).toEqual([])
    expect(ask(bore, 'what is a counterbor')[0]?.from).toContain('counterbore')
    expect(ask(bore, 'what does runouts mean')[0]?.from).toContain('runout')
  })

  it.each([
    'what is the moon made of',
    'who won the cup?',
    'where is the nearest pub',
    'what',
    'is it',
    'how much does a compressor cost in euros',
    'what is the capital of France?',
    'why is that asked?',
    'why am I asked this?',
    'what happens if there is none?',
    'what happens after this',
    'how long is the rod',
    'who is alone',
    'does it turn',
    'what do I do with the old rings',
    'does it matter if the lamp is hot',
    '?',
  ])('for %j is nothing', (question) => {
    expect(ask(bore, question)).toEqual([])
  })

  it('of another job is not found: only what stands in this one', () => {
    expect(told(pull, 'why an air drill').join()).not.toBe('')
    const own = new Set(passagesOf(bore).map(({ text }) => text))
    const other = passagesOf(pull).flatMap(({ text }) => (own.has(text) ? [] : [text]))
    expect(other).not.toEqual([])
    for (const question of [
      'why lift the piston with a sling',
      'how is the nut drawn up',
      'what about the packing',
    ]) {
      const texts = (defs: Definitions) => ask(defs, question).map(({ text }) => text)
      expect([question, texts(pull)]).toEqual([question, expect.arrayContaining([expect.any(String)])])
      expect([question, texts(bore).filter((text) => other.includes(text))]).toEqual([question, []])
    }
  })
})

const WORDS = [
  ...new Set(
    passagesOf(pull)
      .flatMap(({ text, about }) => `${text} ${about}`.split(/[^\p{L}\p{N}]+/u))
      .filter((word) => word !== ''),
  ),
]
const question = fc
  .tuple(
    fc.constantFrom('what is', 'why', 'how much', 'where', 'can I', 'what limit of', ''),
    fc.array(fc.oneof(fc.constantFrom(...WORDS), fc.string({ maxLength: 8 })), {
      minLength: 1,
      maxLength: 4,
    }),
  )
  .map(([first, rest]) => `${first} ${rest.join(' ')}`)

describe('what is quoted', () => {
  it('is at most three passages, none twice, each word for word from the job’s papers', {
    timeout: 60_000,
  }, () => {
    const sources = sourcesOf(pull)
    const inSources = (text: string) => sources.includes(JSON.stringify(text).slice(1, -1))
    let quoted = 0
    fc.assert(
      fc.property(question, (asked) => {
        const found = ask(pull, asked)
        quoted += found.length
        expect(found.length).toBeLessThanOrEqual(MOST_QUOTED)
        expect(new Set(found.map(({ text }) => text)).size).toBe(found.length)
        for (const { kind, text } of found) {
          // A limit is set together of what the record says: each piece of it stands there.
          const pieces =
            kind === 'limit'
              ? [text.split('. Source: ')[1] ?? 'none']
              : kind === 'size'
                ? [/: ([\d.]+ \w+)/.exec(text)?.[1] ?? 'none']
                : [text]
          for (const piece of pieces) expect([piece, inSources(piece)]).toEqual([piece, true])
        }
      }),
      { numRuns: 400, seed: 5 },
    )
    expect(quoted).toBeGreaterThan(120)
  })

  it('has, of a limit of the machine record, its figure as it is written there', () => {
    const own = passagesOf(pull).filter(({ from }) => from.startsWith('Limit of this machine'))
    expect(own.length).toBe(pull.machine.limits.length)
    for (const { at_most: most, at_least: least, source } of pull.machine.limits) {
      const figure = most === undefined ? `at least ${least?.text}` : `at most ${most.text}`
      expect(own.some(({ text }) => text.includes(figure) && text.endsWith(`Source: ${source}`))).toBe(true)
    }
  })
})

describe('limits that do not apply', () => {
  const limits = (defs: Definitions) => passagesOf(defs).filter(({ kind }) => kind === 'limit')
  const changed = (machine: (text: string) => string): Definitions => {
    const result = definitionsFrom(fileCopies({ machine }))
    if (!result.ok) throw new Error(result.diagnostics.map((d) => d.message).join('\n'))
    return result.defs
  }

  it('of rings of another material are never quoted', () => {
    const ptfe = changed((text) =>
      text.replace('material: cast-iron', 'material: ptfe').replace('rings: metallic', 'rings: ptfe'),
    )
    const ratios = (defs: Definitions) =>
      limits(defs).flatMap(({ name, text }) => {
        const ratio = /\(([\d.]+) per unit of/.exec(text)?.[1]
        return ratio === undefined || !text.includes('at least') ? [] : [`${name} ${ratio}`]
      })
    expect(ratios(bore)).toEqual(expect.arrayContaining(['ring end gap 0.002', 'ring side clearance 0.006']))
    expect(ratios(ptfe)).toEqual(expect.arrayContaining(['ring end gap 0.017', 'ring side clearance 0.018']))
    for (const one of ['ring end gap 0.017', 'ring end gap 0.003', 'ring side clearance 0.018'])
      expect(ratios(bore)).not.toContain(one)
    expect(ratios(ptfe)).not.toContain('ring end gap 0.002')
    expect(told(bore, 'what ring end gap is too small for ptfe').join()).not.toMatch(/0\.017|ptfe/i)
  })

  it('of a book are of its rows for this machine, and never of two rows for one thing', () => {
    for (const defs of [bore, pull]) {
      const names = limits(defs)
        .filter(({ from }) => !/^(?:Gas|Register)/.test(from))
        .map(({ name, text }) => `${name} ${text.includes('at least')}`)
      expect(new Set(names).size).toBe(names.length)
    }
  })

  it('of a book that no lead named are never quoted', () => {
    const bare = changed((text) => text.replace(/^fallback:\n(?: {2}.*\n)+/m, ''))
    expect(limits(bore).some(({ from }) => from.startsWith('Fall-back'))).toBe(true)
    expect(limits(bare).filter(({ from }) => from.startsWith('Fall-back'))).toEqual([])
    for (const question of ['how much taper is allowed', 'what out of round is too much'])
      expect(told(bare, question).join('\n')).not.toMatch(/Bloch|Fall-back/)
    // The other book lies beside it, and is not this machine's.
    const other = readFileSync(join(ROOT, 'procedures/limits/handbook-1996-p228.yaml'), 'utf8')
    expect(other).toContain('limit_book:')
    for (const { text } of limits(bore)) expect(text).not.toContain('p. 228')
  })

  it('that contradict each other are none', () => {
    const { machine } = bore
    const twice = machine.limits.filter((l) => l.characteristic === 'largest-diameter')
    const both = { ...bore, machine: { ...machine, limits: [...machine.limits, ...twice] } }
    const largest = (defs: Definitions) => limits(defs).filter(({ from }) => from.endsWith(', largest'))
    expect(largest(bore)).toHaveLength(1)
    expect(largest(both)).toEqual([])
  })
})

describe('words', () => {
  it('of one stem are one, and those that say nothing are left out', () => {
    expect(new Set(['measure', 'measured', 'measuring', 'measures'].map(stem)).size).toBe(1)
    expect(stem('rings')).toBe('ring')
    expect(stem('gaps')).toBe('gap')
    expect(['gas', 'gases', 'Gas'].map(stem)).toEqual(['gas', 'gas', 'gas'])
    expect(new Set(['gauge', 'gauges', 'gage'].map(stem)).size).toBe(1)
    expect(aboutOf('What does runout mean?')).toEqual(['runout'])
    expect(aboutOf('is it?')).toEqual([])
  })
})
