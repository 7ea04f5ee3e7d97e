"""Opens the DXF named on stdin with ezdxf, audits it, and prints its faults and how many entities each layer has, as JSON."""
import collections
import json
import sys

import ezdxf

document = ezdxf.readfile(sys.stdin.read().strip())
auditor = document.audit()
print(json.dumps({
    "faults": [e.message for e in auditor.errors + auditor.fixes],
    "units": document.units,
    "layers": dict(collections.Counter(e.dxf.layer for e in document.modelspace())),
    "declared": sorted(layer.dxf.name for layer in document.layers),
}))
