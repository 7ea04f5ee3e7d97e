"""
Writes SVG drawings of closed shapes with holes, and prints as JSON the area that shapely finds in a flattening of them made here, from the formulas of the curves.

Input: JSON {"folder": ..., "seed": ..., "count": ...}. Output: a list of {name, pieces: [{area, perimeter, loops}]}, in mm, sorted by area. The flattening has a
sagitta of at most "sagitta" mm.
"""
import json
import math
import os
import random
import sys

from shapely.geometry import Polygon

UNITS = {"mm": 1.0, "cm": 10.0, "in": 25.4, "pt": 25.4 / 72, "pc": 25.4 / 6, "px": 25.4 / 96}
STEPS = 2000
# No curve here is longer than 400 mm or bends tighter than 0.5 mm; 2000 steps of an ellipse of 60 mm have 60 * (pi / 2000)^2 / 2.
SAGITTA = 0.001


def num(v):
    return repr(round(v, 6))


def r6(v):
    return round(v, 6)


def ellipse(cx, cy, rx, ry, turn=0.0):
    c, s = math.cos(turn), math.sin(turn)
    return [(cx + rx * math.cos(u) * c - ry * math.sin(u) * s, cy + rx * math.cos(u) * s + ry * math.sin(u) * c) for u in (math.tau * i / STEPS for i in range(STEPS))]


def bezier(points):
    n = len(points) - 1
    out = []
    for i in range(STEPS // 4):
        t = i * 4 / STEPS
        w = [math.comb(n, k) * t ** k * (1 - t) ** (n - k) for k in range(n + 1)]
        out.append((sum(a * p[0] for a, p in zip(w, points)), sum(a * p[1] for a, p in zip(w, points))))
    return out


def outer(rng, r):
    """An outline round zero that keeps a circle of 0.5 r free: the element and its points."""
    kind = rng.choice(["rect", "round", "circle", "ellipse", "polygon", "lines", "cubic", "smooth", "quadratic", "arcs", "turned"])
    n = rng.randint(5, 9)
    ring = [(r6(rng.uniform(0.9, 1.1) * r * math.cos(math.tau * i / n)), r6(rng.uniform(0.9, 1.1) * r * math.sin(math.tau * i / n))) for i in range(n)]
    r = r6(r)
    if kind == "rect":
        return f'<rect x="{-r}" y="{-r}" width="{2 * r}" height="{2 * r}"/>', [(-r, -r), (r, -r), (r, r), (-r, r)]
    if kind == "round":
        rx, ry = r6(0.4 * r), r6(rng.uniform(0.2, 0.5) * r)
        points = []
        for cx, cy, u0 in ((r - rx, r - ry, 0), (rx - r, r - ry, 1), (rx - r, ry - r, 2), (r - rx, ry - r, 3)):
            points += [(cx + rx * math.cos(math.pi / 2 * (u0 + i / 500)), cy + ry * math.sin(math.pi / 2 * (u0 + i / 500))) for i in range(501)]
        return f'<rect x="{-r}" y="{-r}" width="{2 * r}" height="{2 * r}" rx="{rx}" ry="{ry}"/>', points
    if kind == "circle":
        return f'<circle r="{r}"/>', ellipse(0, 0, r, r)
    if kind == "ellipse":
        ry = r6(r * rng.uniform(0.7, 1.2))
        return f'<ellipse rx="{r}" ry="{ry}"/>', ellipse(0, 0, r, ry)
    if kind == "polygon":
        return '<polygon points="' + " ".join(f"{num(x)},{num(y)}" for x, y in ring) + '"/>', ring
    if kind == "lines":
        relative = [(r6(b[0] - a[0]), r6(b[1] - a[1])) for a, b in zip(ring, ring[1:])]
        return f'<path d="m{num(ring[0][0])} {num(ring[0][1])}' + "".join(f"l{num(x)} {num(y)}" for x, y in relative) + 'z"/>', ring
    if kind in ("cubic", "smooth"):
        # A closed row of cubics through points of a circle, control points along the tangents.
        at, arm = [], []
        for i in range(n):
            u = math.tau * i / n
            k = r * rng.uniform(0.9, 1.2) * 4 / 3 * math.tan(math.pi / 2 / n)
            at.append((r6(r * math.cos(u)), r6(r * math.sin(u))))
            arm.append((r6(-k * math.sin(u)), r6(k * math.cos(u))))
        d, points = f"M{num(at[0][0])} {num(at[0][1])}", []
        for i in range(n):
            a, b, p, q = at[i], at[(i + 1) % n], arm[i], arm[(i + 1) % n]
            near = (r6(b[0] - q[0]), r6(b[1] - q[1]))
            points += bezier([a, (a[0] + p[0], a[1] + p[1]), near, b])
            first = kind == "cubic" or i == 0
            d += (f"C{num(a[0] + p[0])},{num(a[1] + p[1])} " if first else "S") + f"{num(near[0])},{num(near[1])} {num(b[0])} {num(b[1])}"
        return f'<path d="{d}Z"/>', points
    if kind == "quadratic":
        d, points = f"M{num(ring[0][0])} {num(ring[0][1])}", []
        for i in range(n):
            a, b = ring[i], ring[(i + 1) % n]
            c = (r6((a[0] + b[0]) * 0.6), r6((a[1] + b[1]) * 0.6))
            points += bezier([a, c, b])
            d += f"q{num(c[0] - a[0])} {num(c[1] - a[1])},{num(b[0] - a[0])} {num(b[1] - a[1])}"
        return f'<path d="{d}z"/>', points
    if kind == "arcs":
        return f'<path d="M{r} 0A{r} {r} 0 0 1 {-r} 0a{r} {r} 0 01{2 * r} 0z"/>', ellipse(0, 0, r, r)
    # Half an ellipse each way, turned; its radii are written too small, and grow until they reach.
    turn = rng.uniform(0, 180)
    c, s = math.cos(math.radians(turn)), math.sin(math.radians(turn))
    ratio = rng.uniform(0.7, 1)
    x, y = r6(r * c), r6(r * s)
    return (f'<path d="M{num(x)} {num(y)}A{num(r / 3)} {num(r / 3 * ratio)} {turn!r} 0 0 {num(-x)} {num(-y)}A{num(r / 3)} {num(r / 3 * ratio)} {turn!r} 1 0 {num(x)} {num(y)}Z"/>',
            ellipse(0, 0, r, r * ratio, math.radians(turn)))


def times(a, b):
    return (a[0] * b[0] + a[2] * b[1], a[1] * b[0] + a[3] * b[1], a[0] * b[2] + a[2] * b[3], a[1] * b[2] + a[3] * b[3],
            a[0] * b[4] + a[2] * b[5] + a[4], a[1] * b[4] + a[3] * b[5] + a[5])


def transforms(rng):
    text, m = "", (1, 0, 0, 1, 0, 0)
    for _ in range(rng.randint(0, 3)):
        kind = rng.choice(["rotate", "scale", "skewX", "skewY", "matrix"])
        if kind == "rotate":
            a = rng.uniform(-180, 180)
            t, n = f"rotate({a!r})", (math.cos(math.radians(a)), math.sin(math.radians(a)), -math.sin(math.radians(a)), math.cos(math.radians(a)), 0, 0)
        elif kind == "scale":
            a, b = rng.choice([-1, 1]) * rng.uniform(0.8, 1.1), rng.uniform(0.8, 1.1)
            t, n = f"scale({a!r},{b!r})", (a, 0, 0, b, 0, 0)
        elif kind == "matrix":
            a = [rng.uniform(0.9, 1.1), rng.uniform(-0.1, 0.1), rng.uniform(-0.1, 0.1), rng.uniform(0.9, 1.1), 0.0, 0.0]
            t, n = "matrix(" + " ".join(repr(v) for v in a) + ")", tuple(a)
        else:
            a = rng.uniform(-8, 8)
            tan = math.tan(math.radians(a))
            t, n = f"{kind}({a!r})", (1, 0, tan, 1, 0, 0) if kind == "skewX" else (1, tan, 0, 1, 0, 0)
        text += t + " "
        m = times(m, n)
    return text, m


def make(rng, name, folder):
    unit = rng.choice(list(UNITS))
    one = UNITS[unit]
    # Coordinates of the view: so many to one of the unit.
    fine = rng.choice([1.0, 10.0, 0.5]) if unit != "px" else 1.0
    mm = one / fine
    pieces, defs, body = [], "", ""
    for i in range(rng.randint(1, 6)):
        r = rng.uniform(5, 20) / mm
        text, points = outer(rng, r)
        hole = ""
        inner = None
        if rng.random() < 0.5:
            h = r6(0.35 * r)
            hole, inner = f'<circle r="{h}"/>', ellipse(0, 0, h, h)
        words, m = transforms(rng)
        x, y = r6((50 + 100 * i) / mm), r6(rng.uniform(40, 60) / mm)
        shape = f'<g id="s{i}" transform="{words}">{text}{hole}</g>'
        if rng.random() < 0.4:
            defs += shape
            body += f'<use href="#s{i}" x="{num(x)}" y="{num(y)}"/>'
        else:
            body += f'<g transform="translate({num(x)},{num(y)})">{shape}</g>'
        place = lambda ps: Polygon([((m[0] * a + m[2] * b) * mm, (m[1] * a + m[3] * b) * mm) for a, b in ps])
        out = place(points)
        area, length, loops = out.area, out.length, 1
        if inner:
            hol = place(inner)
            area, length, loops = area - hol.area, length + hol.length, 2
        pieces.append({"area": area, "perimeter": length, "loops": loops})
    width, height = 600 / one, 100 / one
    svg = (f'<svg xmlns="http://www.w3.org/2000/svg" width="{width!r}{unit if unit != "px" else "mm"}" height="{height!r}{unit if unit != "px" else "mm"}"'
           + (f' viewBox="0 0 {width * fine!r} {height * fine!r}"' if unit != "px" else "") + f"><defs>{defs}</defs>{body}<text>word</text></svg>")
    with open(os.path.join(folder, name), "w", encoding="utf-8") as file:
        file.write(svg)
    return {"name": name, "pieces": sorted(pieces, key=lambda p: p["area"])}


ask = json.load(sys.stdin)
rng = random.Random(ask["seed"])
print(json.dumps({"sagitta": SAGITTA, "drawings": [make(rng, f"trace{i}.svg", ask["folder"]) for i in range(ask["count"])]}))
