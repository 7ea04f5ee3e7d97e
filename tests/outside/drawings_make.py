"""
Writes drawings with ezdxf into a folder and prints as JSON what ezdxf itself says they hold.

Input: JSON {"folder": ..., "seed": ..., "count": ...}. Each drawing has random entities in a random version of the format, as text or binary. For every entity of model space,
blocks taken apart by ezdxf, there are points on it (of both its ends and between) in drawing units, with their heights. Entities lie at heights of their own; in every fourth
drawing some have a tilted extrusion direction, by which most of them are no longer flat.
"""
import json
import math
import os
import random
import sys

import ezdxf
from ezdxf.math import Matrix44

VERSIONS = ["R12", "R2000", "R2004", "R2007", "R2010", "R2013", "R2018"]
UNITS = {1: 25.4, 4: 1.0, 5: 10.0, 14: 100.0}
DOWN = (0, 0, -1)


def spread(start, end, count=12):
    return [start + (end - start) * i / count for i in range(count + 1)]


def points_of(e):
    """Points of an entity in world coordinates; a list of lists, one for each curve."""
    kind = e.dxftype()
    if kind == "LINE":
        return [[list(e.dxf.start), list(e.dxf.end)]]
    if kind == "ARC":
        start = e.dxf.start_angle
        end = start + ((e.dxf.end_angle - start) % 360 or 360)
        return [[list(p) for p in e.vertices(spread(start, end))]]
    if kind == "CIRCLE":
        return [[list(p) for p in e.vertices(spread(0, 360))]]
    if kind == "ELLIPSE":
        start, end = e.dxf.start_param, e.dxf.end_param
        while end <= start + 1e-9:
            end += math.tau
        return [[list(p) for p in e.vertices(spread(start, end))]]
    if kind == "SPLINE":
        tool = e.construction_tool()
        knots = tool.knots()
        low, high = knots[tool.order - 1], knots[len(knots) - tool.order]
        return [[list(tool.point(t)) for t in spread(low, high, 40)]]
    if kind in ("LWPOLYLINE", "POLYLINE"):
        return [curve for part in e.virtual_entities() for curve in points_of(part)]
    raise ValueError(kind)


def taken_apart(entities, outer=Matrix44()):
    """
    Points on all curves with the blocks in place, moved by the product of the matrices of ezdxf. (Its own taking apart, in version 0.18.1, turns a block within an
    unevenly scaled one differently from what the product of their matrices says, and does not scale the steps of rows within a scaled block.)
    """
    for e in entities:
        if e.dxftype() == "INSERT":
            for one in e.multi_insert() if e.mcount > 1 else [e]:
                yield from taken_apart(one.block(), one.matrix44() * outer)
        elif e.dxftype() not in ("TEXT", "POINT"):
            yield {"kind": e.dxftype(), "curves": [[list(outer.transform(p)) for p in curve] for curve in points_of(e)]}


class Drawer:
    def __init__(self, rng, version):
        self.rng = rng
        self.old = version == "R12"

    def number(self, low=-300.0, high=300.0):
        return self.rng.uniform(low, high)

    def point(self):
        return (self.number(), self.number())

    def height(self):
        return self.rng.choice([0, 0, 0, self.number(1, 200), self.number(-200, -1)])

    def tilt(self):
        """A direction well away from the upright one, on either side of the 1/64 by which axes are chosen."""
        while True:
            x, y = self.number(-1, 1), self.number(-1, 1)
            if self.rng.random() < 0.3:
                x, y = x / 70, y / 70
            if math.hypot(x, y) > 0.004:
                return (x, y, self.rng.choice([1, -1]))

    def tilted(self, space):
        """One entity that leans; of the first two kinds something flat is left."""
        normal, kind = self.tilt(), self.rng.randint(0, 5)
        extrusion = {"extrusion": normal}
        if kind == 0:
            # The extrusion of a line says where its thickness goes, not where its ends lie.
            z = self.height()
            space.add_line((*self.point(), z), (*self.point(), z), dxfattribs=extrusion)
        elif kind == 1:
            # The x axis of a leaning plane is level, by the arbitrary axis algorithm.
            y = self.number()
            space.add_polyline2d([(self.number(), y), (self.number(), y)], dxfattribs=extrusion)
        elif kind == 2:
            space.add_circle((*self.point(), self.height()), self.number(2, 80), dxfattribs=extrusion)
        elif kind == 3:
            start = self.number(-400, 400)
            space.add_arc((*self.point(), self.height()), self.number(10, 80), start, start + self.number(60, 300), dxfattribs=extrusion)
        elif kind == 4 and not self.old:
            length = self.number(5, 50) / math.hypot(normal[0], normal[1])
            space.add_ellipse((*self.point(), 0), (-normal[1] * length, normal[0] * length, 0), self.number(0.2, 1), 0, math.tau, dxfattribs=extrusion)
        else:
            points = [(self.number(), 100 * i + self.number(0, 50), self.number(-2, 2)) for i in range(4)]
            space.add_polyline2d(points, format="xyb", dxfattribs={**extrusion, "elevation": (0, 0, self.height())})

    def turned(self):
        return {"extrusion": DOWN} if self.rng.random() < 0.3 else {}

    def line(self, space):
        z = self.height()
        space.add_line((*self.point(), z), (*self.point(), z))

    def circle(self, space):
        space.add_circle((*self.point(), self.height()), self.number(0.5, 80), dxfattribs=self.turned())

    def arc(self, space):
        space.add_arc((*self.point(), self.height()), self.number(0.5, 80), self.number(-400, 400), self.number(-400, 400), dxfattribs=self.turned())

    def ellipse(self, space):
        if self.old:
            return self.arc(space)
        angle, length = self.number(-7, 7), self.number(1, 90)
        start, end = self.number(0, 6.2), self.number(0, 6.2)
        if self.rng.random() < 0.3:
            start, end = 0, math.tau
        space.add_ellipse(
            (*self.point(), self.height()), (length * math.cos(angle), length * math.sin(angle)), self.number(0.02, 1), start, end, dxfattribs=self.turned())

    def bulged(self):
        return [(*self.point(), self.rng.choice([0, 0, self.number(-1, 1), self.number(-3, 3), 1])) for _ in range(self.rng.randint(2, 9))]

    def polyline(self, space):
        closed = self.rng.random() < 0.5
        if self.old or self.rng.random() < 0.3:
            space.add_polyline2d(self.bulged(), format="xyb", close=closed, dxfattribs={**self.turned(), "elevation": (0, 0, self.height())})
        else:
            space.add_lwpolyline(self.bulged(), format="xyb", close=closed, dxfattribs={**self.turned(), "elevation": self.height()})

    def polyline_in_space(self, space):
        z = self.height()
        space.add_polyline3d([(*self.point(), z) for _ in range(self.rng.randint(2, 6))], close=self.rng.random() < 0.5)

    def spline(self, space):
        if self.old:
            return self.polyline(space)
        degree = self.rng.choice([2, 3, 3, 3, 4, 5])
        z = self.height()
        poles = [(*self.point(), z) for _ in range(self.rng.randint(degree + 1, degree + 7))]
        kind = self.rng.randint(0, 3)
        weights = [self.number(0.3, 4) for _ in poles]
        spline = space.add_spline(degree=degree)
        if kind == 0:
            spline.set_open_uniform(poles, degree=degree)
        elif kind == 1:
            spline.set_open_rational(poles, weights, degree=degree)
        elif kind == 2:
            spline.set_closed(poles, degree=degree)
        else:
            spline.set_closed_rational(poles, weights, degree=degree)

    def any_of(self, space, count):
        kinds = [self.line, self.circle, self.arc, self.ellipse, self.polyline, self.polyline_in_space, self.spline]
        for _ in range(count):
            self.rng.choice(kinds)(space)

    def insert(self, space, name):
        scale = self.rng.choice([1, 1, 0.5, 2, -1])
        scales = {"xscale": scale, "yscale": scale, "zscale": scale}
        if self.rng.random() < 0.4:
            scales = {"xscale": self.number(0.3, 2), "yscale": self.number(0.3, 2) * self.rng.choice([1, -1]), "zscale": 1}
        attributes = {**scales, "rotation": self.rng.choice([0, 90, 180, 37.5, self.number(-400, 400)]), **self.turned()}
        if self.rng.random() < 0.3:
            attributes.update(row_count=self.rng.randint(1, 3), column_count=self.rng.randint(1, 3), row_spacing=self.number(), column_spacing=self.number())
        space.add_blockref(name, (*self.point(), self.height()), dxfattribs=attributes)


def draw(rng, index):
    version = VERSIONS[index % len(VERSIONS)]
    document = ezdxf.new(version)
    unit = rng.choice(list(UNITS))
    document.header["$INSUNITS"] = unit
    drawer = Drawer(rng, version)
    inner = document.blocks.new("INNER", base_point=drawer.point())
    drawer.any_of(inner, 3)
    outer = document.blocks.new("outer ring", base_point=drawer.point())
    drawer.any_of(outer, 2)
    drawer.insert(outer, "INNER")
    space = document.modelspace()
    drawer.any_of(space, 6)
    for _ in range(rng.randint(0, 3)):
        drawer.insert(space, rng.choice(["INNER", "outer ring"]))
    if index % 4 == 3:
        for _ in range(rng.randint(1, 4)):
            drawer.tilted(space)
        if rng.random() < 0.5:
            space.add_blockref("INNER", drawer.point(), dxfattribs={"extrusion": drawer.tilt()})
    space.add_text("a word")
    space.add_point((1, 2))
    # The oldest version knows no unit.
    return document, version, None if version == "R12" else UNITS[unit]


def main():
    request = json.load(sys.stdin)
    rng = random.Random(request["seed"])
    made = []
    for index in range(request["count"]):
        document, version, unit = draw(rng, index)
        name = f"{index:03d}-{version}.dxf"
        binary = rng.random() < 0.3
        document.saveas(os.path.join(request["folder"], name), fmt="bin" if binary else "asc")
        entities = list(taken_apart(document.modelspace()))
        made.append({"name": name, "version": document.dxfversion, "binary": binary, "unit": unit, "entities": entities})
    print(json.dumps(made))


main()
