// Figures in the comments of a crew file that is not invented: each job carries the file as it stands, so a PIN that somebody wrote
// beside a name would stand in every log.
import type { Crew } from '../core/definition/crew.ts'
import type { Diagnostic } from './diagnostic.ts'

const COMMENT = /(?:^|\s)(#.*)$/
/** As long as a PIN may be. */
const LIKE_A_PIN = /(?<!\d)\d{4,12}(?!\d)/

export function figuresInComments(crew: Crew, text: string, file: string): Diagnostic[] {
  if (crew.invented === true) return []
  return text.split(/\r?\n/).flatMap((line, at): Diagnostic[] => {
    const comment = COMMENT.exec(line)
    const figures = comment === null ? null : LIKE_A_PIN.exec(comment[1] ?? '')
    if (comment === null || figures === null) return []
    const column = line.length - (comment[1] ?? '').length + figures.index + 1
    return [
      {
        file,
        line: at + 1,
        column,
        endColumn: column + figures[0].length,
        code: 'figures-in-comment',
        message:
          'A comment here holds figures that may be a PIN, and each log carries this file as it stands.',
        hint: 'write no PIN down; a phone number goes into the machine record',
        severity: 'warning',
      },
    ]
  })
}
