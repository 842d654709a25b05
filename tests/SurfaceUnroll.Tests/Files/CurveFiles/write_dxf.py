# Writes one drawing in a version of DXF, and says in JSON what is on each of its layers: length, and places along it, as ezdxf knows them.
import json
import math
import sys

import ezdxf
from ezdxf.math import BSpline, closed_uniform_bspline, rational_bspline_from_arc

path, version = sys.argv[1:3]
document = ezdxf.new(version)
space = document.modelspace()
if version != "R12":
    document.header["$INSUNITS"] = 5  # centimetres
expected = {}


def layer(name):
    if name not in document.layers:
        document.layers.new(name)
    return {"layer": name}


def expect(name, points, length):
    expected[name] = {"length": length, "points": [[p[0], p[1]] for p in points]}


def arc(cx, cy, r, start, end, n=9):
    angles = [math.radians(start + (end - start) * i / (n - 1)) for i in range(n)]
    return [(cx + r * math.cos(a), cy + r * math.sin(a)) for a in angles]


def spline(name, entity, curve):
    dense = list(curve.points([curve.max_t * i / 20000 for i in range(20001)]))
    expect(name, dense[::2000], sum(a.distance(b) for a, b in zip(dense, dense[1:])))


space.add_line((0, 0), (30, 40), dxfattribs=layer("line"))
expect("line", [(0, 0), (15, 20), (30, 40)], 50)
space.add_arc((10, 20), 50, 30, 200, dxfattribs=layer("arc"))
expect("arc", arc(10, 20, 50, 30, 200), 50 * math.radians(170))
space.add_circle((5, 6), 25, dxfattribs=layer("circle"))
expect("circle", arc(5, 6, 25, 0, 360), 50 * math.pi)

# A bulge of tan(22.5°) is a quarter circle: (50, 0) to (90, 40) about (50, 40).
corners = [(0, 0, 0), (50, 0, math.tan(math.pi / 8)), (90, 40, 0), (90, 70, 0)]
bulged = [(0, 0), *arc(50, 40, 40, -90, 0), (90, 70)]
space.add_polyline2d(corners, format="xyb", dxfattribs=layer("old polyline"))
expect("old polyline", bulged, 80 + 20 * math.pi)

# Three loose parts, one of them drawn the other way.
loose = layer("loose")
space.add_line((0, 0), (10, 0), dxfattribs=loose)
space.add_line((20, 30), (20, 10), dxfattribs=loose)
space.add_arc((10, 10), 10, 270, 360, dxfattribs=loose)
expect("loose", [(0, 0), *arc(10, 10, 10, -90, 0), (20, 30)], 30 + 5 * math.pi)

# A block, half drawn on layer 0, put in at another place, turned and scaled by 2.
block = document.blocks.new("part", base_point=(1, 1))
block.add_line((1, 1), (11, 1))
block.add_arc((11, 6), 5, -90, 90)
space.add_blockref("part", (100, 200), dxfattribs={**layer("block"), "xscale": 2, "yscale": 2, "rotation": 90})
expect("block", [(100, 200), (100, 220), *[(100 - 2 * (y - 1), 200 + 2 * (x - 1)) for x, y in arc(11, 6, 5, -90, 90)]], 20 + 10 * math.pi)

# Seen from below x runs the other way.
below = space.add_arc((10, 20), 50, 30, 200, dxfattribs=layer("below"))
below.dxf.extrusion = (0, 0, -1)
expect("below", [(-x, y) for x, y in arc(10, 20, 50, 30, 200)], 50 * math.radians(170))

if version != "R12":
    space.add_lwpolyline(corners, format="xyb", dxfattribs=layer("polyline"))
    expect("polyline", bulged, 80 + 20 * math.pi)
    ellipse = space.add_ellipse((1, 2), (40, 30), 0.4, 0.3, 2.5, dxfattribs=layer("ellipse"))
    dense = list(ellipse.vertices([0.3 + 2.2 * i / 20000 for i in range(20001)]))
    expect("ellipse", dense[::2000], sum(a.distance(b) for a, b in zip(dense, dense[1:])))
    for name, curve in {
        "cubic": BSpline([(0, 0), (20, 40), (60, 50), (90, 0), (120, 20)], order=4),
        "quintic": BSpline([(0, 0), (10, 30), (30, 40), (50, 10), (70, 0), (90, 30)], order=6),
        "uneven knots": BSpline([(0, 0), (10, 30), (30, 40), (50, 10), (70, 0), (90, 30)], order=4, knots=[0, 0, 0, 0, 0.1, 0.7, 1, 1, 1, 1]),
        "quadratic": BSpline([(0, 0), (10, 30), (30, 40), (50, 10)], order=3),
        "weights": BSpline([(0, 0), (20, 40), (60, 50), (90, 0)], order=4, weights=[1, 2, 3, 1]),
        "round": rational_bspline_from_arc((3, 4), 20, 10, 250),
        "closed": closed_uniform_bspline([(0, 0), (40, -10), (70, 30), (40, 60), (-5, 40)]),
    }.items():
        entity = space.add_spline(dxfattribs=layer(name))
        entity.apply_construction_tool(curve)
        if name == "closed":  # Its knots are not repeated at the ends: the curve lies between those that all control points reach.
            knots, order = curve.knots(), curve.order
            low, high = knots[order - 1], knots[-order]
            dense = list(curve.points([low + (high - low) * i / 20000 for i in range(20001)]))
            expect(name, dense[::2000], sum(a.distance(b) for a, b in zip(dense, dense[1:])))
        else:
            spline(name, entity, curve)
document.saveas(path)
print(json.dumps(expected))
