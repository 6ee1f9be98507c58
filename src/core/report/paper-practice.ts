// The section of a report that only a practice session has: its sheet, right behind the cover.
import { cameTo } from '../practice/grade-lines.ts'
import { line, lines, type PaperLine, type Section, table } from './paper.ts'
import type { Report } from './schema.ts'

/** What the session came to, as it stands on the cover and at the head of its sheet. */
export function outcomeLines({ practice }: Report): PaperLine[] {
  if (practice === undefined) return []
  const { safety, isPassed } = practice
  return [
    line(cameTo(practice), isPassed ? 'strong' : 'caution'),
    line(`Safety, apart from all else: ${safety.toUpperCase()}`, safety === 'passed' ? 'strong' : 'caution'),
  ]
}

export function practiceSections(report: Report): Section[] {
  const { practice } = report
  if (practice === undefined) return []
  const { who, seed, level, edition, scenario, unsafe, scores, hints } = practice
  return [
    {
      id: 'practice',
      title: 'Sheet of the practice session',
      pieces: [
        lines(
          ...outcomeLines(report),
          ...unsafe.map((one) => line(`  entry ${one.seq}: ${one.says}`, 'caution')),
        ),
        ...table(
          'Score by skill',
          [
            { head: 'skill', wide: 3 },
            { head: 'right', right: true, wide: 1.5 },
            { head: 'of', right: true, wide: 1.5 },
          ],
          scores.map(({ skill, right, of }) =>
            of === 0 ? [skill, 'did not come up', ''] : [skill, String(right), String(of)],
          ),
        ),
        lines(
          ...(hints === 0
            ? []
            : [line(`${hints} ${hints === 1 ? 'hint' : 'hints'}, each counted as one not known`)]),
          ...hiddenLines(practice),
          ...practice.expected.map(({ says, isFound }) =>
            line(`Expected: ${says}; ${isFound ? 'found' : 'NOT found'}`, isFound ? 'plain' : 'caution'),
          ),
          line(practice.next, 'strong'),
          line(practice.again),
          line(
            `Practised by ${who ?? 'nobody who signed on'}; seed ${seed}, level ${level}, edition ${edition ?? 'not on record'}${scenario === null ? '' : `, scenario: ${scenario}`}.`,
          ),
          ...(practice.isSameMachine ? [] : [line('Today that seed brings another machine.', 'caution')]),
        ),
      ],
    },
  ]
}

function hiddenLines({ isOver, hidden }: NonNullable<Report['practice']>): PaperLine[] {
  if (!isOver) return [line('What is hidden is told once it was named.')]
  if (hidden.length === 0) return [line('Hidden on this machine: nothing')]
  return hidden.map(({ name, isNamed }) =>
    line(`Hidden: ${name}; ${isNamed ? 'named' : 'NOT named'}`, isNamed ? 'plain' : 'caution'),
  )
}
