"""Reads a DXF file with ezdxf and prints what the tests ask for as JSON."""
import json
import sys

import ezdxf
from ezdxf import path as paths
from ezdxf import recover

path = sys.argv[1]
document = ezdxf.readfile(path)
auditor = document.audit()
# Only the recovering loader of older versions turns \\U+XXXX back to characters.
recovered_document, recovered = recover.readfile(path)
space = recovered_document.modelspace()


def points(entity):
    if entity.dxftype() == "LINE":
        return [list(entity.dxf.start)[:2], list(entity.dxf.end)[:2]]
    if entity.dxftype() == "LWPOLYLINE":
        return [list(p) for p in entity.get_points("xy")]
    if entity.dxftype() == "POLYLINE":
        return [list(v.dxf.location)[:2] for v in entity.vertices]
    return [list(entity.dxf.insert)[:2]]


def closed(entity):
    return bool(entity.is_closed if entity.dxftype() == "POLYLINE" else getattr(entity, "closed", False))


def measures(entity):
    """Area and length with arcs as ezdxf sees them, chords at most 0.0005 mm from their arcs."""
    if not closed(entity):
        return None, None
    p = [(v.x, v.y) for v in paths.make_path(entity).flattening(0.0005)]
    pairs = list(zip(p, p[1:] + p[:1]))
    return abs(sum(a[0] * b[1] - a[1] * b[0] for a, b in pairs)) / 2, sum(((a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2) ** 0.5 for a, b in pairs)


print(json.dumps({
    "version": document.dxfversion,
    "insunits": document.header.get("$INSUNITS", 0),
    "findings": [str(f.message) for a in (auditor, recovered) for f in a.errors + a.fixes],
    "layers": [layer.dxf.name for layer in document.layers],
    "entities": [{
        "kind": e.dxftype(),
        "layer": e.dxf.layer,
        "linetype": e.dxf.get("linetype", "BYLAYER"),
        "closed": closed(e),
        "points": points(e),
        "area": measures(e)[0],
        "length": measures(e)[1],
        "text": e.plain_text() if e.dxftype() == "TEXT" else None,
    } for e in space],
}))
