// Harm as it is told in a hurry, at the prompts where it happens: heard, answered at once.
import { describe, expect, it } from 'vitest'
import { handOverLines } from '../../../src/core/job/hand-over.ts'
import { GLOSSARY } from '../../../src/core/papers/glossary.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { harmMended } from '../../../src/core/talk/harm-slips.ts'
import { makeSafeLines } from '../../../src/core/talk/make-safe.ts'
import { safetyAsked, tellsOfHarm } from '../../../src/core/talk/safety-asked.ts'
import { GAS_LINES, LOCK_LINES, Walk, WORD_LINES } from '../../helpers/example.ts'
import { shippedDefs } from '../../helpers/shipped-jobs.ts'

const HARM: Readonly<Record<string, readonly string[]>> = {
  alarm: [
    'theres a bit of gas coming from the crank end bleed',
    'gas coming out of the bleed',
    'still a bit of flow at the crank end',
    'gas is comming out',
    'bit of gas coming out the bleed',
    'there is a bit of gas',
    'its blowing a bit',
    'the bleed is leaking',
    'water coming in',
    'i still feel some flow',
  ],
  hurt: [
    'i cut my hand',
    'my arm is stuck',
    'its hard to breath',
    'he crushed his left thumb',
    "can't breathe in here",
    ...[
      'it hurts',
      'my finger hurts',
      'somebody is in there',
      'someone is still inside',
      'my mate is in the bore',
    ],
  ],
  starts: [
    'they are starting it',
    'somebody is barring it over',
    'the engine is running',
    'the operator started the machine',
  ],
  off: ['no lock on V-12', 'theres no lock on V-12', 'V-12 has no lock', 'lock missing on V-12'],
}
const CALM = [
  'no flow',
  'there is no gas',
  'no gas coming out',
  'no flow at the crank end',
  'the pressure gauge reads 0',
  'how do I start it',
  'is there gas in here',
  'the bore is dry',
  'water jacket is dry',
  'which lock is on V-12',
  'the air drill is ready',
  'clear of people',
  'is somebody in there',
  'the piston is in there',
  'the plug is inside',
]

/** Keyed in a hurry, and feared: the same harm. */
const SLIPS: Readonly<Record<string, readonly string[]>> = {
  starts: [
    ...['the crnak moved', 'what if the crnak turns', 'what if the drivr starts', 'the drivr is strating'],
    ...[
      'what do i do if the crank turns',
      'wat if the crnak turns wile my arm is in',
      'what if the drivr moves when i try it',
    ],
  ],
  off: [
    ...[
      'the blok fell out',
      'somebody took a lok off',
      'what if the lock is off',
      'what if the block falls out',
    ],
    ...['the lcok on V-11 is off', 'what if the lock is cut', 'waht if the blcok slips'],
  ],
}

const MISSPELT = [
  ...[
    'i smel gas',
    'the gas alrm is beping',
    'somebody is hrut',
    'i feel dizy',
    'my frend is unconcious in there',
  ],
  ...[
    'what if the lock is off and he is not out yet',
    'what if the block is out and there is no one watching',
  ],
]

/** Talk of the trade, in which only the words are near. */
const TRADE = [
  ...[
    'the crosshead pin moves freely by hand',
    'the wrist pin slips in by hand',
    'the dowel pin falls into place',
  ],
  ...[
    'suction valve gets opened on the bench',
    'the blank goes off to the shop',
    'wear at the pins gets out of tolerance',
  ],
  ...[
    'bearing shell of the big end is wiped',
    'big end shells look good',
    'Shell oil on the rags',
    'the crank is tuned in',
  ],
]

const FEARLESS = [
  ...[
    'what if the lock number is wrong',
    'what if there is no lock on it yet',
    'what if i dropped the micrometer',
  ],
  ...['what if the bore is worn', 'the crane moved the head', 'what if it rains', 'the black paint came off'],
]

describe('harm', () => {
  it.each(Object.entries(SLIPS).flatMap(([about, all]) => all.map((line) => [line, about] as const)))(
    '%j is heard as %s',
    (line, about) => {
      expect(safetyAsked(line)).toBe(about)
      const walk = new Walk().toBore().keys(line)
      expect(walk.said.join('\n')).toMatch(/^FIRST: come out, everybody/)
      expect(walk.entries).toHaveLength(new Walk().toBore().entries.length)
    },
  )

  it.each(MISSPELT)('%j is heard', (line) => {
    expect(new Walk().toBore().keys(line).said.join('\n')).toMatch(/^FIRST: come out, everybody/)
  })

  it.each(TRADE)('%j tells of none', (line) => {
    expect(tellsOfHarm(line)).toBe(false)
  })

  it('with a slip is none in the tag of a machine: it is asked whether it is one, and stands on record then', () => {
    const walk = new Walk().keys('RO', 'SMEEL UNIT K-402')
    expect(walk.said.join(' ')).not.toContain('FIRST')
    expect(walk.keys('2').last.type).toBe('machine.mismatched')
    expect(new Walk().keys('RO', 'SHELL UNIT K-402').last.type).toBe('machine.mismatched')
  })

  it('that was not said to be put down by note alone, and what could have a PIN in it, is not put down so', () => {
    for (const line of [
      'oops i keyed my pin 8314 here',
      'i am not sure what this means',
      'i keyed KH 8314 by mistake',
    ])
      expect(new Walk().toBore().keys(line, 'note').talk.ask, line).toEqual({ kind: 'note' })
  })

  it.each(FEARLESS)('%j is none of it', (line) => {
    expect(['starts', 'off', 'hurt']).not.toContain(safetyAsked(line))
  })

  it('is heard in no word of the papers that means another thing', () => {
    const shipped = ['piston-pull.yaml', 'bore-inspection.yaml', 'clearance-pocket.yaml'].map((name) =>
      shippedDefs(name, 'tc-401'),
    )
    const text = JSON.stringify([shipped, GLOSSARY])
    const words = new Set(text.toLowerCase().match(/[a-z]{5,}/g))
    expect(words.size).toBeGreaterThan(1000)
    expect([...words].filter((word) => harmMended(word) !== word)).toEqual([])
  })

  it.each(Object.entries(HARM).flatMap(([about, all]) => all.map((line) => [line, about] as const)))(
    '%j is heard as %s',
    (line, about) => {
      expect(safetyAsked(line)).toBe(about)
      expect(tellsOfHarm(line)).toBe(true)
    },
  )

  it.each(CALM)('%j tells of none', (line) => {
    expect(tellsOfHarm(line)).toBe(false)
  })

  it('is heard where NO FLOW is asked: nothing of it counts, and how it comes on record is said', () => {
    const walk = new Walk().toGate().keys(...LOCK_LINES, 'NO START')
    const before = walk.entries.length
    walk.key('theres a bit of gas coming from the crank end bleed')
    expect(walk.said.join('\n')).toMatch(/FIRST: come out[\s\S]*None of it is on record yet: note alone/)
    expect(walk.entries).toHaveLength(before)
    expect(walk.prompt).toMatchObject({ kind: 'evidence', item: { key: 'bleeds' } })
  })

  it('is heard where a figure is asked, and nothing is read of it', () => {
    for (const line of Object.values(HARM).flat()) {
      const walk = new Walk().toBore().keys('9.5033')
      const before = walk.entries.length
      walk.key(line)
      expect(walk.said.join('\n'), line).toMatch(/FIRST: come out/)
      expect(walk.entries, line).toHaveLength(before)
    }
  })

  it('goes on record by note alone, word for word, right after it was told and not later', () => {
    const line = 'theres a bit of gas coming from the crank end bleed'
    const notes = (walk: Walk) =>
      walk.entries.flatMap((one) => (one.type === 'note.written' ? [one.text] : []))
    expect(notes(new Walk().toGate().keys(...LOCK_LINES, 'NO START', line, 'note'))).toEqual([line])
    expect(notes(new Walk().toBore().keys('  it moved a bit  ', 'note'))).toEqual(['it moved a bit'])
    // Another line was keyed since: the words are asked for.
    const later = new Walk().toBore().keys(line, 'readings', 'note')
    expect(notes(later)).toEqual([])
    expect(later.talk.ask).toEqual({ kind: 'note' })
    // A question is nobody's statement, and a PIN is no words.
    const asked = new Walk().toBore().keys('is the lock on V-11 off?', 'note')
    expect(notes(asked)).toEqual([])
    expect(asked.talk.ask).toEqual({ kind: 'note' })
  })

  it('that is on record is told to the witness and at a hand-over, with when and by whom', () => {
    const line = 'the lock on V-11 is off'
    const walk = new Walk().toGate().keys(line, 'note', 'note old rings lie in tray 3')
    walk.keys(...LOCK_LINES, ...WORD_LINES, ...GAS_LINES)
    expect(walk.prompt).toMatchObject({ kind: 'evidence', item: { evidence: { kind: 'witness' } } })
    const view = promptView(walk.engine.defs, walk.state, walk.talk, {
      width: 79,
      record: 'EXAMPLE',
      ascii: true,
    })
    const rows = [...view.rows, ...view.ask].map((one) => one.text)
    expect(rows).toContainEqual(
      expect.stringMatching(/^TOLD OF DANGER, 2026-03-14 \d\d:\d\d, RO: the lock on V-11 is off$/),
    )
    expect(rows.join(' ')).not.toContain('tray 3')
    // Nor is it lost beside the list of what hangs.
    const safe = makeSafeLines(walk.engine.defs, walk.state).join('\n')
    expect(safe).toMatch(/LOCKS as last keyed[^\n]*\n {3}TOLD OF DANGER, [^\n]*the lock on V-11 is off\n/)
    walk.keys('is there a lock off?')
    expect(walk.said.join('\n')).toMatch(
      /none was taken off on this job\.\nTOLD OF DANGER, .*the lock on V-11 is off/,
    )
    expect(handOverLines(walk.engine.defs, walk.state).filter((one) => one.startsWith('Note of'))).toEqual([
      expect.stringMatching(/^Note of 2026-03-14 \d\d:\d\d, RO: old rings lie in tray 3$/),
      expect.stringMatching(/^Note of 2026-03-14 \d\d:\d\d, RO: the lock on V-11 is off$/),
    ])
  })

  it('that is on record stands beside the cause of a STOP that could be released, and before its release', () => {
    const walk = new Walk().toGate().keys('the lock on V-11 is off', 'note', 'stop')
    const told = (line: string) => {
      const from = walk.said.length
      walk.keys(line)
      return walk.said.slice(from).join('\n')
    }
    const note = /^TOLD OF DANGER, [^\n]*the lock on V-11 is off\n/
    expect(told('9')).toMatch(note)
    walk.keys('back')
    // What is never released has nothing milder to be held against.
    expect(told('4')).not.toContain('TOLD OF DANGER')
    walk.keys('back', '9', 'pressed it by mistake', 'ML')
    expect(told('1')).toMatch(/^TOLD OF DANGER, [^\n]*the lock on V-11 is off$/)
    expect(walk.talk.ask).toEqual({ kind: 'release-who' })
    const silent = new Walk().toGate().keys('note old rings lie in tray 3', 'stop', '9')
    expect(silent.said.join(' ')).not.toContain('TOLD OF DANGER')
  })
})
