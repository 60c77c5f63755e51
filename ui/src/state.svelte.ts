// The state of the page: the last replies, and where the person is. Every fact about a job comes
// from a reply.
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
import { labels } from './language';
import { told } from './texts';
import { addFile, command, makeCopy, NoAnswer, photo, readCode, type AboutPhoto } from './wire';

/** Ids of the places, the same in every language. */
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

/** A change that is being entered. It survives a visit to the camera. */
export type ChangeInHand = { leg: number | null; sheets: number; consent: boolean };

/** A text in the status line. */
export type News = { text: string; kind: 'news' | 'refused'; count: number };

/** The subject of the next photo: a thing by its id, or a wanted shot of the walk round the house. */
export type Shot = {
  of: string | null;
  place?: PhotoPlace;
  distance?: PhotoDistance;
  /** The wanted shot in words. */
  words?: string;
};

/** The window is wide enough for two panels next to each other. */
export const wide = new MediaQuery('width >= 1000px');

class PageState {
  today = $state<TodayView | null>(null);
  job = $state<JobView | null>(null);
  takeoff = $state<TakeoffView | null>(null);
  /** The plan as last drawn. */
  drawn = $state<PlanDrawn | null>(null);
  /** The 3D view as last requested. */
  solid = $state<SolidView | null>(null);
  settings = $state<SettingsView | null>(null);
  /** Packets of the open job, once Job file requested them. */
  packets = $state<PacketsView | null>(null);
  /** The last report on copies. */
  copies = $state<CopiesView | null>(null);
  /** The invitation for one more device, while it is shown. */
  invite = $state<InviteView | null>(null);
  /** The link on the last photo of a QR code. */
  codeLink = $state<string | null>(null);
  /** The result of an added file; `null` until its last piece is in. */
  added = $state<Sentence | null>(null);
  /** A finished copy of all jobs, to be downloaded. */
  copy = $state<BookCopyView | null>(null);
  place = $state<Place>('Today');
  /** Id of the thing whose panel is open: `leg 4`. */
  chosen = $state<string | null>(null);
  /** The photo of the chosen thing fills the window. */
  zoomed = $state(false);
  change = $state<ChangeInHand | null>(null);
  /** The list of places is open on a phone. It stays open when a keypad closes under it. */
  unfolded = $state(false);
  news = $state<News>({ text: '', kind: 'news', count: 0 });
  /** The subject of the open camera. */
  camera = $state<Shot | null>(null);
  /** The sentence shown while the field book does not answer. */
  noAnswer = $state<string | null>(null);
}

export const page = new PageState();

/** Shows a text in the status line. */
export function showNews(text: string, kind: News['kind'] = 'news'): void {
  page.news = { text, kind, count: page.news.count + 1 };
}

/** Clears the status line. */
export function clearNews(): void {
  if (page.news.text) page.news = { text: '', kind: 'news', count: page.news.count };
}

// Requests are sent one at a time, and each is built when its turn comes. Fast taps keep their
// order, and each request builds on the reply to the one before.
let queue: Promise<unknown> = Promise.resolve();

/** Sends a request in its turn and applies its reply. Returns false if it was refused or lost. */
export function sendRequest(make: Request | (() => Request | null)): Promise<boolean> {
  const turn = queue.then(async () => {
    const request = typeof make === 'function' ? make() : make;
    return request === null ? false : applyReply(() => command(request));
  });
  queue = turn;
  return turn;
}

/** Sends a request that takes seconds, outside the queue. Returns false if it was refused or lost. */
export function sendRequestApart(request: Request): Promise<boolean> {
  return applyReply(() => command(request));
}

async function applyReply(send: () => Promise<Reply>): Promise<boolean> {
  const reply = await sendWithRetry(send);
  if (!reply) return false;
  switch (reply.reply) {
    case 'today':
      page.today = reply;
      page.settings = reply.settings;
      return true;
    case 'job':
      page.job = reply;
      page.settings = reply.settings;
      clearNews();
      return showRefusal(reply.pad.refused);
    case 'pad':
      if (page.job) page.job.pad = reply;
      clearNews();
      return showRefusal(reply.refused);
    case 'takeoff':
      page.takeoff = reply;
      return true;
    case 'plan':
      if (reply.job === page.job?.job) page.drawn = reply;
      return true;
    case 'solid':
      if (reply.job === page.job?.job) page.solid = reply;
      return true;
    case 'settings':
      page.settings = reply;
      if (page.job) page.job.settings = reply;
      return true;
    case 'packets':
      if (reply.job === page.job?.job) page.packets = reply;
      return true;
    case 'copies':
      page.copies = reply;
      return true;
    case 'invite':
      page.invite = reply;
      return true;
    case 'square':
      page.codeLink = reply.link;
      return true;
    case 'carried':
      page.added = reply.said;
      return true;
    case 'book_copy':
      page.copy = reply;
      return true;
    // The pitch by phone requests this many times a second and keeps the reply itself.
    case 'hold':
      return true;
    case 'refused':
      return showRefusal(reply);
  }
}

function showRefusal(refusal: Sentence | null): boolean {
  if (refusal) showNews(told(refusal.en), 'refused');
  return refusal === null;
}

// A request that records is the same request however often it is sent, so a retry is harmless.
async function sendWithRetry(send: () => Promise<Reply>): Promise<Reply | null> {
  for (const wait of [0, 150, 600]) {
    if (wait) await new Promise((resolve) => setTimeout(resolve, wait));
    try {
      const reply = await send();
      page.noAnswer = null;
      return reply;
    } catch (error) {
      if (!(error instanceof NoAnswer)) throw error;
    }
  }
  page.noAnswer = labels.frame.noAnswer;
  return null;
}

/** Opens a job at a place, or at the place to which the person went while the job was loading. */
export async function openJob(job: string, place: Place = 'Field book'): Promise<void> {
  const before = page.place;
  await sendRequest({ ask: 'job', job });
  if (page.job?.job === job) go(page.place === before ? place : page.place);
}

/** Closes an open keypad; the typed digits stay in the draft. */
export function closeKeypad(): void {
  const { job } = page;
  if (job?.pad.open) void sendRequest({ ask: 'close_pad', job: job.job });
}

/** Goes to a place. Any place but the field book closes the keypad. */
export function go(place: Place): void {
  const { job } = page;
  if (place !== 'Field book') closeKeypad();
  if (place === 'Today') void sendRequest({ ask: 'today' });
  // An older takeoff would look current.
  if (place === 'Takeoff') page.takeoff = null;
  page.place = place;
  page.chosen = null;
  page.zoomed = false;
  page.change = null;
  clearNews();
  history.replaceState(null, '', job ? `#${job.job}/${PLACES.indexOf(place)}` : '#');
  scrollTo(0, 0);
}

/** Loads everything again after the field book did not answer. */
export async function start(): Promise<void> {
  if (await sendRequest({ ask: 'today' })) await resume();
}

/** Goes where the person was: by the address of the page, else by a half-typed reading, else Today. */
export async function resume(): Promise<void> {
  const [, job, place] = /^#([0-9a-f-]{36})\/(\d)$/.exec(location.hash) ?? [];
  if (job) return openJob(job, PLACES[Number(place)] ?? 'Field book');
  const newest = page.today?.stops.find((stop) => !stop.pretend);
  if (!newest) return;
  await sendRequest({ ask: 'job', job: newest.job });
  const pad = page.job?.pad;
  if (pad?.open || pad?.corner_after || pad?.read_back) go('Field book');
}

/** Opens the camera over the page. */
export function openCamera(shot: Shot): void {
  page.camera = shot;
}

/** Keeps a sound recording of a thing; `null` means no thing was chosen. */
export function keepSound(job: string, of: string | null, sound: Blob): Promise<boolean> {
  return keepPhoto({ job, of, from: 'file', heading: null, said_aloud: true }, sound);
}

/** Returns the hub link on a photo of its QR code. `null`: it was refused or lost. */
export async function linkOnPhoto(file: File): Promise<string | null> {
  return (await applyReply(() => readCode(file))) ? page.codeLink : null;
}

/** Bytes of one piece of a file. A whole file may be larger than the memory. */
const PIECE = 4 << 20;

/** Adds a file piece by piece and loads what it brought. `null`: it was refused or lost. */
export async function addWholeFile(whole: File): Promise<Sentence | null> {
  const file = crypto.randomUUID();
  let at = 0;
  do {
    const piece = whole.slice(at, at + PIECE);
    const about = { file, at, whole: whole.size };
    if (!(await applyReply(() => addFile(about, piece)))) return null;
    at += piece.size;
  } while (at < whole.size);
  const { job } = page;
  await sendRequest({ ask: 'today' });
  if (job) await sendRequest({ ask: 'job', job: job.job });
  return page.added;
}

/** Makes a copy of all jobs. `null`: it was refused or lost. */
export async function copyAllJobs(): Promise<BookCopyView | null> {
  return (await applyReply(makeCopy)) ? page.copy : null;
}

/** Keeps a photo with what was known at its shutter. Returns false if it was refused or lost. */
export function keepPhoto(about: AboutPhoto, file: Blob): Promise<boolean> {
  const turn = queue.then(() => applyReply(() => photo(about, file)));
  queue = turn;
  return turn;
}
