// Fits a plan in feet to a place on the screen in px, the walker's side at the foot, and finds
// room for labels: where two would overlap the later one gives way, for a list holds them all.
import type { LineView, PlanView } from '../generated';

export type Point = [number, number];
/** A place in plan, feet, to a place on the screen, px. */
export type Shown = (place: Point) => Point;
export type Paper = { width: number; height: number; margin: number };
export type Label = { thing: string; text: string; at: Point; suspect: boolean };

/** The largest scale at which all of a plan is on the paper. */
export function fit(plan: PlanView, paper: Paper): Shown {
  const places = plan.lines.flatMap((line) => [line.from, line.to]);
  if (plan.to_close) places.push(...plan.to_close);
  const xs = places.map(([x]) => x);
  const ys = places.map(([, y]) => y);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [low, high] = [Math.min(...ys), Math.max(...ys)];
  const room = (px: number) => Math.max(px - 2 * paper.margin, 1);
  const scale = Math.min(
    room(paper.width) / Math.max(right - left, 1),
    room(paper.height) / Math.max(high - low, 1),
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

/** Labels that find room: those of suspects first, then of the longest lines. */
export function labelsOf(lines: LineView[], shown: Shown): Label[] {
  const long = (line: LineView) => Math.hypot(line.to[0] - line.from[0], line.to[1] - line.from[1]);
  const order = [...lines].sort(
    (a, b) => Number(b.suspect) - Number(a.suspect) || long(b) - long(a),
  );
  const taken: { at: Point; half: number }[] = [];
  const labels: Label[] = [];
  for (const line of order) {
    const text = line.suspect ? `${line.thing}?` : line.label;
    if (!text) continue;
    const half = (text.length * LETTER) / 2;
    const [a, b] = [shown(line.from), shown(line.to)];
    const at: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    const free = taken.every(
      (other) =>
        Math.abs(other.at[0] - at[0]) > other.half + half || Math.abs(other.at[1] - at[1]) > LINE,
    );
    if (!free) continue;
    taken.push({ at, half });
    labels.push({ thing: line.thing, text, at, suspect: line.suspect });
  }
  return labels;
}
