// Scales a plan in feet to a place on the screen in px, with the walker's side at the foot.
import type { PlanView } from '../generated';

export type Point = [number, number];
/** Maps a point of the plan, feet, to the screen, px. */
export type ToScreen = (point: Point) => Point;
/** The place for the sketch and the margin on each side for texts outside the outline, px. */
export type Paper = { width: number; height: number; margin: number };

/** Returns the mapping at the largest scale that fits all of the plan. */
export function fit(plan: PlanView, paper: Paper): ToScreen {
  const points = plan.lines.flatMap((line) => [line.from, line.to]);
  if (plan.to_close) points.push(...plan.to_close);
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [low, high] = [Math.min(...ys), Math.max(...ys)];
  const free = (px: number) => Math.max(px - 2 * Math.min(paper.margin, px / 4), 1);
  const scale = Math.min(
    free(paper.width) / Math.max(right - left, 1),
    free(paper.height) / Math.max(high - low, 1),
  );
  const [midX, midY] = [(left + right) / 2, (low + high) / 2];
  const round = (px: number) => Math.round(px * 10) / 10;
  return ([x, y]) => [
    round(paper.width / 2 + (x - midX) * scale),
    round(paper.height / 2 - (y - midY) * scale),
  ];
}

/** Returns a line moved by px to the right of its direction on the screen. */
export function offset(a: Point, b: Point, px: number): [Point, Point] {
  const [nx, ny] = rightOf(a, b);
  return [
    [a[0] + nx * px, a[1] + ny * px],
    [b[0] + nx * px, b[1] + ny * px],
  ];
}

/** Returns the unit vector to the right of the direction from `a` to `b` on the screen. */
export function rightOf(a: Point, b: Point): Point {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  return [-(b[1] - a[1]) / length, (b[0] - a[0]) / length];
}

/** Returns 1 if the outside of the outline is to the right of the line from `a` to `b`, else -1. */
export function outward(a: Point, b: Point, outline: [Point, Point][]): 1 | -1 {
  const [nx, ny] = rightOf(a, b);
  const nearby: Point = [(a[0] + b[0]) / 2 + nx * 1.5, (a[1] + b[1]) / 2 + ny * 1.5];
  return isInside(nearby, outline) ? -1 : 1;
}

// A ray from a point inside crosses the outline an odd number of times.
function isInside([x, y]: Point, outline: [Point, Point][]): boolean {
  const crossed = outline.filter(
    ([[ax, ay], [bx, by]]) => ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax),
  );
  return crossed.length % 2 === 1;
}
