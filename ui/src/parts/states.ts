// Ids of states in the document, the same in every language. The visible words are labels.
import type { PhotoState, State } from '../generated';

/** A suspect reading is still known by one reading; its mark and label show that it is a suspect. */
export const STATE_IDS: Record<State, string> = {
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

export const PHOTO_STATE_IDS: Record<PhotoState, string> = {
  confirmed: 'confirmed',
  guess: 'guess',
  not_looked: 'not looked',
};
