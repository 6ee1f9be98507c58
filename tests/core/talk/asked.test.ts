// What is a question in plain words and what is not, at every prompt; nothing that could be an answer is ever one.
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { admit } from '../../../src/core/job/admit.ts'
import { asKind } from '../../../src/core/job/definitions.ts'
import { NO_OTHERS } from '../../../src/core/job/elsewhere.ts'
import { NOTHING_FOUND, WORD_FOR_WORD } from '../../../src/core/talk/answer-asked.ts'
import { askedAt, askedWithin, questionIn } from '../../../src/core/talk/asked.ts'
import { hear } from '../../../src/core/talk/hear.ts'
import { PIN_DROPPED } from '../../../src/core/talk/words.ts'
import { readAnswers } from '../../../src/plain/answers.ts'
import {
  AFTER_LINES,
  BORE_LINES,
  exampleDefs,
  LOCK_LINES,
  ROOT,
  Walk,
  WORD_LINES,
} from '../../helpers/example.ts'

const heard = (walk: Walk, line: string) => hear(walk.engine.defs, walk.state, walk.talk, line)
const isLookedUp = (lines: readonly string[]) => lines[0] === WORD_FOR_WORD || lines[0] === NOTHING_FOUND
/** Looked up, or told from the job itself. */
const isAnswer = (lines: readonly string[]) =>
  isLookedUp(lines) ||
  /^(This job judges|The limit of|STOP is open|The job is STOPPED|No gas test stands|Hold point \d+: |Taken last|No figure|Signed on|Nobody is|Barover sees|Not yet|FIRST: |7\.1 .* waits)/.test(
    lines[0] ?? '',
  )

const QUESTIONS = [
  'what gap is too much',
  'what does runout mean',
  'why an air drill',
  'runout?',
  'What is a hold point?',
  'is the bore worn too far',
  'can I use gasoline to wipe',
  'does the counterbore count as wear',
  'ask what a ring gap is',
  'ask: ring gap',
  'which end is the head end',
  'when does the gas test lapse?',
  'did it take my reading',
  'am I allowed to do this alone',
  'may I go in',
  'are we done',
  'somebody is hurt',
  'it has moved',
]

const NO_QUESTIONS = [
  ...[
    '',
    '?',
    ' ? ',
    '??',
    '1',
    '9.5033',
    '9.5033?',
    '9.5033 in?',
    '0.020 in gap too much?',
    '-5?',
    '4071',
    '4071?',
  ],
  ...['RO', 'RO?', 'KH', 'is', 'IS', 'what', 'how', 'ask', 'do', 'can 1', 'IS 401 2', 'L-101', 'M-3'],
  ...[
    'NO START',
    'ALL OUT',
    'BLOCKED BOTH WAYS',
    'done',
    'not attended',
    'hand on',
    'release',
    'island',
    'whatever',
  ],
  ...['how 9', 'doesnt matter', 'isolated', 'was scored', 'may 12', 'hurt', 'alarm'],
]

describe('a line', () => {
  it.each(QUESTIONS)('%j is a question', (line) => {
    expect(questionIn(line)).not.toBeNull()
  })

  it.each(NO_QUESTIONS)('%j is none', (line) => {
    expect(questionIn(line)).toBeNull()
  })
})

/** A walk at each kind of prompt, by name. */
const PROMPTS: Readonly<Record<string, () => Walk>> = {
  'sign-on': () => new Walk(),
  tag: () => new Walk().keys('RO'),
  tell: () => new Walk().keys('RO', 'TC-401-1'),
  lock: () => new Walk().toGate(),
  words: () => new Walk().toGate().keys(...LOCK_LINES),
  'pick at a gate': () => new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES.slice(0, 3)),
  gas: () => new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES),
  witness: () => new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES, '20.9', '0', '0', '20.8', '0', '0'),
  confirm: () => new Walk().throughGate(),
  pick: () => new Walk().throughGate().keys('1'),
  read: () => new Walk().toBore(),
  doubt: () => new Walk().toBore().keys('9.053'),
  observe: () => new Walk().toBore().keys(...BORE_LINES),
  clear: () => new Walk().toBore().wait(31).keys(''),
  decide: () => new Walk().toVerdict(),
  'stop-cause': () => new Walk().toBore().keys('stop'),
  stopped: () => new Walk().toBore().keys('stop', '1', 'gas was smelt', 'RO'),
}

/** Entries that this line alone would put on record as an answer, were it never looked at as a question. */
function wouldRecord(walk: Walk, line: string): number {
  const { prompt } = walk
  const input = (() => {
    switch (prompt.kind) {
      case 'tag':
        return { do: 'name-machine', typed: line.trim() } as const
      case 'sign-on':
        return { do: 'sign-on', person: line.trim(), proved: true } as const
      case 'clear':
        return { do: 'clear', step: prompt.gate.id, typed: line } as const
      case 'evidence':
        return {
          do: 'evidence',
          step: prompt.gate.id,
          item: prompt.item.key,
          typed: line,
          proved: true,
        } as const
      case 'read':
        return { do: 'read', place: prompt.place.key, typed: line } as const
      case 'observe':
        return { do: 'observe', step: prompt.step.id, condition: line } as const
      default:
        return null
    }
  })()
  return input === null ? 0 : admit(walk.engine, walk.state, input, walk.now, NO_OTHERS).entries.length
}

describe('at every prompt', () => {
  it.each(Object.keys(PROMPTS))(
    '%s: a question is answered from the papers, and nothing else comes of it',
    (name) => {
      const walk = PROMPTS[name]?.() as Walk
      for (const line of QUESTIONS) {
        const { input, say, talk, pin } = heard(walk, line)
        // One word at the plate may be the tag of another machine.
        expect([line, input, pin, isAnswer(say)]).toEqual([line, null, undefined, true])
        expect(talk.ask).toBeNull()
      }
      const before = [...walk.entries]
      walk.keys(...QUESTIONS)
      expect(walk.entries).toEqual(before)
    },
  )

  it('no line is ever both looked up and taken', { timeout: 60_000 }, () => {
    const walks = Object.values(PROMPTS).map((make) => make())
    const pieces = [
      ...QUESTIONS,
      ...NO_QUESTIONS,
      'TC-401-1',
      'WHAT-1',
      'what tc 402 1',
      'where is RO',
      'NO FLOW?',
      'is no start',
    ]
    const line = fc.oneof(
      fc.constantFrom(...pieces),
      fc.tuple(fc.constantFrom(...pieces), fc.constantFrom('', ' ', '?', '!')).map((two) => two.join('')),
      fc
        .tuple(fc.constantFrom('what', 'is', 'can', 'ask', 'where'), fc.constantFrom(...pieces))
        .map((t) => t.join(' ')),
      fc.string({ maxLength: 20 }),
    )
    let asked = 0
    fc.assert(
      fc.property(fc.constantFrom(...walks), line, (walk, keyed) => {
        const { input, say } = heard(walk, keyed)
        if (askedAt(walk.engine.defs, walk.state, walk.prompt, keyed) === null) return
        if (!isAnswer(say)) return
        asked++
        expect(input).toBeNull()
        // The tag of no machine: it holds no figure, or is a sentence that asks. All else would have been refused.
        if (walk.prompt.kind === 'tag') expect(keyed).toMatch(/^\D*$|^\s*\p{L}{3,5} .*\p{L}{2}.*\p{L}{2}/u)
        else expect([walk.prompt.kind, keyed, wouldRecord(walk, keyed)]).toEqual([walk.prompt.kind, keyed, 0])
      }),
      { numRuns: 1500, seed: 11 },
    )
    expect(asked).toBeGreaterThan(200)
  })

  it('words that a hold point asks for are its answer, though they begin like a question', () => {
    const asks = (words: string) =>
      new Walk(exampleDefs({ procedure: (text) => text.replace('words: NO START', `words: ${words}`) }))
        .toGate()
        .keys(...LOCK_LINES)
    for (const words of [
      'IS NOT STARTING',
      'CAN NOT START',
      'WHERE',
      'NEXT',
      'ASK',
      'ASK THE PANEL',
      'WHY STARTED',
      'NOTE THE SWITCH',
      'ATTACH NO PUMP',
    ]) {
      expect([words, heard(asks(words), words.toLowerCase()).input]).toMatchObject([
        words,
        { do: 'evidence' },
      ])
      expect(asks(words).keys(words).last).toMatchObject({ type: 'evidence.given', shown: words })
    }
  })

  it('the tag of another machine is put on record, and that of this one opens the job, whatever they look like', () => {
    for (const tag of ['IS-401-2', 'is 401 2', 'WHERE 2', 'can-4', 'ask 12'])
      expect([tag, new Walk().keys('RO', tag).last]).toMatchObject([tag, { type: 'machine.mismatched' }])
    const odd = (text: string) => text.replace(/^machine: .*$/m, 'machine: WHAT-IS-THIS')
    const walk = new Walk(exampleDefs({ machine: odd })).keys('RO', 'what is this')
    expect(walk.last).toMatchObject({ type: 'machine.named' })
  })

  it('words of which the first asks are no tag, also with a figure among them', () => {
    for (const line of [
      'which tag',
      'what plate',
      'where now',
      'what does 18 mean',
      'what is 402',
      'is 18 ok',
    ])
      expect(new Walk().keys('RO', line).entries.some(({ type }) => type === 'machine.mismatched')).toBe(
        false,
      )
  })

  it('initials that are a word here are initials', () => {
    for (const id of ['ASK', 'WHY', 'NEXT']) {
      const crew = (text: string) => text.replaceAll('id: RO', `id: ${id}`)
      const walk = new Walk(exampleDefs({ crew }))
      walk.pinsAreRight = true
      expect(walk.keys(id).last).toMatchObject({ type: 'person.signed-on', person: id })
    }
  })
})

describe('where words are asked for', () => {
  const notes = ['ask KH to look at it', 'ask the lead', 'how: by lamp', 'was scored', 'where the ring ran']
  const doubtful = ['what gap is too much', 'why an air drill', 'is this right?', 'did it take my reading']

  it.each(notes)('%j is the note', (line) => {
    expect(new Walk().toBore().keys('note', line).last).toMatchObject({ type: 'note.written', text: line })
    expect(new Walk().throughGate().keys('2', line).last).toMatchObject({
      type: 'step.objected',
      remark: line,
    })
    const kept = new Walk().toBore().keys('9.053', '3', line)
    expect(kept.entries.at(-1)).toMatchObject({ type: 'doubt.settled', why: line })
  })

  it.each(doubtful)('%j may be a question: it is asked about, and goes on no record before', (line) => {
    const walk = new Walk().toBore().keys('note', line)
    expect(walk.talk.ask).toEqual({ kind: 'word-meant', line, of: { kind: 'note' } })
    expect(walk.last.type).not.toBe('note.written')
    expect(heard(walk, '1').input).toEqual({ do: 'note', text: line })
    const told = heard(walk, '2')
    expect([told.input, told.talk.ask, told.say.length > 0]).toEqual([null, { kind: 'note' }, true])
    for (const other of ['', '3', 'yes', line]) expect(heard(walk, other).input).toBeNull()
  })

  it('at the cause of a STOP too, which asks on after the answer', () => {
    const walk = new Walk().toBore().keys('stop', '1', 'who may release this?', '2')
    expect(walk.said.join('\n')).toContain('A lead releases a STOP')
    expect(walk.talk.ask).toMatchObject({ kind: 'stop-why' })
    walk.keys('gas was smelt', 'RO')
    expect(walk.prompt.kind).toBe('stopped')
  })

  it('a question with ask before it is one, and the words are still asked for', () => {
    const walk = new Walk().toBore().keys('note')
    const { input, say, talk } = heard(walk, 'ask what is runout')
    expect([input, talk]).toEqual([null, walk.talk])
    expect(say[0]).toBe(WORD_FOR_WORD)
    const before = walk.entries.length
    walk.keys('ask what is runout')
    expect(walk.entries).toHaveLength(before)
    expect(walk.keys('the lamp is dim').last).toMatchObject({ type: 'note.written', text: 'the lamp is dim' })
  })

  it('where a figure or initials are asked for, a question is one and the other question stands', () => {
    for (const walk of [new Walk().toBore().keys('correct'), new Walk().toBore().keys('sign on')]) {
      const { input, say, talk } = heard(walk, 'what is runout')
      expect([input, talk, say[0]]).toEqual([null, walk.talk, WORD_FOR_WORD])
    }
  })

  it('? alone is no question where a STOP asks who called it', () => {
    const walk = new Walk().toBore().keys('stop', '1', 'gas was smelt', '?')
    expect(walk.prompt.kind).toBe('stopped')
  })
})

describe('an answer', () => {
  it('with a limit from a book says that the maker comes first; one without says nothing of it', () => {
    const say = (line: string) => heard(new Walk().toBore(), line).say.join('\n')
    expect(say('how much taper is allowed')).toMatch(/Fall-back limits: the maker.s manual comes first\.$/)
    expect(say('what is a pellistor')).not.toContain('Fall-back')
  })

  it('marks what stands in a later step, and keeps the tag of the plate to itself until it was read', () => {
    expect(heard(new Walk().toGate(), 'how do I wipe the bore').say.join()).toContain('(not yet to be done)')
    expect(heard(new Walk().toVerdict(), 'how do I wipe the bore').say.join()).not.toContain('(not yet')
    const tagged = (text: string) => text.replace('why: A film of oil', 'why: On TC-401-1 a film of oil')
    const walk = new Walk(exampleDefs({ procedure: tagged }))
    expect(heard(walk, 'why is a film of oil bad').say.join()).not.toContain('TC-401-1')
    expect(heard(walk.keys('RO', 'TC-401-1'), 'why is a film of oil bad').say.join()).toContain('TC-401-1')
  })
})

describe('a PIN', () => {
  it('is never looked up, said or put into any input, whatever is keyed for it', () => {
    const walk = new Walk()
    walk.autoPin = false
    walk.keys('RO')
    expect(walk.talk.ask?.kind).toBe('pin')
    for (const line of [
      'what is 4071',
      'ask what is 4071',
      '4071?',
      'why 4071',
      'where',
      'next',
      'runout?',
    ]) {
      const { input, say, pin, talk } = heard(walk, line)
      expect([line, input, pin]).toEqual([line, null, undefined])
      expect([line, talk.ask?.kind]).toEqual([line, 'pin'])
      expect([line, say]).toEqual([line, [expect.stringMatching(/^A PIN is 4 to 12 figures: this was none/)]])
    }
    expect(heard(walk, ' 4072 ')).toMatchObject({ input: null, say: [], pin: { person: 'RO', pin: '4072' } })
    if (walk.talk.ask !== null)
      expect(askedWithin(walk.engine.defs, walk.talk.ask, 'ask what is runout')).toBeNull()
  })

  it('whose question fell under it is dropped unseen, and nothing is looked up then', () => {
    const walk = new Walk().toBore()
    walk.autoPin = false
    const ask = { kind: 'pin', person: 'KH', what: { do: 'sign-point', step: 'x', person: 'KH' } } as const
    const fallen = walk.wait(31).copy().keys('')
    fallen.talk = { ask }
    expect(fallen.prompt.kind).toBe('clear')
    expect(heard(fallen, '8314').say).toEqual([PIN_DROPPED])
    for (const line of ['what is runout', 'ask 8314 runout', 'why runout'])
      expect(isAnswer(heard(fallen, line).say)).toBe(false)
  })
})

describe('STOP and safe', () => {
  it.each(Object.keys(PROMPTS))('%s: come before any question', (name) => {
    const walk = PROMPTS[name]?.() as Walk
    expect(heard(walk, 'stop').input).toEqual({ do: 'stop' })
    expect(heard(walk, '!').input).toEqual({ do: 'stop' })
    expect(heard(walk, 'safe').say[0]).toContain('MAKE SAFE')
  })
})

describe('words that are none', () => {
  it.each([
    ['confirm', 'helpp', 'help'],
    ['read', 'readngs', 'readings'],
    ['tell', 'doen', 'done'],
    ['observe', 'corect', 'correct'],
    ['stopped', 'relaese', 'release'],
  ])('%s: %j is met with %j', (name, line, near) => {
    const { input, say } = heard(PROMPTS[name]?.() as Walk, line)
    expect([input, say[0]]).toEqual([null, expect.stringContaining(`Did you mean ${near}?`)])
  })

  it.each([
    ['lock', 'stpo', 'stop', 'lock-number'],
    ['words', 'stpo', 'stop', 'words'],
    ['gas', 'stpo', 'stop', 'not-a-number'],
    ['witness', 'none', 'note', 'unknown-person'],
  ])(
    '%s: %j is met with %j at a hold point too, which says what it wants as ever',
    (name, line, near, code) => {
      const walk = PROMPTS[name]?.() as Walk
      expect(heard(walk, line).say).toEqual([expect.stringContaining(`Did you mean ${near}?`)])
      const before = walk.entries.length
      expect(walk.key(line)).toBe(code)
      expect(walk.entries).toHaveLength(before)
    },
  )

  it.each([
    ['where am I?', 'Sheet 7 of 20, Bore'],
    ['Where are we', 'Sheet 7 of 20, Bore'],
    ['what\u2019s next?', 'NOT YET TO BE DONE'],
    ['what next', 'NOT YET TO BE DONE'],
    ['show readings', 'Set-check before'],
    ['go back', 'The last reading was'],
  ])('%j is what people say for one that is', (line, says) => {
    const { input, say } = heard(PROMPTS.read?.() as Walk, line)
    expect([input, say.join('\n')]).toEqual([null, expect.stringContaining(says)])
  })

  it.each(['leave?', 'correct?', 'back?', 'taken?', 'sign off?'])(
    '%j is asked about and not done',
    (line) => {
      const { input, talk, say } = heard(PROMPTS.read?.() as Walk, line)
      expect([input, talk.ask, isAnswer(say)]).toEqual([null, null, true])
    },
  )

  it('a figure, initials or words of a hold point are never met so', () => {
    for (const line of ['9.5O33', 'nan', 'inf', 'in', 'x'])
      expect(heard(PROMPTS.read?.() as Walk, line).input).toMatchObject({ do: 'read' })
    expect(heard(PROMPTS['sign-on']?.() as Walk, 'STO').say.join()).not.toContain('Did you mean')
    expect(heard(PROMPTS.words?.() as Walk, 'no start').input).toMatchObject({ do: 'evidence' })
  })
})

describe('every answers file that is shipped', () => {
  const files = readdirSync(join(ROOT, 'examples'), { recursive: true, encoding: 'utf8' }).filter((f) =>
    f.endsWith('answers.txt'),
  )
  it.each(files)('%s has no line that looks like a question', (file) => {
    const read = readAnswers(readFileSync(join(ROOT, 'examples', file), 'utf8'), file)
    if (!read.ok) throw new Error(read.error.say)
    const lines = read.value.flatMap((line) => (line.kind === 'answer' ? [line.text] : []))
    expect(lines.length).toBeGreaterThan(5)
    // Free words may; what is keyed for them goes the way of words, and is tested above.
    const asked = lines.filter((line) => /^ask\b|^(?:where|next)$/i.test(line) || questionIn(line) !== null)
    expect(asked).toEqual([])
  })

  it('the walked example comes to the same verdict as before', () => {
    const walk = new Walk().toBore().keys(...BORE_LINES, ...AFTER_LINES)
    const judge = walk.engine.defs.steps.find(({ step }) => step.kind === 'judge')
    expect(judge && asKind(judge, 'judge').step.compute).toBe('bore_form')
    expect(walk.state.verdicts.bore_judged?.verdict.result.verdict).toBe('MONITOR')
  })
})
