"""Looks at a metric program with centre arcs and the pieces it cuts, with shapely alone.

Input (JSON): text, reach (how far beside an edge its tracks lie), top, pieces (each a list of rings, dense corners, the outline first).
Output (JSON): legal (no piece overlaps another), apart (least distance between two pieces), and for each ring the first and last line of the program
that cuts beside it.
"""
import json
import math
import re
import sys

from shapely.geometry import LinearRing, LineString, Polygon

job = json.load(sys.stdin)
WORD = re.compile(r"([A-Z])(-?[0-9.]+)")
at = {"X": None, "Y": None, "Z": None}
motion, cuts = None, []
for number, line in enumerate(job["text"].splitlines(), 1):
    words = WORD.findall(re.sub(r"\(.*?\)", "", line))
    to, centre = dict(at), {"I": 0.0, "J": 0.0}
    for letter, value in words:
        if letter == "G" and float(value) in (0, 1, 2, 3):
            motion = int(float(value))
        elif letter in to:
            to[letter] = float(value)
        elif letter in centre:
            centre[letter] = float(value)
    if motion and None not in at.values() and (to["X"], to["Y"]) != (at["X"], at["Y"]) and max(at["Z"], to["Z"]) < job["top"]:
        points = [(at["X"], at["Y"])]
        if motion >= 2:
            cx, cy = at["X"] + centre["I"], at["Y"] + centre["J"]
            r = math.hypot(centre["I"], centre["J"])
            a0, a1 = math.atan2(at["Y"] - cy, at["X"] - cx), math.atan2(to["Y"] - cy, to["X"] - cx)
            if motion == 3 and a1 <= a0:
                a1 += 2 * math.pi
            if motion == 2 and a1 >= a0:
                a1 -= 2 * math.pi
            points += [(cx + r * math.cos(a0 + (a1 - a0) * k / 16), cy + r * math.sin(a0 + (a1 - a0) * k / 16)) for k in range(1, 16)]
        points.append((to["X"], to["Y"]))
        cuts.append((number, LineString(points)))
    at = to

pieces = [Polygon(rings[0], rings[1:]) for rings in job["pieces"]]
pairs = [(a, b) for i, a in enumerate(pieces) for b in pieces[:i]]
lines = []
for rings in job["pieces"]:
    of = []
    for ring in map(LinearRing, rings):
        beside = [n for n, path in cuts if ring.distance(path) < job["reach"]]
        of.append([min(beside), max(beside)] if beside else [0, 0])
    lines.append(of)
print(json.dumps({
    "legal": all(p.is_valid for p in pieces) and all(a.intersection(b).area == 0 for a, b in pairs),
    "apart": min((a.distance(b) for a, b in pairs), default=0.0),
    "lines": lines,
}))
