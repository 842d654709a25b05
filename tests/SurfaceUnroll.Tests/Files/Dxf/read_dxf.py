"""Reads a DXF file with ezdxf and prints what the tests ask for as JSON."""
import json
import sys

import ezdxf
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
    return [list(entity.dxf.insert)[:2]]


print(json.dumps({
    "version": document.dxfversion,
    "insunits": document.header["$INSUNITS"],
    "findings": [str(f.message) for a in (auditor, recovered) for f in a.errors + a.fixes],
    "layers": [layer.dxf.name for layer in document.layers],
    "entities": [{
        "kind": e.dxftype(),
        "layer": e.dxf.layer,
        "linetype": e.dxf.get("linetype", "BYLAYER"),
        "closed": bool(getattr(e, "closed", False)),
        "points": points(e),
        "text": e.plain_text() if e.dxftype() == "TEXT" else None,
    } for e in space],
}))
