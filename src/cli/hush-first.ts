// Imported before anything else, for what it does: the terminal goes silent before the rest of the program is even read.
import process from 'node:process'
import { asksPerson, hush, readsFirst } from './hush.ts'

const args = process.argv.slice(2)
if (asksPerson(args, process.stdout.isTTY === true)) {
  hush()
  if (process.stdin.isTTY === true && readsFirst(args)) process.stderr.write('Reading the log.\n')
}
