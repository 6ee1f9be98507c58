// What is read aloud: no warning is lost, no PIN is said, and whatever becomes of the voice, the job goes on.
import { of } from './mutant.ts'

export const ALOUD = [
  ...of('app/speech', 'app/reader', [
    {
      rule: 'A warning is said at once, whatever is being said.',
      find: '      cutOff()\n      warnings = [{ text }, ...again, ...warnings]',
      into: '      warnings = [...warnings, { text }]',
      by: 'STOP cuts off whatever is said, and what is asked waits until it was said',
    },
    {
      rule: 'A warning that another one cuts off is said again, whole.',
      find: 'const again = now?.warning === true ? [now.utterance] : []',
      into: 'const again: Utterance[] = []',
      by: 'are said one behind the other, the newest first, each to its end',
    },
    {
      rule: 'What is asked next does not cut off a warning.',
      find: 'if (now?.warning === false) cutOff()',
      into: 'cutOff()',
      by: 'STOP cuts off whatever is said, and what is asked waits until it was said',
    },
  ]),
  ...of('app/reader', 'app/reader', [
    {
      rule: 'A hazard that was cut off is said again at its step.',
      find: 'done: () => void heard.add(text) })',
      into: 'done: () => undefined })',
      by: 'a figure is read back in place of the old prompt, then the next place is said without the hazard',
    },
    {
      rule: 'A fault in reading aloud ends the reading aloud, not the job.',
      find: '      } catch {',
      into: '      } catch (error) {\n        if (error !== null) throw error',
      by: 'a voice that throws ends the reading aloud and nothing else',
    },
  ]),
  ...of('core/aloud/of-entry', 'core/aloud/aloud', [
    {
      rule: 'STOP is a warning wherever it is said.',
      find: "  'stop.raised',\n",
      into: '',
      by: 'STOP, what fell and a failed gas test are warnings',
    },
    {
      rule: 'Figures keyed where a PIN could have been meant are not said.',
      find: 'return /^[\\d\\s]{4,}$/.test(entry.typed) ? texts(rows.slice(1)) : texts(rows)',
      into: 'return texts(rows)',
      by: 'figures keyed for the tag of the plate may be a PIN and are not said',
    },
  ]),
]
