// Slips that are too short, or too far from the word, to be told by their letters, in whatever is asked or told.
export const COMMON_SLIPS: Readonly<Record<string, string>> = {
  wat: 'what',
  waht: 'what',
  hwat: 'what',
  wats: 'what is',
  whats: 'what is',
  whos: 'who is',
  wich: 'which',
  shoud: 'should',
  teh: 'the',
  guage: 'gauge',
  gage: 'gauge',
  gages: 'gauges',
  fone: 'phone',
}
