// The last reply, and where the person is. All that is true about a job comes from a reply.
import { MediaQuery } from 'svelte/reactivity';
import type {
  BookCopyView,
  CopiesView,
  InviteView,
  JobView,
  PacketsView,
  PhotoDistance,
  PhotoPlace,
  PlanDrawn,
  Reply,
  Request,
  Sentence,
  SettingsView,
  SolidView,
  TakeoffView,
  TodayView,
} from './generated';
import { carryIn, command, makeCopy, NoAnswer, photo, readSquare, type AboutPhoto } from './wire';
import { words } from './words';

export const PLACES = [
  'Today',
  'Arrive',
  'Walk-round',
  'Field book',
  'Plan',
  'Leave-site check',
  'Takeoff',
  'Job file',
] as const;
export type Place = (typeof PLACES)[number];

/** A change while it is put together: it outlives the camera. */
export type ChangeInHand = { leg: number | null; sheets: number; consent: boolean };

/** A sentence for the person; `refused` also shakes what was touched. */
export type News = { text: string; kind: 'news' | 'refused'; count: number };

/** What a photo is to be of: a thing by its name, or a wanted shot of the walk round. */
export type Shot = {
  of: string | null;
  place?: PhotoPlace;
  distance?: PhotoDistance;
  /** What the shot shows, in words. */
  words?: string;
};

/** Wide enough for two leaves side by side. */
export const wide = new MediaQuery('width >= 1000px');

class Book {
  today = $state<TodayView | null>(null);
  job = $state<JobView | null>(null);
  takeoff = $state<TakeoffView | null>(null);
  /** The plan, as last drawn. */
  drawn = $state<PlanDrawn | null>(null);
  /** The roof as a solid, as last asked for. */
  solid = $state<SolidView | null>(null);
  settings = $state<SettingsView | null>(null);
  /** Packets of the job in hand, once Job file asked for them. */
  packets = $state<PacketsView | null>(null);
  /** Where copies are, as last heard. */
  copies = $state<CopiesView | null>(null);
  /** What lets one more device join, while it is shown. */
  invite = $state<InviteView | null>(null);
  /** The link that a photo of a square said last. */
  square = $state<string | null>(null);
  /** What a file carried in by hand brought; none while more of it is to come. */
  carried = $state<Sentence | null>(null);
  /** A copy of the whole book that was made, to be fetched. */
  copy = $state<BookCopyView | null>(null);
  place = $state<Place>('Today');
  /** The thing whose region is open: `leg 4`. */
  chosen = $state<string | null>(null);
  /** The photo of what is chosen has the whole screen. */
  zoomed = $state(false);
  change = $state<ChangeInHand | null>(null);
  /** The list of places is open on a phone: it outlives a keypad that goes away under it. */
  unfolded = $state(false);
  news = $state<News>({ text: '', kind: 'news', count: 0 });
  /** What the open camera takes photos of. */
  camera = $state<Shot | null>(null);
  /** Set while the field book does not answer. */
  silent = $state<string | null>(null);
}

export const book = new Book();

/** Says something in the status line. */
export function say(text: string, kind: News['kind'] = 'news'): void {
  book.news = { text, kind, count: book.news.count + 1 };
}

/** Clears the status line. */
export function clearStatus(): void {
  if (book.news.text) book.news = { text: '', kind: 'news', count: book.news.count };
}

// Requests go one after another, each made when its turn comes, so that fast taps keep their
// order and each carries what the reply before it said.
let queue: Promise<unknown> = Promise.resolve();

/** Makes a request in its turn and takes its reply in. False: it was refused or not answered. */
export function sendRequest(make: Request | (() => Request | null)): Promise<boolean> {
  const turn = queue.then(async () => {
    const request = typeof make === 'function' ? make() : make;
    return request === null ? false : applyReply(() => command(request));
  });
  queue = turn;
  return turn;
}

/**
 * Makes a request beside the others, which go on: for what takes seconds. False: it was refused or
 * not answered.
 */
export function sendRequestApart(request: Request): Promise<boolean> {
  return applyReply(() => command(request));
}

async function applyReply(send: () => Promise<Reply>): Promise<boolean> {
  const reply = await sendWithRetry(send);
  if (!reply) return false;
  switch (reply.reply) {
    case 'today':
      book.today = reply;
      book.settings = reply.settings;
      return true;
    case 'job':
      book.job = reply;
      book.settings = reply.settings;
      clearStatus();
      return showRefusal(reply.pad.refused);
    case 'pad':
      if (book.job) book.job.pad = reply;
      clearStatus();
      return showRefusal(reply.refused);
    case 'takeoff':
      book.takeoff = reply;
      return true;
    case 'plan':
      if (reply.job === book.job?.job) book.drawn = reply;
      return true;
    case 'solid':
      if (reply.job === book.job?.job) book.solid = reply;
      return true;
    case 'settings':
      book.settings = reply;
      if (book.job) book.job.settings = reply;
      return true;
    case 'packets':
      if (reply.job === book.job?.job) book.packets = reply;
      return true;
    case 'copies':
      book.copies = reply;
      return true;
    case 'invite':
      book.invite = reply;
      return true;
    case 'square':
      book.square = reply.link;
      return true;
    case 'carried':
      book.carried = reply.said;
      return true;
    case 'book_copy':
      book.copy = reply;
      return true;
    // Asked for many times a second where a phone is held still, and drawn there.
    case 'hold':
      return true;
    case 'refused':
      return showRefusal(reply);
  }
}

function showRefusal(refused: Sentence | null): boolean {
  if (refused) say(words.told(refused.en), 'refused');
  return refused === null;
}

// A request that books is the same request however often it is sent, so it may be sent again.
async function sendWithRetry(send: () => Promise<Reply>): Promise<Reply | null> {
  for (const wait of [0, 150, 600]) {
    if (wait) await new Promise((resolve) => setTimeout(resolve, wait));
    try {
      const reply = await send();
      book.silent = null;
      return reply;
    } catch (error) {
      if (!(error instanceof NoAnswer)) throw error;
    }
  }
  book.silent = words.frame.noAnswer;
  return null;
}

/** Opens a job at a place, or where the person has gone while it was fetched. */
export async function openJob(job: string, place: Place = 'Field book'): Promise<void> {
  const before = book.place;
  await sendRequest({ ask: 'job', job });
  if (book.job?.job === job) go(book.place === before ? place : book.place);
}

/** Puts an open keypad away; what was typed stays. */
export function putPadAway(): void {
  const { job } = book;
  if (job?.pad.open) void sendRequest({ ask: 'close_pad', job: job.job });
}

/** Goes to a place; the keypad is put away on leaving, what was typed stays. */
export function go(place: Place): void {
  const { job } = book;
  if (place !== 'Field book') putPadAway();
  if (place === 'Today') void sendRequest({ ask: 'today' });
  // What was taken off before is not shown as what is so now.
  if (place === 'Takeoff') book.takeoff = null;
  book.place = place;
  book.chosen = null;
  book.zoomed = false;
  book.change = null;
  clearStatus();
  history.replaceState(null, '', job ? `#${job.job}/${PLACES.indexOf(place)}` : '#');
  scrollTo(0, 0);
}

/** Asks anew for what there is, after nothing answered. */
export async function start(): Promise<void> {
  if (await sendRequest({ ask: 'today' })) await resume();
}

/** Where the person was: the address of the page, else a half-typed reading, else Today. */
export async function resume(): Promise<void> {
  const [, job, place] = /^#([0-9a-f-]{36})\/(\d)$/.exec(location.hash) ?? [];
  if (job) return openJob(job, PLACES[Number(place)] ?? 'Field book');
  const newest = book.today?.stops.find((stop) => !stop.pretend);
  if (!newest) return;
  await sendRequest({ ask: 'job', job: newest.job });
  const pad = book.job?.pad;
  if (pad?.open || pad?.corner_after || pad?.read_back) go('Field book');
}

/** Opens the camera over the leaf; what is under it stays as it is. */
export function openCamera(shot: Shot): void {
  book.camera = shot;
}

/** Keeps what was said aloud of a thing, or of nothing named. */
export function keepClip(job: string, of: string | null, sound: Blob): Promise<boolean> {
  return keepPhoto({ job, of, from: 'file', heading: null, said_aloud: true }, sound);
}

/** The link of a hub off a photo of its square. Null: it was refused or not answered. */
export async function linkOnPhoto(file: File): Promise<string | null> {
  return (await applyReply(() => readSquare(file))) ? book.square : null;
}

/** Bytes of a file that go at a time: a file may be larger than what memory there is. */
const PIECE = 4 << 20;

/** Carries a file in by hand and shows what came with it. Null: it was refused or not answered. */
export async function carry(whole: File): Promise<Sentence | null> {
  const file = crypto.randomUUID();
  let at = 0;
  do {
    const piece = whole.slice(at, at + PIECE);
    const about = { file, at, whole: whole.size };
    if (!(await applyReply(() => carryIn(about, piece)))) return null;
    at += piece.size;
  } while (at < whole.size);
  const { job } = book;
  await sendRequest({ ask: 'today' });
  if (job) await sendRequest({ ask: 'job', job: job.job });
  return book.carried;
}

/** Has a copy of the whole book made. Null: it was refused or not answered. */
export async function copyBook(): Promise<BookCopyView | null> {
  return (await applyReply(makeCopy)) ? book.copy : null;
}

/** Keeps a photo beside the book, with what was known at its shutter. */
export function keepPhoto(about: AboutPhoto, file: Blob): Promise<boolean> {
  const turn = queue.then(() => applyReply(() => photo(about, file)));
  queue = turn;
  return turn;
}
