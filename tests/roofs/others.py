"""Roofs over the same outlines as ours, by two programs that share no code with it or each other.

Reads one JSON object from stdin, {"outlines": [{"corners": [[x, y], ...], "runs": [...], "levels": [...]}]}:
corners counter-clockwise in feet, the run per rise of each leg (0: a gable), heights over the eave. Writes
for each outline `library`, the area in plan of each leg's slope by a weighted straight skeleton in exact
arithmetic (SFCGAL, by CGAL), or null where that gives none; and `steps`, the area in plan of what stands
higher than each level: the outline eaten away in small steps, each by polygon booleans (GEOS, by shapely).
Needs pysfcgal and shapely.
"""

import json
import math
import sys
import warnings

import shapely
from shapely.geometry import Polygon
from shapely.geometry.polygon import orient

warnings.simplefilter("ignore")
from pysfcgal.geometry import Polygon as Exact  # noqa: E402

# A step of the wave is at most this part of the highest level.
STEPS = 120
# A side is not followed to its very end where that would make a step shorter than this part of it.
SHORTEST = 0.05
# A piece of the outline smaller than this is let go, sq ft.
CRUMB = 1e-3
# The work spent on one outline; what takes more is given up and said so.
MOST_STEPS = 1_500
# Ends of a side nearer than this are one, feet.
GONE = 1e-6


def twice_area(ring):
    x0, y0 = ring[0][:2]
    return sum((a[0] - x0) * (b[1] - y0) - (a[1] - y0) * (b[0] - x0) for a, b in zip(ring, ring[1:]))


class Legs:
    """The lines of the legs: unit directions, inward normals, places on them, run per rise."""

    def __init__(self, corners, runs):
        self.lines = []
        self.starts = {corner: leg for leg, corner in enumerate(corners)}
        for (ax, ay), (bx, by), run in zip(corners, corners[1:] + corners[:1], runs):
            length = math.hypot(bx - ax, by - ay)
            dx, dy = (bx - ax) / length, (by - ay) / length
            self.lines.append((dx, dy, -dy, dx, ax, ay, run))

    def off(self, leg, x, y):
        """How far inside the line of a leg a place lies."""
        _, _, nx, ny, px, py, _ = self.lines[leg]
        return nx * (x - px) + ny * (y - py)

    def of_facet(self, facet):
        """The leg in whose slope a facet lies."""

        def worst(leg):
            run = self.lines[leg][6]
            if run == 0:
                return math.inf
            return max(abs(z - self.off(leg, x, y) / run) for x, y, z in facet)

        return min(range(len(self.lines)), key=worst)

    def of_side(self, a, b, height):
        """The leg whose front, at a height, runs from a to b."""
        if height == 0:
            # Two legs in one line are told apart once they have moved.
            return self.starts[a]
        length = math.hypot(b[0] - a[0], b[1] - a[1])
        dx, dy = (b[0] - a[0]) / length, (b[1] - a[1]) / length

        def worst(leg):
            lx, ly, _, _, _, _, run = self.lines[leg]
            if lx * dx + ly * dy < 0.5:
                return math.inf
            return max(abs(self.off(leg, *end) - run * height) for end in (a, b))

        return min(range(len(self.lines)), key=worst)

    def corner_speed(self, before, after):
        """How the corner between two fronts moves as the height grows."""
        ax, ay, anx, any_, _, _, a = self.lines[before]
        bx, by, bnx, bny, _, _, b = self.lines[after]
        turn = ax * by - ay * bx
        if abs(turn) < 1e-9:
            return (anx * a, any_ * a)
        return ((a * bny - b * any_) / turn, (anx * b - bnx * a) / turn)


def by_library(corners, runs, height):
    angles = [90.0 if run == 0 else math.degrees(math.atan(1.0 / run)) for run in runs]
    # Its angle k stands at the leg that ends in corner k.
    angles = [angles[-1:] + angles[:-1]]
    try:
        solid = Exact(corners + corners[:1]).extrude_straight_skeleton_with_angles(height, angles)
        facets = [[tuple(map(float, place)) for place in facet[0]] for facet in solid.to_coordinates()]
    except Exception:
        return None
    legs = Legs(corners, runs)
    areas = [0.0] * len(runs)
    for facet in facets:
        if all(place[2] == 0 for place in facet):
            continue
        area = abs(twice_area(facet)) / 2
        if area > 1e-9:
            areas[legs.of_facet(facet)] += area
    return areas


def until_split(sides, speeds, legs, by, least):
    """The step cut short where an inside corner reaches another side."""
    for k, (corner, _, leg) in enumerate(sides):
        dx, dy = legs.lines[leg][:2]
        lx, ly = legs.lines[sides[k - 1][2]][:2]
        if lx * dy - ly * dx >= 0:
            continue
        vx, vy = speeds[k]
        for other, (a, b, front) in enumerate(sides):
            if other in (k, (k - 1) % len(sides)):
                continue
            fx, fy, nx, ny, _, _, run = legs.lines[front]
            far = nx * (corner[0] - a[0]) + ny * (corner[1] - a[1])
            closing = run - (nx * vx + ny * vy)
            if far < 0 or closing <= 0 or not least < far / closing < by:
                continue
            at = far / closing
            va, vb = speeds[other], speeds[(other + 1) % len(sides)]
            place = fx * (corner[0] + vx * at) + fy * (corner[1] + vy * at)
            start = fx * (a[0] + va[0] * at) + fy * (a[1] + va[1] * at)
            end = fx * (b[0] + vb[0] * at) + fy * (b[1] + vb[1] * at)
            if start <= place <= end:
                by = at
    return by


def step(part, legs, height, most):
    """One part of the outline at a height eaten away a little, and by how much."""
    ring = list(part.exterior.coords)[:-1]
    sides = [(a, b) for a, b in zip(ring, ring[1:] + ring[:1]) if math.dist(a, b) > GONE]
    sides = [(a, b, legs.of_side(a, b, height)) for a, b in sides]
    # Pieces of one front in a row are one.
    fronts = []
    for a, b, leg in sides:
        if fronts and fronts[-1][2] == leg:
            a = fronts.pop()[0]
        fronts.append((a, b, leg))
    if len(fronts) > 1 and fronts[0][2] == fronts[-1][2]:
        fronts[0] = (fronts.pop()[0], fronts[0][1], fronts[0][2])
    # Each begins where the last one ends: a hair between what two of them sweep would be left standing.
    sides = [(a, after[0], leg) for (a, _, leg), after in zip(fronts, fronts[1:] + fronts[:1])]
    if len(sides) < 3:
        return Polygon(), most
    cleaned = Polygon([a for a, _, _ in sides])
    if cleaned.is_valid and abs(cleaned.area - part.area) < CRUMB:
        part = cleaned
    speeds = [legs.corner_speed(before[2], after[2]) for before, after in zip(sides[-1:] + sides[:-1], sides)]
    by = most
    moved = []
    for k, (a, b, leg) in enumerate(sides):
        va, vb = speeds[k], speeds[(k + 1) % len(sides)]
        dx, dy = legs.lines[leg][:2]
        shrinks = (va[0] - vb[0]) * dx + (va[1] - vb[1]) * dy
        length = math.dist(a, b)
        if shrinks > 0:
            by = min(by, max(length / shrinks, SHORTEST * most))
        moved.append((a, b, va, vb, length, shrinks))
    by = until_split(sides, speeds, legs, by, SHORTEST * most)
    eaten = []
    for a, b, va, vb, length, shrinks in moved:
        at = by if shrinks <= 0 else min(by, length / shrinks)
        ends = [a, b, (b[0] + vb[0] * at, b[1] + vb[1] * at), (a[0] + va[0] * at, a[1] + va[1] * at)]
        # What a side sweeps has four corners or three, none of them inside.
        eaten.append(shapely.MultiPoint(ends).convex_hull)
    eaten = [swept for swept in eaten if swept.geom_type == "Polygon"]
    return part.difference(shapely.union_all(eaten)), by


def parts_of(shape):
    pieces = getattr(shape, "geoms", [shape])
    return [orient(piece) for piece in pieces if piece.geom_type == "Polygon" and piece.area > CRUMB]


def by_steps(corners, runs, levels):
    legs = Legs(corners, runs)
    most = levels[-1] / STEPS
    areas = [0.0] * len(levels)
    waiting = [(part, 0.0, 0) for part in [Polygon(corners)]]
    steps = 0
    while waiting:
        part, height, level = waiting.pop()
        while level < len(levels) and levels[level] <= height + 1e-12:
            areas[level] += part.area
            level += 1
        if level == len(levels):
            continue
        steps += 1
        if steps > MOST_STEPS:
            return None
        left, by = step(part, legs, height, min(most, levels[level] - height))
        waiting += [(piece, height + by, level) for piece in parts_of(left)]
    return areas


def main():
    told = []
    for outline in json.load(sys.stdin)["outlines"]:
        corners = [tuple(corner) for corner in outline["corners"]]
        runs, levels = outline["runs"], outline["levels"]
        told.append({
            "library": by_library(corners, runs, 10.0 * levels[-1]),
            "steps": by_steps(corners, runs, levels),
        })
    json.dump(told, sys.stdout)


if __name__ == "__main__":
    main()
