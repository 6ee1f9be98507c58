// barover briefing: the whole job read through before it begins, to be printed and signed by hand. Nothing is written.
import { kitOf } from '../../core/kit/kit.ts'
import { layOut, plainText } from '../../core/sheet/block.ts'
import { briefingBlocks, partsOf, stepsAsked } from '../../core/sheet/briefing.ts'
import { UserError } from '../../node/user-error.ts'
import { type Command, text } from '../args.ts'
import { EXIT } from '../exit.ts'
import { print, sheetStyle } from '../terminal.ts'
import { BEFORE_A_JOB, dayFrom, definitionsFor } from './kit.ts'

export const briefingCommand: Command = {
  name: 'briefing',
  usage: 'barover briefing PROCEDURE --machine FILE [--steps 20-40] [--clock DAY]',
  summary:
    'The job briefing: every step with its hazards, hold points and roles, NOT LIVE, for the crew to read and sign on paper.',
  options: {
    ...BEFORE_A_JOB,
    steps: { type: 'string', says: 'only these steps, as 20-40; or a part by words of its title' },
  },
  positionals: { least: 1, most: 1 },
  run: async (values, [procedure]) => {
    const defs = definitionsFor('briefing', procedure, values)
    const kit = kitOf(defs, dayFrom(text(values, 'clock')))
    const style = sheetStyle(values, 'NOT LIVE')
    const asked = text(values, 'steps')
    const only = asked === undefined ? undefined : stepsAsked(defs, asked)
    if (only === null)
      throw new UserError(
        `--steps takes numbers as 20-40, 1 to ${defs.steps.length}, or a part by its title.`,
        EXIT.wrongUse,
        partsOf(defs).join('\n'),
      )
    for (const block of briefingBlocks(defs, kit, style, only)) print(plainText(layOut(block, style)))
    return EXIT.done
  },
}
