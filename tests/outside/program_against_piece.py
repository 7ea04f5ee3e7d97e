"""Measures a metric program with centre arcs against a piece, with shapely alone: an outside opinion on what the proof says.

Input (JSON): text, radius, bottom (height the bit must reach), top, rings (dense corners of the exact piece), edges (points on edges that must be cut).
Output (JSON): gouge and left, mm.
"""
import json
import math
import re
import sys

from shapely.geometry import LineString, Point, Polygon
from shapely.ops import unary_union
from shapely.prepared import prep

job = json.load(sys.stdin)
WORD = re.compile(r"([A-Z])(-?[0-9.]+)")
x = y = z = None
motion = None
low, any_depth = [], []
for line in job["text"].splitlines():
    line = re.sub(r"\(.*?\)", "", line)
    words = WORD.findall(line)
    to = {"X": x, "Y": y, "Z": z}
    i = j = 0.0
    moved = False
    for letter, value in words:
        value = float(value)
        if letter == "G" and value in (0, 1, 2, 3):
            motion = int(value)
        elif letter in to:
            to[letter] = value
            moved = True
        elif letter == "I":
            i = value
        elif letter == "J":
            j = value
    if not moved or any(letter == "M" or letter == "T" for letter, _ in words):
        continue
    if motion and None not in (x, y, z):
        points = [(x, y)]
        if motion >= 2:
            cx, cy = x + i, y + j
            radius = math.hypot(i, j)
            a0 = math.atan2(y - cy, x - cx)
            a1 = math.atan2(to["Y"] - cy, to["X"] - cx)
            if motion == 3 and a1 <= a0:
                a1 += 2 * math.pi
            if motion == 2 and a1 >= a0:
                a1 -= 2 * math.pi
            n = max(2, int(abs(a1 - a0) / (2 * math.acos(1 - min(1, 0.0005 / radius)))) + 1)
            points += [(cx + radius * math.cos(a0 + (a1 - a0) * k / n), cy + radius * math.sin(a0 + (a1 - a0) * k / n)) for k in range(1, n)]
        points.append((to["X"], to["Y"]))
        if points[0] != points[-1] or len(points) > 2:
            if min(z, to["Z"]) < job["top"]:
                any_depth.append(LineString(points))
            if max(z, to["Z"]) <= job["bottom"] + 1e-6:
                low.append(LineString(points))
    x, y, z = to["X"], to["Y"], to["Z"]

piece = Polygon(job["rings"])
inside = prep(piece)
swept = unary_union(any_depth)
gouge = 0.0
for path in any_depth:
    # The nearest that the axis comes to the piece; distance is 0 within it.
    gouge = max(gouge, job["radius"] - path.distance(piece))
cleared = unary_union(low)
left = max((cleared.distance(Point(p)) - job["radius"] for p in job["edges"]), default=0.0)
print(json.dumps({"gouge": gouge, "left": left}))
