/**
 * Draws whole numbers below a bound, the same each time for one seed.
 * The generator of Park and Miller (1988) with the multiplier 48271 (1993).
 */
export function draws(seed) {
  let now = seed;
  return (below) => {
    now = (now * 48271) % 2147483647;
    return now % below;
  };
}
