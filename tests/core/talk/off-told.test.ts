// A lock, a block or the like that is told to be off: answered as danger wherever it is said, and worst of the notes in the review.
import { describe, expect, it } from 'vitest'
import { safetyAsked, tellsOfHarm } from '../../../src/core/talk/safety-asked.ts'
import { LOCK_LINES, Walk } from '../../helpers/example.ts'
import { reviewed } from '../../helpers/reviewed.ts'

const OFF = [
  'lock L-104 was taken off and is back',
  'lock L-104 is off',
  'the lock on V-11 is gone',
  'somebody cut my lock',
  'he took off the lock at the breaker',
  'L-103 tag was removed',
  'the block is out',
  'the block slipped',
  'the crank block came out',
  'somebody pulled the block',
  'there is nobody at the block, it is out',
  'the blind in the discharge was taken out',
  'the bleed is shut',
  'somebody closed the bleeds',
  'the vent is plugged',
  'valve V-11 is open',
  'the suction valve is passing',
  'the breaker is back on',
  'power is on again',
  ...[
    'L-103 is hanging open',
    'lock L-103 is hanging open, I can see it from here',
    'the padlock on V-11 hangs loose',
    'L-103 was not locked',
    "lock L-103 isn't shut",
    'the lock on V-11 has never been snapped shut',
    'L-103 is not on',
    'the padlock is not there any more',
    'L-103 is unlocked',
    'somebody took L-103 away',
    'RO took the padlock away',
    'hasp of L-103 not snapped shut',
    'the shackle is cut',
    'the key is still in lock L-103',
  ],
  ...[
    'L-103 is off',
    'L-103 is gone',
    'L-103 came off',
    'L103 is off',
    'found L-103 on the floor',
    'V-11 is open',
  ],
  ...[
    'the padlock on the suction valve is missing',
    'the lock at the discharge valve is cut',
    'V-12 is passing',
  ],
]
const NOT_OFF = [
  'lock L-104 is on',
  'L-103 hangs at V-11',
  'the lock is hanging on V-11 and shut',
  'L-103 is not on the list',
  'is L-103 hanging open?',
  'was L-103 not locked?',
  'why is the hasp open',
  'the lock nut is not locked',
  'the key of L-103 is in the lock box',
  'the tag is not there',
  'all six locks are on',
  'the lock was never taken off',
  'is the lock off?',
  'who took lock L-103 off',
  'can the block come out?',
  'the block is in, both ways',
  'the bleed is open and silent',
  'the bleed valve is open',
  'both vent valves are open',
  'valve V-11 is shut and locked',
  'the lock nut is off',
  ...[
    'L-103 is on',
    'L-103 is at V-11',
    'the bleed V-15 is open',
    'is L-103 off?',
    'M-3 is off by two tenths',
    'V-11 is shut',
  ],
  'the valve seats are good',
  'no flow',
  '9.5033',
  'the wear is at the bottom',
  'the pin of the micrometer is clean',
]

describe('what the record holds and is told not to be so', () => {
  it.each(OFF)('%j is danger', (line) => {
    expect(safetyAsked(line)).toBe('off')
    expect(tellsOfHarm(line)).toBe(true)
  })

  it.each(NOT_OFF)('%j is not', (line) => {
    expect(safetyAsked(line)).not.toBe('off')
  })

  it('is answered where a figure is asked, with what closes a hold point, and nothing is taken', () => {
    const walk = new Walk().toBore()
    const before = walk.entries.length
    walk.key('lock L-104 was taken off and is back')
    const said = walk.said.join('\n')
    expect(said).toMatch(/^FIRST: come out, everybody, and stand clear\. Say STOP\.$/m)
    expect(said).toMatch(/only by STOP/)
    expect(said).toMatch(/None of it is on record/)
    expect(walk.entries).toHaveLength(before)
  })

  it('is answered in a note too, and the note is on record', () => {
    const walk = new Walk().toBore().keys('note the block is out')
    expect(walk.last).toMatchObject({ type: 'note.written', text: 'the block is out' })
    expect(walk.said.join('\n')).toMatch(/FIRST: come out/)
  })
})

describe('in the review of a job', () => {
  const of = (...lines: string[]) => reviewed(new Walk().toBore().keys(...lines)).exceptions

  it('stands as danger, worse than a note, and says that no STOP was called on it', () => {
    const told = of('note the block is out', 'note fine wipe marks').filter(({ kind }) => kind === 'danger')
    expect(told).toMatchObject([
      {
        what: expect.stringMatching(/^TOLD OF DANGER, RO .*: the block is out$/),
        sentences: [/^No STOP was called/],
      },
    ])
    expect(of('note the block is out').filter(({ kind }) => kind === 'note')).toEqual([])
  })

  it('names the STOP that was called after it', () => {
    const [one] = of('note the block is out', 'stop').filter(({ kind }) => kind === 'danger')
    expect(one?.sentences).toEqual([expect.stringMatching(/^STOP was called after it, RO .*, at 7 Bore/)])
  })

  it('names the work that went on after it, before anybody was called out, and none that came before or after that', () => {
    const [one] = of('9.5033', 'note the block is out', '9.5039', '9.5021', 'stop').filter(
      ({ kind }) => kind === 'danger',
    )
    expect(one?.sentences[1]).toMatch(/^WORK WENT ON after it, .*: 2 answers, the first at .*, 7 Bore\.$/)
    const [quick] = of('9.5033', 'note the block is out', 'stop').filter(({ kind }) => kind === 'danger')
    expect(quick?.sentences).toHaveLength(1)
  })
})

describe('a panel without power, where a start is tried', () => {
  const atStart = () => new Walk().toGate().keys(...LOCK_LINES)

  it.each([
    'the panel is dead',
    'panel is dead, can I type no start',
    'no power at the panel',
    'the start button does nothing, no power',
    'lamp is out',
  ])('%j proves nothing, and that is said in place of the words to type', (line) => {
    const walk = atStart().keys(line)
    expect(walk.said.join(' ')).toMatch(/panel without power proves nothing.*HOLD/)
    expect(walk.said.join(' ')).not.toContain('type NO START')
    expect(walk.prompt).toMatchObject({ kind: 'evidence', item: { key: 'try_start' } })
  })

  it('is on the sheet itself, and answered when it is asked about', () => {
    const { evidence } = (atStart().prompt as { item: { evidence: { ask: string } } }).item
    expect(evidence.ask).toMatch(/Panel live\? Try to start/)
    expect(atStart().keys('what if the panel is dead?').said.join(' ')).toMatch(
      /without power it shows nothing/,
    )
  })

  it('is none where the words are typed, or another thing is asked', () => {
    expect(atStart().keys('no start').prompt).toMatchObject({ item: { key: 'bleeds' } })
    expect(atStart().keys('no start', 'the gauge is dead').said.join(' ')).toContain('type NO FLOW in full')
  })
})
