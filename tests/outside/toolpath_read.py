"""Reads a DXF of toolpaths with ezdxf: audit, unit, and each layer's entities as kind, length in space (arcs in their plane) and the heights of their ends."""
import io
import json
import math
import sys

import ezdxf

document = ezdxf.read(io.StringIO(sys.stdin.read()))
audit = document.audit()
layers = {}
for entity in document.modelspace():
    if entity.dxftype() == "LINE":
        a, b = entity.dxf.start, entity.dxf.end
        row = ["LINE", (b - a).magnitude, a.z, b.z]
    else:
        sweep = (entity.dxf.end_angle - entity.dxf.start_angle) % 360
        row = [entity.dxftype(), entity.dxf.radius * math.radians(sweep), entity.dxf.center.z, entity.dxf.center.z]
    layers.setdefault(entity.dxf.layer, []).append(row)
print(json.dumps({"errors": len(audit.errors) + len(audit.fixes), "unit": document.header.get("$INSUNITS"), "layers": layers}))
