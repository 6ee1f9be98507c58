import { existsSync } from 'node:fs'
import { type Browser, chromium } from 'playwright-core'

/** Where the systems that are tested on put a browser, or another that is named; null: there is none. */
export const BROWSER =
  [
    process.env.BAROVER_CHROMIUM,
    '/usr/bin/chromium',
    '/usr/bin/chromium-browser',
    '/usr/bin/google-chrome',
  ].find((path) => path !== undefined && existsSync(path)) ?? null

/** A page of the report is opened in it; it is closed by whoever opened it. */
export function launched(): Promise<Browser> {
  return chromium.launch({
    executablePath: BROWSER ?? '',
    // In a container there is often nobody but root, and for root it has no sandbox. The page is our own.
    args: ['--no-sandbox', '--disable-gpu', '--disable-dev-shm-usage'],
  })
}
