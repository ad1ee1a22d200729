"""Probes, clock positions and feet as an input has them: what the generators of fit and of arc ask about.

    from asked import *
"""

from common import F


def hours(*degrees):
    """Writes positions, multiples of half a degree, as hours and minutes."""
    return ["%d:%02d" % (int(F(str(d)) % 360 // 30) or 12, int(F(str(d)) % 30 * 2)) for d in degrees]


def degrees(*values): return ["%s deg" % v for v in values]


def spread(middle, width, count):
    """Returns `count` positions, evenly over an arc, in degrees."""
    return degrees(*("%g" % (middle - width / 2 + width * i / (count - 1)) for i in range(count)))


QUARTERS = hours(0, 90, 180, 270)
FIVE = hours(240, 300, 0, 60, 120)
SIX = hours(0, 60, 120, 180, 240, 300)


def rim(carrier, station, **more): return {"kind": "rim", "carrier": carrier, "station": station, **more}
def bore(carrier, station): return {"kind": "bore", "carrier": carrier, "station": station}
def edge(carrier, station): return {"kind": "straightedge", "carrier": carrier, "station": station}
def face(carrier, radius): return {"kind": "near_face", "carrier": carrier, "radius": radius}
def far(carrier, radius): return {"kind": "far_face", "carrier": carrier, "radius": radius}
def gap(radius): return {"kind": "gap", "radius": radius}
def joint(carrier, radius, span): return {"kind": "spacer_face", "carrier": carrier, "radius": radius, "span": span}
def far_joint(carrier, radius, span): return {"kind": "spacer_far_face", "carrier": carrier, "radius": radius, "span": span}
def displacement(station, gain): return {"kind": "displacement", "station": station, "gain": gain}


def feet(*stations, u=None):
    """Names two or three feet."""
    names = {1: ["inboard"], 2: ["inboard", "outboard"], 3: ["inboard", "middle", "outboard"]}[len(stations)]
    return [{"name": n, "x": x, **({"u": u[i]} if u else {})} for i, (n, x) in enumerate(zip(names, stations))]
