"""Takeoff and price of a roof by the rules that the program itself follows, in plain Python and the
standard library: the peer of a benchmark, and a second reading of the rules.

    takeoff_peer.py ROUNDS SURVEY RESULT RATES CODE

SURVEY is a survey file, RESULT what `eavebook solve` says of it (only its faces, edges and the spread of
its area are read), RATES and CODE the settings as TOML. The whole of it is worked out ROUNDS times; one
JSON line says how many seconds each took and what it came to.

Feet, square feet, pounds; a name ending in _in is inches; a mil is 1/1000 inch. Money is Decimal."""

import json
import math
import sys
import time
import tomllib
from decimal import ROUND_HALF_UP
from decimal import Decimal as D

SLIVER = 125  # mils: 1/8 in
Z90 = 1.2815515655446004


def mil(inches):
    return math.floor(inches * 1000 + 0.5)


def up(x):
    return math.ceil(x - 1e-6)


def ceil_div(a, b):
    return -(-a // b)


def cents(x):
    return D(x).quantize(D("0.01"), ROUND_HALF_UP)


def dec(x, places):
    return D(repr(float(x))).quantize(D(1).scaleb(-places), ROUND_HALF_UP)


# ---------------------------------------------------------------- faces in their own plane
def frame(poly):
    """-> (to_uv, slope factor, pitch): u to the right seen from outside with the eave below, v up."""
    n = [0.0, 0.0, 0.0]
    for (x0, y0, z0), (x1, y1, z1) in zip(poly, poly[1:] + poly[:1]):
        n[0] += (y0 - y1) * (z0 + z1)
        n[1] += (z0 - z1) * (x0 + x1)
        n[2] += (x0 - x1) * (y0 + y1)
    m = math.sqrt(sum(c * c for c in n))
    n = [c / m for c in n]
    if n[2] < 0:
        n = [-c for c in n]
    h = math.hypot(n[0], n[1])
    if h < 1e-9:
        v, u = (0.0, 1.0, 0.0), (1.0, 0.0, 0.0)
    else:
        v = (-n[0] * n[2] / h, -n[1] * n[2] / h, h)
        u = (v[1] * n[2] - v[2] * n[1], v[2] * n[0] - v[0] * n[2], v[0] * n[1] - v[1] * n[0])
    dot = lambda a, p: a[0] * p[0] + a[1] * p[1] + a[2] * p[2]
    return (lambda p: (12 * dot(u, p), 12 * dot(v, p))), 1 / n[2], 12 * h / n[2]


def ring_area(r):
    return abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(r, r[1:] + r[:1]))) / 2


def face_area(poly):
    uv, _, _ = frame(poly)
    return ring_area([uv(p) for p in poly]) / 144


def shadow(rings, lo, hi):
    """Intervals of u over which the region (even-odd over rings) has height inside lo..hi."""
    us = set()
    for r in rings:
        for (u0, v0), (u1, v1) in zip(r, r[1:] + r[:1]):
            us.add(u0)
            for c in (lo, hi):
                if (v0 - c) * (v1 - c) < 0:
                    us.add(u0 + (u1 - u0) * (c - v0) / (v1 - v0))
    us = sorted(us)
    out = []
    for a, b in zip(us, us[1:]):
        if b - a < 1e-7:
            continue
        m, cross = (a + b) / 2, []
        for r in rings:
            for (u0, v0), (u1, v1) in zip(r, r[1:] + r[:1]):
                if (u0 > m) != (u1 > m):
                    cross.append(v0 + (v1 - v0) * (m - u0) / (u1 - u0))
        cross.sort()
        if any(min(t, hi) - max(s, lo) > 1e-6 for s, t in zip(cross[::2], cross[1::2])):
            if out and a - out[-1][1] < 1e-6:
                out[-1][1] = b
            else:
                out.append([a, b])
    return out


# ---------------------------------------------------------------- courses, pieces, off-cuts
class Pool:
    def __init__(self, least, on):
        self.least, self.on, self.start, self.finish = least, on, [], []

    def keep(self, where, length):
        if self.on and length >= self.least:
            where.append(length)

    def take(self, length, *pools):
        best = None
        for p in pools:
            for i, c in enumerate(p):
                if c >= length and (best is None or c < best[0]):
                    best = (c, p, i)
        if best:
            best[1].pop(best[2])
        return best is not None


def runs(rings, field):
    """-> [(course, [(a, b) mils from the anchor])]"""
    if field["anchor"] == "right":
        rings = [[(-u, v) for u, v in r] for r in rings]
    u0 = min(u for u, _ in rings[0])
    v0, v1 = min(v for _, v in rings[0]), max(v for _, v in rings[0])
    e = mil(field["exposure_in"])
    out = []
    for k in range(ceil_div(mil(v1 - v0), e)):
        butt = v0 + k * e / 1000
        iv = [(mil(a - u0), mil(b - u0)) for a, b in shadow(rings, butt, min(butt + field["height_in"], v1))]
        out.append((k, [(a, b) for a, b in iv if b - a >= SLIVER]))
    return out


def lay(rings, field, pool):
    """One face. -> dict(courses, run_ft, pieces_laid, new_pieces, reused)"""
    P, st = mil(field["piece_in"]), mil(field["stagger_in"])
    new = laid = reused = 0
    total = 0
    rr = runs(rings, field)
    for k, ivs in rr:
        s = (k % field["steps"]) * st % P
        for a, b in ivs:
            total += b - a
            j = s + P * ceil_div(a + SLIVER - s, P)
            cuts = [a]
            while j <= b - SLIVER:
                cuts.append(j)
                j += P
            cuts.append(b)
            n = len(cuts) - 1
            for i in range(n):
                c = min(cuts[i + 1] - cuts[i], P)
                laid += 1
                first, last = i == 0, i == n - 1
                if c < P and (first or last):
                    src = (
                        [pool.start, pool.finish]
                        if first and last
                        else [pool.start] if first else [pool.finish]
                    )
                    if pool.take(c, *src):
                        reused += 1
                        continue
                    pool.keep(pool.finish if first and not last else pool.start, P - c)
                new += 1
    return dict(courses=len(rr), run_ft=total / 12000, pieces_laid=laid, new_pieces=new, reused=reused)


# ---------------------------------------------------------------- takeoff
def tri(t):
    a, c, b = t
    return (a + b + c) / 3, (a * a + b * b + c * c - a * b - a * c - b * c) / 18


def step(table, x):
    f = table[0][1]
    for frm, g in table:
        if x >= frm - 1e-6:
            f = g
    return f


def inside(p, poly):
    hit = False
    for (x0, y0, *_), (x1, y1, *_) in zip(poly, poly[1:] + poly[:1]):
        if (y0 > p[1]) != (y1 > p[1]) and p[0] < x0 + (x1 - x0) * (p[1] - y0) / (y1 - y0):
            hit = not hit
    return hit


def below(x, parts):
    """Chance that a mixture of lognormals [(weight, mean, variance)] is at most x."""
    p = 0.0
    for w, m, v in parts:
        s2 = math.log1p(v / (m * m))
        mu = math.log(m) - s2 / 2
        p += w * (float(x >= m) if s2 < 1e-18 else 0.5 * math.erfc((mu - math.log(x)) / math.sqrt(2 * s2)))
    return p


def quantile(p, parts):
    parts = [q for q in parts if q[0] > 0]
    lo, hi = min(q[1] for q in parts) / 100, max(q[1] for q in parts) * 100
    for _ in range(200):
        mid = math.sqrt(lo * hi)
        if below(mid, parts) < p:
            lo = mid
        else:
            hi = mid
    return hi


def tear_off(area, area_sigma, survey, R):
    t, cov = R["tear_off"], survey.get("covering", {})
    mu, var = tri(t["covering_psf"].get(cov.get("kind", "other"), t["covering_psf"]["other"]))
    chances = (
        [(cov["layers"], 1.0)] if "layers" in cov else [(i + 1, p) for i, p in enumerate(t["layer_chance"])]
    )
    top = t["granule_ceiling_percent"]
    g, vg = tri([min(x, top) / 100 for x in t["granule_loss_percent"]])
    w, vw = tri([x / 100 for x in t["wet_percent"]])

    def times(a, b):
        return a[0] * b[0], a[1] * b[1] + a[1] * b[0] ** 2 + b[1] * a[0] ** 2

    parts = []
    for n, chance in chances:
        q = times(times((n * mu, n * var), (1 - g, vg)), (1 + w, vw))
        for add in [t["felt_psf"]] + ([t["deck_psf"]] if t["remove_deck"] else []):
            a, va = tri(add)
            q = (q[0] + a, q[1] + va)
        parts.append((chance, *times(q, (area, area_sigma**2))))
    mean = sum(c * m for c, m, _ in parts)
    variance = sum(c * (v + (m - mean) ** 2) for c, m, v in parts)
    out = dict(
        mean_lb=mean,
        sigma_lb=math.sqrt(variance),
        p10_lb=quantile(0.1, parts),
        p50_lb=quantile(0.5, parts),
        p90_lb=quantile(0.9, parts),
    )
    tr = R["trailer"]
    by_w = 1 / tr["payload_lb"]
    by_v = 1 / (tr["density_lb_per_cuyd"] * tr["volume_cuyd"])
    per = max(by_w, by_v)
    out["limit"] = "payload" if by_w >= by_v else "volume"
    for p in ("p10", "p50", "p90"):
        out["loads_" + p] = out[p + "_lb"] * per
    out["loads_by_payload"], out["loads_by_volume"] = up(out["p90_lb"] * by_w), up(out["p90_lb"] * by_v)
    out["loads"] = max(out["loads_by_payload"], out["loads_by_volume"])
    return out


def takeoff(faces, edges, bodies, survey, R, C, area_sigma=0.0, scale=1.0):
    F = R["field"]
    e = mil(F["exposure_in"])
    cautions = []
    pool = Pool(mil(F["least_off_cut_in"]), F["pool"] != "none")
    order = (
        sorted(
            range(len(faces)),
            key=lambda i: ([b["id"] for b in bodies].index(faces[i]["body"]), faces[i]["leg"], i),
        )
        if bodies
        else range(len(faces))
    )
    geo = {}
    for i in order:
        uv, sf, pitch = frame(faces[i]["polygon"])
        geo[i] = dict(
            uv=uv,
            sf=sf,
            pitch=pitch,
            ring=[uv(p) for p in faces[i]["polygon"]],
            holes=[],
            hole_area=0.0,
            area=face_area(faces[i]["polygon"]),
        )
    boots, steps_, apron = {}, 0, 0.0
    for p in survey.get("penetrations", []):
        i = next((i for i in order if inside(p["at"], faces[i]["polygon"])), None)
        if p["kind"] in ("chimney", "skylight"):
            if i is None:
                cautions.append("on no face: " + p["kind"])
                continue
            g = geo[i]
            sf = g["sf"]
            steps_ += 2 * ceil_div(mil(12 * p["depth"] * sf), e)
            apron += 2 * p["width"]
            a = p["width"] * p["depth"] * sf
            if a >= F["deduct_from_sqft"] - 1e-6:
                x0, y0, z0 = faces[i]["polygon"][0]
                n = plane(faces[i]["polygon"])
                z = z0 - (n[0] * (p["at"][0] - x0) + n[1] * (p["at"][1] - y0)) / n[2]
                u, v = g["uv"]((p["at"][0], p["at"][1], z))
                hw, hd = 6 * p["width"], 6 * p["depth"] * sf
                g["holes"].append([(u - hw, v - hd), (u + hw, v - hd), (u + hw, v + hd), (u - hw, v + hd)])
                g["hole_area"] += a
        else:
            key = (p["kind"], f'{p["size_in"]:g}')
            boots[key] = boots.get(key, 0) + 1
    courses, not_shingled, net, new = [], [], 0.0, 0
    for i in order:
        f, g = faces[i], geo[i]
        if g["pitch"] < C["underlayment"]["least_pitch"] - 1e-6:
            not_shingled.append(dict(body=f["body"], leg=f["leg"], area=g["area"]))
            continue
        if F["pool"] == "face":
            pool.start.clear()
            pool.finish.clear()
        r = lay([g["ring"]] + g["holes"], F, pool)
        a = g["area"] - g["hole_area"]
        net += a
        new += r["new_pieces"]
        bought = r["new_pieces"] * F["piece_in"] * F["exposure_in"] / 144
        courses.append(
            dict(body=f["body"], leg=f["leg"], net_area=a, **r, waste_percent=100 * (bought / a - 1))
        )
    past = 0
    if R["valley"]["kind"] == "closed":
        for ed in edges:
            if ed["kind"] == "valley":
                i = min(ed["faces"], key=lambda i: (round(geo[i]["pitch"], 6), i))
                up_slope = ed["rise"] * geo[i]["sf"] / (geo[i]["pitch"] / 12)
                past += up(ceil_div(mil(12 * up_slope), e) * R["valley"]["past_in"] / F["piece_in"])
    L = {
        k: sum(x["length"] for x in edges if x["kind"] == k)
        for k in ("eave", "rake", "ridge", "hip", "valley", "side wall", "head wall")
    }
    area = sum(g["area"] for g in geo.values())
    root = math.sqrt(scale)
    # --- what is needed, scaled (scale = 1 but for the low and high price)
    lines = []

    def line(item, needed, unit, pack, unit_pack, margin=0.0, whole=False):
        if needed <= 1e-9:
            return
        packs = up(needed * (1 + margin / 100) / pack)
        lines.append(
            dict(
                item=item,
                needed=needed,
                unit=unit,
                margin_percent=margin,
                pack_size=pack,
                pack=unit_pack,
                packs=packs,
                left_over=packs * pack - needed,
            )
        )

    pieces = up((new + past) * scale)
    line("field", pieces, "piece", F["per_pack"], "pack", F["margin_percent"])
    S = R["starter"]
    line(
        "starter",
        (L["eave"] + (L["rake"] if S["rakes"] else 0)) * root,
        "ft",
        S["pack_ft"],
        "pack",
        S["margin_percent"],
    )
    cap = sum(
        ceil_div(mil(12 * x["length"] * root), mil(R["cap"]["exposure_in"]))
        for x in edges
        if x["kind"] in ("hip", "ridge")
    )
    line("cap", cap, "piece", R["cap"]["per_pack"], "pack", R["cap"]["margin_percent"])
    V = R["ridge_vent"]
    vent = (
        sum(max(0.0, x["length"] - 2 * V["set_back_ft"]) for x in edges if x["kind"] == "ridge") * root
        if V["use"]
        else 0.0
    )
    line("ridge vent", vent, "ft", V["stick_ft"], "stick", V["margin_percent"])
    Y = R["valley"]
    if Y["kind"] == "open metal":
        line(
            "valley metal",
            sum(x["length"] + Y["extra_ft"] for x in edges if x["kind"] == "valley") * root,
            "ft",
            Y["roll_ft"],
            "roll",
            Y["margin_percent"],
        )
    I, K = R["ice_barrier"], C["ice_barrier"]
    ice, ice_ft = [], 0.0
    if K["required"]:
        W, lap = mil(I["width_in"]), mil(I["lap_in"])
        for i in order:
            g = geo[i]
            el = sum(x["length"] for x in edges if x["kind"] == "eave" and i in x["faces"])
            if el <= 0:
                continue
            oh = faces[i].get("overhang")
            if oh is None:
                oh = I["overhang_in"] / 12
                cautions.append(f'overhang not given: {faces[i]["body"]} leg {faces[i]["leg"]}')
            req = (12 * oh + K["inside_in"] + K["wall_in"]) * g["sf"]
            if K["steep_from_pitch"] > 0 and g["pitch"] >= K["steep_from_pitch"] - 1e-6:
                req = max(req, K["steep_in"])
            H = mil(max(v for _, v in g["ring"]) - min(v for _, v in g["ring"]))
            need = lambda w: max(1, ceil_div(w - lap, W - lap))
            n = min(need(mil(req)), need(H))
            ice_ft += n * el
            ice.append(
                dict(body=faces[i]["body"], leg=faces[i]["leg"], up_slope_in=req, courses=n, length_ft=n * el)
            )
        if I["valleys"]:
            ice_ft += L["valley"]
        line(
            "ice barrier",
            ice_ft * root,
            "ft",
            I["roll_ft"] - I["end_lap_in"] / 12,
            "roll",
            I["margin_percent"],
        )
    U = R["underlayment"]
    low = C["underlayment"]["half_lap_below_pitch"]
    half = sum(g["area"] for g in geo.values() if g["pitch"] < low - 1e-6)
    line(
        "underlayment",
        ((area - half) + half * U["roll_sqft"] / U["half_lap_sqft"]) * scale,
        "sq ft",
        U["roll_sqft"],
        "roll",
        U["margin_percent"],
    )
    M = R["edge_metal"]
    for k in ("eave", "rake"):
        line(
            k + " edge metal",
            L[k] * root,
            "ft",
            M["stick_ft"] - M["lap_in"] / 12,
            "stick",
            M["margin_percent"],
        )
    steps_ += sum(ceil_div(mil(12 * x["length"]), e) for x in edges if x["kind"] == "side wall")
    line(
        "step flashing",
        up(steps_ * root),
        "piece",
        R["step_flashing"]["per_pack"],
        "pack",
        R["step_flashing"]["margin_percent"],
    )
    A = R["apron_flashing"]
    line(
        "apron flashing",
        (apron + L["head wall"]) * root,
        "ft",
        A["stick_ft"] - A["lap_in"] / 12,
        "stick",
        A["margin_percent"],
    )
    line(
        "kick-out",
        sum(1 for x in edges if x["kind"] == "side wall" and x.get("foot_on_eave")),
        "piece",
        1,
        "piece",
    )
    N = R["nails"]
    line("nails", (pieces * F["nails"] + cap * R["cap"]["nails"]) / N["per_lb"], "lb", N["box_lb"], "box")
    for (kind, size), n in sorted(boots.items()):
        line(f"{kind} boot {size} in", n, "piece", 1, "piece")
    dk = survey.get("deck", {})
    Dk = R["deck"]
    overlay = dk.get("kind") == "plank" and dk.get("gap_in", 0) > Dk["overlay_over_gap_in"] + 1e-9
    line(
        "deck sheet",
        area * scale * (1 if overlay else Dk["allowance_percent"] / 100),
        "sq ft",
        Dk["sheet_sqft"],
        "sheet",
        Dk["margin_percent"],
    )
    # --- labour, weight, air, the three ways of billing
    lab, layers = R["labour"], survey.get("covering", {}).get("layers")
    if layers is None:
        layers = sum((i + 1) * p for i, p in enumerate(R["tear_off"]["layer_chance"]))
        cautions.append("layers not given")
    df = lab["strip_deck"].get(dk.get("kind", "other"), lab["strip_deck"]["other"])
    base = [
        (
            g["area"]
            * scale
            / 100
            * step(lab["steepness"], g["pitch"])
            * step(lab["height"], faces[i]["eave_height"])
        )
        for i, g in geo.items()
    ]
    lay_h, strip_h = sum(base) * lab["lay_hours"], sum(base) * lab["strip_hours"] * layers * df
    plan = sum(b["plan_area"] for b in bodies) * scale
    VN = C["ventilation"]
    reqd = plan * 144 / VN["ratio"]
    upper = reqd * VN["upper_percent"] / 100
    ridge_in2 = vent * V["nfa_sqin_per_ft"]
    per_sq = F["piece_in"] * F["exposure_in"] / 144
    fp = next((l["packs"] for l in lines if l["item"] == "field"), 0)
    return dict(
        net_area=net * scale,
        squares=net * scale / 100,
        courses=courses,
        not_shingled=not_shingled,
        laid=dict(
            new_pieces=new,
            valley_pieces=past,
            pieces_laid=sum(c["pieces_laid"] for c in courses),
            reused=sum(c["reused"] for c in courses),
            waste_percent=100 * ((new + past) * per_sq / net - 1) if net else 0.0,
            ordered_waste_percent=100 * (fp * F["per_pack"] * per_sq / (net * scale) - 1) if net else 0.0,
        ),
        order=lines,
        ice_barrier=ice,
        tear_off=tear_off(area * scale, area_sigma, survey, R),
        ventilation=dict(
            plan_area=plan,
            ratio=VN["ratio"],
            required_sqin=reqd,
            upper_sqin=upper,
            lower_sqin=reqd - upper,
            ridge_vent_sqin=ridge_in2,
            upper_short_sqin=max(0.0, upper - ridge_in2),
        ),
        labour=dict(lay_hours=lay_h, strip_hours=strip_h),
        billing=dict(
            net_squares=net * scale / 100,
            accessory_squares=(
                net * scale + (L["hip"] + L["ridge"]) * root + L["eave"] * root * F["exposure_in"] / 12
            )
            / 100,
            ordered_squares=fp * F["per_pack"] * per_sq / 100,
        ),
        deck_overlay=overlay,
        cautions=cautions,
    )


def plane(poly):
    n = [0.0, 0.0, 0.0]
    for (x0, y0, z0), (x1, y1, z1) in zip(poly, poly[1:] + poly[:1]):
        n[0] += (y0 - y1) * (z0 + z1)
        n[1] += (z0 - z1) * (x0 + x1)
        n[2] += (x0 - x1) * (y0 + y1)
    return n


# ---------------------------------------------------------------- price
def price(t, R):
    lines = []

    def add(part, item, qty, unit, unit_price):
        q = qty if isinstance(qty, D) else D(qty)
        lines.append(
            dict(
                part=part,
                item=item,
                quantity=str(q),
                unit=unit,
                unit_price=str(D(unit_price)),
                amount=str(cents(q * D(unit_price))),
            )
        )

    named = {
        "field": R["field"]["price"],
        "starter": R["starter"]["price"],
        "cap": R["cap"]["price"],
        "ridge vent": R["ridge_vent"]["price"],
        "valley metal": R["valley"]["price"],
        "ice barrier": R["ice_barrier"]["price"],
        "underlayment": R["underlayment"]["price"],
        "eave edge metal": R["edge_metal"]["eave_price"],
        "rake edge metal": R["edge_metal"]["rake_price"],
        "step flashing": R["step_flashing"]["price"],
        "apron flashing": R["apron_flashing"]["price"],
        "kick-out": R["kick_out"]["price"],
        "nails": R["nails"]["price"],
    }
    for l in t["order"]:
        if l["item"] == "deck sheet":
            over = t["deck_overlay"]
            add("materials" if over else "allowances", "deck sheet", l["packs"], "sheet", R["deck"]["price"])
            add(
                "labour" if over else "allowances",
                "deck sheet labour",
                l["packs"],
                "sheet",
                R["deck"]["labour_price"],
            )
        elif " boot " in l["item"]:
            kind, size = l["item"].split(" boot ")
            tab = R["boots"][kind]
            add("materials", l["item"], l["packs"], "piece", tab.get(size[:-3], tab["other"]))
        else:
            add("materials", l["item"], l["packs"], l["pack"], named[l["item"]])
    add("labour", "lay", dec(t["labour"]["lay_hours"], 2), "hour", R["labour"]["hour_price"])
    add("labour", "strip", dec(t["labour"]["strip_hours"], 2), "hour", R["labour"]["hour_price"])
    P = R["price"]
    add("disposal", "tip", dec(t["tear_off"]["mean_lb"] / 2000, 2), "ton", P["tip_per_ton"])
    add("disposal", "trip", t["tear_off"]["loads"], "load", P["trip"])
    for name, amt in P["fixed"]:
        add("fixed", name, 1, "each", amt)
    part = {
        p: sum((D(l["amount"]) for l in lines if l["part"] == p), D("0.00"))
        for p in ("materials", "labour", "disposal", "allowances", "fixed")
    }
    tax = cents(part["materials"] * D(P["tax_percent"]) / 100)
    cost = sum(part.values()) + tax
    pc = D(P["profit_percent"])
    if P["billing"] == "ordered packs":
        total = cents(cost / (1 - pc / 100)) if P["method"] == "margin" else cents(cost * (1 + pc / 100))
    else:
        sq = t["billing"]["net_squares" if P["billing"] == "net area" else "accessory_squares"]
        total = cents(dec(sq, 2) * D(P["square_price"])) + part["allowances"] + part["fixed"]
    return dict(
        lines=lines,
        **{k: str(v) for k, v in part.items()},
        tax=str(tax),
        cost=str(cost),
        profit=str(total - cost),
        total=str(total),
    )


def result(faces, edges, bodies, survey, R, C, area_sigma=0.0):
    t = takeoff(faces, edges, bodies, survey, R, C, area_sigma)
    p = price(t, R)
    area = sum(face_area(f["polygon"]) for f in faces)
    rel = Z90 * area_sigma / area
    for name, f in (("low", 1 - rel), ("high", 1 + rel)):
        p[name] = (
            p["total"]
            if area_sigma == 0
            else price(takeoff(faces, edges, bodies, survey, R, C, 0.0, f), R)["total"]
        )
    return dict(takeoff=t, price=p)


def house_of(survey, result):
    """Faces, edges, bodies and sigma of the area, as `result` takes them."""
    at = {b["id"]: b for b in survey["bodies"]}
    faces = [
        dict(
            body=f["body"],
            leg=f["leg"],
            polygon=f["polygon"],
            eave_height=at[f["body"]]["eave_height"],
            overhang=at[f["body"]]["edges"][f["leg"]].get("overhang"),
        )
        for f in result["faces"]
    ]
    edges = [dict(e, rise=abs(e["from"][2] - e["to"][2])) for e in result["edges"]]
    plan = result["totals"]["plan_area"] / len(at)
    bodies = [dict(id=name, plan_area=plan) for name in at]
    return faces, edges, bodies, result["totals"]["area_sigma"]


def main():
    rounds = int(sys.argv[1])
    survey, solved = (json.load(open(name)) for name in sys.argv[2:4])
    rates, code = (tomllib.load(open(name, "rb")) for name in sys.argv[4:6])
    faces, edges, bodies, sigma = house_of(survey, solved)
    began = time.perf_counter()
    for _ in range(rounds):
        told = result(faces, edges, bodies, survey, rates, code, sigma)
    each = (time.perf_counter() - began) / rounds
    print(json.dumps({"seconds": each, **{k: told["price"][k] for k in ("total", "low", "high")}}))


if __name__ == "__main__":
    main()
