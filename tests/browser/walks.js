// Walks round houses, building on the right.
const OUT = 'Outside corner';
const IN = 'Inside corner';

/** A rectangle, its corners all outside. */
export function rectangle(along, across) {
  return [along, across, along, across].map((length) => ({ length, corner: OUT }));
}

/**
 * A T: from the foot of the stem up its left side, out to the bar, round it and back.
 * `stem`, `left`, `bar`, `right`: feet; the bar is as long as its front parts and the stem's width.
 */
export function tHouse({ stem, left, bar, right, width }) {
  return [
    [stem, IN],
    [left, OUT],
    [bar, OUT],
    [left + width + right, OUT],
    [bar, OUT],
    [right, IN],
    [stem, OUT],
    [width, OUT],
  ].map(([feet, corner]) => ({ length: `${feet} ft`, feet, corner }));
}
