/** The keypad stands in the first screen of the page: a new one begins there. */
export function atTop(): void {
  scrollTo(0, 0);
}
