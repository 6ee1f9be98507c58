// What else a log has of what a note or a STOP names: entries that speak against each other stand together, and nobody has to find them.
import { describe, expect, it } from 'vitest'
import { Walk } from '../../helpers/example.ts'
import { only, reviewed } from '../../helpers/reviewed.ts'
import { stopReleased } from '../../helpers/stopped.ts'

const NOTE = 'Lock L-103 is off the suction valve'

/** The six places of the bore, twice each. */
const BORE = [
  ...['9.5033', '9.5034', '9.5021', '9.5020', '9.5068', '9.5069'],
  ...['9.5034', '9.5035', '9.5027', '9.5027', '9.5018', '9.5019'],
]

const alsoIn = (sentences: readonly string[]) =>
  sentences.filter((one) => /^Also of|^Beside it|was keyed at|had taken|more entr/.test(one))

describe('a lock that is named', () => {
  const walk = stopReleased(
    new Walk().throughGate().keys(`note ${NOTE}`),
    'smell near the bench',
    'paint thinner. L-103 is on, I tried it',
  )
  const review = reviewed(walk)

  it('in a note stands with its keying and with what a lead said of it since', () => {
    expect(alsoIn(only(review, 'danger').sentences)).toEqual([
      expect.stringMatching(
        /^Also of L-103: 06:\d\d RO: \[x\] lock at suction block valve, V-11 {2}L-103 \(entry \d+\)\.$/,
      ),
      expect.stringMatching(
        /^Also of L-103: 06:\d\d KH, [^:]*: STOP released by KH: paint thinner\. L-103 is on, I tried it \(entry \d+\)\.$/,
      ),
    ])
  })

  it('at the release of a STOP stands with the note that speaks against it', () => {
    const told = alsoIn(only(review, 'stop').sentences)
    expect(told).toHaveLength(2)
    expect(told[1]).toMatch(
      /^Also of L-103: 06:\d\d RO: Note: Lock L-103 is off the suction valve \(entry \d+\)\.$/,
    )
  })
})

describe('a lock that was hung in place of another', () => {
  it('stands with a note of the other, by the reason that was keyed', () => {
    const walk = new Walk().throughGate().keys(`note ${NOTE}`).keys('stop', '1', 'smell', 'RO')
    walk.bring({ do: 'release-stop', person: 'KH', answer: 'paint thinner' })
    walk.keys('ALL OUT', 'L-101', 'L-102', 'L-113', '3', 'KH cut L-103 and hung this one')
    expect(alsoIn(only(reviewed(walk), 'danger').sentences).at(-1)).toMatch(
      /^Also of L-103: 06:\d\d RO: \[x\] [^\n]*V-11 {2}L-113; L-103 before, not so now: KH cut L-103 and hung this one \(entry \d+\)\.$/,
    )
  })
})

describe('what a note names', () => {
  it('a valve by the locks keyed at it, and by what was said of those', () => {
    const walk = new Walk().throughGate().keys('note V-11 weeps', 'note L-103 has a bent shackle')
    const [valve, lock] = reviewed(walk).exceptions.filter(({ kind }) => kind === 'note')
    expect(alsoIn(valve?.sentences ?? []).join('\n')).toMatch(
      /^Also of V-11: [^\n]*V-11 {2}L-103[^\n]*\nAlso of V-11: [^\n]*L-103 has a bent shackle/,
    )
    // A valve that is not named is not dragged in by its lock.
    expect(alsoIn(lock?.sentences ?? []).join('\n')).not.toMatch(/weeps/)
  })

  it('a gauge with how much it had read', () => {
    const walk = new Walk().toBore().keys('9.5033', '9.5034', 'note M-3 fell off the bench', '9.5021')
    expect(alsoIn(only(reviewed(walk), 'note').sentences)).toEqual([
      'M-3 had taken 3 readings that stand when this was put down, and took 1 after it.',
    ])
    const none = new Walk().toBore().keys('note M-3 fell off the bench')
    expect(alsoIn(only(reviewed(none), 'note').sentences)).toEqual([
      'M-3 had taken 1 reading that stand when this was put down, and took none after it.',
    ])
  })

  it('a gauge with the readings of it that stand', () => {
    const walk = new Walk().toBore().keys('9.5033')
    walk.bring({ do: 'correct', of: walk.last.seq, typed: '9.5034', why: 'misread' })
    walk.keys('note M-3 fell off the bench')
    expect(alsoIn(only(reviewed(walk), 'note').sentences)).toEqual([
      'M-3 had taken 2 readings that stand when this was put down, and took none after it.',
    ])
  })

  it('a figure with the place it was keyed at, and no whole number', () => {
    const walk = new Walk().toBore().keys('9.5033', '9.5034', 'note 9.5033 felt loose, 3 tries')
    expect(alsoIn(only(reviewed(walk), 'note').sentences)).toEqual([
      expect.stringMatching(/^9\.5033 was keyed at 7\.1 Bore, [^(]*\(entry \d+\)\.$/),
    ])
    const other = new Walk().toBore().keys('9.5033', 'note 9.5034 would be nearer')
    expect(alsoIn(only(reviewed(other), 'note').sentences)).toEqual([])
  })

  it('of harm, with what was found of the same part beside it', () => {
    const walk = new Walk().toBore().keys(...BORE, 'note gas comes from behind the strip', '1')
    expect(alsoIn(only(reviewed(walk), 'danger').sentences)).toEqual([
      expect.stringMatching(
        /^Beside it, of strip: 06:\d\d RO: 8 Unswept strip: At the head end[^(]*\(entry \d+\)\.$/,
      ),
    ])
    const far = new Walk().throughGate().keys('note gas comes from behind the strip')
    far.keys('1', '1', '71.2', '70.4', '1', '9.5000')
    far.keys(...BORE, '1')
    expect(alsoIn(only(reviewed(far), 'danger').sentences)).toEqual([])
  })

  it('of harm, and nothing that only tells of harm too', () => {
    const walk = new Walk().throughGate().keys('note gas bottle by the door', 'note gas comes from the head')
    expect(alsoIn(only(reviewed(walk), 'danger').sentences)).toEqual([])
  })

  it('that is nothing on record, with nothing', () => {
    const walk = new Walk()
      .throughGate()
      .keys('note L-999 hangs on the fence', 'note old rings lie in tray 3')
    for (const one of reviewed(walk).exceptions.filter(({ kind }) => kind === 'note'))
      expect(alsoIn(one.sentences)).toEqual([])
  })

  it('in many entries, with the first of them and how many more', () => {
    const walk = new Walk().throughGate()
    for (let n = 1; n <= 6; n++) walk.keys(`note L-103 rattles, told ${n} times`)
    const [first] = reviewed(walk).exceptions.filter(({ kind }) => kind === 'note')
    expect(alsoIn(first?.sentences ?? [])).toHaveLength(5)
    expect(first?.sentences.at(-1)).toBe('2 more entries of L-103: key L-103.')
  })
})
