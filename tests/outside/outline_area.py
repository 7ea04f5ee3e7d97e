"""Measures what a metric program with centre arcs takes from a panel against the drawing that the piece was cut by, with ezdxf and shapely alone.

Input (JSON): text, radius, bottom (height the bit must reach), top, drawing, near, far (DXF texts: the piece with its holes, and its outside grown by the bit's radius and by the room
of its track), place ([a, b, c, d, e, f]: x' = ax + by + e, y' = cx + dy + f, from the drawing to the bed), tabs ([x, y, along x, along y, reach]).
Output (JSON): gouge (area taken from the piece), left (area that stands in the track beside the piece and in its holes, but for tabs), beyond (area taken outside the room), perimeter
(of the piece with its holes), area (of the piece), sagitta (of all chords used).
"""
import io
import json
import math
import re
import sys

import ezdxf
from shapely.affinity import affine_transform
from shapely.geometry import LineString, Polygon
from shapely.ops import unary_union

SAGITTA = 0.0005
ROUND = 64
job = json.load(sys.stdin)
a, b, c, d, e, f = job["place"]
assert abs(a * a + c * c - 1) < 1e-9 and abs(a * b + c * d) < 1e-9 and abs(abs(a * d - b * c) - 1) < 1e-9


def ring(entity):
    if entity.dxftype() == "CIRCLE":
        return [(p.x, p.y) for p in entity.flattening(SAGITTA)]
    parts = []
    for part in entity.virtual_entities():
        parts.append([(p.x, p.y) for p in (part.flattening(SAGITTA) if part.dxftype() == "ARC" else (part.dxf.start, part.dxf.end))])
    # Arcs always run counter-clockwise, whichever way the outline goes: the first part must end where the second has an end.
    if min(math.dist(parts[0][-1], p) for p in (parts[1][0], parts[1][-1])) > 1e-6:
        parts[0].reverse()
    points = list(parts[0])
    for part in parts[1:]:
        if math.dist(points[-1], part[0]) > 1e-6:
            part.reverse()
        assert math.dist(points[-1], part[0]) < 1e-6
        points += part[1:]
    assert math.dist(points[0], points[-1]) < 1e-6
    return points[:-1]


def piece(text):
    rings = sorted((Polygon(ring(entity)) for entity in ezdxf.read(io.StringIO(text)).modelspace()), key=lambda p: -p.area)
    assert all(p.is_valid for p in rings) and all(rings[0].contains(p) for p in rings[1:])
    return affine_transform(Polygon(rings[0].exterior.coords, [p.exterior.coords for p in rings[1:]]), [a, b, c, d, e, f])


def paths(text):
    at, motion = {"X": None, "Y": None, "Z": None}, None
    for line in text.splitlines():
        words = re.findall(r"([A-Z])(-?[0-9.]+)", re.sub(r"\(.*?\)", "", line))
        to, centre = dict(at), {"I": 0.0, "J": 0.0}
        for letter, value in words:
            if letter == "G" and float(value) in (0, 1, 2, 3):
                motion = int(float(value))
            elif letter in to:
                to[letter] = float(value)
            elif letter in centre:
                centre[letter] = float(value)
        if motion and None not in at.values() and at != to:
            points = [(at["X"], at["Y"])]
            if motion >= 2:
                cx, cy, r = at["X"] + centre["I"], at["Y"] + centre["J"], math.hypot(centre["I"], centre["J"])
                a0, a1 = math.atan2(at["Y"] - cy, at["X"] - cx), math.atan2(to["Y"] - cy, to["X"] - cx)
                if motion == 3 and a1 <= a0:
                    a1 += math.tau
                if motion == 2 and a1 >= a0:
                    a1 -= math.tau
                n = max(2, int(abs(a1 - a0) / (2 * math.acos(1 - min(1, SAGITTA / r)))) + 1)
                points += [(cx + r * math.cos(a0 + (a1 - a0) * k / n), cy + r * math.sin(a0 + (a1 - a0) * k / n)) for k in range(1, n)]
            points.append((to["X"], to["Y"]))
            if len(set(points)) > 1:
                yield min(at["Z"], to["Z"]), max(at["Z"], to["Z"]), LineString(points)
        at = to


wood, near, far = piece(job["drawing"]), piece(job["near"]), piece(job["far"])
moves = list(paths(job["text"]))
taken = unary_union([p.buffer(job["radius"], ROUND) for low, _, p in moves if low < job["top"] - 1e-9])
through = unary_union([p.buffer(job["radius"], ROUND) for _, high, p in moves if high <= job["bottom"] + 1e-6])
tabs = unary_union([
    LineString([(x - u * reach, y - v * reach), (x + u * reach, y + v * reach)]).buffer(3 * job["radius"], cap_style=2) for x, y, u, v, reach in job["tabs"]])
filled = Polygon(wood.exterior)
print(json.dumps({
    "gouge": taken.intersection(wood).area,
    "left": near.difference(filled).difference(through).difference(tabs).area + filled.difference(wood).difference(through).area,
    "beyond": taken.difference(far).area,
    "perimeter": wood.length,
    "area": wood.area,
    "sagitta": 2 * SAGITTA + job["radius"] * (1 - math.cos(math.pi / 4 / ROUND)),
}))
