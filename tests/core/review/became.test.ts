// What is put right at a desk is no work; what made a verdict another is told; which repeat was put right is named.
import { describe, expect, it } from 'vitest'
import { Walk } from '../../helpers/example.ts'
import { only, reviewed } from '../../helpers/reviewed.ts'
import { gate, NO_START, readOne, smallDefs, tell, WITNESS } from '../../helpers/small-job.ts'

const text = ({ what, sentences }: { what: string; sentences: readonly string[] }) =>
  [what, ...sentences].join('\n')

/** Corrects 7.3, the first of its readings, to what it is told. */
function corrected(walk: Walk, to: string): Walk {
  const bore = walk.entries.filter((e) => e.type === 'reading.taken' && e.place.includes('.centre.'))
  const one = bore[0]
  if (one?.type !== 'reading.taken') throw new Error('no reading at the centre')
  walk.bring({ do: 'correct', of: one.seq, typed: to, why: 'misread' } as never)
  return walk
}

describe('a correction behind a hold point that fell', () => {
  it('is no work that went on behind it', () => {
    const walk = new Walk(
      smallDefs([
        gate('stopped', ['start'], [NO_START, WITNESS]),
        readOne('size', { exposes: ['start'] }),
        tell('after', { exposes: ['start'] }),
        tell('end'),
      ]),
    ).keys('RO', 'TC-401-1', 'NO START', 'KH', '1', '9.5033')
    walk.bring({ do: 'clock-moved', seconds: 400 })
    const fallen = walk.entries.length
    const [one] = walk.entries.filter((e) => e.type === 'reading.taken')
    walk.bring({ do: 'correct', of: one?.seq ?? 0, typed: '9.5034', why: 'misread' } as never)
    expect(walk.entries.slice(fallen).map(({ type }) => type)).toContain('reading.corrected')
    expect(JSON.stringify(reviewed(walk).exceptions)).not.toContain('WORK WENT ON')
  })
})

describe('a verdict that became another', () => {
  it('says which figure was put right, by whom and why, and that nobody measured anew', () => {
    const walk = corrected(new Walk().toVerdict(), '9.5067')
    const first = reviewed(walk).exceptions.filter(({ kind }) => kind === 'verdict')
    expect(first.map(text).join('\n')).toMatch(
      /What made it so: 7\.\d Bore, [^;]* corrected from 9\.\d+ to 9\.5067 by RO 06:\d\d, misread; no new reading\./,
    )
  })

  it('and its correction names which repeat it was', () => {
    const { what } = only(reviewed(corrected(new Walk().toVerdict(), '9.5067')), 'correction')
    expect(what).toMatch(/^7\.\d Bore, [^:]*, 1st of 2: /)
  })
})
