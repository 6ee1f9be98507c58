// barover briefing: the whole job read through before it begins, to be printed and signed by hand. Nothing is written.
import { kitOf } from '../../core/kit/kit.ts'
import { layOut, plainText } from '../../core/sheet/block.ts'
import { briefingBlocks } from '../../core/sheet/briefing.ts'
import { type Command, SHARED, text } from '../args.ts'
import { EXIT } from '../exit.ts'
import { print, sheetStyle } from '../terminal.ts'
import { dayFrom, definitionsFor } from './kit.ts'

export const briefingCommand: Command = {
  name: 'briefing',
  usage: 'barover briefing PROCEDURE --machine FILE [--clock DAY]',
  summary:
    'The job briefing: every step with its hazards, hold points and roles, NOT LIVE, for the crew to read and sign on paper.',
  options: {
    machine: { type: 'string', says: 'the machine record (YAML)' },
    clock: { type: 'string', says: 'the day of the job, 2026-03-14, for the calibrations (default: today)' },
    ascii: SHARED.ascii,
  },
  positionals: { least: 1, most: 1 },
  run: async (values, [procedure]) => {
    const defs = definitionsFor('briefing', procedure, values)
    const kit = kitOf(defs, dayFrom(text(values, 'clock')))
    const style = sheetStyle(values, 'NOT LIVE')
    for (const block of briefingBlocks(defs, kit, style)) print(plainText(layOut(block, style)))
    return EXIT.done
  },
}
