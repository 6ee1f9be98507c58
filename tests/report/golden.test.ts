// The report of the bore example byte for byte, in each of its forms. GOLDEN=write takes what is written now: look at the text first.
import { createHash } from 'node:crypto'
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { paperOf } from '../../src/core/report/paper-of.ts'
import { reportCsv } from '../../src/core/report/write/csv.ts'
import { reportJson } from '../../src/core/report/write/json.ts'
import { reportText } from '../../src/core/report/write/text.ts'
import { readFonts } from '../../src/report/fonts.ts'
import { htmlPage } from '../../src/report/page.ts'
import { reportPdf } from '../../src/report/pdf.ts'
import { ROOT } from '../helpers/example.ts'
import { exampleWalk, reported } from '../helpers/reported.ts'

const FOLDER = join(ROOT, 'tests/fixtures/reports')
const TEXT = join(FOLDER, 'bore.txt')
const HASHES = join(FOLDER, 'bore.sha256.json')
const isWriting = process.env.GOLDEN === 'write'

const hash = (bytes: string | Buffer) => createHash('sha256').update(bytes).digest('hex')

describe('the report of the bore example', () => {
  const report = reported(exampleWalk())
  const paper = paperOf(report)

  it('as text is the one on file', () => {
    const text = reportText(paper)
    if (isWriting) writeFileSync(TEXT, text)
    expect(text).toBe(readFileSync(TEXT, 'utf8'))
  })

  it('in the other forms has the bytes that are on file', async () => {
    const made = {
      json: hash(reportJson(report)),
      csv: hash(reportCsv(report)),
      html: hash(await htmlPage(paper, readFonts())),
      pdf: hash(await reportPdf(paper, readFonts())),
    }
    if (isWriting) writeFileSync(HASHES, `${JSON.stringify(made, null, 2)}\n`)
    expect(made).toEqual(JSON.parse(readFileSync(HASHES, 'utf8')))
  })
})
