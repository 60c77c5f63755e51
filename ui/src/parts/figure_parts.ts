/** A part of a figure: each is set in its own type. */
export type FigurePart =
  | { kind: 'figure'; text: string }
  | { kind: 'fraction'; over: string; under: string }
  | { kind: 'unit'; text: string };

/** Returns the parts of a figure in words: `42`, `ft`, `7`, `1/2`, `in`. */
export function partsOfFigure(words: string): FigurePart[] {
  return words.split(' ').map((word) => {
    const [, over, under] = /^(\d+)\/(\d+)$/.exec(word) ?? [];
    if (over && under) return { kind: 'fraction', over, under };
    return { kind: /\d/.test(word) ? 'figure' : 'unit', text: word };
  });
}
