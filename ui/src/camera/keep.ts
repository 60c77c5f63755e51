// Photos go to the book one after another, each with what was known at its shutter.
import { keepPhoto as send, type Shot } from '../state.svelte';
import { jobInHand } from '../parts/acts';

/** What the phone felt at the shutter: where it looked, how it was held. */
export type Felt = { heading: number | null; tilt: string | null };

export const NOTHING_FELT: Felt = { heading: null, tilt: null };

/** Keeps one photo. False: it was refused or not answered. */
export async function keepPhoto(
  shot: Shot,
  bytes: Blob,
  from: 'camera' | 'file',
  felt: Felt,
): Promise<boolean> {
  const job = jobInHand();
  if (!job) return false;
  const { of, place, distance } = shot;
  return send({ job, of, from, ...felt, place, distance }, bytes);
}
