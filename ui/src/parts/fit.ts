// Fits a plan in feet to a place on the screen in px, the walker's side at the foot.
import type { PlanView } from '../generated';

export type Point = [number, number];
/** A place in plan, feet, to a place on the screen, px. */
export type Shown = (place: Point) => Point;
/** The paper and the margin left on each side for what stands outside the outline, px. */
export type Paper = { width: number; height: number; margin: number };

/** The largest scale at which all of a plan is on the paper. */
export function fit(plan: PlanView, paper: Paper): Shown {
  const places = plan.lines.flatMap((line) => [line.from, line.to]);
  if (plan.to_close) places.push(...plan.to_close);
  const xs = places.map(([x]) => x);
  const ys = places.map(([, y]) => y);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [low, high] = [Math.min(...ys), Math.max(...ys)];
  const room = (px: number) => Math.max(px - 2 * Math.min(paper.margin, px / 4), 1);
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

/** Both ends of a line moved aside, px: to the right of its way on the screen. */
export function offset(a: Point, b: Point, aside: number): [Point, Point] {
  const [nx, ny] = beside(a, b);
  return [
    [a[0] + nx * aside, a[1] + ny * aside],
    [b[0] + nx * aside, b[1] + ny * aside],
  ];
}

/** The unit vector to the right of the way from `a` to `b` on the screen. */
export function beside(a: Point, b: Point): Point {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  return [-(b[1] - a[1]) / length, (b[0] - a[0]) / length];
}

/** 1 where the outside of the plan lies to the right of the way from `a` to `b`, else -1. */
export function outward(a: Point, b: Point, rim: [Point, Point][]): 1 | -1 {
  const [nx, ny] = beside(a, b);
  const at: Point = [(a[0] + b[0]) / 2 + nx * 1.5, (a[1] + b[1]) / 2 + ny * 1.5];
  return inside(at, rim) ? -1 : 1;
}

// Crosses the rim an odd number of times on the way out.
function inside([x, y]: Point, rim: [Point, Point][]): boolean {
  return (
    rim.filter(
      ([[ax, ay], [bx, by]]) => ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax),
    ).length %
      2 ===
    1
  );
}
