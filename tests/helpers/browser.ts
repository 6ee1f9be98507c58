import { existsSync } from 'node:fs'

/** Where the systems that are tested on put a browser, or another that is named; null: there is none. */
export const BROWSER =
  [
    process.env.BAROVER_CHROMIUM,
    '/usr/bin/chromium',
    '/usr/bin/chromium-browser',
    '/usr/bin/google-chrome',
  ].find((path) => path !== undefined && existsSync(path)) ?? null
