"""Writes tolerance.json: limits from a sliding speed, limits by speed from a table, runout of shaft extensions.

Run from testdata: python3 generate/tolerance.py (Python 3.11 with mpmath; pari-gp as gp on the path).
"""

import subprocess

from common import *

GP = "pari-gp " + subprocess.run(["gp", "--version-short"], capture_output=True, text=True).stdout.strip() + ", 60 digits"
RATIONAL = "rational arithmetic, Python fractions"

AREA = Area("tolerance", {
    "rub_short": ("plain", "limits of a short coupling from a sliding speed"),
    "rub_usual": ("plain", "the same from the sliding speed that is common practice"),
    "rub_inch": ("plain", "the same in inches throughout"),
    "rub_spacer": ("plain", "limits at the flex planes of a spacer coupling"),
    "rub_spacer_usual": ("plain", "the same from the sliding speed that is common practice"),
    "rub_slow": ("hard", "turning so slowly that the limits are metres"),
    "rub_fast": ("hard", "turning so fast that the limits are micrometres"),
    "between": ("plain", "a speed between two rows of a table"),
    "unordered": ("plain", "rows in another order than from slow to fast"),
    "below_first": ("plain", "a speed below all rows"),
    "one_row": ("plain", "a table of one row"),
    "one_column": ("plain", "a table with one kind of limit only"),
    "on_row": ("hard", "a speed exactly on a row"),
    "on_first_row": ("hard", "a speed exactly on the slowest row"),
    "on_last_row": ("hard", "a speed exactly on the fastest row"),
    "just_over_row": ("hard", "a speed a hair above a row"),
    "just_under_row": ("hard", "a speed a hair below a row"),
    "close_rows": ("hard", "rows that nearly coincide"),
    "shaft_inside": ("plain", "a diameter well inside its class"),
    **{"shaft_over_%d" % d: ("hard", "the class of the table that begins over %d mm: its edges" % d)
       for d in (6, 10, 18, 30, 50, 80, 120, 180, 250, 315, 400, 500)},
    **{name: ("invalid", about) for name, about in {
        "no_sliding": "no sliding speed", "no_speed": "no speed", "no_coupling": "no coupling", "no_diameter": "no diameter",
        "negative_sliding": "a negative sliding speed", "zero_speed": "a speed of zero", "negative_speed": "a negative speed",
        "zero_diameter": "a diameter of zero", "negative_diameter": "a negative diameter", "negative_span": "a negative span",
        "no_unit": "a number without its unit", "decimal_comma": "a comma where the point belongs", "wrong_type": "a value of a wrong type",
        "unknown_member": "a member that is not known", "unknown_member_deep": "a member that is not known, further in",
        "no_rows": "no list of rows", "empty_rows": "a list without a row", "row_without_speed": "a row that has no speed",
        "same_speed": "two rows of one speed", "same_speed_other_unit": "two rows of one speed in different units",
        "beyond_last": "a speed above all rows", "just_beyond_last": "a speed a hair above the fastest row", "negative_limit": "a negative limit",
        "negative_row_speed": "a row of a negative speed", "at_table_start": "a diameter that the table begins over", "below_table": "a diameter below the table",
        "beyond_table": "a diameter above the table"}.items()},
})

# EASA AR100-2015, table 2-4: over, up to and with, total indicator reading, mm.
SHAFTS = [(6, 10, "0.030"), (10, 18, "0.035"), (18, 30, "0.040"), (30, 50, "0.050"), (50, 80, "0.060"), (80, 120, "0.070"), (120, 180, "0.080"),
          (180, 250, "0.090"), (250, 315, "0.100"), (315, 400, "0.110"), (400, 500, "0.125"), (500, 630, "0.140")]


# ---- how quantities may be misread

def lengths(text, mistake):
    """Reads a length, with the mistakes that are made in reading one."""
    if mistake == "mil_as_hundredth" and text.endswith(" mil"):
        return number(text[:-4]) / 100
    if mistake == "fraction_misread" and text.count(" ") == 2:  # 5 7/16 in: the fraction is dropped
        whole, _, unit = text.split()
        return length(whole + " " + unit)
    return length(text)


def speed(text, mistake):
    """Reads a speed of rotation in rpm."""
    if mistake == "hertz_as_rpm":
        return number(text.split()[0])
    return read(text, "rotation")


# ---- the operations, right or with a mistake; lengths in mm, slopes as ratios

def rubbing_limits(i, mistake=None):
    """offset = v/w, slope or flex = v/(r w), w = 2 pi n/60."""
    v, n = read(i["sliding"], "sliding"), speed(i["speed"], mistake)
    d = lengths(i["coupling"]["diameter"], mistake)
    w = (1 if mistake == "revolutions_for_radians" else 2 * mp.pi) * big(n) / 60
    r = big(d if mistake == "diameter_for_radius" else d / 2)
    if "span" in i["coupling"] and mistake != "short_for_spacer":
        return {"flex": big(v) / (r * w)}
    return {"offset": big(v) / w, "slope": big(v) / (r * w)}


def limits_at(i, mistake=None):
    """The row of that speed, or else of the next faster one."""
    n = speed(i["speed"], mistake)
    rows = [dict(row, n=speed(row["speed"], mistake)) for row in i["rows"]]
    if mistake != "rows_as_given":
        rows.sort(key=lambda row: row["n"])
    faster = [row for row in rows if (row["n"] > n if mistake == "class_edge" else row["n"] >= n)]
    slower = [row for row in rows if row["n"] <= n]
    if mistake == "rounded_before_class":
        faster = [row for row in rows if row["n"] >= round(n)]
    row = slower[-1] if mistake == "slower_row" else faster[0]
    kinds = [k for k in ("offset", "slope", "flex") if k in row]
    value = lambda row, k: lengths(row[k], mistake) if k == "offset" else slope(row[k])
    if mistake == "between_rows" and slower and slower[-1] is not row:
        low = slower[-1]
        part = (n - low["n"]) / (row["n"] - low["n"])
        return {k: value(low, k) + part * (value(row, k) - value(low, k)) for k in kinds}
    return {k: value(row, k) for k in kinds}


def shaft_runout(i, mistake=None):
    """The class over one diameter, up to and with the other."""
    d = lengths(i["diameter"], mistake)
    if mistake == "rounded_before_class":
        d = round(d)
    inside = (lambda a, b: a <= d < b) if mistake == "class_edge" else (lambda a, b: a < d <= b)
    at = [k for k, (a, b, _) in enumerate(SHAFTS) if inside(a, b)][0]
    a, b, limit = SHAFTS[at + (mistake == "class_next")]
    return {"over": F(a), "up_to": F(b), "limit": F(limit)}


MISTAKES = {
    rubbing_limits: ["short_for_spacer", "diameter_for_radius", "revolutions_for_radians", "hertz_as_rpm", "fraction_misread", "mil_as_hundredth"],
    limits_at: ["slower_row", "between_rows", "class_edge", "rows_as_given", "rounded_before_class", "hertz_as_rpm", "mil_as_hundredth"],
    shaft_runout: ["class_edge", "class_next", "rounded_before_class", "fraction_misread", "mil_as_hundredth"],
}
UNIT = {"offset": "mm", "slope": "mm/m", "flex": "mm/m", "over": "mm", "up_to": "mm", "limit": "mm"}


def write(numbers): return {k: out(x, UNIT[k]) for k, x in numbers.items()}


def flags(op, input, result, tolerance):
    """Tries every mistake of the operation; one that finds no answer differs."""
    found = []
    for mistake in MISTAKES[op]:
        try:
            if differs(result, write(op(input, mistake)), tolerance):
                found.append(mistake)
        except IndexError:
            found.append(mistake)
    return found


def add(op, id, region, about, input, source, tolerance):
    numbers = op(input)
    result, tolerance = write(numbers), {"/" + k: tolerance(x, UNIT[k]) for k, x in numbers.items()}
    return AREA.add(id, op.__name__, region, flags(op, input, result, tolerance), about, source, input, result, tolerance)


# ---- rubbing: mpmath against pari-gp by way of the time of one turn

def gp(expression):
    """Evaluates an expression with 60 digits."""
    run = subprocess.run(["gp", "-q", "-f"], input="default(realprecision,60);print(1.0*(%s));\n" % expression, capture_output=True, text=True, check=True)
    return mpf(run.stdout.strip().replace(" E", "e"))


def rub(id, region, about, sliding, turning, coupling):
    input = {"sliding": sliding, "speed": turning, "coupling": coupling}
    answer = rubbing_limits(input)
    # In a turn of 60/n seconds a point goes v 60/n, which is the circumference 2 pi e; a point of the rim at d/2 goes along with 4 times that over d.
    way = "(%s)*60/(%s)" % (read(sliding, "sliding"), read(turning, "rotation"))
    second = {"offset": gp("%s/(2*Pi)" % way)}
    second["slope"] = second["flex"] = gp("%s/(Pi*(%s))" % (way, length(coupling["diameter"])))
    for k, x in answer.items():
        assert abs(x - second[k]) <= mpf(10) ** -45 * abs(x), (id, k)
    source = {"kind": "multi_precision", "by": MPMATH, "second": GP + ", from the way in one turn: over 45 digits agree"}
    return add(rubbing_limits, id, region, about, input, source, rounding)


tape = rub("rub-short-tape", "rub_short", "a diameter off the tape, half an inch a second (common practice, no source)", "0.5 in/s", "3560 rpm", {"diameter": "5 7/16 in"})
rub("rub-short-hertz", "rub_short", "a speed in Hz", "12 mm/s", "24.75 Hz", {"diameter": "180 mm"})
usual = rub("rub-short", "rub_usual", "12 mm/s, a four-pole motor (common practice, no source)", "12 mm/s", "1780 rpm", {"diameter": "150 mm"})
rub("rub-short-inch", "rub_inch", "everything in inches, by decimals", "0.472 in/s", "1185 rpm", {"diameter": "11.25 in"})
rub("rub-spacer-tape", "rub_spacer", "a spacer measured with the tape: flex planes are limited, not offset and slope", "0.5 in/s", "2975 rpm", {"diameter": "9 3/4 in", "span": "31 1/2 in"})
rub("rub-spacer-hertz", "rub_spacer", "a spacer, the speed in Hz", "0.012 m/s", "49.5 Hz", {"diameter": "220 mm", "span": "600 mm"})
spacer = rub("rub-spacer", "rub_spacer_usual", "12 mm/s at the flex planes; the length of the spacer does not matter", "12 mm/s", "1482 rpm", {"diameter": "245 mm", "span": "1.4 m"})
rub("rub-barring-short", "rub_slow", "on the barring gear the limits are absurdly wide, and no permission", "12 mm/s", "0.25 rpm", {"diameter": "25 3/16 in"})
rub("rub-barring-spacer", "rub_slow", "a spacer creeping at a few thousandths of a turn a second", "12.7 mm/s", "1.5e-3 Hz", {"diameter": "790 mm", "span": "2 m"})
rub("rub-fast-short", "rub_fast", "a turbo machine at 60000 rpm", "12 mm/s", "60000 rpm", {"diameter": "2 1/16 in"})
rub("rub-fast-spacer", "rub_fast", "a spacer at 1666.5 turns a second", "0.25 in/s", "1666.5 Hz", {"diameter": "2.625 in", "span": "7.5 in"})


# ---- tables by speed: looked up in order, and as the fastest-first search of all rows

def table(id, region, about, rows, turning):
    input = {"rows": rows, "speed": turning}
    n = read(turning, "rotation")
    best = min((r for r in rows if read(r["speed"], "rotation") - n >= 0), key=lambda r: read(r["speed"], "rotation") - n)
    second = {k: length(best[k]) if k == "offset" else slope(best[k]) for k in best if k != "speed"}
    assert second == limits_at(input), id
    source = {"kind": "exact", "by": RATIONAL, "second": "the row with the smallest speed in hand among all rows: equal"}
    return add(limits_at, id, region, about, input, source, rounding)


def row(n, *limits, names=("offset", "slope", "flex")):
    return {"speed": n, **{k: x for k, x in zip(names, limits) if x}}


# Limits invented for these vectors; none is taken from a published table.
METRIC = [row("900 rpm", "0.11 mm", "0.95 mm/m", "1.25 mm/m"), row("1500 rpm", "0.07 mm", "0.62 mm/m", "0.85 mm/m"), row("3000 rpm", "0.035 mm", "0.33 mm/m", "0.45 mm/m")]
MIXED = [row("50 Hz", "0.04 mm", "0.36 mm/m"), row("12.5 Hz", "0.13 mm", "1.15 mm/m"), row("25 Hz", "0.08 mm", "0.71 mm/m")]
MILS = [row("1200 rpm", "3.5 mil", "1.05 mil/in"), row("1800 rpm", "2.25 mil", "0.7 mil/in"), row("3600 rpm", "1.125 mil", "0.35 mil/in")]

mils = table("between-mil", "between", "between two rows in mils the stricter one holds", MILS, "2400 rpm")
table("between-unordered", "between", "rows in no order, the speed in rpm and the rows in Hz", MIXED, "1350 rpm")
table("between-falling", "unordered", "rows from fast to slow", [row("3050 rpm", "0.031 mm"), row("1550 rpm", "0.064 mm"), row("1050 rpm", "0.092 mm")], "1237.5 rpm")
metric = table("below-first", "below_first", "slower than all rows: the slowest row holds", METRIC, "742 rpm")
table("below-first-unordered", "unordered", "slower than all rows, which stand in no order", [MILS[2], MILS[0], MILS[1]], "880 rpm")
table("one-row", "one_row", "a table of one row holds up to its speed", [row("1790 rpm", "0.058 mm", "0.48 mm/m", "0.66 mm/m")], "1775 rpm")
table("one-row-hertz", "one_row", "a table of one row, reached exactly, in Hz against rpm", [row("29.75 Hz", "2.1 mil", "0.55 mil/in")], "1785 rpm")
flex = table("flex-only", "one_column", "a table for spacers only has no other limit to give", [row("1000 rpm", "1.3 mm/m", names=("flex",)), row("2000 rpm", "0.68 mm/m", names=("flex",))], "1188 rpm")
table("offset-only", "one_column", "a table of offsets only, the speed on a row", [row("990 rpm", "4 mil"), row("1980 rpm", "2 mil")], "990 rpm")
table("slope-only", "one_column", "slopes only, in another unit, rows from fast to slow", [row("3570 rpm", "0.032 mm/100mm", names=("slope",)), row("1785 rpm", "0.061 mm/100mm", names=("slope",))], "600 rpm")
table("on-row", "on_row", "on a row that row holds, not the next", [METRIC[2], METRIC[1], METRIC[0]], "1500 rpm")
table("on-row-hertz", "on_row", "on a row in another unit of speed", [row("750 rpm", "0.12 mm", "1.1 mm/m"), row("1500 rpm", "0.075 mm", "0.66 mm/m"), row("3000 rpm", "0.038 mm", "0.34 mm/m")], "25 Hz")
table("on-first-row", "on_first_row", "on the slowest row", [row("485 rpm", "0.21 mm", "1.8 mm/m"), row("985 rpm", "0.10 mm", "0.9 mm/m")], "485 rpm")
last = table("on-last-row", "on_last_row", "on the fastest row there is still a limit", [row("1490 rpm", "0.072 mm", "0.63 mm/m"), row("2980 rpm", "0.036 mm", "0.32 mm/m")], "2980 rpm")
table("just-over-row", "just_over_row", "a tenth of a millionth of a turn above a row the next one holds", [row("1500 rpm", "0.069 mm", "0.61 mm/m"), row("3000 rpm", "0.034 mm", "0.31 mm/m")], "1500.0000001 rpm")
table("just-under-row", "just_under_row", "a hair below a row that row holds, and not a mixture of two", [row("1500 rpm", "0.068 mm", "0.59 mm/m"), row("3000 rpm", "0.033 mm", "0.29 mm/m")], "2999.9 rpm")
table("close-rows", "close_rows", "rows a thousandth of a turn apart are different rows", [row("1480.001 rpm", "0.061 mm"), row("1480 rpm", "0.073 mm"), row("1480.002 rpm", "0.052 mm")], "1480.0005 rpm")
table("close-rows-on", "close_rows", "rows a thousandth of a turn apart, the speed on the middle one", [row("1183.5 rpm", "0.0951 mm"), row("1183.501 rpm", "0.0873 mm"), row("1183.502 rpm", "0.0764 mm")], "1183.501 rpm")


# ---- shaft extensions: the table read from small to large, and counted by its upper edges

def shaft(id, region, about, diameter):
    input = {"diameter": diameter}
    answer = shaft_runout(input)
    k = sum(b < length(diameter) for _, b, _ in SHAFTS)  # classes that end below it
    a, b, limit = SHAFTS[k]
    assert answer == {"over": a, "up_to": b, "limit": F(limit)}, id
    if length(diameter) == b:  # a double in mm or in nm must stand on the edge too
        n, unit = diameter.split()
        assert float(n) * float(UNITS["length"][unit]) == b and float(n) * float(UNITS["length"][unit] * 10**6) == b * 10**6, id
    source = {"kind": "published", "by": "EASA AR100-2015, table 2-4 (read)", "published": "over %d up to %d mm: %s mm" % (a, b, limit),
              "second": "the class by counting the upper edges below the diameter: equal"}
    return add(shaft_runout, id, region, about, input, source, exact)


ON = ["10 mm", "1.8 cm", "30000 um", "50 mm", "0.08 m", "120 mm", "18 cm", "250000000 nm", "315 mm", "0.4 m", "50 cm", "630 mm"]
OVER = ["6.0001 mm", "10.002 mm", "0.7088 in", "30.0005 mm", "1.9686 in", "80.01 mm", "12.0002 cm", "180.003 mm", "9.84255 in", "315.0001 mm", "0.40002 m", "500.04 mm"]
shafts = {}
for (a, b, _), on, over in zip(SHAFTS, ON, OVER):
    name = "shaft_over_%d" % a
    shaft("shaft-%d-on" % b, name, "%s, on the upper edge of its class, belongs to it" % on, on)
    shafts[a] = shaft("shaft-%d-over" % a, name, "%s, a trace over the lower edge of its class" % over, over)
inside = shaft("shaft-inside", "shaft_inside", "a shaft of 1 7/8 in", "1 7/8 in")
shaft("shaft-inside-mil", "shaft_inside", "a shaft measured in mils", "2362.2 mil")


# ---- refused

def refuse(twin, region, code, path, about, at=None, value=None):
    """One change of the twin: at is where, if not at the path of the fault."""
    op = twin["op"].replace("_", "-")
    AREA.refuse(op + "-" + region.replace("_", "-"), twin, region, code, path, changed(twin["input"], at or path, value), about)


refuse(usual, "no_sliding", "missing", "/sliding", "no sliding speed is given, and none is assumed")
refuse(usual, "no_speed", "missing", "/speed", "no speed")
refuse(usual, "no_coupling", "missing", "/coupling", "no coupling")
refuse(spacer, "no_diameter", "missing", "/coupling/diameter", "a spacer coupling whose diameter is not given")
refuse(tape, "negative_sliding", "out_of_range", "/sliding", "a sliding speed below zero", value="-0.5 in/s")
refuse(usual, "zero_speed", "out_of_range", "/speed", "at standstill nothing rubs, and there is no limit to give", value="0 rpm")
refuse(usual, "negative_speed", "out_of_range", "/speed", "a speed has no sense of rotation here", value="-1780 rpm")
refuse(usual, "zero_diameter", "out_of_range", "/coupling/diameter", "a coupling without size", value="0 mm")
refuse(tape, "negative_diameter", "out_of_range", "/coupling/diameter", "a negative diameter off the tape", value="-5 7/16 in")
refuse(spacer, "negative_span", "out_of_range", "/coupling/span", "a span that runs backwards", value="-1.4 m")
refuse(spacer, "no_unit", "malformed", "/coupling/diameter", "245 of what?", value="245")
refuse(usual, "decimal_comma", "malformed", "/sliding", "a decimal comma is not guessed at", value="12,5 mm/s")
refuse(usual, "wrong_type", "malformed", "/speed", "a bare number for a speed", value=1780)
refuse(usual, "unknown_member", "unknown", "/margin", "a margin that is not known here must not be lost", value="2")
refuse(spacer, "unknown_member_deep", "unknown", "/coupling/lubricant", "what the coupling runs in is not known here", value="grease")

refuse(mils, "no_rows", "missing", "/rows", "no table")
refuse(flex, "empty_rows", "missing", "/rows", "a table without rows", value=[])
refuse(mils, "no_speed", "missing", "/speed", "no speed to look up")
refuse(metric, "row_without_speed", "missing", "/rows/1/speed", "the second row does not say for which speed it is")
refuse(metric, "same_speed", "duplicate", "/rows/1/speed", "two rows for 900 rpm", value="900 rpm")
refuse(metric, "same_speed_other_unit", "duplicate", "/rows/2/speed", "1500 rpm and 25 Hz are one speed", value="25 Hz")
refuse(mils, "beyond_last", "out_of_range", "/speed", "faster than the table goes", value="4800 rpm")
refuse(last, "just_beyond_last", "out_of_range", "/speed", "a hair faster than the fastest row", value="2980.0000001 rpm")
refuse(metric, "negative_speed", "out_of_range", "/speed", "a negative speed looked up", value="-742 rpm")
refuse(metric, "negative_limit", "out_of_range", "/rows/2/offset", "a limit below zero", value="-0.035 mm")
refuse(mils, "negative_row_speed", "out_of_range", "/rows/0/speed", "a row for a negative speed", value="-1200 rpm")
refuse(mils, "no_unit", "malformed", "/rows/1/slope", "a slope without its unit", value="0.7")
refuse(metric, "decimal_comma", "malformed", "/rows/0/offset", "a decimal comma in a row", value="0,11 mm")
refuse(flex, "wrong_type", "malformed", "/rows", "a word where the list of rows belongs", value="fine")
refuse(flex, "unknown_member", "unknown", "/interpolate", "no drawing of limits between the rows", value=True)
refuse(metric, "unknown_member_deep", "unknown", "/rows/1/colour", "a column that is not known", value="blue")

refuse(shafts[6], "at_table_start", "out_of_range", "/diameter", "the table begins over 6 mm, 6 mm is not in it", value="6 mm")
refuse(shafts[10], "below_table", "out_of_range", "/diameter", "thinner than the table goes", value="5.5 mm")
refuse(shafts[500], "beyond_table", "out_of_range", "/diameter", "a trace over 630 mm", value="630.001 mm")
refuse(shafts[30], "zero_diameter", "out_of_range", "/diameter", "a shaft of no diameter", value="0 mm")
refuse(inside, "negative_diameter", "out_of_range", "/diameter", "a negative diameter off the tape", value="-1 7/8 in")
refuse(inside, "no_diameter", "missing", "/diameter", "no diameter")
refuse(shafts[80], "no_unit", "malformed", "/diameter", "80.01 of what?", value="80.01")
refuse(shafts[180], "decimal_comma", "malformed", "/diameter", "a decimal comma", value="180,003 mm")
refuse(shafts[315], "wrong_type", "malformed", "/diameter", "a bare number", value=315.0001)
refuse(inside, "unknown_member", "unknown", "/poles", "the number of poles is not known here", value=4)

AREA.save()
