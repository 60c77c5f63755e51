// Acts that more than one place offers.
import type { ChoiceView, NextAct, PhotoWord, Thing } from '../generated';
import { sendRequest, book, go, say } from '../state.svelte';
import { words } from '../words';

/** The job in hand; without one, says where to start one. */
export function jobInHand(): string | null {
  if (!book.job) say(words.frame.noJob, 'refused');
  return book.job?.job ?? null;
}

/** Opens the keypad in the Field book for a thing, or for the next useful one. */
export async function openPad(thing: Thing | null, sight: 'blind' | 'open'): Promise<void> {
  const job = jobInHand();
  if (!job) return;
  book.unfolded = false;
  if (book.place !== 'Field book') go('Field book');
  if (await sendRequest({ ask: 'open_pad', job, thing, blind: sight === 'blind' })) {
    book.chosen = null;
    scrollTo(0, 0);
  }
}

/** Leads to what comes next. */
export function follow(next: NextAct): void {
  if (next.next === 'read') void openPad(next.thing, 'open');
  else if (next.next === 'corner') go('Field book');
  else if (next.next === 'walk_round') go('Walk-round');
  else if (next.next === 'open') openThing(next.thing);
  else if (next.next === 'arrive') go('Arrive');
  else if (next.next === 'job_file') go('Job file');
  else go('Plan');
}

/** Goes where the leaf of a thing is and opens it. */
export function openThing(thing: string): void {
  const inBook = book.job?.readings.some((view) => view.thing === thing) && !/^face/.test(thing);
  if (/^change/.test(thing)) go('Job file');
  else go(inBook ? 'Field book' : 'Plan');
  choose(thing);
}

/** Says one of the answers that a leaf offers, and opens what it made. */
export async function answer(choice: ChoiceView): Promise<void> {
  if ((await sendRequest(choice.says)) && choice.opens) choose(choice.opens);
}

/** Opens the region of a thing and brings it into sight. */
export function choose(thing: string): void {
  book.chosen = thing;
  requestAnimationFrame(() => {
    const leaf = document.querySelector<HTMLElement>(`section[data-leaf="${thing}"]`);
    leaf?.scrollIntoView({ block: 'nearest' });
    leaf?.focus({ preventScroll: true });
  });
}

/** `leg 4` as the name of its region. */
export function nameOf(thing: string): string {
  return thing.charAt(0).toUpperCase() + thing.slice(1);
}

/** Says one word about photos. False: it was refused or not answered. */
export async function sayOfPhotos(photos: string[], word: PhotoWord): Promise<boolean> {
  const job = jobInHand();
  return job !== null && (await sendRequest({ ask: 'photo_said', job, photos, word }));
}

/** Strikes an entry; it stays in its story. */
export async function strike(entry: string, thing: string): Promise<void> {
  const job = jobInHand();
  if (job && (await sendRequest({ ask: 'strike', job, entry, reason: null }))) {
    say(words.fieldBook.struck(thing));
  }
}
