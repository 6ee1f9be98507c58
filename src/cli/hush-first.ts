// Imported before anything else, for what it does: the terminal goes silent before the rest of the program is even read.
import process from 'node:process'
import { asksPerson, hush } from './hush.ts'

if (asksPerson(process.argv.slice(2), process.stdout.isTTY === true)) hush()
