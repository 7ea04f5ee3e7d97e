#!/usr/bin/env python3
"""Has outlines of a DXF drawing cut, and draws the toolpaths back into a copy of it.

    toolpath_host.py DRAWING.dxf COPY.dxf [--layer NAME] [--job JOB.toml] [--programs FOLDER] [--core FILE]

The drawing is held by ezdxf; what is on the layer (or everything in model space) is taken as selected. JOB.toml names it as `drawing = "@selection"`.
Exit code: 0 done, 1 a finding stops the job, 2 the command or a file can't be used, 3 the core failed.
"""
import argparse
import json
import math
import os
import queue
import subprocess
import sys
import threading

import ezdxf
import ezdxf.bbox

# $INSUNITS of the DXF reference, HEADER section; an inch is 25.4 mm exactly.
MM = {1: 25.4, 2: 304.8, 4: 1.0, 5: 10.0, 6: 1000.0, 10: 914.4, 14: 100.0}
SILENCE = 60.0
COLOURS = {"travel": 8, "ramp": 30, "rough": 5, "finish": 3, "stock": 9, "piece": 7, "out": 1}
GAP = 20.0

JOB = """format = 1
name = "Selection"
unit = "mm"
tolerance = "0.1 mm"
machine = "desktop-400"
dialect = "metric-centre"

[[make]]
id = "selection"
kind = "outline"
drawing = "@selection"
stock = { panel = "hardboard-1/4", thickness = "5.6 mm" }
bit = "downcut-1/4"
"""


class CoreError(Exception):
    """The core gave no result."""


class Core:
    """One process of the core: a message a line, one request open at a time. It ends when this process does, since its input closes then."""

    def __init__(self, command, folder):
        try:
            self.process = subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE)
        except OSError as e:
            raise CoreError(f"the core can't be started: {e}") from e
        self.heard = queue.Queue()
        self.last = 0
        threading.Thread(target=self._listen, daemon=True).start()
        hello = {"protocol": "1", "client": "Python host", "parent": os.getpid()}
        if folder is not None:
            hello["folder"] = folder
        self.call("initialize", hello)

    def _listen(self):
        for line in self.process.stdout:
            self.heard.put(line)
        self.heard.put(None)

    def call(self, method, parameters):
        """The result of a request. Raises CoreError for anything else, and ends a process that is of no more use."""
        self.last += 1
        request = {"jsonrpc": "2.0", "id": self.last, "method": method, "params": parameters}
        try:
            self.process.stdin.write(json.dumps(request, allow_nan=False).encode() + b"\n")
            self.process.stdin.flush()
            while True:
                line = self.heard.get(timeout=SILENCE)
                if line is None:
                    raise CoreError("the core ended without an answer")
                message = json.loads(line)
                if "method" in message:
                    continue
                if message.get("id") != self.last:
                    raise CoreError("the core answers what nobody asked")
                break
        except (OSError, ValueError, queue.Empty, CoreError) as e:
            self.process.kill()
            raise CoreError(str(e) or "the core is silent") from e
        if "error" in message:
            raise CoreError(f"the core refused {method}: {message['error']['message']}")
        return message["result"]

    def close(self):
        self.process.stdin.close()
        try:
            self.process.wait(5)
        except subprocess.TimeoutExpired:
            self.process.kill()
            self.process.wait()


def xy(point, mm):
    return [point[0] * mm, point[1] * mm]


def wire(entity, mm):
    """An entity of DXF as one of the contract, mm; None for what is no line or curve in the plane seen from above."""
    kind = entity.dxftype()
    d = entity.dxf
    if d.hasattr("extrusion") and tuple(d.extrusion) != (0, 0, 1):
        return None
    if kind == "LINE":
        found = {"kind": "line", "from": xy(d.start, mm), "to": xy(d.end, mm)}
    elif kind == "CIRCLE":
        found = {"kind": "circle", "centre": xy(d.center, mm), "radius": d.radius * mm}
    elif kind == "ARC":
        sweep = (d.end_angle - d.start_angle) % 360 or 360.0
        found = {"kind": "arc", "centre": xy(d.center, mm), "radius": d.radius * mm, "start": d.start_angle, "sweep": sweep}
    elif kind == "ELLIPSE":
        found = {"kind": "ellipse", "centre": xy(d.center, mm), "major": xy(d.major_axis, mm), "ratio": d.ratio}
        sweep = math.degrees(d.end_param - d.start_param) % 360
        if 1e-9 < sweep < 360 - 1e-9:
            found.update(start=math.degrees(d.start_param), sweep=sweep)
    elif kind == "LWPOLYLINE" or kind == "POLYLINE" and entity.is_2d_polyline:
        corners = [(p[0], p[1], p[2]) for p in entity.get_points("xyb")] if kind == "LWPOLYLINE" else \
            [(v.dxf.location.x, v.dxf.location.y, v.dxf.get("bulge", 0)) for v in entity.vertices]
        if len(corners) < 2:
            return None
        found = {"kind": "polyline", "points": [xy(c, mm) for c in corners], "bulges": [c[2] for c in corners],
                 "closed": bool(entity.closed if kind == "LWPOLYLINE" else entity.is_closed)}
    elif kind == "SPLINE" and len(entity.control_points) > 0:
        found = {"kind": "spline", "degree": d.degree, "points": [xy(p, mm) for p in entity.control_points], "knots": [float(k) for k in entity.knots]}
        if len(entity.weights) > 0:
            found["weights"] = [float(w) for w in entity.weights]
    else:
        return None
    found["layer"] = d.layer
    return found


def layer_of(document, name):
    if name not in document.layers:
        document.layers.add(name, color=COLOURS.get(name.rsplit("-", 1)[-1], 7))
    return {"layer": name}


def zeros(beds, chosen, mm):
    """Where the work zero of each program is shown, drawing units: to the right of what is selected, program beside program."""
    box = ezdxf.bbox.extents(chosen)
    right, bottom = box.extmax.x + GAP / mm, box.extmin.y
    found = {}
    for bed in beds:
        x0, y0, x1, _ = (v / mm for v in bed["box"])
        found[bed["program"]] = (right - x0, bottom - y0)
        right += x1 - x0 + GAP / mm
    return found


def draw(document, shape, layer, zero, mm):
    """Draws a line or an arc of a preview."""
    space = document.modelspace()
    on = layer_of(document, "toolpath-" + layer)

    def put(point):
        return point[0] / mm + zero[0], point[1] / mm + zero[1]

    if shape["kind"] == "line":
        space.add_line(put(shape["from"]), put(shape["to"]), dxfattribs=on)
    else:
        start, end = shape["start"], shape["start"] + shape["sweep"]
        space.add_arc(put(shape["centre"]), shape["radius"] / mm, min(start, end) % 360, max(start, end) % 360, dxfattribs=on)


def draw_page(document, page, at, mm):
    """Draws a page of a preview: what lies on the bed, then the ways of the bit; gives how many."""
    drawn = [(s, s["layer"], b["program"]) for b in page.get("beds") or [] for s in b["shapes"]]
    drawn += [(e["way"], e["layer"], e["program"]) for e in page["entities"] if e.get("way") is not None]
    for shape, layer, program in drawn:
        draw(document, shape, layer, at[program], mm)
    return len(drawn)


def show(document, findings, mm):
    """Tells what was found, and marks it where it is."""
    for finding in findings:
        print(f"{finding['severity']}: {finding['message']} {finding['advice']}".strip())
        point = (finding.get("where") or {}).get("point")
        if point is not None:
            at = (point["x"] / mm, point["y"] / mm)
            space = document.modelspace()
            on = layer_of(document, "findings")
            space.add_point(at, dxfattribs=on)
            space.add_text(finding["message"], dxfattribs={**on, "height": 3 / mm, "insert": at})


def cut(core, document, chosen, selected, job, folder, mm):
    reply = core.call("plan", {"job": job, "outlines": [{"name": "selection", "entities": selected}]})
    show(document, reply["findings"], mm)
    if "plan" not in reply:
        return 1
    start, count, at = 0, 0, {}
    while start is not None:
        page = core.call("preview", {"plan": reply["plan"], "from": start})
        at = at or zeros(page["beds"], chosen, mm)
        count += draw_page(document, page, at, mm)
        start = page.get("next")
    print(f"{count} lines and arcs drawn.")
    if folder is not None:
        written = core.call("programs", {"plan": reply["plan"], "folder": folder})
        show(document, written["findings"], mm)
        if not written["files"]:
            return 1
        for program in written["programs"]:
            proof = program["program"]["proof"]
            print(f"{program['program']['file']}: {'proven' if proof['passed'] else 'NOT proven'}, deepest gouge {proof['gouge']:.3f} mm of {proof['tolerance']} mm allowed.")
    core.call("release", {"plan": reply["plan"]})
    return 0


def main(arguments):
    parser = argparse.ArgumentParser(description="Has outlines of a DXF drawing cut.")
    parser.add_argument("drawing")
    parser.add_argument("copy")
    parser.add_argument("--layer")
    parser.add_argument("--job")
    parser.add_argument("--programs")
    parser.add_argument("--core", default=os.environ.get("TOOLPATHFORGE_CORE", "toolpathforge"))
    asked = parser.parse_args(arguments)
    try:
        document = ezdxf.readfile(asked.drawing)
        job = JOB if asked.job is None else open(asked.job, encoding="utf-8").read()
    except (OSError, ezdxf.DXFError, UnicodeDecodeError) as e:
        print(f"It can't be read: {e}")
        return 2
    mm = MM.get(document.units)
    if mm is None:
        print("The drawing states no unit that this host knows.")
        return 2
    chosen = [e for e in document.modelspace() if asked.layer is None or e.dxf.layer == asked.layer]
    selected = [w for w in (wire(e, mm) for e in chosen) if w is not None]
    if len(selected) < len(chosen):
        print(f"{len(chosen) - len(selected)} things are no lines or curves in the plane and were left alone.")
    if not selected:
        print("Nothing is selected.")
        return 1
    programs = None if asked.programs is None else os.path.abspath(asked.programs)
    command = ["dotnet", asked.core, "host"] if asked.core.endswith(".dll") else [asked.core, "host"]
    try:
        core = Core(command, None if programs is None else os.path.dirname(programs))
        try:
            code = cut(core, document, chosen, selected, job, None if programs is None else os.path.basename(programs), mm)
        finally:
            core.close()
    except CoreError as e:
        print(f"The core failed: {e}")
        return 3
    faults = document.audit().errors
    if faults:
        print(f"The drawing would not be sound: {faults[0].message}")
        return 2
    document.saveas(asked.copy)
    return code


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
