"""Reads a DXF file from standard input with ezdxf, audits it, and prints what it holds as JSON, numbers in full precision."""
import io
import json
import sys

import ezdxf


def entity(e):
    kind = e.dxftype()
    out = {"kind": kind, "layer": e.dxf.layer, "handle": e.dxf.handle}
    if kind == "LINE":
        out["numbers"] = [*e.dxf.start, *e.dxf.end]
    elif kind == "CIRCLE":
        out["numbers"] = [*e.dxf.center, e.dxf.radius]
    elif kind == "ARC":
        out["numbers"] = [*e.dxf.center, e.dxf.radius, e.dxf.start_angle, e.dxf.end_angle]
        out["points"] = [list(e.start_point), list(e.end_point)]
    elif kind == "ELLIPSE":
        out["numbers"] = [*e.dxf.center, *e.dxf.major_axis, e.dxf.ratio, e.dxf.start_param, e.dxf.end_param]
        out["extrusion"] = list(e.dxf.extrusion)
        start, end = e.dxf.start_param, e.dxf.end_param
        out["points"] = [list(p) for p in e.vertices([start + (end - start) * i / 8 for i in range(9)])]
    elif kind == "SPLINE":
        out["numbers"] = [e.dxf.degree, len(e.knots), len(e.control_points), len(e.weights)]
        tool = e.construction_tool()
        knots = tool.knots()
        low, high = knots[tool.order - 1], knots[len(knots) - tool.order]
        out["points"] = [list(tool.point(low + (high - low) * i / 32)) for i in range(33)]
        out["flattened"] = [list(p) for p in e.flattening(0.01)]
    elif kind == "LWPOLYLINE":
        out["numbers"] = [number for point in e.get_points("xyb") for number in point]
        out["closed"] = bool(e.closed)
    elif kind == "SOLID":
        out["numbers"] = [*e.dxf.vtx0, *e.dxf.vtx1, *e.dxf.vtx2, *e.dxf.vtx3]
    return out


def main():
    text = sys.stdin.read()
    document = ezdxf.read(io.StringIO(text))
    auditor = document.audit()
    print(json.dumps({
        "version": document.dxfversion,
        "units": document.header.get("$INSUNITS", 0),
        "measurement": document.header.get("$MEASUREMENT", 0),
        "lineTypeScale": document.header.get("$LTSCALE", 1),
        "extent": [*document.header["$EXTMIN"], *document.header["$EXTMAX"]],
        "errors": [f"{e.code}: {e.message}" for e in auditor.errors],
        "fixes": [f"{e.code}: {e.message}" for e in auditor.fixes],
        "layers": {
            layer.dxf.name: [layer.dxf.color, layer.dxf.linetype, layer.dxf.lineweight]
            for layer in document.layers
        },
        "layouts": document.layout_names_in_taborder(),
        "entities": [entity(e) for e in document.modelspace()],
    }))


main()
