// How far in a place lies is told in figures of the machine record, where one along the bore is read.
import { describe, expect, it } from 'vitest'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { BORE_LINES, Walk } from '../../helpers/example.ts'

const asked = (walk: Walk, line: string) => walk.key(line) ?? walk.said.join('\n')

describe('how far in', () => {
  it.each(['how far in do i put it', 'how far into the bore', 'what depth?', 'where exactly'])(
    '%j tells the distance from the head-end face',
    (line) => {
      // Ring travel 3.10 to 14.10 in by the machine record: its head end, its centre, past its crank end.
      expect(asked(new Walk().toBore(), line)).toContain(
        'HEAD END of ring travel: about 3.10 in from the head-end face',
      )
      const centre = new Walk().toBore().keys(...BORE_LINES.slice(0, 4))
      expect(asked(centre, line)).toContain('CENTRE of ring travel: about 8.60 in from')
      const strip = new Walk().toBore().keys(...BORE_LINES, '2')
      expect(asked(strip, line)).toMatch(/past ring travel: about 14\.98 in from[\s\S]*on the strip/)
    },
  )

  it.each(['how far am I?', 'how far off is it', 'how far is it out'])('%j asks no distance', (line) => {
    expect(asked(new Walk().toBore(), line)).not.toContain('head-end face')
  })
})

describe('the choices of a lead', () => {
  const rows = (width: number) => {
    const walk = new Walk().toVerdict()
    const style = { width, record: 'EXAMPLE' as const, ascii: true }
    return promptView(walk.engine.defs, walk.state, walk.talk, style).ask.map(({ text }) => text)
  }

  it('say in few words what each means, where the screen is wide', () => {
    expect(rows(79)).toContain('1  accept     goes on as it is, read again by a day or hours')
    expect(rows(79)).toContain('5  concession runs on though it does not conform, until when')
    expect(rows(39)).toContain('5  concession')
  })
})
