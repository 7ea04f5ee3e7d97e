"""Draws with ezdxf the lower right quarter of an ellipse of 40 by 30 (a hollow end of a board), in millimetres, with the edges of a board on a layer of their own."""
import io
import math

import ezdxf

document = ezdxf.new("R2010")
document.header["$INSUNITS"] = 4
space = document.modelspace()

# Its centre lies to the right of where the curve leaves the lower edge: from there, at 180 degrees, it rises to the top of the ellipse, at 90.
space.add_ellipse((240, 110), (40, 0), 0.75, math.pi / 2, math.pi, dxfattribs={"layer": "tail"})
space.add_line((100, 110), (300, 110), dxfattribs={"layer": "board"})
space.add_line((100, 200), (300, 200), dxfattribs={"layer": "board"})
text = io.StringIO()
document.write(text)
print(text.getvalue(), end="")
