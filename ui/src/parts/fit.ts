// Fits a plan in feet to a place on the screen in px, the walker's side at the foot, and finds
// room for labels: where two would overlap the later one gives way, for a list holds them all.
import type { LineView, PlanView } from '../generated';

export type Point = [number, number];
/** A place in plan, feet, to a place on the screen, px. */
export type Shown = (place: Point) => Point;
export type Paper = { width: number; height: number; across: number; up: number };
export type Label = { thing: string; text: string; at: Point; suspect: boolean };

/** The largest scale at which all of a plan is on the paper. */
export function fit(plan: PlanView, paper: Paper): Shown {
  const places = plan.lines.flatMap((line) => [line.from, line.to]);
  if (plan.to_close) places.push(...plan.to_close);
  const xs = places.map(([x]) => x);
  const ys = places.map(([, y]) => y);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [low, high] = [Math.min(...ys), Math.max(...ys)];
  const room = (px: number, margin: number) => Math.max(px - 2 * Math.min(margin, px / 4), 1);
  const scale = Math.min(
    room(paper.width, paper.across) / Math.max(right - left, 1),
    room(paper.height, paper.up) / Math.max(high - low, 1),
  );
  const [midX, midY] = [(left + right) / 2, (low + high) / 2];
  const round = (px: number) => Math.round(px * 10) / 10;
  return ([x, y]) => [
    round(paper.width / 2 + (x - midX) * scale),
    round(paper.height / 2 - (y - midY) * scale),
  ];
}

/** Both ends of a line moved aside, px. */
export function offset(a: Point, b: Point, aside: number): [Point, Point] {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  const [nx, ny] = [(-(b[1] - a[1]) / length) * aside, ((b[0] - a[0]) / length) * aside];
  return [
    [a[0] + nx, a[1] + ny],
    [b[0] + nx, b[1] + ny],
  ];
}

const LETTER = 10.8;
const LINE = 22;
const GAP = 12;

type Box = { left: number; right: number; top: number; bottom: number };

/** Labels that find room outside their lines: those of suspects first, then of the longest. */
export function labelsOf(lines: LineView[], shown: Shown, paper: Paper): Label[] {
  const long = (line: LineView) => Math.hypot(line.to[0] - line.from[0], line.to[1] - line.from[1]);
  const order = [...lines].sort(
    (a, b) => Number(b.suspect) - Number(a.suspect) || long(b) - long(a),
  );
  const middle = middleOf(lines, shown);
  const taken: Box[] = [];
  const labels: Label[] = [];
  for (const line of order) {
    const text = line.suspect ? `${line.thing}?` : line.label;
    if (!text) continue;
    const at = outside(shown(line.from), shown(line.to), middle, (text.length * LETTER) / 2);
    const half = (text.length * LETTER) / 2;
    const box = {
      left: at[0] - half,
      right: at[0] + half,
      top: at[1] - LINE / 2,
      bottom: at[1] + LINE / 2,
    };
    const off = box.left < 0 || box.right > paper.width || box.top < 0 || box.bottom > paper.height;
    if (off || taken.some((other) => overlap(other, box))) continue;
    taken.push(box);
    labels.push({ thing: line.thing, text, at, suspect: line.suspect });
  }
  return labels;
}

function middleOf(lines: LineView[], shown: Shown): Point {
  const ends = lines.map((line) => shown(line.from));
  const mean = (of: number[]) => of.reduce((sum, x) => sum + x, 0) / Math.max(of.length, 1);
  return [mean(ends.map(([x]) => x)), mean(ends.map(([, y]) => y))];
}

// Beside the middle of the line, on the side away from the middle of the plan.
function outside(a: Point, b: Point, middle: Point, half: number): Point {
  const mid: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  const [[cx, cy]] = offset(a, b, 1);
  const [nx, ny] = [cx - a[0], cy - a[1]];
  const out = (mid[0] - middle[0]) * nx + (mid[1] - middle[1]) * ny < 0 ? -1 : 1;
  return [mid[0] + out * nx * (half + GAP), mid[1] + out * ny * (LINE / 2 + 4)];
}

function overlap(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}
