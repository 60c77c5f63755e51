// Written by crates/app/src/typescript.rs from the shapes of the boundary. Do not edit:
// `cargo test -p eavebook-app` writes it anew when they change.

/**
 * An act that can be taken back or done again.
 */
export type ActView = { 
/**
 * Its entry.
 */
entry: string, 
/**
 * "leg 4, 42 ft 7 in".
 */
words: string, };

/**
 * A request of Arrive.
 */
export type ArriveRequest = { "ask": "visit", 
/**
 * Which job.
 */
job: string, 
/**
 * What.
 */
note: VisitNote, };

/**
 * Arrive.
 */
export type ArriveView = { 
/**
 * "The front, looking 212°, 2:41 pm"; none until somebody stood before it.
 */
front: string | null, 
/**
 * Who is here: "the owner, may say yes, 2:41 pm".
 */
here: Array<string>, 
/**
 * What is asked of the people here; what needs a ladder is left out while one stays below.
 */
permissions: Array<TickView>, 
/**
 * Nobody is home: from the ground only.
 */
ground_only: TickView, 
/**
 * What to beware of.
 */
hazards: Array<TickView>, 
/**
 * The driveway was looked at before any work.
 */
driveway: TickView, 
/**
 * "Kim, until 3:30 pm".
 */
check_in: string | null, 
/**
 * What was promised, the newest last.
 */
promises: Array<string>, };

/**
 * A question that one tap answers.
 */
export type AskView = { 
/**
 * "Layers at this edge".
 */
title: string, 
/**
 * The answers.
 */
choices: Array<ChoiceView>, };

/**
 * A copy of the whole book as one file, to be fetched once.
 */
export type BookCopyView = { 
/**
 * Where it is fetched.
 */
file: string, 
/**
 * What it is to be called.
 */
name: string, 
/**
 * What it holds.
 */
said: Sentence, };

/**
 * A slope just read.
 */
export type CapturedView = { 
/**
 * `26.6°`; of a phone laid both ways the mean.
 */
degrees: string, 
/**
 * "6.0 in 12, near 6 in 12".
 */
in_12: string, 
/**
 * It was a phone laid one way: turned end for end it would show what the phone adds.
 */
one_way: boolean, 
/**
 * "The two ways differ by 1.2°: this phone reads 0.6° high, and their mean is free of it."
 */
zero_error: Sentence | null, 
/**
 * What a slope marked on a photo is good for; none of a slope read otherwise.
 */
sighted: Sentence | null, 
/**
 * As it is spoken: "two six point six degrees".
 */
spoken: string, };

/**
 * How a file is, that is carried in by hand.
 */
export type CarriedView = { 
/**
 * What it brought; none while more of it is to come.
 */
said: Sentence | null, };

/**
 * What turned up once the old roof was off, and what the next one needs.
 */
export type ChangesView = { 
/**
 * Those booked, the newest first: `change 2`, with all that was said of it as story.
 */
changes: Array<ThingView>, 
/**
 * The number of the next one.
 */
next: number, 
/**
 * `change 3`: what a photo for the next one is taken of.
 */
next_thing: string, 
/**
 * Photos that were taken for it already, by their names in the photo folder.
 */
next_photos: Array<string>, 
/**
 * "A sheet, laid: $58.00.", or that it is not priced.
 */
price: Sentence, 
/**
 * Under which it can be: (leg, name).
 */
faces: Array<[number, string]>, };

/**
 * One card of the check.
 */
export type CheckItem = { 
/**
 * `sides`, `closure`, `leg 3`.
 */
thing: string, 
/**
 * "Closure".
 */
title: string, 
/**
 * The evidence in words: the gap, what was seen and not seen.
 */
words: Sentence, 
/**
 * The evidence in photos, by their names in the photo folder.
 */
photos: Array<string>, 
/**
 * What leads to where it is mended.
 */
next: NextAct, };

/**
 * A request of the Leave-site check.
 */
export type CheckRequest = { "ask": "hold_place", 
/**
 * Which job.
 */
job: string, 
/**
 * The card; none: one came back.
 */
at: string | null, };

/**
 * The Leave-site check.
 */
export type CheckView = { 
/**
 * "6 open, 3 unproved".
 */
counts: Sentence, 
/**
 * What is open, by the cost of coming back for it and by what it does to the price; then what
 * is most worth reading again, at most three.
 */
open: Array<CheckItem>, 
/**
 * The card from which somebody went to mend something and has not come back.
 */
at: string | null, 
/**
 * "Check complete": the visit is over and nothing was booked since.
 */
complete: Sentence | null, };

/**
 * One answer.
 */
export type ChoiceView = { 
/**
 * What its button says.
 */
name: string, 
/**
 * It is what was said last.
 */
chosen: boolean, 
/**
 * The request that says it.
 */
says: Request, 
/**
 * The thing whose leaf opens then: `pipe 2`.
 */
opens: string | null, };

/**
 * Something said aloud.
 */
export type ClipView = { 
/**
 * Its entry.
 */
entry: string, 
/**
 * Its name in the photo folder: `/photo/{sha256}`.
 */
sha256: string, 
/**
 * The thing in hand as it was said, where it can be read.
 */
read: Thing | null, 
/**
 * "Leg 4, said 2:41 pm, this phone".
 */
words: string, };

/**
 * The two sums.
 */
export type ClosureView = { 
/**
 * What to call it.
 */
state: ClosureWord, 
/**
 * "Closes within 2 in." or "18 ft short along the front."
 */
words: Sentence, 
/**
 * "Look again at leg 2 or leg 6." or what closure cannot see.
 */
more: Sentence | null, 
/**
 * At most two, likeliest first.
 */
suspects: Array<SuspectView>, 
/**
 * There are others beside the two.
 */
or_another: boolean, };

/**
 * What to call a closure.
 */
export type ClosureWord = "open" | "closes" | "gap" | "not checked";

/**
 * A reply about copies on other machines.
 */
export type CopiesReply = { "reply": "copies" } & CopiesView | { "reply": "invite" } & InviteView | { "reply": "square" } & SquareView | { "reply": "carried" } & CarriedView | { "reply": "book_copy" } & BookCopyView;

/**
 * A request about copies.
 */
export type CopiesRequest = { "ask": "copies", 
/**
 * Which job.
 */
job: string | null, } | { "ask": "join", 
/**
 * Its link, or its address, code and key as typed.
 */
link: string, } | { "ask": "invite" };

/**
 * Where copies are.
 */
export type CopiesView = { 
/**
 * Of the job that was asked about; `None` without one.
 */
copies: Sentence | null, 
/**
 * Entries of it that other devices booked: where this grows, the job is to be fetched anew.
 */
of_others: number, 
/**
 * The hub that this book keeps in step with.
 */
hub: HubView | null, 
/**
 * What this device is called on the others: `device 3f9a`.
 */
called: string, 
/**
 * Whether this machine is itself a hub that other devices can join.
 */
shares: boolean, 
/**
 * "Room for about 900 photos.", where the disk says; under 50 it warns.
 */
room: Sentence | null, };

/**
 * What a deck is made of.
 */
export type DeckKind = "plank" | "sheet";

/**
 * One size of a deck.
 */
export type DeckSizeOf = "gap" | "plank_width" | "thickness";

/**
 * The reader for whom a packet is made: one with every paper would hand the firm's margin to the
 * supplier.
 */
export type Edition = "owner" | "crew" | "firm" | "supplier" | "permit";

/**
 * What rises at a leg.
 */
export type EndKind = "sloped" | "gable" | "wall";

/**
 * One face.
 */
export type FaceView = { 
/**
 * The leg from which it rises, from 1.
 */
leg: number, 
/**
 * Slope, gable or wall; `None` if it was not recorded.
 */
end: EndKind | null, 
/**
 * "6 in 12, 26.6°"; `None` without a reading.
 */
pitch: Figure | null, 
/**
 * The last slope read at it, as the region `Pitch` shows it.
 */
captured: CapturedView | null, 
/**
 * Slopes booked in the job so far: goes with the next one that is captured.
 */
slopes_before: number, 
/**
 * Faces whose pitch may be taken as the same: (leg, name).
 */
same_as: Array<[number, string]>, 
/**
 * What can be added on it.
 */
add: Array<ChoiceView>, 
/**
 * Sizes read at its edge: its overhang.
 */
sizes: Array<SizeView>, 
/**
 * What can be said of its edge by one tap.
 */
asks: Array<AskView>, 
/**
 * What was seen over its leg, beside what is computed.
 */
seen: SeenView, 
/**
 * `leg 4`: `data-thing`.
 */
thing: string, 
/**
 * The thing to ask for, where it can be read again.
 */
read: Thing | null, 
/**
 * "Leg 4, back".
 */
title: string, 
/**
 * How well it is known.
 */
state: State, 
/**
 * The state in a word or two.
 */
state_word: string, 
/**
 * Its value, read or worked out; `data-value` without the ±.
 */
value: Figure | null, 
/**
 * A sentence: "read twice, meets leg 5 at an inside corner".
 */
about: string, 
/**
 * All readings of it, newest first.
 */
story: Array<StoryView>, 
/**
 * Photos of it, the newest first, by their names in the photo folder: `/photo/{sha256}`.
 */
photos: Array<string>, };

/**
 * A request of the field book.
 */
export type FieldBookRequest = { "ask": "open_pad", 
/**
 * Which job.
 */
job: string, 
/**
 * What is to be read.
 */
thing: Thing | null, 
/**
 * Hide every value of it that is booked already.
 */
blind: boolean, } | { "ask": "close_pad", 
/**
 * Which job.
 */
job: string, } | { "ask": "press", 
/**
 * Which job.
 */
job: string, 
/**
 * Count of presses on this pad before this one: the same press said twice is one press.
 */
press: number, 
/**
 * The key.
 */
key: Key, 
/**
 * Milliseconds since the press before, where there was one: a bounce is asked about.
 */
since_ms: number | null, } | { "ask": "answer_double", 
/**
 * Which job.
 */
job: string, 
/**
 * What was meant.
 */
meant: Meant, } | { "ask": "chip", 
/**
 * Which job.
 */
job: string, 
/**
 * How it is read.
 */
how: HowRead, 
/**
 * What the tape follows.
 */
followed: Followed, } | { "ask": "right", 
/**
 * Which job.
 */
job: string, 
/**
 * The reading.
 */
reading: string, } | { "ask": "strike", 
/**
 * Which job.
 */
job: string, 
/**
 * The entry to strike.
 */
entry: string, 
/**
 * Why, where a reason is given.
 */
reason: string | null, } | { "ask": "settle_at_desk", 
/**
 * Which job.
 */
job: string, 
/**
 * Everything in force on which a thing rests.
 */
entries: Array<string>, } | { "ask": "undo", 
/**
 * Which job.
 */
job: string, 
/**
 * The entry to take back.
 */
entry: string, } | { "ask": "redo", 
/**
 * Which job.
 */
job: string, 
/**
 * The undo entry to take back.
 */
entry: string, } | { "ask": "corner", 
/**
 * Which job.
 */
job: string, 
/**
 * The leg that ends there, from 1.
 */
after_leg: number, 
/**
 * Which way the outline turns.
 */
turn: Turn, } | { "ask": "cannot_get", 
/**
 * Which job.
 */
job: string, 
/**
 * What.
 */
thing: Thing, 
/**
 * Why, where a reason is given.
 */
reason: string | null, };

/**
 * A worked or read figure in words.
 */
export type Figure = { 
/**
 * With its unit: `42 ft 7 1/2 in`, `2,013 sq ft`.
 */
words: string, 
/**
 * Its ± with unit, where it was worked out: `± 35 sq ft`.
 */
give_or_take: string | null, };

/**
 * What the tape followed.
 */
export type Followed = "eave_edge" | "gutter_face" | "wall";

/**
 * What came of looking.
 */
export type Found = "seen" | "none" | "not_looked";

/**
 * One thing that a search found.
 */
export type FoundView = { 
/**
 * In which job.
 */
job: string, 
/**
 * Street address of the job.
 */
address: string, 
/**
 * The thing, `leg 4`; none: the job itself.
 */
thing: string | null, 
/**
 * What it says.
 */
words: string, };

/**
 * The finest fraction that is read.
 */
export type FractionStep = "eighths" | "quarters";

/**
 * One point marked on a photo of a gable end.
 */
export type GableMark = { 
/**
 * Which point.
 */
of: GableSpot, 
/**
 * Its place, as fractions of the picture's width from the left and height from the top.
 */
at: [number, number], };

/**
 * A point that can be marked on a photo of a gable end; left and right as seen in the photo.
 */
export type GableSpot = "left_eave" | "top" | "right_eave" | "left_ground" | "right_ground";

/**
 * What to beware of at a house.
 */
export type Hazard = "ice" | "wind" | "service_drop" | "high_or_steep" | "soft_ground" | "weak_deck" | "skylights" | "animals" | "alone";

/**
 * How still a phone is held.
 */
export type HoldView = { 
/**
 * `26.6°`; `None` without a sample of the tilt.
 */
degrees: string | null, 
/**
 * What to do with it.
 */
hold: HoldWord, 
/**
 * The same in words: "Hold still."
 */
words: Sentence, };

/**
 * How a phone is held.
 */
export type HoldWord = "begun" | "moving" | "still" | "nothing";

/**
 * How a value was obtained.
 */
export type HowRead = "taped" | "paced" | "off_photo" | "told";

/**
 * A hub in words.
 */
export type HubView = { 
/**
 * Whose.
 */
company: string, 
/**
 * Where.
 */
address: string, };

/**
 * What lets one more device join, once, within ten minutes.
 */
export type InviteView = { 
/**
 * The link.
 */
link: string, 
/**
 * Address, code and key, to be typed.
 */
typed: string, 
/**
 * The link as a QR code (ISO/IEC 18004): dark fields of one unit as the path of an SVG.
 */
fields: string, 
/**
 * Its width and height in units, with the quiet zone of four.
 */
side: number, };

/**
 * What stands out of a roof.
 */
export type ItemKind = "pipe" | "mast" | "flue" | "chimney" | "skylight" | "box_vent" | "fan" | "dish" | "solar" | "other";

/**
 * An item: its state, the sizes asked of it, what can be said of it by one tap.
 */
export type ItemView = { 
/**
 * Sizes asked of it, each read on the keypad.
 */
sizes: Array<SizeView>, 
/**
 * What can be said of it by one tap.
 */
asks: Array<AskView>, 
/**
 * `leg 4`: `data-thing`.
 */
thing: string, 
/**
 * The thing to ask for, where it can be read again.
 */
read: Thing | null, 
/**
 * "Leg 4, back".
 */
title: string, 
/**
 * How well it is known.
 */
state: State, 
/**
 * The state in a word or two.
 */
state_word: string, 
/**
 * Its value, read or worked out; `data-value` without the ±.
 */
value: Figure | null, 
/**
 * A sentence: "read twice, meets leg 5 at an inside corner".
 */
about: string, 
/**
 * All readings of it, newest first.
 */
story: Array<StoryView>, 
/**
 * Photos of it, the newest first, by their names in the photo folder: `/photo/{sha256}`.
 */
photos: Array<string>, };

/**
 * A request of the job file.
 */
export type JobFileRequest = { "ask": "packets", 
/**
 * Which job.
 */
job: string, } | { "ask": "make_packet", 
/**
 * Which job.
 */
job: string, 
/**
 * For whom.
 */
edition: Edition, } | { "ask": "send", 
/**
 * Which job.
 */
job: string, 
/**
 * The packet's id; none: the newest.
 */
packet: string | null, 
/**
 * Who is to get it, as written.
 */
to: string, 
/**
 * Sendings booked before it: the same request said twice books once.
 */
after: number, } | { "ask": "send_came", 
/**
 * Which job.
 */
job: string, 
/**
 * The sending.
 */
send: string, 
/**
 * How far.
 */
stage: SendStage, } | { "ask": "add_change", 
/**
 * Which job.
 */
job: string, 
/**
 * The number it is to have, as the job says: the same request said twice books once.
 */
number: number, 
/**
 * The leg from which the face rises, from 1; `None` if no face was chosen.
 */
leg: number | null, 
/**
 * How many sheets.
 */
sheets: number, 
/**
 * Somebody who may say yes agreed to it.
 */
consent: boolean, };

/**
 * One job, whole.
 */
export type JobView = { 
/**
 * Which.
 */
job: string, 
/**
 * Street address as said.
 */
address: string, 
/**
 * The pretend house.
 */
pretend: boolean, 
/**
 * Where copies are: "1 copy: this phone only".
 */
copies: Sentence, 
/**
 * The last act and the next one; none in an empty job.
 */
you_were_here: YouWereHere | null, 
/**
 * The act that Undo takes back.
 */
undo: ActView | null, 
/**
 * The act that Redo does again.
 */
redo: ActView | null, 
/**
 * Settings of this device.
 */
settings: SettingsView, 
/**
 * The keypad, the read-back and the corner pad.
 */
pad: PadView, 
/**
 * Everything with a reading or a place for one, newest first.
 */
readings: Array<ThingView>, 
/**
 * The two sums.
 */
closure: ClosureView, 
/**
 * What to draw.
 */
plan: PlanView, 
/**
 * Edges of the roof; before the outline closes, its legs.
 */
edges: Array<ThingView>, 
/**
 * Faces of the roof: one a leg as soon as the outline closes.
 */
faces: Array<FaceView>, 
/**
 * Roof penetrations, the existing covering and the deck.
 */
items: Array<ItemView>, 
/**
 * What turned up once the old roof was off.
 */
changes: ChangesView, 
/**
 * Areas and lengths, once there is a roof.
 */
totals: Array<TotalView>, 
/**
 * What to look at, and what closure cannot see.
 */
cautions: Array<Sentence>, 
/**
 * What is said and seen beside the tape.
 */
arrive: ArriveView, 
/**
 * What is open before driving off, with its evidence.
 */
check: CheckView, 
/**
 * What is open, the dearest to come back for first.
 */
whats_left: Array<OpenView>, 
/**
 * Photos kept, newest first.
 */
photos: Array<PhotoView>, 
/**
 * The walk round the house.
 */
walk: WalkView, 
/**
 * What was said aloud and waits to be typed, the newest first.
 */
clips: Array<ClipView>, };

/**
 * A key of the keypad.
 */
export type Key = { "key": "digit", 
/**
 * 0 to 9.
 */
digit: number, } | { "key": "whole" } | { "key": "inches" } | { "key": "eighths", 
/**
 * 0 to 7.
 */
eighths: number, } | { "key": "take_back_one" } | { "key": "book_it" };

/**
 * Something that lacks.
 */
export type LackView = { 
/**
 * A sentence.
 */
words: Sentence, 
/**
 * What it may cost: "$12,803.20 to $14,110.95".
 */
costs: string | null, 
/**
 * The thing on the plan whose leaf says it: `layers`, `face 3`.
 */
opens: ThingLink | null, 
/**
 * The rate that is blank.
 */
rate: RateView | null, };

/**
 * A language of screens, papers and read-back.
 */
export type Language = "english" | "spanish";

/**
 * A kind of line.
 */
export type LineKind = "leg" | "tie";

/**
 * One line of the plan.
 */
export type LineView = { 
/**
 * `leg 4`, `tie 2-5`.
 */
thing: string, 
/**
 * What is drawn.
 */
kind: LineKind, 
/**
 * Ends, feet.
 */
from: [number, number], 
/**
 * The other end.
 */
to: [number, number], 
/**
 * Its length in words.
 */
label: string | null, 
/**
 * Not read: drawn dashed.
 */
worked_out: boolean, 
/**
 * The readings speak against it: double line, and the word.
 */
suspect: boolean, 
/**
 * The keypad is open for it.
 */
in_hand: boolean, };

/**
 * Loads of tear-off beside whole trailers, as shares of the bar.
 */
export type LoadBar = { 
/**
 * One time in ten it is less; as often less as more; one time in ten it is more.
 */
at: [number, number, number], 
/**
 * Where each whole load ends.
 */
whole: Array<number>, 
/**
 * What stands at the bar's end: "2 loads".
 */
end: string, };

/**
 * One of the short list.
 */
export type LookView = { 
/**
 * What.
 */
what: WalkTarget, 
/**
 * "Vents".
 */
title: string, 
/**
 * What came of looking.
 */
found: Found, 
/**
 * Whether it is counted.
 */
counted: boolean, 
/**
 * How many, where somebody counted.
 */
count: number, };

/**
 * The answer to the question about a fast double press.
 */
export type Meant = "two" | "one";

/**
 * What leads on.
 */
export type NextAct = { "next": "read", 
/**
 * Which.
 */
thing: Thing, } | { "next": "corner", 
/**
 * The leg, from 1.
 */
after_leg: number, } | { "next": "plan" } | { "next": "walk_round" } | { "next": "arrive" } | { "next": "job_file" } | { "next": "open", 
/**
 * `layers`, `pipe 1`.
 */
thing: string, };

/**
 * What was seen over a leg.
 */
export type ObservedOverLeg = { "seen": "gable" } | { "seen": "slope" } | { "seen": "faces", 
/**
 * How many.
 */
count: number, };

/**
 * The open keypad.
 */
export type OpenPadView = { 
/**
 * What is being read.
 */
thing: Thing, 
/**
 * By name: `leg 4`.
 */
name: string, 
/**
 * In words: "Leg 4, back".
 */
title: string, 
/**
 * Earlier values are out of sight.
 */
blind: boolean, 
/**
 * Presses so far: goes with the next one.
 */
press: number, 
/**
 * How the tape is marked.
 */
tape: TapeMarks, 
/**
 * The slots in order.
 */
slots: Array<SlotView>, 
/**
 * How it is read.
 */
how: HowRead, 
/**
 * What the tape follows.
 */
followed: Followed, };

/**
 * Something open.
 */
export type OpenView = { 
/**
 * `leg 3`, `face 2`, `closure`.
 */
thing: string, 
/**
 * "Leg 3 is read once and nothing checks it."
 */
words: Sentence, 
/**
 * What leads there.
 */
next: NextAct, };

/**
 * One packet.
 */
export type PacketView = { 
/**
 * Its id, 64 hex digits.
 */
packet: string, 
/**
 * For whom.
 */
edition: Edition, 
/**
 * Counts from 1, per job and edition.
 */
version: number, 
/**
 * "Owner, version 2".
 */
title: string, 
/**
 * "2 May 2026, 2:41 pm".
 */
moment: string, 
/**
 * "7 MB".
 */
size: string | null, 
/**
 * "6 open": how many things are not known.
 */
open: string | null, 
/**
 * "Follows version 1; what changed stands in its table of differences."
 */
follows: Sentence | null, 
/**
 * What nobody knows, word for word as in the packet.
 */
not_known: Array<string>, 
/**
 * What should be in it and is not, each with why and the remedy.
 */
lacks: Array<Sentence>, 
/**
 * Who must not get it.
 */
keep_in_house: Sentence | null, 
/**
 * The name of its file; none: it is not on this device, and can be made again.
 */
file: string | null, 
/**
 * What lies in it, in the order in which one looks.
 */
papers: Array<PaperGroup>, };

/**
 * The packets of a job.
 */
export type PacketsView = { 
/**
 * Which job.
 */
job: string, 
/**
 * For whom one can be made; the first is taken unless another is chosen.
 */
readers: Array<ReaderView>, 
/**
 * Those made, the newest first.
 */
packets: Array<PacketView>, 
/**
 * The one that was just made, by its id; made again, it is the same.
 */
made: string | null, 
/**
 * To whom packets were to go, the newest first.
 */
sends: Array<SendView>, 
/**
 * "Waiting to send: 2", "Nothing sent yet."
 */
sending: Sentence, };

/**
 * The keypad, the read-back and the corner pad.
 */
export type PadView = { 
/**
 * The open keypad.
 */
open: OpenPadView | null, 
/**
 * The reading just booked, until it is answered or another act begins.
 */
read_back: ReadBackView | null, 
/**
 * The leg whose far corner is still to be tapped, from 1.
 */
corner_after: number | null, 
/**
 * Why the last key did nothing.
 */
refused: Sentence | null, 
/**
 * "two 2s?", never in the way.
 */
double: Sentence | null, };

/**
 * One piece, by paths as SVG writes them.
 */
export type PaintedView = { 
/**
 * What it covers.
 */
fill: string, 
/**
 * Its lines, where they are not all of its rim.
 */
lines: string | null, 
/**
 * How dark, from 0 to 4.
 */
shade: number, };

/**
 * Papers of one sort.
 */
export type PaperGroup = { 
/**
 * "Papers", "Plan", "Tables".
 */
title: string, 
/**
 * One or more.
 */
papers: Array<PaperView>, };

/**
 * One file in a packet.
 */
export type PaperView = { 
/**
 * From the folder of the bag: `data/papers/crew.es.pdf`.
 */
path: string, 
/**
 * "Crew sheet, in Spanish".
 */
title: string, 
/**
 * "PDF".
 */
sort: string, };

/**
 * What the people of a house are asked for.
 */
export type Permission = "walk" | "photograph" | "climb" | "lift_edge" | "attic";

/**
 * From how far a photo was taken: an overall view, one that leads to the thing, and the thing
 * itself with a scale (general practice of evidence photographs).
 */
export type PhotoDistance = "whole" | "middle" | "close";

/**
 * What a photo of a walk round a house shows.
 */
export type PhotoPlace = "front" | "right" | "back" | "left" | "roof" | "under" | "ground";

/**
 * What is known of what a photo shows.
 */
export type PhotoState = "confirmed" | "guess" | "not_looked";

/**
 * One photo kept.
 */
export type PhotoView = { 
/**
 * `photo 3`.
 */
thing: string, 
/**
 * Its name in the photo folder.
 */
sha256: string, 
/**
 * The thing it was taken of: `leg 4`.
 */
of: string | null, 
/**
 * "Leg 4, 2:41 pm".
 */
caption: string, 
/**
 * Its entry.
 */
entry: string, 
/**
 * What is known of what it shows.
 */
state: PhotoState, 
/**
 * "Back side", "Back side?", "Back or Left side?".
 */
words: string, 
/**
 * What it shows, said or guessed.
 */
place: PhotoPlace | null, 
/**
 * What else it may show as well.
 */
or: PhotoPlace | null, 
/**
 * From how far, where somebody said.
 */
distance: PhotoDistance | null, 
/**
 * No packet holds it.
 */
private: boolean, 
/**
 * Out of sight.
 */
set_aside: boolean, };

/**
 * One word about a photo.
 */
export type PhotoWord = { "word": "shows", 
/**
 * Which part of the house.
 */
place: PhotoPlace, } | { "word": "from", 
/**
 * Which of the three.
 */
distance: PhotoDistance, } | { "word": "private", 
/**
 * It is so.
 */
on: boolean, } | { "word": "set_aside", 
/**
 * It is so.
 */
on: boolean, };

/**
 * How a pitch was measured, with the values.
 */
export type PitchRead = { "by": "number", 
/**
 * Rise in 12.
 */
in_12: number, } | { "by": "level_and_tape", 
/**
 * Run along the level, inches.
 */
run_in: number, 
/**
 * Rise read on the tape, inches.
 */
rise_in: number, } | { "by": "phone", 
/**
 * Angle above level, degrees, positive.
 */
degrees: number, 
/**
 * The phone was turned end for end.
 */
reversed: boolean, } | { "by": "sighted", 
/**
 * Angle above level, degrees, positive.
 */
degrees: number, 
/**
 * One standard deviation, degrees.
 */
sigma: number, 
/**
 * Entry of the photo.
 */
photo: string, 
/**
 * The marked points.
 */
marks: Array<GableMark>, } | { "by": "same_as", 
/**
 * The leg of that face.
 */
leg: number, } | { "by": "not_got" };

/**
 * The plan as a leaf of the screen shows it; the lists beside it hold the same.
 */
export type PlanDrawn = { 
/**
 * Which job.
 */
job: string, 
/**
 * The text of an SVG element with its title and what it shows in words; none while the line is
 * open.
 */
svg: string | null, 
/**
 * Its height, px of the page.
 */
height: number, 
/**
 * What a thing of the list of edges is called on it: `leg 2` is `r2a 16' 9", r2b 16' 9"`.
 */
edges: { [key in string]: string }, 
/**
 * How many edges and faces had no room for their names.
 */
left_off: number, };

/**
 * A reply of the plan that is not the job.
 */
export type PlanReply = { "reply": "hold" } & HoldView | { "reply": "plan" } & PlanDrawn | { "reply": "solid" } & SolidView;

/**
 * A request of the plan.
 */
export type PlanRequest = { "ask": "leg_end", 
/**
 * Which job.
 */
job: string, 
/**
 * The leg, from 1.
 */
leg: number, 
/**
 * Slope, gable, wall.
 */
end: EndKind, } | { "ask": "pitch", 
/**
 * Which job.
 */
job: string, 
/**
 * The leg from which the face rises, from 1.
 */
leg: number, 
/**
 * How, with what was read.
 */
read: PitchRead, } | { "ask": "hold_still", 
/**
 * The oldest first.
 */
looks: Array<TiltSample>, } | { "ask": "sight_pitch", 
/**
 * Which job.
 */
job: string, 
/**
 * The leg from which the face rises, from 1.
 */
leg: number, 
/**
 * Entry of the photo.
 */
photo: string, 
/**
 * Points across and down the picture, upright as it is looked at.
 */
size: [number, number], 
/**
 * What was marked.
 */
marks: Array<GableMark>, 
/**
 * Slopes booked before it: the same request said twice books once.
 */
after: number, } | { "ask": "capture_pitch", 
/**
 * Which job.
 */
job: string, 
/**
 * The leg from which the face rises, from 1.
 */
leg: number, 
/**
 * The oldest first.
 */
looks: Array<TiltSample>, 
/**
 * Turned end for end since the one before.
 */
reversed: boolean, 
/**
 * Slopes booked before it: the same request said twice books once.
 */
after: number, } | { "ask": "add_item", 
/**
 * Which job.
 */
job: string, 
/**
 * The leg from which the face rises, from 1.
 */
leg: number, 
/**
 * What it is.
 */
item: ItemKind, 
/**
 * Items booked before it: the same request said twice books once.
 */
after: number, } | { "ask": "saddle", 
/**
 * Which job.
 */
job: string, 
/**
 * The number of the chimney.
 */
number: number, 
/**
 * What was seen.
 */
seen: SaddleObserved, } | { "ask": "layers", 
/**
 * Which job.
 */
job: string, 
/**
 * How many layers, where they were counted.
 */
layers: number | null, 
/**
 * What it is, in the words of the rates.
 */
kind: string | null, 
/**
 * The leg at whose edge it was seen, from 1; `None` if no place was named.
 */
leg: number | null, } | { "ask": "deck", 
/**
 * Which job.
 */
job: string, 
/**
 * Planks or sheets.
 */
kind: DeckKind, 
/**
 * The leg at whose edge it was seen, from 1; `None` if no place was named.
 */
leg: number | null, } | { "ask": "roof_seen", 
/**
 * Which job.
 */
job: string, 
/**
 * The leg, from 1.
 */
leg: number, 
/**
 * What was seen over it.
 */
over: ObservedOverLeg, } | { "ask": "plan", 
/**
 * Which job.
 */
job: string, 
/**
 * The width there is, px of the page.
 */
width: number, 
/**
 * The greatest height of the house on it.
 */
tallest: number, 
/**
 * Size of its letters: as large as the reader has them.
 */
letters: number, } | { "ask": "solid", 
/**
 * Which job.
 */
job: string, 
/**
 * From where.
 */
from: SeenFrom, };

/**
 * The sketch of the outline, in feet: x to the right, y up the sheet; the walker's side is at the
 * foot.
 */
export type PlanView = { 
/**
 * Every line.
 */
lines: Array<LineView>, 
/**
 * From the last corner to the start, while open.
 */
to_close: [[number, number], [number, number]] | null, 
/**
 * Where the walker stands.
 */
walker: [number, number] | null, };

/**
 * One rate of the firm.
 */
export type RateView = { 
/**
 * The path of its key: `field.price`.
 */
key: string, 
/**
 * "Field, price".
 */
name: string, 
/**
 * As typed; empty where it is blank.
 */
value: string, 
/**
 * The firm's own, where it was changed for this job.
 */
was: string | null, 
/**
 * The entry that changed it.
 */
entry: string | null, 
/**
 * The words it may be, where it is one of a few.
 */
choices: Array<string>, };

/**
 * A reading just booked, read back.
 */
export type ReadBackView = { 
/**
 * The reading.
 */
reading: string, 
/**
 * What was read: `leg 4`.
 */
thing: string, 
/**
 * In words: "Leg 4, back".
 */
title: string, 
/**
 * `42 ft 7 1/2 in`.
 */
value: string, 
/**
 * "four two feet, seven and a half inches".
 */
spoken: string, 
/**
 * `Right` was tapped.
 */
answered: boolean, 
/**
 * Another reading of the same thing differs by more than both can: a third is wanted.
 */
dispute: Sentence | null, };

/**
 * Somebody for whom a packet can be made.
 */
export type ReaderView = { 
/**
 * Which.
 */
edition: Edition, 
/**
 * "Owner".
 */
name: string, 
/**
 * "Proposal, photo sheets and the story of every figure."
 */
holds: Sentence, 
/**
 * "Never cost or margin."
 */
never: Sentence, };

/**
 * One reply.
 */
export type Reply = { "reply": "today" } & TodayView | { "reply": "job" } & JobView | { "reply": "pad" } & PadView | { "reply": "settings" } & SettingsView | { "reply": "takeoff" } & TakeoffView | { "reply": "packets" } & PacketsView | { "reply": "refused" } & Sentence | PlanReply | CopiesReply;

/**
 * One request. The groups share one tag, `ask`, so that a request is one flat object.
 */
export type Request = TodayRequest | ArriveRequest | WalkRoundRequest | FieldBookRequest | PlanRequest | CheckRequest | TakeoffRequest | JobFileRequest | SettingsRequest | CopiesRequest;

/**
 * What was seen of a saddle behind a chimney.
 */
export type SaddleObserved = "yes" | "no" | "not_seen";

/**
 * From where the roof is seen as a solid.
 */
export type SeenFrom = "front" | "right" | "back" | "left" | "street_corner";

/**
 * What was seen of the roof from a face's leg, beside the computed one.
 */
export type SeenView = { 
/**
 * What can be said by one tap.
 */
asks: Array<AskView>, 
/**
 * What comes of what was said, a sentence each.
 */
judged: Array<Sentence>, };

/**
 * How far a packet has gone. No device can know that a person read it.
 */
export type SendStage = "waiting" | "shared" | "handed_on" | "not_sent";

/**
 * A packet on its way to somebody.
 */
export type SendView = { 
/**
 * The entry that began it.
 */
send: string, 
/**
 * The packet's id, 64 hex digits.
 */
packet: string, 
/**
 * "Owner, version 2".
 */
title: string, 
/**
 * Who is to get it, as written.
 */
to: string, 
/**
 * How far it came.
 */
stage: SendStage, 
/**
 * "Waits here since 2:41 pm.", "Handed on 2:50 pm."
 */
words: Sentence, };

/**
 * A sentence of one breath, with a code by which another language finds its own.
 */
export type Sentence = { 
/**
 * Names the sentence: `inches_over_eleven`.
 */
code: string, 
/**
 * The sentence in English.
 */
en: string, };

/**
 * A setting of this device.
 */
export type Setting = { "set": "cold_hands", "to": boolean } | { "set": "mirror_hand", "to": boolean } | { "set": "sound", "to": boolean } | { "set": "single_letter_keys", "to": boolean } | { "set": "tape", "to": TapeMarks } | { "set": "fractions", "to": FractionStep } | { "set": "building_on", "to": Side } | { "set": "language", "to": Language } | { "set": "leaf", "to": Theme };

/**
 * A request about settings.
 */
export type SettingsRequest = { "ask": "set", 
/**
 * Which, with its value.
 */
setting: Setting, };

/**
 * Settings of this device.
 */
export type SettingsView = { 
/**
 * Larger keys.
 */
cold_hands: boolean, 
/**
 * Controls for the left thumb.
 */
mirror_hand: boolean, 
/**
 * Speech and sounds.
 */
sound: boolean, 
/**
 * Single-letter keys on a keyboard.
 */
single_letter_keys: boolean, 
/**
 * How the tape is marked.
 */
tape: TapeMarks, 
/**
 * The person chose the tape; until then it is feet and inches.
 */
tape_chosen: boolean, 
/**
 * Finest fraction that is read.
 */
fractions: FractionStep, 
/**
 * On which side of the walker the building stands.
 */
building_on: Side, 
/**
 * The language of the page.
 */
language: Language, 
/**
 * Its ground.
 */
leaf: Theme, };

/**
 * A side of a walker.
 */
export type Side = "right" | "left";

/**
 * One size of what stands out of a roof.
 */
export type SizeOf = "across" | "width" | "depth" | "height";

/**
 * A size that is read on the keypad.
 */
export type SizeView = { 
/**
 * The thing to ask for.
 */
thing: Thing, 
/**
 * `width`.
 */
name: string, 
/**
 * How well it is known.
 */
state: State, 
/**
 * The size as read; `None` if it was not read.
 */
value: Figure | null, };

/**
 * A slot of the keypad.
 */
export type Slot = "ft" | "in" | "fraction" | "tenths" | "m" | "cm";

/**
 * One slot of the keypad.
 */
export type SlotView = { 
/**
 * Which.
 */
slot: Slot, 
/**
 * What stands in it: digits, or `1/2`; empty when nothing does.
 */
typed: string, 
/**
 * Unit beside it.
 */
unit: string, 
/**
 * Where the next key goes.
 */
active: boolean, };

/**
 * The name of a face on the drawing.
 */
export type SolidName = { 
/**
 * `Back 2`.
 */
name: string, 
/**
 * Its middle.
 */
at: [number, number], };

/**
 * The roof as a solid: a picture beside the list of faces, which says all of it in figures.
 */
export type SolidView = { 
/**
 * Which job.
 */
job: string, 
/**
 * From where.
 */
from: SeenFrom, 
/**
 * Width of the drawing.
 */
width: number, 
/**
 * Its height.
 */
height: number, 
/**
 * What is painted, in this order; nothing while there is no roof.
 */
painted: Array<PaintedView>, 
/**
 * Names of faces on it.
 */
names: Array<SolidName>, 
/**
 * The faces that are turned to the viewer, in words.
 */
faces: Array<string>, 
/**
 * Nobody read how high the walls are.
 */
walls_supposed: boolean, };

/**
 * What a photo of a hub's square says.
 */
export type SquareView = { 
/**
 * The link, to be looked at before it is used.
 */
link: string, };

/**
 * How well a thing is known.
 */
export type State = "not_looked" | "hearsay" | "worked_out" | "read_once" | "off_photo" | "settled_at_desk" | "agreed" | "proved" | "cannot_get" | "suspect" | "struck";

/**
 * One job in the list.
 */
export type StopView = { 
/**
 * Which.
 */
job: string, 
/**
 * Street address as said.
 */
address: string, 
/**
 * The pretend house.
 */
pretend: boolean, 
/**
 * What there is: "6 legs read, closes within 2 in".
 */
standing: Sentence, 
/**
 * Where copies are.
 */
copies: Sentence, };

/**
 * One reading in a story.
 */
export type StoryView = { 
/**
 * Its entry.
 */
entry: string, 
/**
 * `42 ft 7 1/2 in`.
 */
value: string, 
/**
 * In force, or struck.
 */
state: State, 
/**
 * The state in a word or two.
 */
state_word: string, 
/**
 * "taped along the eave edge, 2:41 pm, this phone".
 */
about: string, 
/**
 * It may be struck.
 */
may_strike: boolean, };

/**
 * A reading that the others speak against.
 */
export type SuspectView = { 
/**
 * `leg 2`.
 */
thing: string, 
/**
 * "Leg 2": the name of its button.
 */
title: string, 
/**
 * "swapped digits? If so it would have been 42 ft."
 */
why: Sentence, };

/**
 * One line, which opens to what made it.
 */
export type TakeoffLine = { 
/**
 * Names it within its part: `field`, `materials`.
 */
key: string, 
/**
 * "Starter".
 */
name: string, 
/**
 * "30 packs", "$1,035.00".
 */
value: Figure, 
/**
 * What rounding leaves over: "0.4 pack over".
 */
spare: string | null, 
/**
 * "not priced", "billed so".
 */
word: string | null, 
/**
 * Where it begins and ends as shares of the whole, where it is a step of the price.
 */
step: [number, number] | null, 
/**
 * How it was worked out, in words.
 */
formula: string, 
/**
 * Rates it was worked out with.
 */
rates: Array<RateView>, 
/**
 * Notes of the code profile it was worked out with: "ice barrier, required: yes".
 */
notes: Array<string>, 
/**
 * Things that made it, each opening its readings.
 */
things: Array<ThingLink>, 
/**
 * Lines of which it is the sum.
 */
lines: Array<TakeoffLine>, };

/**
 * One part of the leaf.
 */
export type TakeoffPart = { 
/**
 * "Order list".
 */
name: string, 
/**
 * What it comes to, in a sentence.
 */
words: Sentence | null, 
/**
 * Loads against whole trailers.
 */
loads: LoadBar | null, 
/**
 * Its lines.
 */
lines: Array<TakeoffLine>, };

/**
 * A request of the takeoff.
 */
export type TakeoffRequest = { "ask": "takeoff", 
/**
 * Which job.
 */
job: string, } | { "ask": "set_rate", 
/**
 * Which job.
 */
job: string, 
/**
 * The path of its key: `field.price`.
 */
key: string, 
/**
 * Its value as typed; empty: blank, so that what it prices is not priced.
 */
value: string, };

/**
 * The takeoff of one job.
 */
export type TakeoffView = { 
/**
 * Of which job.
 */
job: string, 
/**
 * Why there is nothing to take off, where there is not.
 */
lack: LackView | null, 
/**
 * What nobody knows, with what it may cost.
 */
not_known: Array<LackView>, 
/**
 * What has work and no price.
 */
not_priced: Array<LackView>, 
/**
 * What to look at before any of it is used.
 */
cautions: Array<Sentence>, 
/**
 * The leaf, part by part.
 */
parts: Array<TakeoffPart>, 
/**
 * Rates changed for this job.
 */
changed: Array<RateView>, };

/**
 * How a tape is marked.
 */
export type TapeMarks = "feet_inches" | "feet_tenths" | "metres";

/**
 * Light or dark ground of every screen.
 */
export type Theme = "sun" | "night";

/**
 * What an entry is about. Legs, corners and items are counted from 1, as a person counts them.
 */
export type Thing = { "thing": "leg", 
/**
 * Its number.
 */
leg: number, } | { "thing": "tie", 
/**
 * First corner.
 */
from: number, 
/**
 * Second corner.
 */
to: number, } | { "thing": "item", 
/**
 * What it is.
 */
item: ItemKind, 
/**
 * Its number among those of its kind.
 */
number: number, } | { "thing": "size", 
/**
 * What it is.
 */
item: ItemKind, 
/**
 * Its number among those of its kind.
 */
number: number, 
/**
 * Which of its sizes.
 */
size: SizeOf, } | { "thing": "overhang", 
/**
 * The leg.
 */
leg: number, } | { "thing": "slope", 
/**
 * The leg.
 */
leg: number, } | { "thing": "eave_height" } | { "thing": "ridge_height" } | { "thing": "deck" } | { "thing": "deck_size", 
/**
 * Which.
 */
size: DeckSizeOf, } | { "thing": "layers" } | { "thing": "change", 
/**
 * Its number.
 */
number: number, };

/**
 * A thing that a button opens.
 */
export type ThingLink = { 
/**
 * `leg 4`.
 */
thing: string, 
/**
 * "Leg 4, back".
 */
title: string, };

/**
 * A thing in a list: a leg, a tie, an edge.
 */
export type ThingView = { 
/**
 * `leg 4`: `data-thing`.
 */
thing: string, 
/**
 * The thing to ask for, where it can be read again.
 */
read: Thing | null, 
/**
 * "Leg 4, back".
 */
title: string, 
/**
 * How well it is known.
 */
state: State, 
/**
 * The state in a word or two.
 */
state_word: string, 
/**
 * Its value, read or worked out; `data-value` without the ±.
 */
value: Figure | null, 
/**
 * A sentence: "read twice, meets leg 5 at an inside corner".
 */
about: string, 
/**
 * All readings of it, newest first.
 */
story: Array<StoryView>, 
/**
 * Photos of it, the newest first, by their names in the photo folder: `/photo/{sha256}`.
 */
photos: Array<string>, };

/**
 * Something that is so or not.
 */
export type TickView = { 
/**
 * "Walk round".
 */
name: string, 
/**
 * It is so.
 */
on: boolean, 
/**
 * Who said so and when: "the owner, 2:41 pm".
 */
about: string | null, 
/**
 * What is booked when it becomes so.
 */
tick: VisitNote, 
/**
 * What is booked when it is so no more.
 */
clear: VisitNote, };

/**
 * One look at the tilt of this device.
 */
export type TiltSample = { 
/**
 * Milliseconds on a clock that only goes forward.
 */
at_ms: number, 
/**
 * Front to back, degrees, as the device tells it.
 */
beta: number, };

/**
 * A request of Today.
 */
export type TodayRequest = { "ask": "today" } | { "ask": "search", 
/**
 * What to look for.
 */
words: string, } | { "ask": "start_job", 
/**
 * Street address as said.
 */
address: string, } | { "ask": "job", 
/**
 * Which.
 */
job: string, };

/**
 * Today.
 */
export type TodayView = { 
/**
 * Jobs, the newest first but for the pretend house, which stands first.
 */
stops: Array<StopView>, 
/**
 * What a search found.
 */
found: Array<FoundView>, 
/**
 * Settings of this device.
 */
settings: SettingsView, };

/**
 * One total.
 */
export type TotalView = { 
/**
 * "Roof area", "Ridge".
 */
name: string, 
/**
 * With its ±.
 */
value: Figure, 
/**
 * What made it: things, in words.
 */
because: Array<string>, };

/**
 * Which way the outline turns at a corner.
 */
export type Turn = { "turn": "outside" } | { "turn": "inside" } | { "turn": "angled", 
/**
 * Degrees, positive toward the building.
 */
degrees: number, } | { "turn": "straight" };

/**
 * Body of `visit`: one thing said or seen. The last one about the same thing stands.
 */
export type VisitNote = { "note": "front", 
/**
 * Where the back camera looks, degrees clockwise from north as a compass reads; none
 * where the device has no such sense: sides are then set by hand.
 */
heading: number | null, } | { "note": "here", 
/**
 * By name, or what they are: "tenant".
 */
name: string, 
/**
 * They may say yes to work on this house.
 */
may_say_yes: boolean, } | { "note": "ground_only", 
/**
 * It is so.
 */
on: boolean, } | { "note": "permission", 
/**
 * What.
 */
what: Permission, 
/**
 * It is allowed.
 */
given: boolean, 
/**
 * Who said so.
 */
by: string | null, } | { "note": "hazard", 
/**
 * What.
 */
what: Hazard, 
/**
 * It is here.
 */
seen: boolean, } | { "note": "check_in", 
/**
 * Who was told.
 */
with: string, 
/**
 * Until when, as said: "3:30 pm".
 */
until: string, } | { "note": "promise", 
/**
 * As said.
 */
words: string, } | { "note": "looked", 
/**
 * What.
 */
what: WalkTarget, 
/**
 * What came of it.
 */
found: Found, 
/**
 * How many, where somebody counted.
 */
count: number | null, } | { "note": "left", 
/**
 * Why open things were left, where a reason was given.
 */
reason: string | null, };

/**
 * One part of the house.
 */
export type WalkPart = { 
/**
 * Which.
 */
place: PhotoPlace, 
/**
 * Its name: `Front`.
 */
title: string, 
/**
 * Its photos, the odd ones first: `photo 3`.
 */
photos: Array<string>, 
/**
 * Those of them that are guessed: what `Confirm all` says.
 */
guessed: Array<string>, 
/**
 * The shots wanted and not there.
 */
wanted: Array<WantedShot>, };

/**
 * A request of the walk-round. A photo itself comes as bytes.
 */
export type WalkRoundRequest = { "ask": "photo_said", 
/**
 * Which job.
 */
job: string, 
/**
 * Entries of the photos.
 */
photos: Array<string>, 
/**
 * What is said of them.
 */
word: PhotoWord, };

/**
 * What is looked for on a walk round a house beside its sides.
 */
export type WalkTarget = "vents" | "gutters" | "solar" | "bin" | "driveway" | "attic";

/**
 * The walk round a house.
 */
export type WalkView = { 
/**
 * Where the front lies was said by the compass: sides can be guessed.
 */
knows_front: boolean, 
/**
 * Each part of the house, in the order of the strip.
 */
parts: Array<WalkPart>, 
/**
 * Photos of which nothing tells what they show: `photo 3`.
 */
unplaced: Array<string>, 
/**
 * Photos out of sight: `photo 3`.
 */
set_aside: Array<string>, 
/**
 * What else is looked for.
 */
looks: Array<LookView>, };

/**
 * A shot that is wanted.
 */
export type WantedShot = { 
/**
 * From how far.
 */
distance: PhotoDistance, 
/**
 * "Front: close, with the tape in the plane of the thing".
 */
words: string, };

/**
 * The last act and the next.
 */
export type YouWereHere = { 
/**
 * "Leg 4 booked. At the inside corner."
 */
words: Sentence, 
/**
 * What the one button does.
 */
next: NextAct, };
