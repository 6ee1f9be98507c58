// The table of all published checks lies beside this file, to be read; PUBLISHED=write writes it anew.
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { ROOT } from '../../helpers/example.ts'
import { CHECKED, type Checked } from './all-rows.ts'

const PATH = join(ROOT, 'tests/core/published/TABLE.md')

/** Six figures are enough to see a difference by; the last bits of a double differ from one processor to another. */
const short = (n: number) => String(Number(n.toPrecision(6)))
const cell = (text: string) => text.replaceAll('|', '\\|')

function row({ what, printed, worked, allowed, seen }: Checked): string {
  const apart = Math.abs(worked - printed)
  // Where fifteen figures are certified the difference is one of the processor's last bits.
  const isLastBits = allowed < 1e-9 * Math.abs(printed)
  const share = isLastBits
    ? 'below 1'
    : apart < 1e-12 * Math.abs(printed)
      ? '0'
      : (apart / allowed).toFixed(2)
  return `| ${cell(what)} | ${printed} | ${short(worked)} | ${short(allowed)} | ${share} | ${seen} |`
}

function table(): string {
  const sources = [...new Set(CHECKED.map((one) => one.source))]
  const counted = CHECKED.filter((one) => one.seen !== 'memory')
  return [
    '# Published figures, and what Barover works out',
    '',
    `${counted.length} figures that were read, and ${CHECKED.length - counted.length} from memory, which count for nothing. Written by`,
    '`PUBLISHED=write npx vitest run tests/core/published/table.test.ts`; a test holds it to the program.',
    '',
    '`share` is the difference over what is allowed, which is half the last printed place unless the row says why it is wider.',
    ...sources.flatMap((source) => [
      '',
      `## ${source}`,
      '',
      '| figure | printed | worked out | allowed | share | seen |',
      '| --- | --- | --- | --- | --- | --- |',
      ...CHECKED.filter((one) => one.source === source).map(row),
    ]),
    '',
  ].join('\n')
}

test('the table of published checks is the one that lies there', () => {
  if (process.env.PUBLISHED === 'write') writeFileSync(PATH, table())
  expect(readFileSync(PATH, 'utf8')).toBe(table())
})

test('no figure is further off than is allowed', () => {
  for (const { what, printed, worked, allowed } of CHECKED)
    expect(Math.abs(worked - printed), what).toBeLessThanOrEqual(allowed * (1 + 1e-9))
})
