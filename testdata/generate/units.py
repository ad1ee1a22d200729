"""Writes units.json: quantities read from text and given in another unit.

Run from testdata: python3 generate/units.py (Python 3.11 with mpmath). The first
way is exact fractions, the second Python's decimal arithmetic at 70 digits with a
table of its own.
"""

from decimal import Decimal, getcontext

from common import *

getcontext().prec = 70

BY = "rational arithmetic, Python fractions; pi by " + MPMATH
SECOND = "Python decimal, 70 digits, conversion factors written down anew; agrees to 60 digits"

BASES = {
    "decimal": ("plain", "a decimal number in a unit of its kind"),
    "same_unit": ("plain", "the unit that it stands in"),
    "tape": ("plain", "a whole number and a fraction off a tape"),
    "tape_alone": ("plain", "a fraction alone"),
    "negative_tape": ("hard", "a fraction below zero: the sign counts for the whole of it"),
    "hostile": ("hard", "a decimal that no double holds"),
    "endless": ("hard", "a result without an end as a decimal"),
    "tiny": ("hard", "a very small number"),
    "large": ("hard", "a very large number"),
    "exponent": ("plain", "an exponent of ten"),
    "signed": ("plain", "a number with a sign"),
    "per_length": ("plain", "a slope over a length that is not its own unit"),
    "hours": ("plain", "hours and minutes of the dial's face"),
    "twelve": ("hard", "12 o'clock, which is zero"),
    "minutes": ("plain", "minutes of the dial's face that are no half hour"),
    "hours_whole": ("plain", "a whole hour of the dial's face"),
    "before_twelve": ("hard", "the last minute of the dial's face"),
    "beyond_turn": ("hard", "fewer degrees than none"),
    "turns": ("hard", "more turns than one"),
    "point": ("plain", "a temperature, whose zeros differ from scale to scale"),
    "scales_meet": ("hard", "where two scales have the same number, or one its zero"),
    "difference": ("plain", "a difference of temperatures, which has no zero of its own"),
    "per_degree": ("plain", "a coefficient of expansion per degree of another scale"),
    "speeds": ("plain", "a speed of rotation or of sliding"),
    "empty": ("invalid", "nothing in the text"),
    "no_unit": ("invalid", "a number without its unit"),
    "no_number": ("invalid", "a unit without its number"),
    "comma": ("invalid", "a comma where the point belongs"),
    "word": ("invalid", "no number at all"),
    "two_signs": ("invalid", "two signs"),
    "two_points": ("invalid", "two points in a number"),
    "strange_unit": ("invalid", "a unit that is none of its quantity"),
    "other_quantity": ("invalid", "a unit of another quantity"),
    "not_a_number": ("invalid", "what is not a number, in letters"),
    "strange_quantity": ("invalid", "a quantity that is not known"),
    "strange_target": ("invalid", "a target unit that is not known"),
    "target_of_other": ("invalid", "a target unit of another quantity"),
    "no_text": ("invalid", "no text"),
    "no_quantity": ("invalid", "no quantity"),
    "no_target": ("invalid", "no target unit"),
    "number_for_text": ("invalid", "a JSON number for the text"),
    "extra": ("invalid", "a member that is not known"),
}
AREA = Area("units", {})


def region(base, *more):
    """Names the region of a base that is narrowed by units or by what is wrong."""
    name = "_".join([base, *(re.sub("[^a-z0-9]+", "_", m.lower().replace("°", "deg")).strip("_") for m in more)])
    kind, about = BASES[base]
    AREA.regions[name] = (kind, about + (": " + ", ".join(more) if more else ""))
    return name


KINDS = {"length": "length", "slope": "slope", "temperature_difference": "difference", "expansion": "expansion",
         "rotational_speed": "rotation", "linear_speed": "sliding"}

# Points on a scale: degrees C are (x + zero) * size.
SCALES = {"degC": (F(0), F(1)), "°C": (F(0), F(1)), "K": (F("-273.15"), F(1)), "degF": (F(-32), F(5, 9)), "°F": (F(-32), F(5, 9))}
ANGLES = {"deg": lambda: mp.pi / 180, "rad": lambda: mpf(1), "mrad": lambda: mpf(1) / 1000, "urad": lambda: mpf(1) / 10**6}


def convert(quantity, text, to, slip=""):
    """Returns the value in the unit wanted; a slip names a mistake to make."""
    if slip == "sign_lost":
        return convert(quantity, text.lstrip("-"), to)
    if slip == "exponent_ignored":
        return convert(quantity, re.sub("[eE][+-]?[0-9]+", "", text), to)
    if slip == "unit_ignored":
        return convert(quantity, text.rsplit(" ", 1)[0] + " " + to, to) if " " in text else clock(text)
    if quantity == "clock":
        if slip == "hours_as_degrees" and ":" in text:
            return clock(text) / 30
        return clock(text) % 360
    unit = text.split()[-1]
    value = misread(text) if slip == "fraction_misread" else number(text[: -len(unit) - 1])
    if quantity == "angle":
        return value if unit == to else big(value) * ANGLES[unit]() / ANGLES[to]()
    if quantity == "temperature":
        zero, size = SCALES[unit]
        zero_to, size_to = SCALES[to]
        if slip == "point_without_32":
            zero, zero_to = (z if abs(z) != 32 else F(0) for z in (zero, zero_to))
        return (value + zero) * size / size_to - zero_to
    units = UNITS[KINDS[quantity]]
    if slip == "difference_with_32" and quantity == "temperature_difference" and ("F" in unit) != ("F" in to):
        return (value - 32) * units[unit] if "F" in unit else value / units[to] + 32
    if slip == "coefficient_per_other_degree" and quantity == "expansion" and ("F" in unit) != ("F" in to):
        return value * units[unit] / units[to] * (F(5, 9) if "F" in unit else F(9, 5))
    if slip == "mil_as_hundredth" and "mil" in (unit, to):
        return value * (F(1, 100) if unit == "mil" else units[unit]) / (F(1, 100) if to == "mil" else units[to])
    return value * units[unit] / units[to]


def misread(text):
    """Takes 5 7/16 for 57/16: the blank is lost."""
    value = text[: -len(text.split()[-1]) - 1]
    return number(value.replace(" ", "").replace("-", "-", 1)) if " " in value else number(value)


# ---- the second way

D = Decimal
PI = D("3.14159265358979323846264338327950288419716939937510582097494459230781640628620899862803")
INCH = D("25.4")
FACTORS = {
    "length": {"mm": D(1), "um": D("0.001"), "nm": D("0.000001"), "cm": D(10), "m": D(1000), "mil": INCH / 1000, "in": INCH, "ft": 12 * INCH},
    "slope": {"mm/m": D("0.001"), "um/m": D("0.000001"), "mm/100mm": D("0.01"), "mil/in": D("0.001"), "mil/ft": 1 / D(12000),
              "in/ft": 1 / D(12), "in/in": D(1), "mm/mm": D(1), "m/m": D(1)},
    "temperature_difference": {"K": D(1), "degC": D(1), "°C": D(1), "degF": 1 / D("1.8"), "°F": 1 / D("1.8")},
    "expansion": {"um/m/K": D("1e-6"), "1/K": D(1), "um/m/degF": D("1.8e-6"), "um/m/°F": D("1.8e-6"), "1/degF": D("1.8"), "1/°F": D("1.8"),
                  "mil/in/°F": D("1.8e-3")},
    "rotational_speed": {"rpm": D(1), "Hz": D(60)},
    "linear_speed": {"mm/s": D(1), "m/s": D(1000), "in/s": INCH},
    "angle": {"deg": PI / 180, "rad": D(1), "mrad": D("0.001"), "urad": D("0.000001")},
}


def again(quantity, text, to):
    if quantity == "clock":
        hours, _, minutes = text.partition(":")
        degrees = D(hours) * 30 + D(minutes) / 2 if minutes else D(text.split()[0])
        while degrees < 0:
            degrees += 360
        while degrees >= 360:
            degrees -= 360
        return degrees
    *parts, unit = text.split()
    sign = -1 if parts[0].startswith("-") else 1
    value = D(0)
    for part in parts:
        top, _, bottom = part.lstrip("+-").partition("/")
        value += D(top) / D(bottom or 1)
    value *= sign
    if quantity == "temperature":
        kelvin = value if unit == "K" else value + D("273.15") if "C" in unit else (value + D("459.67")) / D("1.8")
        return kelvin if to == "K" else kelvin - D("273.15") if "C" in to else kelvin * D("1.8") - D("459.67")
    return value * FACTORS[quantity][unit] / FACTORS[quantity][to]


# ---- vectors

SLIPS = ["unit_ignored", "sign_lost", "exponent_ignored", "hours_as_degrees", "fraction_misread", "point_without_32", "difference_with_32", "coefficient_per_other_degree", "mil_as_hundredth"]


def written(x, unit):
    return decimal(x) + " " + unit


def put(id, base, quantity, text, to, about, published=None):
    """Adds a conversion; both ways have to agree."""
    value = convert(quantity, text, to)
    other = again(quantity, text, to)
    assert abs(big(value) - mpf(str(other))) <= abs(big(value)) * mpf(10) ** -58 + mpf(10) ** -64, (id, value, other)
    scale = abs(big(value))
    if quantity == "temperature":  # a point goes over absolute zero in some programs
        scale += mpf("273.15") * (9 if "F" in to else 5) / 5
    if quantity in ("clock", "angle"):
        scale = max(scale, mpf(360) if quantity == "clock" else mpf(0))
    within = {"/value": tolerance(scale, to)}
    result = {"value": written(value, to)}
    flags = [s for s in SLIPS if differs(result, {"value": written(convert(quantity, text, to, s), to)}, within)]
    source = {"kind": "exact" if isinstance(value, F) else "multi_precision", "by": BY, "second": SECOND}
    if published:
        source = {"kind": "published", "by": published[0], "published": published[1], "second": BY + "; " + SECOND}
    narrowed = region(base, *text.split()[1:][-1:], to)
    return AREA.add(id, "convert", narrowed, flags, about, source, {"quantity": quantity, "text": text, "to": to}, result, within)


def tolerance(scale, unit):
    """Is common.rounding in the unit of the value."""
    size = short(scale, "", 6)
    return {"within": (short(16 * big(EPS) * big(F(size)), "", 6) + " " + unit).strip(), "reason": "rounding", "c": 16, "kappa": "1", "scale": size + " " + unit}


def bad(id, twin, base, code, pointer, value, about):
    """Adds a refusal: the twin's input with one value changed, or (None) taken out."""
    AREA.refuse(id, twin, region(base, id), code, pointer, changed(twin["input"], pointer, value), about)


tape = put("tape", "tape", "length", "5 7/16 in", "mm", "five and seven sixteenths off the tape")
put("tape-feet", "tape", "length", "3 1/8 ft", "in", "three feet and an eighth")
put("tape-mil", "tape_alone", "length", "3/64 in", "mil", "three sixty-fourths in thousandths")
put("tape-third", "endless", "length", "1/3 ft", "m", "a third of a foot, which ends in no decimal")
put("tape-negative", "negative_tape", "length", "-2 3/4 in", "mm", "a station on the stationary side: the sign counts for the fraction too")
put("tape-negative-alone", "negative_tape", "length", "-1/64 in", "um", "a sixty-fourth below zero")
mil = put("mil", "decimal", "length", "4.5 mil", "mm", "four and a half thousandths of an inch")
put("to-mil", "decimal", "length", "0.05 mm", "mil", "a twentieth of a millimetre in thousandths of an inch: it does not end")
put("metres", "decimal", "length", "1.275 m", "in", "a metric distance in inches")
put("nanometre-sums", "hostile", "length", "0.3 mil", "nm", "three tenths of a mil are a whole number of nanometres")
put("seventh-digit", "hostile", "length", "0.1 um", "mm", "a ten thousandth of a millimetre")
put("tiny", "tiny", "length", "1.7e-9 mm", "nm", "far below what any dial shows")
put("tiny-feet", "tiny", "length", "-4e-9 ft", "mil", "the same in feet and thousandths, below zero")
put("large", "large", "length", "123456789.123456789 mm", "m", "more than a hundred kilometres to the nanometre")
put("large-inch", "large", "length", "-9.87654321e8 in", "ft", "far more inches than any base has, below zero")
put("exponent", "exponent", "length", "2.54E+1 mm", "in", "an exponent with its sign and a large letter: one inch")
put("exponent-same", "exponent", "length", "-12.5e-1 mm", "mm", "an exponent below zero")
put("plus", "signed", "length", "+7.25 cm", "mm", "a plus")
put("minus", "signed", "length", "-0.35 mil", "um", "a minus")

slope_in = put("slope-inch", "per_length", "slope", "0.5 mil/in", "mm/100mm", "half a thousandth to the inch over a hundred millimetres")
put("slope-hundred", "per_length", "slope", "0.03 mm/100mm", "mm/m", "three hundredths over a hundred millimetres")
put("slope-foot", "per_length", "slope", "2 mil/ft", "mil/in", "two thousandths to the foot to the inch: it does not end")
put("slope-in-foot", "endless", "slope", "-0.001 in/ft", "um/m", "a thousandth of an inch to the foot")
put("slope-ratio", "per_length", "slope", "0.00065 in/in", "mm/m", "a bare ratio of inches")
put("slope-micro", "hostile", "slope", "-17 um/m", "m/m", "a level's divisions as a ratio")
put("slope-mm", "exponent", "slope", "7e-4 mm/mm", "mil/in", "a ratio with an exponent")

put("angle-degrees", "endless", "angle", "0.25 deg", "mrad", "a quarter of a degree")
put("angle-radians", "endless", "angle", "-0.002 rad", "deg", "two thousandths of a radian, back")
put("angle-micro", "decimal", "angle", "350 urad", "mrad", "a level's reading")

clock_in = put("clock-half", "hours", "clock", "10:30", "deg", "half past ten")
put("clock-minutes", "minutes", "clock", "7:25", "deg", "minutes count half a degree each")
put("clock-before-twelve", "before_twelve", "clock", "11:59", "deg", "a minute before twelve")
put("clock-past-twelve", "twelve", "clock", "12:20", "deg", "twenty past twelve is ten degrees")
put("clock-one", "hours_whole", "clock", "1:00", "deg", "the hour after twelve")
clock_turned = put("clock-negative", "beyond_turn", "clock", "-37.5 deg", "deg", "degrees on the side of 11 o'clock")
put("clock-over", "turns", "clock", "-762.25 deg", "deg", "two turns and more, backwards")

temperature = put("point-f", "point", "temperature", "106 degF", "degC", "a bearing's temperature")
put("point-c", "point", "temperature", "41.5 degC", "degF", "a casing's temperature")
put("point-k", "point", "temperature", "-40.25 degC", "K", "a winter's night")
put("point-from-k", "point", "temperature", "310.15 K", "degF", "what a sensor gives in kelvins")
put("point-meet", "scales_meet", "temperature", "-40 degF", "degC", "where Celsius and Fahrenheit meet")
put("point-freezing", "scales_meet", "temperature", "0 degC", "degF", "where water freezes")
put("point-absolute", "scales_meet", "temperature", "-459.67 degF", "K", "absolute zero")

difference = put("difference-f", "difference", "temperature_difference", "60 degF", "K", "a rise of sixty degrees Fahrenheit: the 32 has no place in it")
put("difference-k", "difference", "temperature_difference", "-12.5 K", "degF", "a fall of kelvins in degrees Fahrenheit")
put("difference-28", "difference", "temperature_difference", "28 °F", "°C", "a rise that does not end in degrees Celsius")
put("difference-zero-like", "scales_meet", "temperature_difference", "32 degF", "K", "a rise of just 32 degrees, which a point would make nothing")

expansion = put("expansion-frames", "per_degree", "expansion", "6.3e-6 1/°F", "um/m/K", "frames of steel and cast iron, in the source's own unit")
put("expansion-mil", "per_degree", "expansion", "0.0063 mil/in/°F", "um/m/K", "the same per inch in thousandths")
put("expansion-k", "per_degree", "expansion", "0.0000115 1/K", "um/m/degF", "a coefficient per kelvin in micrometres to the metre and degree F")
put("expansion-invar", "tiny", "expansion", "-0.9e-6 1/degF", "1/K", "an alloy that shrinks a little")

speed = put("speed-hertz", "speeds", "rotational_speed", "29.65 Hz", "rpm", "revolutions a second")
put("speed-rpm", "endless", "rotational_speed", "3575 rpm", "Hz", "a motor of two poles with its slip")
put("speed-large", "large", "rotational_speed", "1e6 rpm", "Hz", "far faster than any machine")
sliding = put("sliding-inch", "speeds", "linear_speed", "0.5 in/s", "mm/s", "half an inch a second")
put("sliding-metric", "speeds", "linear_speed", "12 mm/s", "in/s", "common practice for lubricated steel, in inches")
put("sliding-metre", "hostile", "linear_speed", "0.013 m/s", "mm/s", "metres a second")

# Every unit is read at least once and wanted at least once.
put("nanometres", "hostile", "length", "25400001 nm", "cm", "a nanometre more than an inch")
put("slope-to-foot", "per_length", "slope", "0.35 mm/m", "mil/ft", "a metric slope in thousandths to the foot")
put("slope-to-inch-foot", "tiny", "slope", "-7e-8 m/m", "in/ft", "a slope of nothing but rounding, in inches to the foot")
put("slope-to-ratio", "decimal", "slope", "1.45 mil/in", "mm/mm", "thousandths to the inch as a ratio")
put("slope-to-ratio-inch", "large", "slope", "8.25e8 um/m", "in/in", "a slope that no shaft has")
put("angle-from-milli", "decimal", "angle", "-1.75 mrad", "rad", "milliradians")
put("angle-to-micro", "endless", "angle", "0.01 deg", "urad", "a hundredth of a degree")
put("point-sign", "endless", "temperature", "71.3 °F", "°C", "a room, with the degree sign; it does not end")
put("point-sign-c", "signed", "temperature", "-18.5 °C", "°F", "a frost, with the degree sign")
put("point-zero", "scales_meet", "temperature", "0 K", "degC", "absolute zero, from kelvins")
put("difference-to-sign", "difference", "temperature_difference", "45 degC", "°F", "a rise in degrees Celsius")
put("difference-fall", "endless", "temperature_difference", "-64 °F", "degC", "a fall that does not end in degrees Celsius")
put("difference-same-size", "difference", "temperature_difference", "-17 °C", "K", "degrees Celsius and kelvins are the same size")
put("expansion-to-tape", "per_degree", "expansion", "11.7 um/m/K", "mil/in/°F", "per inch in thousandths, as an American table has it")
put("expansion-to-degree", "endless", "expansion", "9.35e-6 1/K", "1/degF", "a plain coefficient per degree F: it does not end")
put("expansion-same-degree", "hostile", "expansion", "6.55 um/m/degF", "1/°F", "the same degree, without the length")
put("expansion-to-sign", "per_degree", "expansion", "17.1 um/m/K", "um/m/°F", "per degree F, in micrometres to the metre")
put("sliding-to-metre", "speeds", "linear_speed", "12.75 mm/s", "m/s", "a sliding speed in metres a second")
put("tape-third-inch", "endless", "length", "2 1/3 in", "mm", "a third that is on no tape")

# Coefficients that are printed per K and per F: that per F times 1.8 has to round
# to the other. Those of concrete, 8.0 and 14.5, and of concrete structure, 5.5 and
# 9.8, do not, and stand in the ledger.
TABLES = "engineering tables (read)"
COPY = "engineering tables (second-hand copy)"
for name, per_f, per_k, work in [
    ("frames", "6.3", "11.3", "R. B. McMillan, Rotating Machinery, Fairmont, 2004, table 8-3, p. 134 (read)"),
    ("grey cast iron", "5.8", "10.4", TABLES), ("cast steel", "7.0", "12.6", TABLES), ("aluminium", "13.1", "23.6", TABLES),
    ("aluminium 6061", "13.0", "23.4", TABLES), ("aluminium bronze", "9.0", "16.2", TABLES), ("phosphor bronze", "9.9", "17.8", TABLES),
    ("stainless 304", "9.6", "17.3", COPY), ("stainless 316", "8.9", "16.0", COPY), ("stainless 410", "5.5", "9.9", COPY),
]:
    assert abs(F(per_f) * F("1.8") - F(per_k)) <= F("0.05"), name
    base = "pair_" + name.replace(" ", "_")
    BASES[base] = ("plain", "printed per degree of both scales")
    put(base.replace("_", "-"), base, "expansion", per_f + " um/m/°F", "um/m/K", name + ": what is printed per degree F, per kelvin",
        (work, "%s per K, %s per F, in millionths" % (per_k, per_f)))

# ---- refusals

bad("empty", tape, "empty", "missing", "/text", "", "nothing in the text")
bad("no-unit", tape, "no_unit", "malformed", "/text", "5 7/16", "a fraction without its inch")
bad("no-unit-mil", mil, "no_unit", "malformed", "/text", "4.5", "a reading without its unit")
bad("no-number", mil, "no_number", "malformed", "/text", "mil", "a unit alone")
bad("comma", mil, "comma", "malformed", "/text", "4,5 mil", "a comma for the point")
bad("comma-thousands", sliding, "comma", "malformed", "/text", "1,000 in/s", "a comma for the thousands")
bad("word", mil, "word", "malformed", "/text", "four mil", "a number in letters")
bad("two-signs", mil, "two_signs", "malformed", "/text", "--4.5 mil", "two signs")
bad("two-points", mil, "two_points", "malformed", "/text", "4.5.1 mil", "two points")
bad("furlong", mil, "strange_unit", "unknown", "/text", "4.5 furlong", "a unit of length that nobody reads off a dial")
bad("strange-speed", sliding, "strange_unit", "unknown", "/text", "0.5 knot", "a unit of speed from the sea")
bad("strange-degree", difference, "strange_unit", "unknown", "/text", "60 degR", "degrees of a scale that is not in use here")
bad("milliradian", slope_in, "other_quantity", "unknown", "/text", "0.5 mrad", "an angle for a slope: it is none")
bad("degree-for-length", tape, "other_quantity", "unknown", "/text", "5 deg", "an angle for a length")
bad("nan", mil, "not_a_number", "not_finite", "/text", "NaN mil", "not a number")
bad("infinite", temperature, "not_a_number", "not_finite", "/text", "Inf degF", "an infinity")
bad("minus-infinite", slope_in, "not_a_number", "not_finite", "/text", "-inf mil/in", "an infinity below zero")
bad("strange-quantity", mil, "strange_quantity", "unknown", "/quantity", "thickness", "a quantity that is no name of one here")
bad("strange-target", mil, "strange_target", "unknown", "/to", "furlong", "a target unit that is none")
bad("target-of-other", expansion, "target_of_other", "unknown", "/to", "mm", "a length for an expansion")
bad("no-text", tape, "no_text", "missing", "/text", None, "no text at all")
bad("no-quantity", tape, "no_quantity", "missing", "/quantity", None, "no quantity")
bad("no-target", tape, "no_target", "missing", "/to", None, "no target unit")
bad("number", mil, "number_for_text", "malformed", "/text", 4.5, "a JSON number where text with a unit belongs")
bad("no-unit-clock", clock_turned, "no_unit", "malformed", "/text", "-37.5", "a clock position that is neither hours nor degrees")
bad("strange-angle", clock_turned, "strange_unit", "unknown", "/text", "-37.5 gon", "a surveyor's angle for a clock position")
bad("nan-rotation", speed, "not_a_number", "not_finite", "/text", "NaN Hz", "a speed that is no number")
bad("length-for-temperature", temperature, "other_quantity", "unknown", "/text", "106 mm", "a length for a temperature")
bad("extra", mil, "extra", "unknown", "/rounded", True, "a member that says how to round, which nothing here does")

AREA.save()
