// Every kind of screen and hand on which a visit is made.
import { NARROW, PHONE, screen, SMALL_PHONE } from './screen.js';

export const HANDS = [
  { name: '390 x 844', size: PHONE },
  { name: '360 x 640', size: SMALL_PHONE },
  { name: '320 x 640', size: NARROW },
  { name: '390 x 844, text at 200 %', size: PHONE, letters: 2 },
  { name: '390 x 844, mirror hand', size: PHONE, mirror: true },
];

/** A page for one of them, before it goes anywhere; its letters stay as large after a restart. */
export async function screenFor({ size, letters = 1, mirror = false }, ask) {
  await ask({ ask: 'set', setting: { set: 'mirror_hand', to: mirror } });
  const seen = await screen(size);
  if (letters > 1)
    await seen.context.addInitScript((times) => {
      addEventListener('DOMContentLoaded', () => {
        document.documentElement.style.fontSize = `${112.5 * times}%`;
      });
    }, letters);
  return seen;
}

/** Prints one figure of a visit with its pass line; the lines of one kind make a table. */
export function tell(t, what, name, figures) {
  t.diagnostic(`${what} | ${name} | ${figures}`);
}
