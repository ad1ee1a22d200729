"""Answers the suite by the handbook's closed formulae: an adapter to copy.

It does `rim_face` and `reverse`, from readings at the quarters of the clock,
and skips the rest. It needs Python 3.9 or later and nothing else. From the top
of the repository:

    go run ./examples/conform -- python3 examples/conform/handbook.py

What comes in and goes out is described in testdata/PROTOCOL.md. All numbers
are fractions until they are written, so nothing is rounded on the way. Lengths
are in mm, slopes in mm/mm, clock positions in degrees.
"""

import json
import re
import sys
from decimal import Context, Decimal
from fractions import Fraction

MM = {
    "mm": Fraction(1), "um": Fraction(1, 10**3), "nm": Fraction(1, 10**6),
    "cm": Fraction(10), "m": Fraction(1000), "in": Fraction("25.4"),
    "mil": Fraction("0.0254"), "ft": Fraction("304.8"),
}
CLOCK = {0: "12:00", 90: "3:00", 180: "6:00", 270: "9:00"}
PLANES = ("horizontal", "vertical")

# A sign; a whole number and a fraction, a fraction, or a decimal; a unit.
QUANTITY = re.compile(
    r"(?P<sign>[+-]?)(?:(?P<whole>\d+) +(?=\d+/))?"
    r"(?P<part>\d+/0*[1-9]\d*|(?:\d+(?:\.\d+)?|\.\d+)(?:[eE][+-]?\d{1,3})?)"
    r" *(?P<unit>[A-Za-z°]\S*)", re.ASCII)
HOUR = re.compile(r"(\d\d?):(\d\d)", re.ASCII)
LONGEST = 1000  # characters of a quantity; without a limit one could stall us


# Reading. A reader takes a JSON value, and returns what it means or raises
# Refused. Paths grow from the inside out: each level puts its own name before.

class Refused(Exception):
    """Its one argument lists the faults, each a code and a path."""


def refuse(code, path=""):
    raise Refused([(code, path)])


def refusal(code):
    return lambda value: refuse(code)


def read_all(parts):
    """Reads (name, reader, value) one by one; tells the faults of all."""
    found, faults = {}, []
    for name, read, value in parts:
        # RFC 6901, section 3: ~ and / are escaped within a pointer.
        step = "/" + name.replace("~", "~0").replace("/", "~1")
        try:
            found[name] = read(value)
        except Refused as refused:
            faults += [(code, step + path) for code, path in refused.args[0]]
    if faults:
        raise Refused(faults)
    return found


def members(needed, optional={}):
    """Makes the reader of an object, from the readers of its members."""
    known = {**needed, **optional}

    def read(value):
        if not isinstance(value, dict):
            refuse("malformed")
        parts = [(n, known.get(n, refusal("unknown")), value[n])
                 for n in value]
        parts += [(n, refusal("missing"), None)
                  for n in needed if n not in value]
        return read_all(parts)
    return read


def entries(value, read):
    if not isinstance(value, list):
        refuse("malformed")
    parts = [(str(i), read, entry) for i, entry in enumerate(value)]
    return list(read_all(parts).values())


def text(value):
    if not isinstance(value, str):
        refuse("malformed")
    return value or refuse("missing")


def truth(value):
    return value if isinstance(value, bool) else refuse("malformed")


def word(*known):
    return lambda value: value if text(value) in known else refuse("unknown")


def length(value, units=MM):
    """Reads a text such as "-3.5e-4 mm" or "5 7/16 in", exactly."""
    match = QUANTITY.fullmatch(text(value))
    if not match or len(value) > LONGEST:
        refuse("malformed")
    if match["unit"] not in units:
        refuse("unknown")
    number = Fraction(match["whole"] or 0) + Fraction(match["part"])
    return (-number if match["sign"] == "-" else number) * units[match["unit"]]


def not_negative(value):
    mm = length(value)
    return mm if mm >= 0 else refuse("out_of_range")


def positive(value):
    mm = length(value)
    return mm if mm > 0 else refuse("out_of_range")


def quarter(value):
    """Reads a clock position, which here has to be 12, 3, 6 or 9."""
    face = HOUR.fullmatch(text(value))
    if face:
        hour, minute = int(face[1]), int(face[2])
        sound = 1 <= hour <= 12 and minute == 0
        degrees = 30 * hour if sound else refuse("out_of_range")
    else:
        degrees = length(value, {"deg": Fraction(1)})
    return int(degrees % 360) if degrees % 90 == 0 else refuse("out_of_range")


def sweep(value):
    """Reads three or four quarters, and the return to the first if it came."""
    readings = entries(value, members({"at": quarter, "value": length}))
    shown, back = {}, None
    for i, reading in enumerate(readings):
        at, mm = reading["at"], reading["value"]
        if at not in shown:
            shown[at] = mm
        elif i == len(readings) - 1 and at == readings[0]["at"]:
            back = mm - shown[at]
        else:
            refuse("duplicate", f"/{i}/at")
    if len(shown) < 3:
        refuse("missing")
    return shown, back


def feet(value):
    foot = members({"name": text, "x": length}, {"u": not_negative})
    found = entries(value, foot)
    names = [foot["name"] for foot in found]
    for i, name in enumerate(names):
        if name in names[:i]:
            refuse("duplicate", f"/{i}/name")
    return found


VIEW = word("from_movable", "from_stationary")
MACHINE = word("stationary", "movable")
RIM = members({"station": length, "readings": sweep},
              {"bore": truth, "sag": not_negative})
FACE = members({"diameter": positive, "readings": sweep},
               {"far": truth, "sag": length})


# The handbook. Positions and halves are by plane: {"horizontal", "vertical"}.

def quarters(readings, view):
    """Returns half the difference of opposite readings, and the check."""
    shown, back = readings
    # The crew at the other end sees 3 and 9 exchanged: t = -t_crew.
    side = -1 if view == "from_stationary" else 1
    r = {side * at % 360: mm for at, mm in shown.items()}
    lost = [at for at in CLOCK if at not in r]
    # Validity rule, R12 + R6 = R3 + R9; it also gives the fourth from three.
    # J. Piotrowski, Shaft Alignment Handbook, 3rd ed., ch. 8 (second-hand).
    for at in lost:
        r[at] = r[(at + 90) % 360] + r[(at - 90) % 360] - r[(at + 180) % 360]
        check = {"completed": True, "supplied": CLOCK[at]}
    if not lost:
        check = {"miss": show(r[0] + r[180] - r[90] - r[270], "mm")}
    if back is not None:
        check["return"] = show(back, "mm")
    # R. B. McMillan, Rotating Machinery, 2004, eq. 9.1, 9.2, p. 164 (read).
    return {"horizontal": (r[90] - r[270]) / 2,
            "vertical": (r[0] - r[180]) / 2}, check


def rim_heights(dial, carrier, view):
    """Returns where the movable centreline stands at the dial's station."""
    half, check = quarters(dial["readings"], view)
    into_bore = -1 if dial.get("bore") else 1
    # The bracket's droop shows as sag * cos t, in a bore as -sag * cos t.
    half["vertical"] -= into_bore * dial.get("sag", 0)
    sign = into_bore * (1 if carrier == "stationary" else -1)
    return {plane: sign * half[plane] for plane in PLANES}, check


def face_slopes(dial, view):
    """Returns the slope of the movable centreline; either carrier may turn."""
    half, check = quarters(dial["readings"], view)
    half["vertical"] -= dial.get("sag", 0)
    sign = -1 if dial.get("far") else 1
    # Face reading over swing diameter.
    # R. B. McMillan, Rotating Machinery, 2004, eq. 8.3, p. 141 (read).
    return {plane: sign * 2 * half[plane] / dial["diameter"]
            for plane in PLANES}, check


def rim_face(job):
    """One dial gives the height at its station, the other the slope."""
    rim, view = job["rim"], job["view"]
    height, rim_check = rim_heights(rim, job["carrier"], view)
    slope, face_check = face_slopes(job["face"], view)
    return answer(job, rim["station"], height, slope, [rim_check, face_check])


def reverse(job):
    """Two dials give two heights, and the line through both the slope."""
    one, two = job["carried_by_stationary"], job["carried_by_movable"]
    height, one_check = rim_heights(one, "stationary", job["view"])
    other, two_check = rim_heights(two, "movable", job["view"])
    apart = two["station"] - one["station"]
    if apart == 0:
        refuse("conflict", "/carried_by_movable/station")
    # The line as it is plotted by hand,
    # R. B. McMillan, Rotating Machinery, 2004, p. 161 (read).
    slope = {plane: (other[plane] - height[plane]) / apart for plane in PLANES}
    return answer(job, one["station"], height, slope, [one_check, two_check])


def answer(job, station, height, slope, checks):
    """Returns the line of that height at the station, and the moves to 0."""
    def at(x, plane):
        return height[plane] + slope[plane] * (x - station)

    # A move is the height at the foot, reversed.
    # R. B. McMillan, Rotating Machinery, 2004, eq. 8.3, 8.4, p. 141 (read).
    moves = [{"foot": foot["name"],
              **{plane: show(-at(foot["x"], plane), "mm") for plane in PLANES}}
             for foot in job.get("feet", [])]
    position = {plane: {"offset": show(at(0, plane), "mm"),
                        "slope": show(1000 * slope[plane], "mm/m")}
                for plane in PLANES}
    return {"result": {**position, "moves": moves, "checks": checks,
                       "warnings": []}}


def show(number, unit):
    """Writes a fraction with all its digits, or 40 where they do not end."""
    over, under = Decimal(number.numerator), Decimal(number.denominator)
    return f"{Context(prec=40).divide(over, under):f} {unit}"


# The protocol. An operation has its formula and the reader of its input.

OPS = {
    "rim_face": (rim_face, members(
        {"view": VIEW, "carrier": MACHINE, "rim": RIM, "face": FACE},
        {"feet": feet})),
    "reverse": (reverse, members(
        {"view": VIEW, "carried_by_stationary": RIM,
         "carried_by_movable": RIM}, {"feet": feet})),
}


def respond(request):
    op = request.get("op")
    if not isinstance(op, str):
        return {"error": {"code": "malformed", "path": ""}}
    if op == "describe":
        return {"result": {"name": "handbook", "version": "1.0.0",
                           "ops": list(OPS)}}
    if op == "stop":
        return {"result": {}}
    if op not in OPS:
        return {"skipped": "only " + " and ".join(OPS) + " are done here"}
    formula, read = OPS[op]
    try:
        if "input" not in request:
            refuse("missing")
        job = read(request["input"])
        if any("u" in foot for foot in job.get("feet", [])):
            return {"skipped": "no uncertainties here"}
        return formula(job)
    except Refused as refused:
        faults = [{"code": c, "path": path} for c, path in refused.args[0]]
        return {"error": faults[0], "faults": faults}


def parse(line):
    """Returns the request in a line, an empty one if it cannot be read."""
    try:
        # Python alone would take NaN, which is no JSON; int refuses it.
        request = json.loads(line.decode("utf-8"), parse_constant=int)
    except (ValueError, RecursionError):
        return {}
    sound = isinstance(request, dict) and type(request.get("seq")) is int
    return request if sound else {}


def main():
    for line in sys.stdin.buffer:
        request = parse(line)
        reply = {"seq": request.get("seq"), **respond(request)}
        print(json.dumps(reply), flush=True)
        if request.get("op") == "stop":
            break


if __name__ == "__main__":
    main()
