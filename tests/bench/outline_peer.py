"""The peer of our outline: scipy.optimize on the same model, for the same outputs.

Reads one JSON object from stdin, {"rounds": n, "surveys": [{"turns": [...], "readings": [...]}]}: legs
in feet and inches, no spreads stated. Writes for every survey the corners, residuals, redundancies and
chances, and the median time of one survey in milliseconds. Needs numpy and scipy.
"""

import json
import math
import sys
import time

import numpy as np
from scipy.optimize import least_squares

DIRECTION_SIGMA = math.radians(0.21) / math.sqrt(2)
LEFT_OUT = 1000.0
SLIP = 0.03
SHARES = dict(tens=0.25, one_foot=0.20, transposed=0.12, inches=0.10, reversed=0.05, other=0.10)
OTHER_SIGMA = 3.0
ROUGHNESS = [(0.75, 0.25), (1.0, 0.5), (1.35, 0.25)]


class Shape:
    """Directions of the legs from their turns; which corners each leg joins."""

    def __init__(self, turns):
        self.legs = len(turns)
        degrees = np.concatenate([[0.0], np.cumsum(turns)[:-1]])
        self.directions = np.radians(degrees)
        self.units = np.round(np.c_[np.cos(self.directions), np.sin(self.directions)], 15)
        self.start = np.arange(self.legs)
        self.end = (self.start + 1) % self.legs


class Model:
    """Residuals of readings and directions over their spreads, and their derivatives."""

    def __init__(self, shape, readings, left_out=None):
        self.shape = shape
        self.ends = np.array([ends(reading, shape) for reading in readings])
        self.values = np.array([reading["feet"] for reading in readings])
        self.sigmas = np.hypot(0.18, 0.0005 * self.values)
        self.along = None
        if left_out is not None:
            self.sigmas = self.sigmas.copy()
            self.sigmas[left_out] *= LEFT_OUT
            if "leg" in readings[left_out]:
                self.along = (left_out, shape.units[readings[left_out]["leg"]])

    def points(self, unknowns):
        return np.vstack([[0.0, 0.0], unknowns.reshape(-1, 2)])

    def computed(self, points):
        """Lengths and directions with their rows."""
        n, m = self.shape.legs, len(self.values)
        rows = np.zeros((m + n, 2 * n))
        d = points[self.ends[:, 1]] - points[self.ends[:, 0]]
        lengths = np.hypot(d[:, 0], d[:, 1])
        unit = d / lengths[:, None]
        if self.along is not None:
            k, u = self.along
            lengths[k], unit[k] = d[k] @ u, u
        at = np.arange(m)
        for axis in (0, 1):
            rows[at, 2 * self.ends[:, 0] + axis] = -unit[:, axis]
            rows[at, 2 * self.ends[:, 1] + axis] = unit[:, axis]
        e = points[self.shape.end] - points[self.shape.start]
        square = (e * e).sum(1)
        across = np.c_[-e[:, 1], e[:, 0]] / square[:, None]
        at = m + np.arange(n)
        for axis in (0, 1):
            rows[at, 2 * self.shape.start + axis] = -across[:, axis]
            rows[at, 2 * self.shape.end + axis] = across[:, axis]
        return lengths, np.arctan2(e[:, 1], e[:, 0]), rows

    def spreads(self):
        return np.concatenate([self.sigmas, np.full(self.shape.legs, DIRECTION_SIGMA)])

    def residuals(self, unknowns):
        lengths, directions, _ = self.computed(self.points(unknowns))
        turned = (self.shape.directions - directions + math.pi) % (2 * math.pi) - math.pi
        return np.concatenate([self.values - lengths, turned]) / self.spreads()

    def jacobian(self, unknowns):
        _, _, rows = self.computed(self.points(unknowns))
        return -rows[:, 2:] / self.spreads()[:, None]


def ends(reading, shape):
    if "leg" in reading:
        return reading["leg"], (reading["leg"] + 1) % shape.legs
    return reading["tie"]


def adjust(shape, readings, left_out=None):
    """The corners that fit best, with residuals in feet, redundancies and the sum of squares."""
    model = Model(shape, readings, left_out)
    fit = least_squares(
        model.residuals,
        straight(shape, readings, left_out)[1:].ravel(),
        model.jacobian,
        method="lm",
        ftol=1e-15,
        xtol=1e-15,
        gtol=1e-15,
    )
    rows = model.jacobian(fit.x)
    covariance = np.linalg.inv(rows.T @ rows)
    explained = np.einsum("ij,jk,ik->i", rows, covariance, rows)
    count = len(readings)
    return dict(
        points=model.points(fit.x),
        residuals=fit.fun[:count] * model.sigmas,
        redundancies=np.clip(1.0 - explained[:count], 0.0, 1.0),
        sigmas=model.sigmas,
        chi2=float(fit.fun @ fit.fun),
        freedom=count + shape.legs - 2 * (shape.legs - 1),
    )


def straight(shape, readings, left_out):
    """A first guess: legs as read, what does not close spread over them."""
    lengths = np.full(shape.legs, np.nan)
    for k, reading in enumerate(readings):
        if "leg" in reading and k != left_out:
            lengths[reading["leg"]] = reading["feet"]
    unread = np.isnan(lengths)
    lengths[unread] = np.nanmean(lengths)
    steps = lengths[:, None] * shape.units
    if unread.any():
        leg = int(np.flatnonzero(unread)[0])
        steps[leg] -= (steps.sum(0) @ shape.units[leg]) * shape.units[leg]
    weights = np.abs(steps)
    steps = steps - steps.sum(0) * weights / weights.sum(0)
    return np.vstack([[0.0, 0.0], np.cumsum(steps, 0)[:-1]])


def alone(fit, k):
    """One reading against the others: their sum of squares, its difference, the variance of that."""
    redundancy = fit["redundancies"][k]
    if redundancy <= 1e-6:
        return None
    off = fit["residuals"][k] / redundancy
    variance = fit["sigmas"][k] ** 2 / redundancy
    return max(fit["chi2"] - off * off / variance, 0.0), off, variance


def without(shape, readings, k, fit):
    again = adjust(shape, readings, k)
    found = alone(again, k)
    if found is None:
        return None
    rest, off, variance = found
    return rest, off, variance - again["sigmas"][k] ** 2 + fit["sigmas"][k] ** 2


def candidates(feet):
    """What a reading in feet and inches may have been before a slip: kind, value, part of the kind."""
    whole = math.floor(feet + 0.004)
    rest = feet - whole
    found = [("tens", feet - 10, 0.5), ("tens", feet + 10, 0.5)]
    found += [("one_foot", feet - 1, 0.5), ("one_foot", feet + 1, 0.5)]
    scaled = math.floor(feet + 1e-6)
    low, high = scaled % 10, (scaled // 10) % 10
    if low != high:
        found.append(("transposed", feet + 9 * (low - high), 1.0))
    tenth = round(rest * 10)
    marks = [whole + tenth / 12] if 1 <= tenth < 10 and abs(rest - tenth / 10) < 0.004 else []
    marks += [whole + i / 12 for i in (10, 11) if abs(rest - i / 100) < 0.004]
    found += [("inches", value, 1 / len(marks)) for value in marks]
    if feet < 92:
        found.append(("reversed", 100 - feet, 1.0))
    return [c for c in found if 2 <= c[1] <= 10_000 and abs(c[1] - feet) > 0.004]


def log_sum(logs):
    top = max(logs)
    return top + math.log(sum(math.exp(log - top) for log in logs))


def evidence(freedom, chi2):
    return log_sum([math.log(c) - freedom * math.log(f) - chi2 / 2 / f**2 for f, c in ROUGHNESS])


def evidence_of_any(freedom, rest, off, variance):
    logs = []
    for factor, chance in ROUGHNESS:
        square = factor * factor
        room = OTHER_SIGMA**2 / (variance * square)
        left = off * off / variance / (1 + room)
        logs.append(
            math.log(chance) - freedom * math.log(factor) - (rest + left) / 2 / square
            - math.log1p(room) / 2
        )
    return log_sum(logs)


def chances(readings, fit, others):
    """The chance that nothing is wrong, and of a slip in each reading."""
    count = len(readings)
    freedom = fit["freedom"]
    one = math.log(SLIP) + (count - 1) * math.log(1 - SLIP)
    nothing = count * math.log(1 - SLIP) + evidence(freedom, fit["chi2"])
    logs = []
    for k, reading in enumerate(readings):
        feet = reading["feet"]
        rest, off, variance = others[k] or (fit["chi2"], 0.0, math.inf)
        own = [
            one + math.log(SHARES[kind] * part)
            + evidence(freedom, rest + (off - (feet - value)) ** 2 / variance)
            for kind, value, part in candidates(feet)
        ]
        if feet - off > 0:
            own.append(one + math.log(SHARES["other"]) + evidence_of_any(freedom, rest, off, variance))
        logs.append(log_sum(own))
    everything = log_sum([nothing, *logs])
    return math.exp(nothing - everything), [math.exp(log - everything) for log in logs]


def judge(survey):
    shape = Shape(survey["turns"])
    readings = survey["readings"]
    fit = adjust(shape, readings)
    others = [alone(fit, k) for k in range(len(readings))]
    nothing, slips = chances(readings, fit, others)
    if nothing < 0.9:
        for k, found in enumerate(others):
            if found and abs(found[1]) > 1.0 and fit["redundancies"][k] > 0.02:
                others[k] = without(shape, readings, k, fit) or found
        nothing, slips = chances(readings, fit, others)
    return dict(
        corners=fit["points"].tolist(),
        residuals=fit["residuals"].tolist(),
        redundancies=fit["redundancies"].tolist(),
        nothing_wrong=nothing,
        chances=slips,
    )


def main():
    task = json.load(sys.stdin)
    answers = [judge(survey) for survey in task["surveys"]]
    times = []
    for _ in range(task["rounds"]):
        start = time.perf_counter()
        for survey in task["surveys"]:
            judge(survey)
        times.append((time.perf_counter() - start) * 1000 / len(task["surveys"]))
    json.dump(dict(milliseconds=sorted(times)[len(times) // 2], answers=answers), sys.stdout)


if __name__ == "__main__":
    main()
