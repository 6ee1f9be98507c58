// barover history: what many jobs tell together. It reads a folder of them and changes nothing.
import process from 'node:process'
import { historyOf } from '../../core/history/history.ts'
import { historyJson, historyPaper } from '../../core/history/paper.ts'
import type { RecordKind } from '../../core/job/definitions.ts'
import { KINDS, listJobs } from '../../node/job-folder.ts'
import { checkOutFile, writeOutFile } from '../../node/out-file.ts'
import { UserError } from '../../node/user-error.ts'
import { type Command, SHARED, text, type Values } from '../args.ts'
import { EXIT } from '../exit.ts'
import { folderSource } from '../job-folder-source.ts'
import { print } from '../terminal.ts'
import { jobsFolder } from './run.ts'

const FORMS = ['text', 'html', 'json'] as const

export const historyCommand: Command = {
  name: 'history',
  usage:
    'barover history [DIR] [--machine TAG] [--record KIND] [--next HOURS] [--to text|html|json] [--out FILE]',
  summary:
    'Many jobs together: wear of each machine and the hours left, what is found again and again, where procedures are put right most.',
  options: {
    machine: { type: 'string', says: 'tag of one machine; all unless said' },
    record: { type: 'string', says: 'real (unless said), example or practice: they are never mixed' },
    next: {
      type: 'string',
      says: 'running hours to the next planned overhaul: what may not last until then',
    },
    to: { type: 'string', says: 'text (unless said), html with plots, or json' },
    out: { type: 'string', says: 'file to write; - or none: to the terminal or pipe' },
    replace: { type: 'boolean', says: 'a file of that name may be replaced' },
    jobs: SHARED.jobs,
  },
  positionals: { least: 0, most: 1 },
  run: async (values, [dir]) => {
    const form = oneOf(values, 'to', FORMS)
    const record = recordFrom(values)
    const folder = dir ?? jobsFolder(values)
    const out = text(values, 'out')
    const file =
      out === undefined || out === '-'
        ? null
        : { path: out, replace: values.replace === true, replaceHint: '--replace puts it in its place.' }
    if (file !== null) checkOutFile(file)
    const history = historyOf(folderSource(folder, record), {
      record,
      machine: text(values, 'machine') ?? null,
      next: hoursFrom(values),
    })
    const written = await inForm(history, form)
    if (file === null) process.stdout.write(written)
    else {
      writeOutFile({ ...file, bytes: Buffer.from(written) })
      print(`${record}  written  ${file.path}`)
    }
    const others = listJobs(folder).filter((one) => one.record !== record)
    if (history.jobs === 0 && others.length > 0) {
      const kinds = [...new Set(others.map((one) => one.record.toLowerCase()))].sort()
      process.stderr.write(
        `No ${record} job is in ${folder}; there are ${others.length} of another kind: --record ${kinds.join(' or --record ')}.\n`,
      )
    }
    return history.unread.length === 0 ? EXIT.done : EXIT.checkFailed
  },
}

async function inForm(history: ReturnType<typeof historyOf>, form: (typeof FORMS)[number]): Promise<string> {
  if (form === 'json') return `${JSON.stringify(historyJson(history))}\n`
  if (form === 'html') {
    const { htmlPage } = await import('../../report/page.ts')
    return htmlPage(historyPaper(history))
  }
  const { reportText } = await import('../../core/report/forms.ts')
  return reportText(historyPaper(history))
}

function oneOf<T extends string>(values: Values, name: string, words: readonly [T, ...T[]]): T {
  const asked = text(values, name) ?? words[0]
  const found = words.find((one) => one === asked)
  if (found !== undefined) return found
  throw new UserError(`--${name} takes ${words.join(', ')}, not "${asked.slice(0, 20)}".`, EXIT.wrongUse)
}

function recordFrom(values: Values): RecordKind {
  const asked = (text(values, 'record') ?? 'real').toUpperCase()
  const found = KINDS.find((kind) => kind === asked)
  if (found !== undefined) return found
  throw new UserError(`--record takes real, example or practice, not "${asked.slice(0, 20)}".`, EXIT.wrongUse)
}

function hoursFrom(values: Values): number | null {
  const asked = text(values, 'next')
  if (asked === undefined) return null
  if (/^\d{1,7}$/.test(asked.trim())) return Number(asked)
  throw new UserError('--next takes running hours, for example 8000.', EXIT.wrongUse)
}
