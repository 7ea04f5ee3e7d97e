"""Rolls a guide round a pattern and prints how far the work that the cutter leaves is from the finished edge.

Read is one JSON object: the pattern's ring, the diameters of guide and cutter, and points of the finished edge that the work must have. The axis of the router may be
anywhere outside the pattern grown by the guide's radius; the cutter takes off all within its own radius of such a place. What stays is therefore the grown pattern
shrunk by the cutter's radius. Printed is the largest distance of a point from the edge of the work.
"""
import json
import sys

from shapely.geometry import Point, Polygon

case = json.load(sys.stdin)
pattern = Polygon(case["pattern"])
axis = pattern.buffer(case["guide"] / 2, resolution=512)
work = axis.buffer(-case["cutter"] / 2, resolution=512)
print(max(work.exterior.distance(Point(p)) for p in case["finished"]))
