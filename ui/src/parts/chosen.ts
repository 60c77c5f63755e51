// What is chosen by its name: its row, what it rests on, its photos.
import type { JobView, ThingView } from '../generated';
import { STATE_NAMES } from './states';

/** Every thing of the lists, edges first: a gable stands as its leg is known. */
function things(job: JobView): ThingView[] {
  return [...job.edges, ...job.faces, ...job.items];
}

/** The thing of this name, if the lists hold it. */
export function chosenThing(job: JobView, name: string | null): ThingView | null {
  return things(job).find((view) => view.thing === name) ?? null;
}

/** What is known by one look only, in the order of the lists. */
export function unproved(job: JobView): ThingView[] {
  const once = ['read once', 'off photo'];
  return things(job).filter((view) => once.includes(STATE_NAMES[view.state]));
}

/** The entries in force on which a thing rests; of a gable, those of its leg. */
export function restsOn(job: JobView, view: ThingView): string[] {
  const own = view.story.filter((item) => item.may_strike).map((item) => item.entry);
  const face = job.faces.find((face) => face.thing === view.thing);
  const leg = face && chosenThing(job, `leg ${face.leg}`);
  return own.length > 0 || !leg ? own : restsOn(job, leg);
}

/** The photos of what is chosen; none: nothing is chosen. */
export function chosenPhotos(
  job: JobView,
  name: string | null,
): { title: string; photos: string[] } | null {
  const photo = job.photos.find((photo) => photo.thing === name);
  if (photo) return { title: photo.caption, photos: [photo.sha256] };
  return chosenThing(job, name);
}
