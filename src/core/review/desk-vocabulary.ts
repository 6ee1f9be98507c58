// The words that questions at a review are known by, and everyday words that are near to one of them and mean another thing. None of the
// first is a word of harm: a slip is never mended into one, as it would then tell of what nobody told of.

/** A slip of one letter in these is told by its letters. */
export const DESK_WORDS: readonly string[] = (
  'what when which where whose could would should until who long many often before after between ' +
  'gauge gauges micrometer micrometers calibrated calibration certificate instrument instruments set-check ' +
  'decided decision decisions accepted rework replace replaced renewed repair changed change monitor verdict judged limit limits tolerance ' +
  'corrected correction corrections figure figures number reading readings measure measured taken twice again ' +
  'witness witnessed authority overhaul signed agree released release lapsed expired tested sheet ' +
  'machine torque stop stopped start started driver motor compressor wrong went happened order nearly near ' +
  'closed close open opened opening anything something anybody somebody anyone someone nobody everything still hung ' +
  'lock locks block blocks piston valve valves liner bore bores tight ring rings rod riders wear worn head plug pocket ' +
  'empty vented check checked checking trust doubt dropped fell hold held carry allowed finish finished take took ' +
  'hours shift left inside back note notes'
)
  .split(' ')
  .filter((word) => word.length > 3 && !word.includes('-'))

/** Near to one of those, and words of their own. */
export const DESK_NEAR: readonly string[] = (
  'accented alter aster blacks bones borne boxes chance chanted charge charged cheek chick chock chocked ' +
  'chose chuck clone cloned closer closes clove cold decoded derided derision diver drier drover gorge ' +
  'gorges gouge gouged gouges heading headings heard holed lacks lapped liber licks lier linder linear ' +
  'linger linker liter liver lochs locus loner looks machined machines manly moor nearby neatly nodes noses ' +
  'older opined opining overhauls packet picket picton raiders rearing redding reneged replayed rides rigs ' +
  'rinks rivers shaft shims shirt shit shopped sift sighed signal sill skill slacked smart spill stall ' +
  'stared starred startled starved stat stated step stepped stepping stomp stoop stoops sweet swift tasted ' +
  'testbed texted thrust token tryst twine vale valle valse value values verdicts vested vetted were ' +
  'wetness wheat while world worse wound whole ' +
  'wring stuart brock carey curry cary huang wong boris alain finnish'
).split(' ')
