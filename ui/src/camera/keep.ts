// Sends photos one after another, each with what was known at its shutter.
import { openJobId } from '../parts/actions';
import { keepPhoto as send, type Shot } from '../state.svelte';

/** How the phone was held at the shutter. */
export type Pose = { heading: number | null; tilt: string | null };

export const NO_POSE: Pose = { heading: null, tilt: null };

/** Keeps one photo. Returns false if it was refused or lost. */
export async function keepPhoto(
  shot: Shot,
  bytes: Blob,
  from: 'camera' | 'file',
  pose: Pose,
): Promise<boolean> {
  const job = openJobId();
  if (!job) return false;
  const { of, place, distance } = shot;
  return send({ job, of, from, ...pose, place, distance }, bytes);
}
