"""Reads shapes and offsets of them as JSON, one a line, and prints for each what shapely and pyclipper find.

A line holds the rings of the shape (outer ones counter-clockwise), those for its area (the chords may be longer), the distance, and points of the offset that was made. Printed are the least and the largest distance
of those points from the shape's rings (shapely), and the area of pyclipper's offset.
"""
import json
import sys

import pyclipper
from shapely.geometry import MultiLineString, Point

SCALE = 1e6


def clipper_area(rings, distance, arc_tolerance):
    offset = pyclipper.PyclipperOffset(2.0, arc_tolerance * SCALE)
    paths = [[(round(x * SCALE), round(y * SCALE)) for x, y in ring] for ring in rings]
    offset.AddPaths(paths, pyclipper.JT_ROUND, pyclipper.ET_CLOSEDPOLYGON)
    return sum(pyclipper.Area(p) for p in offset.Execute(distance * SCALE)) / SCALE / SCALE


def main():
    for line in sys.stdin:
        case = json.loads(line)
        boundary = MultiLineString([ring + [ring[0]] for ring in case["rings"]])
        distances = [boundary.distance(Point(p)) for p in case["points"]]
        print(
            min(distances, default=-1.0),
            max(distances, default=-1.0),
            clipper_area(case["areaRings"], case["distance"], case["arcTolerance"]),
        )


main()
