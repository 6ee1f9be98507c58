// Questions about a file to attach: where it is, whether the newest one is meant, what it shows. Which file there is, only the
// shell knows: it is asked to look, and later to keep, and the talk goes on with what it found. Under a STOP these questions may
// stand, as a note may; where people are called out they give way and are not begun, as coming out comes first.
import { fileText, sizeText } from '../job/attachment.ts'
import type { Prompt } from '../job/next.ts'
import { words } from '../job/refusals.ts'
import type { State } from '../job/state.ts'
import { clean } from '../lib/text.ts'
import { ask, type Heard, say } from './heard.ts'

/** A file as it lay there when it was looked at. */
export interface FoundFile {
  /** Where the shell finds it again; in no entry. */
  readonly path: string
  /** Its base name, as it is told. */
  readonly given: string
  readonly size: number
  /** How long ago it was last written. */
  readonly ageMs: number
  /** The folder it is in, as it is told. */
  readonly folder: string
}

/** What the shell is asked to do with files. */
export type FileWork =
  | { readonly do: 'find'; readonly path: string }
  | { readonly do: 'newest' }
  | { readonly do: 'keep'; readonly file: FoundFile; readonly caption: string }

export type FileAsk =
  | { readonly kind: 'attach-path' }
  /** The shell is looking for it: on a disk that does not answer that may never end. */
  | { readonly kind: 'attach-looking' }
  | { readonly kind: 'attach-newest'; readonly file: FoundFile }
  | { readonly kind: 'attach-caption'; readonly file: FoundFile }

export const FILE_QUESTIONS: Readonly<Record<FileAsk['kind'], string>> = {
  'attach-path': 'Path of the file. Enter: the newest in the folder named last',
  'attach-looking': 'Looking for the file',
  'attach-newest': 'Is it this one? 1 yes, 2 no',
  'attach-caption': 'What does it show? One line',
}

export function isFileAsk(question: { readonly kind: string }): question is FileAsk {
  return Object.hasOwn(FILE_QUESTIONS, question.kind)
}

/** The word `attach`, with or without a path behind it. */
export function attachWord(prompt: Prompt, path: string | null): Heard {
  if (prompt.kind === 'closed') return say('This job is closed.')
  if (prompt.kind === 'clear')
    return say('Come out and stand clear first; a file can be attached after that.')
  return path === null ? ask({ kind: 'attach-path' }) : looking({ do: 'find', path })
}

function looking(file: FileWork): Heard {
  return { ...ask({ kind: 'attach-looking' }), file }
}

export function hearFileAnswer(question: FileAsk, line: string): Heard {
  const text = line.trim()
  switch (question.kind) {
    case 'attach-path':
      return looking(
        text === '' || text.toLowerCase() === 'newest' ? { do: 'newest' } : { do: 'find', path: text },
      )
    case 'attach-looking':
      return ask(question, 'The file is still looked for; back leaves it.')
    case 'attach-newest':
      if (text === '1') return ask({ kind: 'attach-caption', file: question.file })
      return text === '2' ? ask({ kind: 'attach-path' }) : ask(question, 'Key 1 or 2.')
    case 'attach-caption': {
      const shows = words(line, 'What it shows')
      if (!shows.ok) return ask(question, shows.error.say)
      const { file } = question
      return {
        talk: { ask: null },
        input: null,
        say: [`Copying ${clean(file.given)}, ${sizeText(file.size)}. It is attached once it stands here.`],
        file: { do: 'keep', file, caption: shows.value },
      }
    }
  }
}

/** What comes of a file that was found: the newest is shown first, one that was named is taken at its word. */
export function afterFound(work: Exclude<FileWork['do'], 'keep'>, file: FoundFile): Heard {
  const told = `${clean(file.given)}, ${sizeText(file.size)}, last written ${ageText(file.ageMs)}`
  return work === 'newest'
    ? ask({ kind: 'attach-newest', file }, `The newest in ${clean(file.folder)}: ${told}`)
    : ask({ kind: 'attach-caption', file }, told)
}

/** `3 min ago`. */
export function ageText(ms: number): string {
  if (!(ms >= 0)) return 'after now, by the clock of this computer'
  if (ms < 60_000) return `${Math.floor(ms / 1000)} s ago`
  if (ms < 3_600_000) return `${Math.floor(ms / 60_000)} min ago`
  return ms < 172_800_000 ? `${Math.floor(ms / 3_600_000)} h ago` : `${Math.floor(ms / 86_400_000)} days ago`
}

/** Lines of all that is attached, with what proves each copy; empty when nothing is. */
export function fileLines(state: State): string[] {
  return state.files.flatMap((file) => {
    const groups = file.sha256.match(/.{8}/g) ?? []
    return [
      `${fileText(file)}${file.given === file.name ? '' : `, from ${file.given}`}`,
      `  SHA-256 ${groups.slice(0, 4).join(' ')}`,
      `          ${groups.slice(4).join(' ')}`,
    ]
  })
}
