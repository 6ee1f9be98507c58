// Commands that are printed to be copied: names stand whole at every width, and what is broken is broken at spaces alone.
import { describe, expect, it } from 'vitest'
import { toCopy } from '../../src/cli/to-copy.ts'
import { widthOf } from '../../src/core/lib/text.ts'

const JOB = '2026-03-14-0620-TC-401-1-bore-inspection-2e00'
const COMMAND = `node dist/barover.mjs resume ${JOB} --jobs /srv/site/jobs`
const SAYS = 'EXAMPLE  take it up again with:'

describe('a command to be copied', () => {
  it('stands in one line where it fits, and in a file or a pipe', () => {
    expect(toCopy(SAYS, 'barover resume 2e00', 80)).toEqual([`${SAYS} barover resume 2e00`])
    expect(toCopy(SAYS, COMMAND, Number.POSITIVE_INFINITY)).toEqual([`${SAYS} ${COMMAND}`])
  })

  it('has each name whole at 40 and 80 columns, and is the same command once its lines are joined', () => {
    for (const columns of [40, 60, 80, 100]) {
      const [says, ...lines] = toCopy(SAYS, COMMAND, columns, true)
      expect(says).toBe(SAYS)
      expect(lines.filter((line) => line.includes(JOB))).toHaveLength(1)
      expect(
        lines
          .join('\n')
          .replace(/ \\\n */g, ' ')
          .trim(),
      ).toBe(COMMAND)
      // A name that is wider than the screen alone stands out over its edge.
      for (const line of lines) expect(widthOf(line) <= columns || line.includes(JOB)).toBe(true)
    }
  })

  it('is broken by no sign where no shell joins lines by it', () => {
    expect(toCopy(SAYS, COMMAND, 80, false)).toEqual([SAYS, `  ${COMMAND}`])
  })
})
