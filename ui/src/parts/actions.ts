// Actions that more than one place offers.
import type { ChoiceView, NextAct, PhotoWord, Thing, ThingView } from '../generated';
import { labels } from '../language';
import { go, page, sendRequest, showNews } from '../state.svelte';
import { texts } from '../texts';

/** Returns the id of the open job. Shows a refusal if no job is open. */
export function openJobId(): string | null {
  if (!page.job) showNews(labels.frame.noJob, 'refused');
  return page.job?.job ?? null;
}

/** Opens the keypad in the field book for a thing; `null` means the next useful one. */
export async function openKeypad(thing: Thing | null, sight: 'blind' | 'open'): Promise<void> {
  const job = openJobId();
  if (!job) return;
  page.unfolded = false;
  if (page.place !== 'Field book') go('Field book');
  if (await sendRequest({ ask: 'open_pad', job, thing, blind: sight === 'blind' })) {
    page.chosen = null;
    scrollTo(0, 0);
  }
}

/** Leads to the next act. */
export function follow(next: NextAct): void {
  if (next.next === 'read') void openKeypad(next.thing, 'open');
  else if (next.next === 'corner') go('Field book');
  else if (next.next === 'walk_round') go('Walk-round');
  else if (next.next === 'open') openThing(next.thing);
  else if (next.next === 'arrive') go('Arrive');
  else if (next.next === 'job_file') go('Job file');
  else go('Plan');
}

/** Goes to the place that lists a thing and opens its panel. */
export function openThing(thing: string): void {
  const isReading = page.job?.readings.some((view) => view.thing === thing) && !/^face/.test(thing);
  if (/^change/.test(thing)) go('Job file');
  else go(isReading ? 'Field book' : 'Plan');
  choose(thing);
}

/** Sends one of the offered answers, and opens the thing that it made. */
export async function answer(choice: ChoiceView): Promise<void> {
  if ((await sendRequest(choice.says)) && choice.opens) choose(choice.opens);
}

/** Opens the panel of a thing and scrolls it into view. */
export function choose(thing: string): void {
  page.chosen = thing;
  requestAnimationFrame(() => {
    const panel = document.querySelector<HTMLElement>(`section[data-panel="${thing}"]`);
    panel?.scrollIntoView({ block: 'nearest' });
    panel?.focus({ preventScroll: true });
  });
}

/** Records one word about photos. Returns false if it was refused or lost. */
export async function tagPhotos(photos: string[], word: PhotoWord): Promise<boolean> {
  const job = openJobId();
  return job !== null && (await sendRequest({ ask: 'photo_said', job, photos, word }));
}

/** Strikes an entry; it stays in the story of its thing. */
export async function strike(entry: string, thing: string): Promise<void> {
  const job = openJobId();
  if (job && (await sendRequest({ ask: 'strike', job, entry, reason: null }))) {
    showNews(texts.struck(thing));
  }
}

/** Strikes the newest reading of a thing that is in force. */
export function strikeNewest(view: ThingView): void {
  const newest = view.story.find((reading) => reading.may_strike);
  if (newest) void strike(newest.entry, `${view.thing}, ${newest.value}`);
  else showNews(labels.thing.nothingToStrike, 'refused');
}
