"""What the generators of all areas share: quantities, tolerances, the file.

Nothing here or in the generators uses the library that the suite checks.
Quantities are read as exact fractions; numbers that are no fractions are mpmath
numbers of 60 digits (Debian package python3-mpmath). Inside, lengths are in mm, slopes are
ratios, angles in radians, clock positions in degrees, temperatures in degrees C.
"""

import json
import os
import re
from fractions import Fraction

import mpmath
from mpmath import mp, mpf

mp.dps = 60
DIGITS = 34  # that are written, where a number does not end sooner
EPS = Fraction(1, 2**52)
SINCE = "1.0.0"
HERE = os.path.dirname(os.path.abspath(__file__))
MPMATH = "mpmath " + mpmath.__version__ + ", 60 digits"

F = Fraction
UNITS = {  # factor to the unit used inside, by quantity
    "length": {"mm": F(1), "um": F(1, 1000), "nm": F(1, 10**6), "cm": F(10), "m": F(1000),
               "mil": F(254, 10000), "in": F(254, 10), "ft": F(3048, 10)},
    "slope": {"mm/m": F(1, 1000), "um/m": F(1, 10**6), "mm/100mm": F(1, 100), "mil/in": F(1, 1000),
              "mil/ft": F(1, 12000), "in/ft": F(1, 12), "in/in": F(1), "mm/mm": F(1), "m/m": F(1)},
    "difference": {"K": F(1), "degC": F(1), "°C": F(1), "degF": F(5, 9), "°F": F(5, 9)},
    "expansion": {"um/m/K": F(1, 10**6), "1/K": F(1), "um/m/degF": F(9, 5 * 10**6), "um/m/°F": F(9, 5 * 10**6),
                  "1/degF": F(9, 5), "1/°F": F(9, 5), "mil/in/°F": F(9, 5000)},
    "rotation": {"rpm": F(1), "Hz": F(60)},
    "sliding": {"mm/s": F(1), "m/s": F(1000), "in/s": F(254, 10)},
}


def number(text):
    """Reads a decimal, a fraction, or a whole number and a fraction."""
    m = re.fullmatch(r"([+-]?)(?:(\d+)[ -])?(\d+)/(\d+)", text)
    if m:
        size = F(int(m[2] or 0)) + F(int(m[3]), int(m[4]))
        return -size if m[1] == "-" else size
    return F(text)


def read(text, kind):
    """Reads a quantity of a kind in UNITS into a fraction of the unit inside."""
    unit = max((u for u in UNITS[kind] if text.endswith(" " + u)), key=len)
    value = text[: -len(unit) - 1]
    return number(value) * UNITS[kind][unit]


def length(text): return read(text, "length")
def slope(text): return read(text, "slope")


def angle(text):
    """Reads an angle into radians: a fraction, or an mpmath number from degrees."""
    value, unit = text.split()
    x = number(value)
    if unit == "deg":
        return big(x) * mp.pi / 180
    return x * {"rad": F(1), "mrad": F(1, 1000), "urad": F(1, 10**6)}[unit]


def clock(text):
    """Reads a clock position into degrees, a fraction."""
    m = re.fullmatch(r"(\d+):(\d\d)", text)
    if m:
        return (F(m[1]) * 30 + F(m[2]) / 2) % 360
    value, unit = text.split()
    assert unit == "deg", text
    return number(value)


def big(x):
    """Turns a fraction into an mpmath number."""
    return mpf(x.numerator) / x.denominator if isinstance(x, F) else mpf(x)


QUARTER = {0: (0, 1), 90: (1, 0), 180: (0, -1), 270: (-1, 0)}


def sincos(degrees):
    """Returns sine and cosine of an angle in degrees, exact at the quarters."""
    exact = QUARTER.get(F(degrees) % 360)
    if exact:
        return mpf(exact[0]), mpf(exact[1])
    t = big(F(degrees)) * mp.pi / 180
    return mp.sin(t), mp.cos(t)


class Refused(Exception):
    """A program with some slip cannot answer at all."""


def measure(text, slip=""):
    """Reads a length in mm, with the slips that are made in reading one."""
    if slip == "mil_as_hundredth" and text.endswith(" mil"):
        return number(text[:-4]) / 100
    whole = re.fullmatch(r"([+-]?\d+) (\d+/\d+) (\w+)", text)
    if slip == "fraction_misread" and whole:  # 5 7/16 as 57/16: the blank is lost
        text = whole[1] + whole[2] + " " + whole[3]
    return length(text)


def gp_angle(text):
    """Writes an angle in radians for pari-gp."""
    value, unit = text.split()
    return "(%s)*%s" % (number(value), {"deg": "Pi/180", "rad": "1", "mrad": "1/1000", "urad": "1/1000000"}[unit])


def gp_matrix(rows):
    """Writes a matrix for pari-gp."""
    return "[" + ";".join(",".join(str(v) for v in row) for row in rows) + "]"


def decimal(x):
    """Writes a number: all digits of one that ends by DIGITS, else DIGITS of them."""
    x = x if isinstance(x, F) else mpf(x)
    if x == 0:
        return "0"
    if isinstance(x, F):
        d = x.denominator
        for p in (2, 5):
            while d % p == 0:
                d //= p
        if d == 1:
            scale = 0
            while (x * 10**scale).denominator != 1:
                scale += 1
            digits = str(abs(int(x * 10**scale))).rjust(scale + 1, "0")
            text = digits[:-scale] + "." + digits[-scale:] if scale else digits
            if len(digits.strip("0")) <= DIGITS and len(text) < 60:
                return ("-" if x < 0 else "") + text
    text = mp.nstr(big(x), DIGITS, min_fixed=-6, max_fixed=20, strip_zeros=False)
    return text


OUT = {"mm": F(1), "mm/m": F(1, 1000), "K": F(1), "deg": F(1), "um/m/K": F(1, 10**6), "rpm": F(1), "mm/s": F(1), "": F(1)}


def out(x, unit="mm"):
    """Writes a quantity that is held in the unit inside."""
    x = x / OUT[unit] if isinstance(x, F) else mpf(x) / big(OUT[unit])
    return (decimal(x) + " " + unit).strip()


def mm(x): return out(x, "mm")
def mm_m(x): return out(x, "mm/m")


def short(x, unit, digits=3):
    """Writes a bound, rounded up to a few digits."""
    x = big(x) / big(OUT[unit])
    if x == 0:
        return ("0 " + unit).strip()
    e = int(mp.floor(mp.log10(x)))
    n = str(int(mp.ceil(x / mpf(10) ** (e - digits + 1) - mpf(10) ** -20)))
    e += len(n) - digits  # rounding up may have carried
    text = (n[0] + "." + n[1:]).rstrip("0").rstrip(".")
    return ("%s%s %s" % (text, "e%d" % e if e else "", unit)).strip()


def rounding(scale, unit, kappa=1, c=16):
    """Returns the tolerance c * 2^-52 * kappa * scale; scale is held in the unit inside."""
    # What is written is what counts: within follows from the written factors.
    scale_text, kappa_text = short(scale, unit, 6), short(kappa, "", 6)
    exact = c * EPS * F(kappa_text) * F(scale_text.split()[0])
    return {"within": short(big(exact) * big(OUT[unit]), unit, 6), "reason": "rounding", "c": c, "kappa": kappa_text, "scale": scale_text}


def exact(x, unit):
    """Returns the tolerance of half a unit in the last place at x."""
    return {"within": short(abs(big(x)) * big(EPS) / 2, unit), "reason": "exact"}


def published(half_digit, unit):
    """Returns the tolerance of a printed number: text of half a unit of its last digit."""
    return {"within": (half_digit + " " + unit).strip(), "reason": "published"}


class Area:
    """One file of vectors."""

    def __init__(self, name, regions):
        """regions maps each region to (class, about); class is plain, hard or invalid."""
        self.name, self.regions, self.vectors = name, regions, []

    def add(self, id, op, region, flags, about, source, input, result=None, tolerance=None, verify=None, since=SINCE):
        """Adds a vector with a result."""
        assert self.regions[region][0] != "invalid", id
        v = {"id": self.name + "-" + id, "since": since, "about": about, "op": op, "region": region, "flags": sorted(flags),
             "source": source, "input": input, "result": result, "tolerance": tolerance or {}}
        if verify is not None:
            v["verify"] = verify
        self.vectors.append(v)
        return v

    def refuse(self, id, twin, region, code, path, input, about, flags=None, since=SINCE):
        """Adds a vector with one fault; twin is the vector that add returned."""
        assert self.regions[region][0] == "invalid", id
        self.vectors.append({"id": self.name + "-" + id, "since": since, "about": about, "op": twin["op"], "region": region,
                             "flags": flags or ["answers_" + code], "source": {"kind": "contract", "by": "PROTOCOL.md, refusals"},
                             "input": input, "error": {"code": code, "path": path}, "twin": twin["id"]})

    def save(self):
        """Checks what can be checked here and writes the file, one vector a line."""
        ids = [v["id"] for v in self.vectors]
        assert len(set(ids)) == len(ids), "an id is there twice"
        cells = {}
        for v in self.vectors:
            assert v["flags"], v["id"]
            for flag in v["flags"]:
                cells.setdefault((v["op"], v["region"], flag), []).append(v["id"])
        own = {i[0] for i in cells.values() if len(i) == 1}
        idle = [i for i in ids if i not in own]
        assert not idle, "covers no cell of its own: %s" % idle
        assert set(self.regions) == {v["region"] for v in self.vectors}, "regions: %s" % (set(self.regions) ^ {v["region"] for v in self.vectors})
        with open(os.path.join(HERE, "..", self.name + ".json"), "w", encoding="utf-8") as f:
            f.write('{"area":%s,"count":%d,"regions":{\n' % (json.dumps(self.name), len(ids)))
            f.write(",\n".join('%s:%s' % (json.dumps(r), line({"class": c, "about": a})) for r, (c, a) in self.regions.items()))
            f.write('\n},"vectors":[\n')
            f.write(",\n".join(line(v) for v in self.vectors))
            f.write("\n]}\n")
        kinds = [self.regions[v["region"]][0] for v in self.vectors]
        print("%s: %d vectors, %d hard, %d invalid" % (self.name, len(ids), kinds.count("hard"), kinds.count("invalid")))


def line(x):
    return json.dumps(x, ensure_ascii=False, separators=(",", ":"))


def changed(input, pointer, value=None):
    """Returns a copy of an input with one value changed, or added, or (None) removed."""
    new = json.loads(json.dumps(input))
    *way, last = [int(p) if p.isdigit() else p for p in pointer.strip("/").split("/")]
    at = new
    for p in way:
        at = at[p]
    if value is None:
        del at[last]
    elif isinstance(at, list) and last == len(at):
        at.append(value)
    else:
        at[last] = value
    return new


def differs(a, b, tolerance, factor=1000, at=""):
    """Tells whether result b, of a mistake, is off result a by over factor tolerances anywhere.

    Texts with a unit are compared as numbers; both have the same unit, as out writes them.
    """
    if isinstance(a, dict):
        return any(k not in b or differs(a[k], b[k], tolerance, factor, at + "/" + k) for k in a)
    if isinstance(a, list):
        return len(a) != len(b) or any(differs(x, y, tolerance, factor, at + "/*") for x, y in zip(a, b))
    if isinstance(a, str) and at in tolerance:
        within = F(tolerance[at]["within"].split()[0])
        return abs(F(a.split()[0]) - F(b.split()[0])) > factor * within
    return a != b
