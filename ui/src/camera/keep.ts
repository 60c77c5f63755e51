// Photos go to the book one after another, each with what was known at its shutter.
import { keepPhoto as send, type Shot } from '../state.svelte';
import { jobInHand } from '../parts/acts';

/** Keeps one photo. False: it was refused or not answered. */
export async function keepPhoto(
  shot: Shot,
  bytes: Blob,
  from: 'camera' | 'file',
  heading: number | null,
): Promise<boolean> {
  const job = jobInHand();
  if (!job) return false;
  const { of, place, distance } = shot;
  return send({ job, of, from, heading, place, distance }, bytes);
}
