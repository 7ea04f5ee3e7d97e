"""
Writes drawings of closed shapes with holes with ezdxf, and prints as JSON the area that shapely finds in ezdxf's own flattening of them.

Input: JSON {"folder": ..., "seed": ..., "count": ...}. Output: a list of {name, unit, pieces: [{area, perimeter, loops}]}, in mm, sorted by area.
The flattening has a sagitta of at most "sagitta" mm.
"""
import json
import math
import os
import random
import sys

import ezdxf
from shapely.geometry import Polygon

VERSIONS = ["R12", "R2000", "R2004", "R2007", "R2010", "R2013", "R2018"]
UNITS = {1: 25.4, 4: 1.0, 5: 10.0}
SAGITTA = 0.001


def outer(rng, space, x, y, r, version):
    """One closed outline round (x, y) that leaves a circle of 0.6 r about the middle free, and reaches no farther than 1.5 r. The entities."""
    kinds = ["lines", "polyline", "circle", "arcs", "heavy"] + ([] if version == "R12" else ["ellipse", "spline", "rational"])
    kind = rng.choice(kinds)
    n = rng.randint(5, 9)
    turn = rng.uniform(0, math.tau)
    ring = [(x + rng.uniform(0.9, 1.1) * r * math.cos(turn + math.tau * i / n), y + rng.uniform(0.9, 1.1) * r * math.sin(turn + math.tau * i / n)) for i in range(n)]
    layer = {"layer": "edge"}
    if kind == "lines":
        sides = [(ring[i], ring[(i + 1) % n]) for i in range(n)]
        rng.shuffle(sides)
        return [[space.add_line(*(s if rng.random() < 0.5 else s[::-1]), dxfattribs=layer) for s in sides], Polygon(ring)]
    if kind == "polyline" and version != "R12":
        return [[space.add_lwpolyline([(px, py, rng.choice([0, rng.uniform(-0.1, 0.3)])) for px, py in ring], format="xyb", close=True, dxfattribs=layer)], None]
    if kind in ("heavy", "polyline"):
        return [[space.add_polyline2d([(px, py, rng.choice([0, rng.uniform(-0.1, 0.3)])) for px, py in ring], format="xyb", close=True, dxfattribs=layer)], None]
    if kind == "circle":
        return [[space.add_circle((x, y), r, dxfattribs=layer)], None]
    if kind == "arcs":
        a = math.degrees(turn)
        first = space.add_arc((x, y), r, a, a + 200, dxfattribs=layer)
        second = space.add_arc((x, y), r, a + 200, a + 360, dxfattribs=layer)
        return [[first, second], Polygon([(x + r * math.cos(turn + t * math.tau / 4000), y + r * math.sin(turn + t * math.tau / 4000)) for t in range(4000)])]
    if kind == "ellipse":
        return [[space.add_ellipse((x, y), (1.3 * r * math.cos(turn), 1.3 * r * math.sin(turn)), rng.uniform(0.6, 1), dxfattribs=layer)], None]
    # A clamped spline that ends where it begins; the hull keeps it off the hole.
    poles = [(px * 1.0, py * 1.0) for px, py in ring]
    poles = [(x + (px - x) * 1.3, y + (py - y) * 1.3) for px, py in poles] + [None]
    poles[-1] = poles[0]
    spline = space.add_spline(dxfattribs=layer)
    spline.dxf.degree = 3
    spline.control_points = [(px, py, 0) for px, py in poles]
    spline.knots = ezdxf.math.open_uniform_knot_vector(len(poles), 4)
    if kind == "rational":
        spline.weights = [rng.uniform(0.8, 1.3) for _ in poles]
    return [[spline], None]


def polygon(entity, sagitta):
    """ezdxf's own flattening, whose points lie on the curve. (Its paths would not do: they stand Bézier curves for arcs.)"""
    parts = list(entity.virtual_entities()) if entity.dxftype() in ("LWPOLYLINE", "POLYLINE") else [entity]
    rows = [[part.dxf.start, part.dxf.end] if part.dxftype() == "LINE" else list(part.flattening(sagitta)) for part in parts]
    points = []
    for i, row in enumerate(rows):
        # An arc that turns clockwise comes as one the other way round: it goes on from the one before, the first one into the next.
        on = rows[1] if i == 0 and len(rows) > 1 else None
        if points:
            turned = points[-1].distance(row[0]) > points[-1].distance(row[-1])
        else:
            turned = on is not None and min(row[0].distance(p) for p in (on[0], on[-1])) < min(row[-1].distance(p) for p in (on[0], on[-1]))
        points += row[::-1] if turned else row
    return Polygon([(p.x, p.y) for p in points])


def make(rng, name, folder):
    version = rng.choice(VERSIONS)
    doc = ezdxf.new(version)
    # R12 has no header variable for the unit; such a drawing is compared as if in mm.
    code = 4 if version == "R12" else rng.choice(list(UNITS))
    doc.header["$INSUNITS"] = code
    unit = UNITS[code]
    model = doc.modelspace()
    pieces = []
    for i in range(rng.randint(1, 6)):
        x, y, r = i * 100 / unit, rng.uniform(-50, 50) / unit, rng.uniform(5, 30) / unit
        in_block = rng.random() < 0.3
        space = doc.blocks.new(f"PART{i}") if in_block else model
        (ox, oy) = (0, 0) if in_block else (x, y)
        # Flattening is by sagitta in drawing units.
        entities, known = outer(rng, space, ox, oy, r, version)
        shape = known or polygon(entities[0], SAGITTA / unit)
        loops, length = 1, shape.length
        area = shape.area
        if rng.random() < 0.5:
            space.add_circle((ox, oy), 0.4 * r)
            area, length, loops = area - math.pi * (0.4 * r) ** 2, length + math.tau * 0.4 * r, 2
        scale = 1.0
        if in_block:
            scale = rng.choice([1, 0.7, 1.2])
            model.add_blockref(f"PART{i}", (x, y), dxfattribs={"xscale": rng.choice([-1, 1]) * scale, "yscale": scale, "zscale": scale, "rotation": rng.uniform(0, 360)})
        pieces.append({"area": area * (scale * unit) ** 2, "perimeter": length * scale * unit, "loops": loops})
    model.add_text("not to be cut")
    doc.saveas(os.path.join(folder, name), **({"fmt": "bin"} if rng.random() < 0.25 else {}))
    return {"name": name, "unit": unit, "pieces": sorted(pieces, key=lambda p: p["area"])}


ask = json.load(sys.stdin)
rng = random.Random(ask["seed"])
print(json.dumps({"sagitta": SAGITTA, "drawings": [make(rng, f"trace{i}.dxf", ask["folder"]) for i in range(ask["count"])]}))
