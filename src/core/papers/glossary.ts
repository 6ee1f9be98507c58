// Terms of the trade in our own words, for questions asked at the prompt. No limit and no figure of any machine stands here:
// those come from its record and the books it names. Common practice, no source; a figure of public law has its source beside it.

export interface Term {
  readonly term: string
  /** Other words that people ask for it by; looked through and never quoted. */
  readonly also: string
  readonly says: string
}

const GLOSSARY_TEXT = `
ACCEPT: A verdict: the figure is inside its limit with the measuring error allowed for, and below the share from which its owner wants it watched.
as found: The state in which something was met, measured before anybody cleans, adjusts or mends it. It is what tells how the machine wore.
as left: The state in which something goes back to work, measured after the last thing was done to it. The next overhaul is compared with it.
bar over | barring barred: To turn a machine slowly by hand or with barring gear, without its driver. Whoever is near a moving part may be caught, so people are counted clear first.
barrel | form shape barrelled belly bellied middle wider: Said of a bore that is wider in the middle of ring travel than at both its ends. It is told only where the difference is more than the measuring error.
barring gear: The lever, ratchet or small drive that turns the crank for work. It is taken off, or locked out, before anybody reaches in.
bleed: A small valve or opening to air that shows whether a space holds pressure. It stays open while people work, so that gas that leaks in has a way out.
blind: A solid plate put between two flanges, so that a leaking valve cannot let anything through. It has a number and is counted out again.
block: A solid stop that keeps the crank or the crosshead from moving either way. A brake, or friction, is no block.
block valve: A valve that shuts off a line. It may leak, so it is locked shut and what lies behind it is proved apart: at zero, bled, and no rise.
bore: The inside of a cylinder or its liner in which the piston runs, and its diameter as well.
bore gauge | inside diameter dial: A gauge with a tip that gives way, set to a known size first, by which it is tried which way its hand goes for larger. Rocked along the bore the hand turns back at one point, and the smallest size there is the diameter. Common practice, no source.
breaker: A switch that cuts a motor off from its supply. Locked open it cannot be closed; that the right one is locked is shown by a start that is tried.
breathing zone: The air where the face of whoever works will be. It is tested by itself, as the air inside an opening may be another.
bump test | meter challenge challenged challenging response check function test answers answered: A short breath of known test gas on a gas meter, to see that it answers before it is trusted. It is no calibration.
calibration: A comparison of an instrument with a better one, on record, with a day until which it counts. After that day nobody knows how far off it is.
catalytic sensor: A heated bead that burns a little of the gas it meets and tells from its warmth how much there is; also called a pellistor. It needs oxygen, so in air without enough of it the reading is false and low.
clearance pocket: A chamber that can be opened to the end of a cylinder, so that more gas stays behind in each stroke. The cylinder then takes in less and loads the driver less.
clearance volume: The gas that stays in the end of the cylinder when the piston stands at its dead centre. The more of it there is, the less fresh gas comes in with each stroke.
clock positions | 12 3 6 9 o'clock clock face vertical horizontal: Places round a bore, told by a clock face seen from the head end: twelve is the top, six the bottom, three and nine the sides.
concession: Leave, given in writing by somebody entitled to it, to use a part that does not conform, with a reason and an end.
core plug: A plug in a hole through which the core of a casting was held or taken out, as in the jacket of a cylinder or in a hollow piston. Behind it may be water, or gas under pressure.
counterbore: A length at the end of the bore that was cut larger on purpose, so that the rings run out over its edge and leave no ridge. It tells nothing about wear.
countersignature: A second signature, given later, by the one in whose name something was keyed before. Until it is there the word is open.
crank | crankshaft: The shaft that turns the rotation of the driver into strokes. Gas shut in on one side of a piston can turn it with the driver locked, so it is blocked both ways before anybody reaches in.
crank end: The end of the cylinder nearest to the crank, where the rod comes out. Drawings write CE for it.
crosshead: The block that slides in a straight line between connecting rod and piston rod, so that only push and pull reach the piston rod.
crosshead pin: The pin that joins the connecting rod to the crosshead. Its load has to change direction in each turn, or its bearing runs dry.
datum: What a size is measured from. For wear of a bore that is a place the rings never ran on, or a size on record.
dead centre: The end of a stroke, where the piston stands still for a moment before it goes back.
degree | degF degC degrees Fahrenheit Celsius unit F or C: A unit of temperature. The unit that a figure is taken in stands left of where it is keyed; another one is keyed behind the figure, such as degC.
deviation permit: Leave given before the work to do one thing otherwise than it is written, for a time. It changes no limit and opens no hold point.
dial indicator: An instrument that shows on a dial how far its tip was pushed. It compares and does not measure a size by itself.
discharge temperature: How hot the gas is as it leaves the cylinder. It climbs with the pressure ratio and with leaking valves or rings.
disposition: What a lead decides about something that did not conform: accept, rework, repair, replace, concession or hold, with the reason.
distance piece: The open length of frame between crosshead guide and cylinder that keeps oil and gas apart. Gas that leaks from the packing gathers there.
double acting: Said of a cylinder that compresses at both ends of its piston.
driver: The motor or engine that turns the compressor. Its breaker, or its fuel and starting air, is locked before anybody reaches in.
dropped gauge | drop dropped fell fall micrometer instrument: One that fell may read otherwise than before, so nothing more is read with it until it was held against its standard. If it is off, the word instrument voids by name what it read.
end clearance: The gap between the piston at its dead centre and the head it faces, measured at each end. Heat and the lost play of bearings use some of it up, so the piston may never touch.
end of a shift | go home going home shift ends break lunch tired leave night: All come out, tools and rags are counted, both openings covered, and block, locks and bleeds stay. With hand over the next one signs for what is open, and leave keeps the job as it is. Whoever goes on shows every hold point anew.
EXAMPLE: A job on an invented machine and crew, to be walked by anybody. Nothing of it counts for a machine.
expanded uncertainty | U k coverage factor: How far a reading may lie from the truth with high confidence, written U. A figure nearer to its limit than that cannot be called good or bad. It is the standard uncertainty times a factor k, which stands beside it.
fall-back limit: A limit from a named book, used only where the machine's own papers say nothing and a lead has named that book.
feeler gauge: Thin strips of known thickness, slid into a gap to find how wide it is.
gasket | gaskets old reuse again: A seal that is pressed between two faces. It has taken the shape of those it lay between, so a new one goes in at each closing, and the old ones are counted out.
gauge temperature | temperature measure read of gauge micrometer part instrument thermometer: Metal grows as it warms, gauge and part alike. Both are read before and after, so that each size can be brought to one temperature; unknown, the verdict is HOLD.
governing limit | governs governed: Of all the limits that were looked at, the one of which most is used up. A size counts its share from what it was made to, anything else from nothing.
guard band: A strip inside a limit, as wide as the measuring error, that is kept free. What falls in it may really lie outside, so it is not accepted.
H2S | hydrogen sulfide sour gas poison kill smell: Hydrogen sulfide, a gas of sour wells that can kill within a few breaths. It smells of bad eggs and soon dulls the nose, so a smell that is gone proves nothing: only a meter tells. Ceiling 20 ppm, 29 CFR 1910.1000 Table Z-2; ceiling 10 ppm, NIOSH; danger to life at 100 ppm, NIOSH, that one from memory.
handing back | machine now: Barover moves nothing on a machine. Locks, block and bleeds stay until a lead has decided and what is open is accounted for; the site permit says who hands the machine back.
head end: The end of the cylinder away from the crank, closed by the outer head. Drawings write HE for it.
HOLD: A verdict, and where a job may stand still: something is missing, unsound or too near to a limit for the measuring error. Nobody may pass it as good; what is missing is found, or a lead decides.
hold point: A place in the work that nobody passes until what it asks for is shown and on record. Some are there to keep people from harm, and some for an inspection.
holding a gauge | hold handle grip steady gauge micrometer: By its grip or handle, and no longer than it takes, as a warm hand makes it grow. Its two ends stand square to the bore, one still on the wall while the other is moved; how it is moved stands at its step.
hollow piston | cavity inside: A piston with room inside, to be lighter. Gas creeps in and is shut there under pressure, so each cavity is taken to be full until it is shown open.
hone | honed honing: To dress a bore with stones that spread outward, for its finish. It makes the bore larger, and takes out neither taper nor out of round.
hot work: Work that can give a flame, a spark or heat enough to light gas. It has a permit and a gas limit of its own.
hourglass | form shape waist narrow: Said of a bore that is wider at both ends of ring travel than in the middle. It is told only where the difference is more than the measuring error.
how far in | howfarin bore: The drawing at each question marks the place along the bore. It lies within ring travel, clear of the ridge and of any port.
inert gas | nitrogen: A gas that neither burns nor lets anything burn, nitrogen most of all. Nobody can breathe it, and nobody feels it: whoever breathes it falls without a warning.
infrared sensor: A sensor that sees gas by the light it swallows. It needs no oxygen, but some gases, hydrogen among them, it cannot see.
initials | type key sign name why: The letters by which somebody stands in the crew file. Each keys their own, and signs with the PIN that only they know, so that the log tells who did what, and nobody witnesses their own work.
interference: How much larger the inner part is than the hole it sits in before the two are put together.
isolation point: A place where a source of energy is shut off and locked, such as a breaker or a valve.
jacket: The space around a cylinder through which cooling water runs.
lead: Somebody whom the crew file names as one. A lead decides about what was found and ends a STOP, and never signs for their own work.
LEL: Lower explosive limit: the least share of a gas in air that can burn. A meter shows parts of it in per cent LEL, and means one named gas by that.
liner: A sleeve that forms the bore and can be renewed without a new cylinder.
lock box | lockbox group box: A box for the keys of the locks that hang at the points. Everybody who works behind them hangs a lock of their own on it, so it opens for nobody until the last of them is out and has taken theirs off: 29 CFR 1910.147(f)(3).
lock nut: A nut that is held against coming loose by itself, by its thread, a second nut, a pin or a tab. On a piston it is worked with a known torque, angle or stretch.
lock out: To shut off a source of energy and hang a lock on it, whose key stays with the one who depends on it.
low and high | sinks rises heavier lighter: Some gases are heavier than air and lie at the bottom, hydrogen sulfide among them; others, such as methane, are lighter and gather at the top. So air is read in both places.
measuring error | error mistake big large accurate accuracy exact exactly how: How far a figure may lie from the truth, from the gauge, its check, the repeats and the temperatures together. It is told with each verdict, as U; a figure nearer to its limit than that is HOLD.
micrometer: An instrument that reads a size from the turn of a fine screw. An inside micrometer spans a bore between two points.
mirror | inspection look see behind round far side reach camera borescope: A small mirror on a handle shows what lies where no face goes: the far end of a bore, the back of a port. Common practice, no source.
MONITOR: A verdict: the figure is inside its limit with the measuring error allowed for, and at or over the share of it from which its owner wants it watched. It is also the best that can be told where that error was left out by leave of the owner. It counts as a nonconformance until a lead has decided.
most and least: The two turning points of an inside micrometer. Swung across the bore its figure has a most, and tilted along the bore a least; the diameter is the least of the mosts.
nominal: The size on the drawing, before tolerance and wear.
nonconformance | nonconformity nonconforming NC: Anything found that is not as it was asked for. It stays open until a lead has decided about it.
not applicable | n a skip leave out omit place cannot reach step sheet: Said with n/a, and a reason, of a reading that cannot be taken. What is judged by it is HOLD then; a hold point knows no such word.
note | notes read reads anybody anyone sees: Words put into the log of the job with their time, for whoever reads the job later. Nobody is called by it: what is urgent is said aloud, or is STOP.
out of round: The greatest difference between diameters taken in different directions at one place along the bore.
ovality: Another word for out of round, the difference between diameters taken in different directions at one place.
oxygen | normal air ordinary clean fresh usual: Clean air holds a little more than a fifth of it by volume. Less means that something else has taken its place or used it up, more that things burn fiercer; what is allowed where stands in the gas limits of the site.
packing: Sets of rings in cups around the piston rod that keep the gas in the cylinder.
partner | my partner second person mate colleague helper: The other mechanic, or a lead, who works with you: one reads out, the other keys. Whoever did any part of the work witnesses none of it.
permit: The paper by which a site allows a piece of work, with what has to be safe first.
piston ring: A ring in a groove of the piston that seals against the bore.
piston rod: The rod that joins piston and crosshead and passes through the packing.
places of measuring | six places stations axes axis station direction: A bore wears unevenly, along its length and around it. Three stations, each measured in two directions, make six places, and the worst of them shows.
ppm | parts per million: Parts in a million parts, of gas by volume.
PRACTICE | practise training exercise: A job to learn on, with the word on every line. A trainee signs on to no other, and nothing of it counts for a machine.
preload: The pull that stays in a bolt or rod after it was made tight.
purge: To sweep gas out of a space with another one that does not burn, before it is opened or filled. A space swept with nitrogen holds no oxygen to breathe.
radial thickness: How thick a ring is from its inside to its running face. Wear takes it from the running face.
rags and tools: What goes in is counted in and counted out again, and the count is kept. A rag or tool left inside is caught by the piston at the first turn.
reading a feeler gauge | use try blade leaf drag thickness: Try the blades from thin to thick, flat and along the gap, none of them forced or bent. The thickest that goes in with a light drag is the figure, and of several together their sum. Common practice, no source.
reading a micrometer | scale sleeve thimble vernier lines outside: The last whole mark that shows on the sleeve and the lines past it, the line of the thimble that meets the long line of the sleeve, and the vernier for the last place are added up. What each line is worth stands on the instrument. Common practice, no source.
reading an inside micrometer | bore use head rod extension: As any micrometer is read, with the length of its head and rod added. Swung across the bore it is set to the most, tilted along it to the least of those. It is held against its standard before and after. Common practice, no source.
REAL: A job whose record stands for the machine on the plate. It takes no scripted answers and no clock but that of the computer.
recycle valve | bypass spillback: A valve in a line that takes gas from the discharge back to the suction. Left open it lets gas come back, so it is an isolation point like any other.
release: What ends a STOP. A lead who neither raised nor called it says what was put right and signs with a PIN; after some causes nobody does.
repair: What a lead decides where a part is made fit for its use, though not as it was first asked for. After rework it conforms again; after repair it need not.
repeats | two readings twice again count counts differently different second time differ apart agree often measure: A place is read at least twice, and the instrument lifted out between, so that a slip shows. Where they lie too far apart one more is asked; those that agree count together.
REPLACE: A verdict: the figure is outside its limit by more than the measuring error, and its book says that the part is renewed then. A lead decides; the word only proposes.
reversal: The change of the load at the crosshead pin from push to pull and back in each turn. It lets oil in on both sides of the bearing.
REWORK: A verdict: the figure is outside its limit by more than the measuring error, and its book says that the part can be worked on then. A lead decides; the word only proposes.
rider band: A band around the piston that carries its weight, so that the piston itself does not touch the bore. It has to stand proud of the piston.
ridge | step edge remove: A step at the end of ring travel, left where the rings never wore the bore. New rings can break on it, so it is put down as found, and a lead decides whether it comes off.
ring gap: The opening between the two ends of a piston ring that lies in the bore. Too tight, the ends butt when hot and the ring seizes; too wide, it leaks.
ring land: The part of the piston between two ring grooves.
ring travel: The length of bore that the rings sweep from one end of the stroke to the other.
rod drop: How far the piston rod has come down from where it ran when the rider bands were new. It tells how far the bands have worn.
rod load: The push or pull in the piston rod, from gas pressure and from the mass that is moved. Frame and rod have a limit for it each way.
rod sag: How far a rod bends under its own weight between its supports.
runout: How much a dial on the rod moves while the rod goes through its stroke or is turned. Part of it follows from the sizes of the machine, and the rest tells of alignment.
same thermometer | one both: The same thermometer reads part and gauge, one after the other, before and after. Its error is the same in both then, and falls out of their difference.
scoring | counts count deep as score scored scratch scratches scratched groove deep: Grooves along a bore or a rod, cut by dirt or by metal. Whether a fingernail catches tells scratches that are felt from a sheen; how deep one may be stands in the papers of the maker, and a lead decides.
set-check | as before differs other: A reading on a standard of known size before and after the work, without adjusting. If the two differ, every reading between them is in doubt.
setting standard: A piece of known size with which an instrument is compared.
several gauges | two gauges both more than one second gauge: A list has each gauge of the register that is of the right kind. One that is taken reads every place, so that its error is the same in all of them; others stand by in case it is found out of calibration.
share of a limit | used per cent percent % 70 of what mean: How much of the way to its limit a figure has gone, in per cent of the limit; of a size, of the way from nominal to the limit. The largest share governs, and from the share that the owner names the verdict is MONITOR.
side clearance: The gap between the side of a ring and its groove. Without it the ring sticks; with too much it hammers.
spread: The difference between the largest and the smallest of several readings.
standard: In short for setting standard, a piece of known size with which an instrument is compared. Its size is marked on it and stands in the register of instruments.
stroke: The way of the piston from one dead centre to the other. It is as long as twice the radius of the crank.
suction valve: The valve that lets gas into the cylinder and keeps it from going back.
sweet gas | sour H2S: Gas that has no hydrogen sulfide, or so little that the papers of the site do not call it sour; where that line lies stands there. It burns and takes the place of air like any other, and what is there a meter tells, not its name. Common practice, no source.
swept length: The length of bore that the rings run over in a stroke; the same as ring travel.
tag plate | tag missing gone lost find where: The plate on a machine that bears its tag. It is read there and copied from nowhere; where it is gone, a lead finds out which machine it is before anything is done.
taper: The difference of diameter from one place along the bore to another, in one direction.
thousandth | thou mil inch last place: The thousandth part of an inch. An inside micrometer is read to a tenth of it, which is the last place of its figure.
throw: One crank of the crankshaft with all that it drives, up to and with its cylinder.
torque: The turning effort put on a nut. How much of it becomes pull depends on friction, so oil on the thread changes the outcome.
try-start | tried try start driver panel dead power button lamp: A start that is tried once all is locked and everybody is clear. That nothing moves shows that the right machine is locked and no source forgotten; at a panel without power it shows nothing, so a lead finds out first why that is dead. Common practice, no source.
uncertainty: How far a reading may lie from the truth; see expanded uncertainty.
unloader: A device that keeps a valve from closing or opens a pocket, so that an end of a cylinder does less work or none.
unswept strip | no strip gone missing: A strip at the size of the bore that no ring has run on. It still has the size the bore was made to, so wear can be told from it. Where there is none, wear is told from figures on record, or not at all.
valve cap | cover nuts slack slacked leave on stay: The cover over a valve of the cylinder. Gas shut in behind it can throw it, so its nuts are slacked evenly and stay on until the seal is broken, with everybody out of its line.
volumetric efficiency: The share of the swept volume that is really filled with fresh gas in each stroke. Clearance, leaks and warm walls make it smaller.
wind | windy draught draughty breeze breezy blowing fan gust: Moving air thins the gas at an opening, and a meter that stands in it may read lower than what lies inside. So the hose goes in, low and high, as its line says, out of the wind, and a wind that drops or turns makes it another air. Common practice, no source.
witness | witnesses: Somebody who did none of the work, looks for themselves and signs.
witness point: A place in the work where somebody may come and look. Notice is given, and when it has run out the work may go on without them, which is put on record.
`

/** Each term with what it means, a few sentences; before the colon, after a bar, other words for it. */
export const GLOSSARY: readonly Term[] = GLOSSARY_TEXT.trim()
  .split('\n')
  .map((line) => {
    const colon = line.indexOf(': ')
    const [term = '', also = ''] = line.slice(0, colon).split(' | ')
    return { term, also, says: line.slice(colon + 2) }
  })
