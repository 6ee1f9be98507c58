// A session on the sheet: what is asked, what is marked, and that nothing of it gets into a job.
import { describe, expect, it } from 'vitest'
import { takeInOf } from '../../../src/core/job/admit-record.ts'
import { barsAdopting } from '../../../src/core/job/adopt.ts'
import { readEntries } from '../../../src/core/job/entry-schema.ts'
import { fold, opening } from '../../../src/core/job/fold.ts'
import { openJob } from '../../../src/core/job/open-job.ts'
import type { Practised } from '../../../src/core/job/practice.ts'
import { drawFaults } from '../../../src/core/practice/draw.ts'
import { faultsFor } from '../../../src/core/practice/faults.ts'
import { gradeOf } from '../../../src/core/practice/grade.ts'
import { gradeLines } from '../../../src/core/practice/grade-lines.ts'
import { lessonOn } from '../../../src/core/practice/lesson.ts'
import { uncovered } from '../../../src/core/practice/truth.ts'
import { foot } from '../../../src/core/sheet/foot.ts'
import { fitLive } from '../../../src/core/sheet/live.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { Walk } from '../../helpers/example.ts'
import { careful, practiceDefs, rodDefs, session } from '../../helpers/trainees.ts'

const SOUND: Practised = { seed: seedOfNothing(), level: 1 }

function seedOfNothing(): number {
  const faults = faultsFor(practiceDefs())
  for (let seed = 1; ; seed++) if (drawFaults(faults, seed, 1).length === 0) return seed
}

const begun = (practice: Practised = SOUND) => new Walk(practiceDefs(), 'PRACTICE', { practice }).keys('RO')

function lastLesson(walk: Walk) {
  const seq = walk.entries.findLast(({ type }) => !type.startsWith('gate.'))?.seq ?? 0
  const [first, ...rest] = walk.entries
  if (first?.type !== 'job.opened') throw new Error('not opened')
  let state = opening(first)
  for (const entry of rest) {
    state = fold(state, entry)
    if (entry.seq === seq) return lessonOn(walk.engine.defs, state, entry)
  }
  throw new Error('no entry')
}

const toLocks = (walk: Walk) => walk.keys('look', 'TC-401-1', '')

describe('at the first thing that is keyed', () => {
  it('the sheet says how to look, as whoever does not know the word fails the session', () => {
    const text = (walk: Walk) =>
      promptView(walk.engine.defs, walk.state, walk.talk, { width: 79, record: 'PRACTICE', ascii: true })
        .ask.map((one) => one.text)
        .join(' ')
    expect(begun().prompt.kind).toBe('tag')
    expect(text(begun())).toContain('What is keyed without a look fails the session.')
    expect(text(new Walk(practiceDefs(), 'PRACTICE').keys('RO'))).not.toContain('look')
  })
})

describe('a practice session', () => {
  it('is never REAL or EXAMPLE, and never signed with keys of a crew of its own', () => {
    const defs = practiceDefs()
    const base = {
      job: 'x',
      version: 'x',
      zone: 'UTC',
      clock: 'set',
      answers: 'script',
      files: [],
      practice: SOUND,
    } as const
    expect(openJob(defs, { ...base, record: 'EXAMPLE' })).toMatchObject({
      ok: false,
      error: { code: 'practice' },
    })
    expect(openJob(defs, { ...base, record: 'REAL' })).toMatchObject({
      ok: false,
      error: { code: 'practice' },
    })
    const [one, ...others] = defs.crew.crew
    const own = {
      ...defs,
      crew: { ...defs.crew, crew: [{ ...one, pin: '$scrypt$ln=15,r=8,p=1$AAAA$BBBB' }, ...others] },
    }
    expect(openJob(own as typeof defs, { ...base, record: 'PRACTICE' })).toMatchObject({
      ok: false,
      error: { code: 'own-key' },
    })
    expect(openJob(defs, { ...base, record: 'PRACTICE' })).toMatchObject({ ok: true })
  })

  it('is not heard in a job, nor taken by one', () => {
    const job = new Walk().keys('RO')
    job.keys('look')
    expect(job.last.type).toBe('person.signed-on')
    expect(job.prompt.kind).toBe('tag')
    const body = { type: 'practice.hinted', step: null, text: 'x' } as const
    expect(job.bring({ do: 'practice', what: body })).toBe('no-practice')
  })

  it('leaves no baseline for a machine, and takes no other record in', () => {
    const { walk } = session(SOUND.seed, 1, careful)
    expect(barsAdopting(walk.state)).toMatchObject({ ok: false, error: { code: 'practice' } })
    const { defs } = walk.engine
    expect(takeInOf(defs, walk.state, defs, null)).toMatchObject({ ok: false, error: { code: 'practice' } })
  })

  it('gives the same figure for the same asking, and another for the next', () => {
    const one = toLocks(begun())
    const two = toLocks(begun())
    expect(one.keys('look').last).toEqual(two.keys('look').last)
    const grade = session(SOUND.seed, 1, careful)
    const shown = grade.walk.entries.flatMap((e) =>
      e.type === 'practice.asked' && e.of === 'bore.centre.vertical' ? [e.figure] : [],
    )
    expect(shown.length).toBeGreaterThan(1)
    const far = Math.max(...shown.map(Number)) - Math.min(...shown.map(Number))
    expect(far).toBeLessThanOrEqual(0.0003)
  })

  it('reads back from disk as it was, at every kind of entry it makes', () => {
    const { walk } = session(SOUND.seed, 1, careful)
    const hinted = toLocks(begun()).keys('hint')
    const entries = [...walk.entries, ...hinted.entries.slice(-1)]
    const kinds = new Set(entries.map(({ type }) => type))
    for (const kind of ['asked', 'called', 'named', 'hinted'] as const)
      expect(kinds).toContain(`practice.${kind}`)
    for (const one of [walk, hinted]) {
      const stored = one.entries.map(
        (e) => JSON.parse(JSON.stringify({ ...e, prev: '00', hash: '00' })) as unknown,
      )
      const read = readEntries(stored)
      expect(read).toMatchObject({ ok: true })
      if (read.ok) expect(read.value).toStrictEqual(one.entries)
    }
  })

  it('takes no word that asks the machine for the words of a finding', () => {
    const walk = begun()
    for (let n = 0; !(walk.prompt.kind === 'observe' && walk.prompt.step.id.endsWith('surface')); n++)
      if (n > 200 || !careful(walk)) throw new Error('no look at the surface')
    walk.keys('2')
    for (const word of ['look', 'measure quick', 'hint']) {
      walk.keys(word)
      expect(walk.said.at(-1)).toMatch(/are heard at the prompt: back leaves this question first/)
    }
    expect(walk.entries.some((one) => one.type === 'finding.observed' && one.step.endsWith('surface'))).toBe(
      false,
    )
    expect(walk.talk.ask).not.toBeNull()
  })

  it('holds the verdict back until the trainee decided, and the end until they named what was hidden', () => {
    const walk = begun()
    for (let n = 0; walk.prompt.kind !== 'judge'; n++)
      if (n > 200 || !careful(walk)) throw new Error('no judge')
    expect(walk.keys('ACCEPT').last.type).not.toBe('practice.called')
    for (const asked of ['rework or replace?', 'rework or replace', 'which limit is replace?', 'limits']) {
      const before = walk.said.length
      expect(walk.keys(asked).last.type).not.toBe('practice.called')
      expect(walk.said.slice(before).join(' ')).toMatch(/beyond it REWORK/)
    }
    for (const named of [
      'ACCEPT spread of all',
      'ACCEPT largest diameter',
      'ACCEPT largest',
      'ACCEPT out-of-round',
    ])
      expect(walk.copy().keys(named).entries.at(-2)?.type, named).toBe('practice.called')
    expect(walk.keys('REWORK taper?').last.type).not.toBe('practice.called')
    walk.key('ACCEPT spread')
    expect(walk.entries.slice(-2).map(({ type }) => type)).toEqual(['practice.called', 'verdict.given'])
    walk.key('')
    expect([walk.prompt.kind, walk.state.closed]).toEqual(['finish', null])
    expect(walk.keys('0').state.closed).not.toBeNull()
  })
})

describe('the screen of a session', () => {
  it('names the words that ask the machine in its foot and in help, and that of a job does not', () => {
    const words = (walk: Walk) => {
      const { engine, state, talk } = walk
      const style = { width: 79, record: 'PRACTICE', ascii: true } as const
      const view = promptView(engine.defs, state, talk, style)
      const { below } = fitLive({
        view,
        foot: foot(engine.defs, state, walk.now),
        style,
        rows: 24,
        columns: 80,
        notice: null,
      })
      return below.map(({ text }) => text).join(' ')
    }
    expect(words(begun())).toContain('look hint wait fault')
    expect(words(new Walk(practiceDefs(), 'PRACTICE').keys('RO'))).not.toContain('measure')
    expect(begun().keys('help').said.join(' ')).toContain('look and measure ask the machine')
  })
})

describe('one answer', () => {
  it('at the plate: looked and read, or failed', () => {
    expect(lastLesson(begun().keys('look', 'TC-401-1'))).toMatchObject({
      isUnsafe: false,
      marks: [{ skill: 'safety', isRight: true }],
    })
    expect(lastLesson(begun().keys('TC-401-1'))).toMatchObject({ isUnsafe: true })
  })

  it.each([
    ['without a look', [], 'L-999'],
    ['a look that answered the line before', ['look', null, ''], 'L-998'],
  ] as const)('at a hold point fails the session: %s', (_what, asks, typed) => {
    const walk = toLocks(begun())
    const number = () => /L-\d+/.exec(shownIn(walk))?.[0] ?? ''
    for (const ask of asks) if (ask !== '') walk.key(ask ?? number())
    walk.key(typed ?? number())
    expect(lastLesson(walk)).toMatchObject({ isUnsafe: true })
    expect(gradeOf(walk.engine.defs, walk.entries)).toMatchObject({ safety: 'failed', isPassed: false })
  })

  it.each([
    [['measure'], 'as shown', { measuring: true, recording: true }],
    [['measure quick'], 'as shown', { measuring: false, recording: true }],
    [['measure'], 'other', { measuring: true, recording: false }],
    [[], 'other', { measuring: false }],
  ] as const)('with %j, keyed %s, is marked %j', (asks, keyed, marks) => {
    const walk = begun()
    for (let n = 0; walk.prompt.kind !== 'read'; n++)
      if (n > 100 || !careful(walk)) throw new Error('no reading')
    walk.keys(...asks, keyed === 'as shown' ? '' : '70.0')
    if (keyed === 'as shown') walk.key(figureIn(walk))
    const lesson = lastLesson(walk)
    expect(Object.fromEntries((lesson?.marks ?? []).map(({ skill, isRight }) => [skill, isRight]))).toEqual(
      marks,
    )
  })
})

describe('a repeat', () => {
  it('is measured anew: one look answers once', () => {
    const walk = begun()
    const isAtBore = () => walk.prompt.kind === 'read' && walk.prompt.place.key.startsWith('bore.')
    for (let n = 0; !isAtBore(); n++) if (n > 100 || !careful(walk)) throw new Error('no bore')
    walk.key('measure')
    walk.keys(figureIn(walk))
    expect(lastLesson(walk)?.marks).toEqual([
      { skill: 'measuring', isRight: true },
      { skill: 'recording', isRight: true },
    ])
    walk.keys(figureIn(walk))
    expect(lastLesson(walk)?.marks).toEqual([{ skill: 'measuring', isRight: false }])
  })
})

function shownIn(walk: Walk): string {
  const last = walk.entries.findLast((entry) => entry.type === 'practice.asked')
  return last?.type === 'practice.asked' ? last.shown : ''
}

function figureIn(walk: Walk): string {
  const last = walk.entries.findLast((entry) => entry.type === 'practice.asked')
  return last?.type === 'practice.asked' ? (last.figure ?? '') : ''
}

describe('the sheet of a session', () => {
  it('has safety apart, a score by skill, what was hidden, what is next and the seed', () => {
    const { grade } = session(SOUND.seed, 1, careful)
    expect(gradeLines(grade).join('\n')).toMatch(
      /Safety, apart from all else: PASSED[\s\S]*measuring +\d+ of \d+ right[\s\S]*nothing[\s\S]*\( PASSED \)[\s\S]*Level 2 comes[\s\S]*--seed/,
    )
  })

  it('counts a hint as one thing not known', () => {
    const walk = toLocks(begun()).keys('hint', 'hint')
    expect(gradeOf(walk.engine.defs, walk.entries)).toMatchObject({ hints: 2, weakest: 'diagnosing' })
  })
})

describe('practice', () => {
  it('knows every step of the bore inspection and of the sizes of a rod', () => {
    expect(uncovered(practiceDefs())).toEqual([])
    expect(uncovered(rodDefs())).toEqual([])
  })
})
