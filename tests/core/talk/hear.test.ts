// What a line means at each prompt: words that work anywhere, answers by number, and questions of several lines.
import { describe, expect, it } from 'vitest'
import { layOut } from '../../../src/core/sheet/block.ts'
import { saidBlock } from '../../../src/core/sheet/shown-block.ts'
import { hear } from '../../../src/core/talk/hear.ts'
import { QUIET } from '../../../src/core/talk/heard.ts'
import { WORDS } from '../../../src/core/talk/words.ts'
import { BORE_LINES, exampleDefs, Walk } from '../../helpers/example.ts'
import { gate, NO_START, smallDefs, tell, WITNESS } from '../../helpers/small-job.ts'

const heard = (walk: Walk, line: string) => hear(walk.engine.defs, walk.state, walk.talk, line)

describe('words', () => {
  it.each([
    ...[
      'stop',
      ' STOP! ',
      'stop stop',
      '!',
      '!!',
      '! !',
      '!stop',
      '! Stop!',
      'stop !',
      '!!stop',
      'stop?',
      'Stop ?',
    ],
    ...['\u001b[Astop', '\u001bstop', 'stop\u0007', '\u200bstop'],
  ])('%j is STOP', (line) => {
    expect(heard(new Walk().toBore(), line).input).toEqual({ do: 'stop' })
  })

  it.each(['no stop', 'stopped', 'stop it moved', '9.5!', '!9.5', ''])('%j is no STOP', (line) => {
    expect(heard(new Walk().toBore(), line).input).not.toEqual({ do: 'stop' })
  })

  it('go on no record, except note, leave and stop', () => {
    const walk = new Walk().toBore()
    for (const word of ['help', 'why', 'readings', 'back', 'correct', 'n/a', 'HELP', ' Why '])
      expect([word, heard(walk, word).input]).toEqual([word, null])
    expect(heard(walk, 'leave').input).toEqual({ do: 'leave' })
    expect(heard(walk, 'NOTE the lamp is dim').input).toEqual({ do: 'note', text: 'the lamp is dim' })
    expect(heard(walk, 'stop').input).toEqual({ do: 'stop' })
  })

  it('help says how to be safe before anything about figures is needed, signed on or not', () => {
    const { site } = new Walk().engine.defs.machine
    for (const walk of [new Walk(), new Walk().toBore(), new Walk().keys('stop')])
      expect(heard(walk, 'help').say.join(' ')).toContain(site.emergency)
  })

  it('help keeps each word with what it does, within a sheet of 80 columns and 15 rows', () => {
    const { say: rows } = heard(new Walk().toBore(), 'help')
    const style = { width: 79, record: 'PRACTICE' as const, ascii: true }
    const lines = layOut(saidBlock(rows, false), style)
    expect(lines.length).toBeLessThanOrEqual(15)
    for (const { word, says } of WORDS)
      expect(lines.some((l) => l.text.includes(`${word.padEnd(10)} ${says}`))).toBe(true)
  })

  it('why gives the reason of the step, and the sums where a lead decides', () => {
    expect(heard(new Walk().throughGate(), 'why').say).toEqual([expect.stringMatching(/^A film of oil/)])
    const sums = heard(new Walk().toVerdict(), 'why').say.join('\n')
    expect(sums).toMatch(
      /taper: centre top to bottom less crank end top to bottom = 0\.00415; limit 0\.00550/,
    )
    expect(sums).toMatch(/Source: Bloch and Hoefner 1996, p\. 259/)
  })

  it('readings lists what was taken and what it counts as', () => {
    expect(heard(new Walk().throughGate(), 'readings').say).toEqual(['There are no readings yet.'])
    const said = heard(new Walk().toBore().keys('9.5033', '9.5034'), 'readings').say.join('\n')
    expect(said).toMatch(/HEAD END of ring travel, TOP TO BOTTOM/)
    expect(said).toMatch(/spread 0\.0001 {2}counts as 9\.5034 in/)
  })
})

describe('answers', () => {
  it.each(['y', '2', 'yes', 'ok', '0'])('%j is not Enter', (line) => {
    const walk = new Walk().keys('RO', 'TC-401-1')
    expect(heard(walk, line)).toMatchObject({ input: null, talk: QUIET })
  })

  it.each(['', 'y', 'yes', '3', '01', '1.0', '1 '])('%j at a statement to be agreed to', (line) => {
    const walk = new Walk().throughGate()
    const agreed = line.trim() === '1' || line === '01'
    expect(heard(walk, line).input).toEqual(agreed ? { do: 'confirm', step: 'wiped' } : null)
  })

  it('not so asks what is seen instead, and the step stays', () => {
    const walk = new Walk().throughGate().keys('2', 'a rag is missing')
    expect(walk.last).toMatchObject({ type: 'step.objected', remark: 'a rag is missing' })
    expect(walk.prompt).toMatchObject({ kind: 'confirm' })
  })

  it('a condition that needs words is asked for them, and one that is not listed refused', () => {
    const walk = new Walk().toBore().keys(...BORE_LINES)
    for (const line of ['', '0', '4', '99', 'present']) expect(heard(walk, line).input).toBeNull()
    expect(walk.bring({ do: 'observe', step: 'strip', condition: 'maybe' })).toBe('unknown-condition')
    expect(walk.bring({ do: 'observe', step: 'strip', condition: 'unsure' })).toBe('no-words')
    expect(walk.bring({ do: 'observe', step: 'strip', condition: 'unsure', note: '...' })).toBe('no-words')
  })

  it('an instrument is picked by number; an unfit one is refused and named', () => {
    const walk = new Walk().throughGate().keys('1', '1', '71.2', '70.4')
    expect(walk.key('2')).toBe('unfit')
    expect(walk.said.at(-1)).toMatch(/M-1 cannot be used on this job: its calibration lapsed on 2025-11-30/)
    for (const line of ['', '0', '3', 'M-33', 'M', '-3']) expect(heard(walk, line).input).toBeNull()
  })

  it('an instrument is picked by what stands on its tag as well, in small letters too', () => {
    const walk = new Walk().throughGate().keys('1', '1', '71.2', '70.4')
    for (const line of ['1', 'M-3', 'm-3', ' M-3 '])
      expect(heard(walk, line).input).toEqual({ do: 'pick', seat: 'gauge', instrument: 'M-3' })
    expect(walk.key('m-1')).toBe('unfit')
  })

  it('where a tag is itself the number of a line, only lines count', () => {
    const ids: Readonly<Record<string, string>> = { 'M-3': '2', 'M-1': '17' }
    const instruments = (text: string) =>
      text.replace(/id: (M-[13])/g, (all, id) => `id: "${ids[id] ?? all}"`)
    const walk = new Walk(exampleDefs({ instruments })).throughGate().keys('1', '1', '71.2', '70.4')
    const picked = (line: string) => (heard(walk, line).input as { instrument?: string } | null)?.instrument
    expect([picked('1'), picked('2'), picked('17'), picked('3')]).toEqual(['2', '17', '17', undefined])
  })
})

describe('a question of several lines', () => {
  it('asks again on a blank, and is left with back', () => {
    const walk = new Walk().toBore().keys('note')
    expect(heard(walk, '')).toMatchObject({ input: null, talk: { ask: { kind: 'note' } } })
    expect(heard(walk, ' BACK ')).toMatchObject({ input: null, talk: QUIET })
  })

  describe('a word keyed alone where words are asked for', () => {
    const asked = (word: string) => new Walk().toBore().keys('note', word)

    it.each(['leave', 'help', 'correct', 'n/a'])(
      '%s is asked about, and is on no record till then',
      (word) => {
        const walk = asked(word)
        expect(walk.talk.ask).toEqual({ kind: 'word-meant', line: word, of: { kind: 'note' } })
        expect(walk.last.type).not.toBe('note.written')
        expect(heard(walk, '1').input).toEqual({ do: 'note', text: word })
        for (const line of ['', '3', 'yes', word]) expect(heard(walk, line).input).toBeNull()
      },
    )

    it('does what the word does on 2; what only tells leaves the question standing', () => {
      expect(heard(asked('leave'), '2').input).toEqual({ do: 'leave' })
      expect(heard(asked('correct'), '2').talk.ask).toMatchObject({ kind: 'correct-which' })
      const told = heard(asked('help'), '2')
      expect(told.talk.ask).toEqual({ kind: 'note' })
      expect(told.say.join(' ')).toContain('At any prompt')
    })

    it('leaves the question by back, asks it anew by back at the choice, and hears stop at both', () => {
      expect(heard(new Walk().toBore().keys('note'), 'back').talk.ask).toBeNull()
      expect(heard(asked('leave'), 'back').talk.ask).toEqual({ kind: 'note' })
      expect(heard(new Walk().toBore().keys('note'), 'stop').input).toEqual({ do: 'stop' })
      expect(heard(asked('leave'), 'stop').input).toEqual({ do: 'stop' })
    })

    it('takes a sentence that holds such a word as it is', () => {
      const walk = new Walk().toBore().keys('note')
      expect(heard(walk, 'we leave at ten').input).toEqual({ do: 'note', text: 'we leave at ten' })
    })
  })

  it.each(['', '0', '99', 'x', '-1', '1.5'])('which reading to correct is not %j', (line) => {
    const walk = new Walk().toBore().keys('correct')
    expect(heard(walk, line)).toMatchObject({ input: null, talk: { ask: { kind: 'correct-which' } } })
  })

  it('correction runs over three lines, and nothing is on record before the last', () => {
    const walk = new Walk().toBore()
    const before = walk.entries.length
    walk.keys('correct', '3', 'misread')
    expect(walk.entries).toHaveLength(before)
    walk.keys('71.3')
    expect(walk.last).toMatchObject({ type: 'reading.corrected', typed: '71.3', why: 'misread' })
  })
})

describe('back', () => {
  it('has nothing to go to at the start, takes evidence back at a hold point, and waits for all to be out', () => {
    expect(heard(new Walk().keys('RO'), 'back').say).toEqual(['There is nothing to go back to yet.'])
    expect(heard(new Walk().toGate(), 'back').input).toEqual({ do: 'ask-again', step: 'hold_point' })
    expect(heard(new Walk().toBore().wait(31).keys(''), 'back').input).toBeNull()
  })

  it('and correct ask nothing where nothing may be changed: under STOP, and while a reading waits', () => {
    const stopped = new Walk().toBore().keys('stop', '8', 'a shout', 'ML')
    for (const word of ['back', 'correct']) {
      expect(heard(stopped, word)).toMatchObject({ input: null, talk: QUIET })
      expect(heard(stopped, word).say.join(' ')).toContain('STOP is open')
    }
    const waiting = new Walk().toBore().keys('95.033')
    expect(waiting.prompt.kind).toBe('doubt')
    expect(heard(waiting, 'back')).toMatchObject({ input: null, talk: QUIET })
    expect(heard(waiting, 'back').say.join(' ')).toMatch(/^A reading waits.* 1 is to measure it again\.$/)
  })

  it('say of a late reading that 2 measures it again, as 1 would confirm it', () => {
    const late = new Walk().toBore().wait(31)
    late.bring({ do: 'tick' })
    late.keys('9.5033', 'ALL OUT')
    expect(late.state.late).not.toBeNull()
    late.state = { ...late.state, gates: new Walk().toBore().state.gates }
    expect(late.prompt.kind).toBe('late')
    expect(heard(late, 'back').say.join(' ')).toMatch(/ 2 is to measure it again\.$/)
  })

  it('and correct still reach evidence while a reading waits: a lock that was wrong is said at once', () => {
    const waiting = new Walk().toBore().keys('95.033')
    const { ask } = heard(waiting, 'correct').talk
    const kinds = ask?.kind === 'correct-which' ? ask.items.map(({ kind }) => kind) : []
    expect(kinds).toContain('evidence')
    expect(kinds).not.toContain('reading')
    const late = new Walk().toBore().wait(31)
    late.bring({ do: 'tick' })
    late.keys('9.5033', 'ALL OUT')
    expect(heard(late, 'back').say.join(' ')).not.toContain('A reading waits')
    expect(heard(late, 'back').talk.ask?.kind).toBe('ask-again-sure')
  })
})

describe('a witness', () => {
  it('who is at the keys is refused before any PIN is asked; somebody else is asked for it', () => {
    const walk = new Walk(
      smallDefs([gate('isolated', ['start'], [NO_START, WITNESS]), tell('in', { exposes: ['start'] })]),
    )
    walk.autoPin = false
    walk.keys('RO', '4071', 'TC-401-1', 'NO START')
    expect(walk.prompt.kind).toBe('evidence')
    expect(heard(walk, 'ro')).toMatchObject({ input: null, refusal: { code: 'self-witness' }, talk: QUIET })
    expect(heard(walk, 'TS')).toMatchObject({ input: null, refusal: { code: 'witness-role' }, talk: QUIET })
    expect(heard(walk, 'ML').talk.ask).toMatchObject({ kind: 'pin', person: 'ML' })
  })
})
