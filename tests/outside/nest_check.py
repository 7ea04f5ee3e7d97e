"""Reads nested panels and prints what is wrong with them: pieces nearer than the gap, pieces outside the room.

Arcs come as chords at most 0.002 mm off, so a distance may differ by 0.004 mm.
"""
import sys

from shapely.geometry import Polygon, box

SLACK = 0.004 + 1e-6

gap, room, pieces, loops = 0.0, None, [], None


def close():
    global loops
    if loops:
        pieces.append(Polygon(loops[0], loops[1:]))
    loops = None


for line in sys.stdin:
    word, *numbers = line.split()
    values = [float(n) for n in numbers]
    if word == "panel":
        gap, room, pieces, loops = values[0], box(*values[1:]), [], None
    elif word == "piece":
        close()
        loops = []
    elif word == "loop":
        loops.append(list(zip(values[0::2], values[1::2])))
    elif word == "end":
        close()
        for i, one in enumerate(pieces):
            if not one.is_valid:
                print("piece", i, "is not a valid polygon")
            if not room.buffer(SLACK).contains(one):
                print("piece", i, "leaves the room")
            for k, other in enumerate(pieces[:i]):
                if one.distance(other) < gap - SLACK or one.intersection(other).area > 0:
                    print("pieces", i, k, "are", one.distance(other), "apart, wanted", gap)
