// Putting an attached file on record. Its bytes are on disk before this is asked. Always possible, under STOP too: it sends
// nobody anywhere and answers nothing, and a picture of what went wrong is worth most right then.
import { ok, type Result, refuse } from '../lib/result.ts'
import { isFileSize, isGivenName, isKeptName, isSha256 } from './attachment.ts'
import type { Body } from './entries.ts'
import type { Input } from './input.ts'
import { words } from './refusals.ts'
import type { State } from './state.ts'

export function admitFile(
  state: State,
  { name, given, size, sha256, caption }: Extract<Input, { do: 'attach' }>,
  step: string | null,
): Result<readonly Body[]> {
  if (!isKeptName(name) || !isGivenName(given))
    return refuse('file-name', 'The name of the file cannot be put on record: give it a plain one.')
  if (!isFileSize(size) || !isSha256(sha256))
    return refuse('file-facts', 'What was kept of the file cannot be put on record: attach it again.')
  if (state.files.some((file) => file.name === name))
    return refuse('file-twice', 'A file of that name is on record already: attach it under another one.')
  const shows = words(caption, 'What it shows')
  return shows.ok
    ? ok([{ type: 'file.attached', step, name, given, size, sha256, caption: shows.value }])
    : shows
}
