// Places texts next to the lines of the sketch. Where two would overlap, the less important one is
// left out; the list holds all of them.
import type { LineView, PlanView } from '../generated';
import { told } from '../texts';
import { outward, rightOf, type Paper, type Point, type ToScreen } from './sketch_scale';

export type SketchLabel = {
  key: string;
  text: string;
  at: Point;
  /** Angle of its line, degrees. */
  turned: number;
  look: 'length' | 'suspect' | 'in-hand';
};

const SIZE = 18;
const LETTER = { figures: 0.61 * SIZE, words: 0.56 * SIZE };
const LINE = 20;
const GAP = 6;

type Box = { at: Point; half: Point; turned: number };

/** Returns the labels that fit, the most important first: the line in hand, suspects, long lines. */
export function placeLabels(plan: PlanView, toScreen: ToScreen, paper: Paper): SketchLabel[] {
  const ends = (line: LineView): [Point, Point] => [toScreen(line.from), toScreen(line.to)];
  const outline = plan.lines.filter(({ kind }) => kind === 'leg').map(ends);
  if (plan.to_close) outline.push([toScreen(plan.to_close[0]), toScreen(plan.to_close[1])]);

  // The outline takes its place first: no text crosses it.
  const taken: Box[] = outline.map(([a, b]) => ({
    at: middle(a, b),
    half: [Math.hypot(b[0] - a[0], b[1] - a[1]) / 2, 1],
    turned: readableAngle(a, b),
  }));
  const labels: SketchLabel[] = [];

  const place = (line: LineView, text: string, look: SketchLabel['look'], out: 1 | -1) => {
    const [a, b] = ends(line);
    const letter = look === 'length' ? LETTER.figures : LETTER.words;
    const half: Point = [(text.length * letter) / 2, LINE / 2];
    const turned = readableAngle(a, b);
    const [nx, ny] = rightOf(a, b);
    const [x, y] = middle(a, b);
    for (const side of [out, -out]) {
      const away = (LINE / 2 + GAP) * side;
      const box: Box = { at: [x + nx * away, y + ny * away], half, turned };
      if (!onPaper(box, paper) || taken.some((other) => overlap(other, box))) continue;
      taken.push(box);
      labels.push({ key: `${line.thing} ${look}`, text, at: box.at, turned, look });
      return;
    }
  };

  const byImportance = [...plan.lines].sort(
    (a, b) => importance(b) - importance(a) || length(b) - length(a),
  );
  for (const line of byImportance) {
    const out = outward(...ends(line), outline);
    if (line.suspect) place(line, `${told(line.thing)}?`, 'suspect', out);
    else if (line.in_hand) place(line, told(line.thing), 'in-hand', out);
    if (line.label) place(line, told(line.label), 'length', out);
  }
  return labels;
}

const importance = (line: LineView) => (line.suspect ? 2 : 0) + (line.in_hand ? 1 : 0);
const length = (line: LineView) => Math.hypot(line.to[0] - line.from[0], line.to[1] - line.from[1]);
const middle = (a: Point, b: Point): Point => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];

/**
 * Returns the angle of a line, degrees, turned so that its text is never upside down. All lines near
 * the vertical are read the same way.
 */
export function readableAngle(a: Point, b: Point): number {
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

// Two turned boxes are apart if along one of their four axes they do not overlap.
function overlap(a: Box, b: Box): boolean {
  const [p, q] = [corners(a), corners(b)];
  return ![a.turned, a.turned + 90, b.turned, b.turned + 90].some((degrees) => {
    const [x, y] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
    const along = (points: Point[]) => points.map((point) => point[0] * x + point[1] * y);
    const [s, t] = [along(p), along(q)];
    return Math.max(...s) <= Math.min(...t) || Math.max(...t) <= Math.min(...s);
  });
}
