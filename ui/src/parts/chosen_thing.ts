// Things of a job by their ids: a row, the readings under it, its photos.
import type { JobView, ThingView } from '../generated';
import { STATE_IDS } from './states';

/** Every thing of the lists. Edges come first, since a gable is known by its leg. */
function things(job: JobView): ThingView[] {
  return [...job.edges, ...job.faces, ...job.items];
}

/** Returns the thing with this id; `null` if no list holds it. */
export function chosenThing(job: JobView, id: string | null): ThingView | null {
  return things(job).find((view) => view.thing === id) ?? null;
}

/** Returns the things that are read once or off a photo, in the order of the lists. */
export function readOnce(job: JobView): ThingView[] {
  const once = ['read once', 'off photo'];
  return things(job).filter((view) => once.includes(STATE_IDS[view.state]));
}

/** Returns the entries in force under a thing; for a gable those of its leg. */
export function entriesInForce(job: JobView, view: ThingView): string[] {
  const own = view.story.filter((reading) => reading.may_strike).map(({ entry }) => entry);
  const face = job.faces.find(({ thing }) => thing === view.thing);
  const leg = face && chosenThing(job, `leg ${face.leg}`);
  return own.length > 0 || !leg ? own : entriesInForce(job, leg);
}

/** Returns the title and photos of the chosen thing or photo; `null` if nothing is chosen. */
export function chosenPhotos(
  job: JobView,
  id: string | null,
): { title: string; photos: string[] } | null {
  const photo = job.photos.find(({ thing }) => thing === id);
  if (photo) return { title: photo.caption, photos: [photo.sha256] };
  return chosenThing(job, id);
}
