// Finds room on the sketch for what is written beside its lines. Where two would overlap the less
// needed one gives way, for the list holds them all.
import type { LineView, PlanView } from '../generated';
import { words } from '../words';
import { beside, outward, type Paper, type Point, type Shown } from './fit';

export type Label = {
  key: string;
  text: string;
  at: Point;
  /** Turned to lie along its line, degrees. */
  turned: number;
  look: 'length' | 'suspect' | 'in-hand';
};

const SIZE = 18;
const LETTER = { figures: 0.61 * SIZE, words: 0.56 * SIZE };
const LINE = 20;
const CLEAR = 6;

type Box = { at: Point; half: Point; turned: number };

/** What is written on the sketch, the most needed first: what is in hand, suspects, long lengths. */
export function write(plan: PlanView, shown: Shown, paper: Paper): Label[] {
  const taken: Box[] = [];
  const room = (box: Box) => {
    if (!onPaper(box, paper) || taken.some((other) => overlap(other, box))) return false;
    taken.push(box);
    return true;
  };
  const ends = (line: LineView): [Point, Point] => [shown(line.from), shown(line.to)];
  const rim = plan.lines.filter(({ kind }) => kind === 'leg').map(ends);
  if (plan.to_close) rim.push([shown(plan.to_close[0]), shown(plan.to_close[1])]);

  // Nothing is written across the rim: what finds no room beside it gives way.
  for (const [a, b] of rim) {
    const half: Point = [Math.hypot(b[0] - a[0], b[1] - a[1]) / 2, 1];
    taken.push({ at: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2], half, turned: along(a, b) });
  }

  const labels: Label[] = [];
  const put = (line: LineView, text: string, look: Label['look'], aside: number) => {
    const [a, b] = ends(line);
    const turned = along(a, b);
    const half: Point = [
      (text.length * (look === 'length' ? LETTER.figures : LETTER.words)) / 2,
      LINE / 2,
    ];
    const [nx, ny] = beside(a, b);
    for (const side of [aside, -aside]) {
      const away = (LINE / 2 + CLEAR) * side;
      const at: Point = [(a[0] + b[0]) / 2 + nx * away, (a[1] + b[1]) / 2 + ny * away];
      if (!room({ at, half, turned })) continue;
      labels.push({ key: `${line.thing} ${look}`, text, at, turned, look });
      return;
    }
  };

  const byNeed = [...plan.lines].sort((a, b) => need(b) - need(a) || length(b) - length(a));
  for (const line of byNeed) {
    const out = outward(...ends(line), rim);
    if (line.suspect) put(line, `${line.thing}?`, 'suspect', out);
    else if (line.in_hand) put(line, line.thing, 'in-hand', out);
    if (line.label) put(line, words.told(line.label), 'length', out);
  }

  return labels;
}

const need = (line: LineView) => (line.suspect ? 2 : 0) + (line.in_hand ? 1 : 0);
const length = (line: LineView) => Math.hypot(line.to[0] - line.from[0], line.to[1] - line.from[1]);

// The direction of a line on the screen, so turned that its writing never stands on its head, and
// all that run nearly upright read the same way.
function along(a: Point, b: Point): number {
  const degrees = (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI;
  return degrees > 100 ? degrees - 180 : degrees <= -80 ? degrees + 180 : degrees;
}

function corners({ at, half, turned }: Box): Point[] {
  const [sin, cos] = [Math.sin((turned * Math.PI) / 180), Math.cos((turned * Math.PI) / 180)];
  return [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ].map(([i = 0, j = 0]) => [
    at[0] + i * half[0] * cos - j * half[1] * sin,
    at[1] + i * half[0] * sin + j * half[1] * cos,
  ]);
}

function onPaper(box: Box, paper: Paper): boolean {
  return corners(box).every(([x, y]) => x >= 0 && x <= paper.width && y >= 0 && y <= paper.height);
}

// Two turned boxes are apart where one side of either has all of the other beyond it.
function overlap(a: Box, b: Box): boolean {
  const [p, q] = [corners(a), corners(b)];
  return ![a.turned, a.turned + 90, b.turned, b.turned + 90].some((degrees) => {
    const [x, y] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
    const on = (points: Point[]) => points.map((point) => point[0] * x + point[1] * y);
    const [s, t] = [on(p), on(q)];
    return Math.max(...s) <= Math.min(...t) || Math.max(...t) <= Math.min(...s);
  });
}
