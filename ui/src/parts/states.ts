// The names of states in the document, the same in every language: words for eyes come from the
// table of words.
import type { PhotoState, State } from '../generated';

/** What the others speak against is still known by one look; its mark and word say the rest. */
export const STATE_NAMES: Record<State, string> = {
  not_looked: 'not looked',
  hearsay: 'hearsay',
  worked_out: 'worked out',
  read_once: 'read once',
  off_photo: 'off photo',
  settled_at_desk: 'settled at desk',
  agreed: 'agreed',
  proved: 'proved',
  cannot_get: "can't get",
  suspect: 'read once',
  struck: 'struck',
};

export const PHOTO_STATE_NAMES: Record<PhotoState, string> = {
  confirmed: 'confirmed',
  guess: 'guess',
  not_looked: 'not looked',
};
