"""The cases of train.json: machines, limits and what was found, all invented."""

HARD = """three_stations three_stations_free vector vector_three vector_largest mixed six no_way_out reference_way_vector vector_ways reference_without_feet nothing_to_do on_a_limit
short_by_a_hair zero_excluded zero_width small large far_zero equal reference_of_three on_tolerance one_plane_short spacer_also_short""".split()
REGIONS = {}  # where a region says more than its vector


def cases(case, train, machine, foot, joint, short_coupling, spacer):
    MIL = ("mil", "mil/in")
    S, P = short_coupling("0.05", "0.5"), short_coupling("0.05", "0.5", True)

    # on target
    case("two-machines", "two", "motor and pump, the pump stays: every move is forced",
         train([machine("motor", foot("outboard", "-1250"), foot("inboard", "-430"), height="400 mm"), machine("pump", foot("inboard", "380"), foot("outboard", "990"))],
               [joint("0", "0.31 0.42 -0.18 0.27", S)], "pump"))
    case("two-inch", "two_inch", "the same task in mils and inches",
         train([machine("turbine", foot("front", "-61 1/2 in", "-40..125", "-60..80", "mil"), foot("rear", "-18 1/4 in", "-40..125", "-60..80", "mil"), height="21 in"), machine("fan", foot("a", "14 in"), foot("b", "47 in"))],
               [joint("-1 1/8 in", "6.5 0.31 -11 0.22", short_coupling("2", "0.5", unit=MIL), unit=MIL)], "fan"))
    case("gearbox-stays", "reference_middle", "motor, gearbox and compressor; the gearbox stays, with pipes and gears",
         train([machine("motor", foot("outboard", "-1500", "-1..3", "-4..4"), foot("inboard", "-520", "-1..3", "-4..4"), height="500 mm"), machine("gearbox", foot("in", "210"), foot("out", "870")),
                machine("compressor", foot("inboard", "1650", "-2..2.5", "-3..3"), foot("outboard", "2900", "-2..2.5", "-3..3"), height="630 mm")],
               [joint("-140", "0.44 -0.6 0.35 0.9", S), joint("1210", "-0.27 0.33 0.52 -0.41", spacer("0.8"), "0.05 0 -0.12 0.1", "250")], "gearbox"))
    case("first-stays", "reference_first", "three machines behind one that stays: moves add up along the train",
         train([machine("turbine", foot("a", "0"), foot("b", "1100")), machine("gearbox", foot("in", "1820"), foot("out", "2460"), height="450 mm"), machine("generator", foot("in", "3300"), foot("out", "5150"), height="800 mm")],
               [joint("1440", "0.11 0.2 0.24 -0.3", S), joint("2830", "-0.09 0.15 0.16 0.28", S)], "turbine"))
    case("last-stays", "reference_last", "four machines, the last one stays",
         train([machine("motor", foot("a", "0"), foot("b", "780")), machine("fluid coupling", foot("c", "1500"), foot("d", "1980")), machine("gearbox", foot("e", "2700"), foot("f", "3350")), machine("mill", foot("g", "4300"), foot("h", "5900"))],
               [joint("1130", "0.15 0.1 0.2 0.35", S), joint("2310", "0.05 -0.25 -0.3 0.2", S), joint("3820", "-0.2 0.3 0.12 -0.18", spacer("1"), span="300")], "mill"))
    case("nobody-stays", "free_on_target", "no machine has to stay: the least travel in all",
         train([machine("motor", foot("outboard", "-1340", "0.."), foot("inboard", "-450", "0..")), machine("gearbox", foot("in", "330"), foot("out", "905"), height="355 mm"), machine("pump", foot("in", "1720", "-0.1.."), foot("out", "2610", "-0.1.."))],
               [joint("-70", "0.38 0.5 0.41 -0.32", S), joint("1260", "-0.22 0.31 0.36 0.47", S)]))
    case("nobody-stays-largest", "free_largest", "the largest move is to be small, each plane by itself",
         train([machine("motor", foot("outboard", "-1290", "0.."), foot("inboard", "-410")), machine("pump", foot("in", "640"), foot("out", "1480", "-0.2.."))],
               [joint("55", "0.62 0.4 -0.51 0.66", P)], work="largest_move"))
    case("nobody-stays-fewest", "free_fewest", "as few feet as possible: two in each plane",
         train([machine("motor", foot("outboard", "-1410"), foot("inboard", "-530", "-0.1..")), machine("pump", foot("in", "470"), foot("out", "1690"))],
               [joint("-35", "0.33 0.61 0.27 -0.48", P)], work="fewest_feet"))
    case("crew-at-first", "seen_from_first", "the crew stood behind the first machine and took the last as stationary",
         train([machine("motor", foot("outboard", "-1600"), foot("inboard", "-600"), height="450 mm"), machine("blower", foot("in", "520"), foot("out", "1430"))],
               [joint("-45", "0.28 0.55 -0.37 0.62", S, "0.04 -0.1 0.15 0.2", first=True)], "blower"))
    case("crew-both-ends", "seen_from_both", "one coupling seen from each end",
         train([machine("motor", foot("outboard", "-2010"), foot("inboard", "-900")), machine("gearbox", foot("in", "-250"), foot("out", "350")), machine("pump", foot("in", "1010"), foot("out", "1870"))],
               [joint("-555", "0.19 0.3 0.26 -0.41", S, first=True), joint("680", "0.33 -0.27 0.14 0.38", S)], "gearbox"))
    case("hot-targets", "targets", "cold targets against growth at both couplings",
         train([machine("turbine", foot("a", "-1730", "-2..5"), foot("b", "-640", "-2..5"), height="700 mm"), machine("gearbox", foot("in", "180"), foot("out", "760")), machine("generator", foot("c", "1560"), foot("d", "3320"), height="900 mm")],
               [joint("-215", "0.1 0.2 -0.3 0.1", S, "0.02 -0.05 -0.21 0.14"), joint("1105", "0 -0.1 0.2 0.3", S, "-0.03 0.06 0.18 -0.09")], "gearbox"))

    # within limits, each plane by itself
    case("bolt-bound", "bolt_bound", "the motor is bolt-bound to one side",
         train([machine("motor", foot("outboard", "-1180", h="-0.2..0.9"), foot("inboard", "-390", h="-0.15..0.9")), machine("pump", foot("in", "420"), foot("out", "1130"))],
               [joint("20", "-0.215 -0.12 0.1 0.2", P)], "pump"))
    case("base-bound", "base_bound", "no shims under the motor's outboard feet: it cannot go down",
         train([machine("motor", foot("outboard", "-1310", "0..5"), foot("inboard", "-470", "-1.2..5")), machine("fan", foot("in", "510"), foot("out", "1760"))],
               [joint("-95", "0.26 0.3 -0.07 0.05", P)], "fan"))
    case("ceiling", "ceiling", "a hood leaves the pump 0.25 mm upwards",
         train([machine("motor", foot("a", "-1070"), foot("b", "-350")), machine("pump", foot("in", "390", "-2..0.25"), foot("out", "1240", "-2..0.25"))],
               [joint("30", "0.17 -0.2 -0.31 -0.05", P)], "motor"))
    case("fixed-foot", "fixed_foot", "one foot is dowelled: the machine can only turn about it",
         train([machine("motor", foot("outboard", "-1490"), foot("inboard", "-610", "0", "0")), machine("pump", foot("in", "450"), foot("out", "1350"))],
               [joint("-60", "0.045 0.31 -0.055 0.42", P)], "pump"))
    case("fixed-foot-vector", "fixed_foot", "one foot is dowelled, and both planes count together",
         train([machine("motor", foot("outboard", "-1450"), foot("inboard", "-580", "0", "0")), machine("pump", foot("in", "440"), foot("out", "1310"))],
               [joint("-50", "0.038 0.29 -0.047 0.36", S)], "pump"))
    case("three-stations", "three_stations", "the middle foot of three stops the machine",
         train([machine("generator", foot("a", "-3200", h="-2..2"), foot("b", "-1900", h="-0.15..2"), foot("c", "-700", h="-2..2")), machine("turbine", foot("d", "700"), foot("e", "2100"))],
               [joint("0", "-0.27 -0.04 0.3 0.25", P)], "turbine"))
    case("three-stations-free", "three_stations_free", "two machines of three stations, none stays",
         train([machine("generator", foot("a", "-3350", "0..4"), foot("b", "-2030", "0.1.."), foot("c", "-810", "0..4")), machine("turbine", foot("d", "690"), foot("e", "1480", "-0.2..0"), foot("f", "2230"))],
               [joint("-45", "0.34 -0.21 0.52 -0.63", P)], work="largest_move"))
    case("spacer-per-plane", "spacer", "a spacer of 1.2 m, and the motor bolt-bound to one side",
         train([machine("motor", foot("outboard", "-2260", "-0.3..4", "-0.2..1"), foot("inboard", "-1130", "-0.3..4", "-0.4..1")), machine("pump", foot("in", "960"), foot("out", "1850"))],
               [joint("0", "-1.4 0.9 -0.8 -1.1", spacer("1.1", True, also={"offset": "0.3 mm", "slope": "3 mm/m"}), span="1200")], "pump"))
    case("spacer-vector", "spacer_vector", "a spacer whose flex planes take up what a base-bound motor cannot",
         train([machine("motor", foot("outboard", "-1930", "0..4"), foot("inboard", "-890", "0..4")), machine("pump", foot("in", "810"), foot("out", "1720"))],
               [joint("5", "0.7 -0.5 -0.62 -0.4", spacer("1.3"), span="900")], "pump"))
    case("mixed-couplings", "mixed", "one coupling per plane, the other as a vector: both planes are planned together",
         train([machine("motor", foot("outboard", "-1320", h="-0.1..0.3"), foot("inboard", "-440", h="-0.1..0.3")), machine("gearbox", foot("in", "340"), foot("out", "930"), height="300 mm"), machine("pump", foot("in", "1750", "-0.05..1"), foot("out", "2570", "-0.05..1"))],
               [joint("-55", "-0.14 -0.12 0.21 0.3", P), joint("1310", "0.2 0.15 0.16 0.13", short_coupling("0.06", "0.6"))], "gearbox"))
    case("vector-two", "vector", "sideways and downwards both fall short, and count together",
         train([machine("motor", foot("outboard", "-1230", "-0.1..3", "-0.12..1"), foot("inboard", "-400", "-0.1..3", "-0.12..1")), machine("pump", foot("in", "410"), foot("out", "1190"))],
               [joint("10", "-0.14 -0.03 -0.13 -0.02", S)], "pump"))
    case("vector-three", "vector_three", "three machines, the middle one stays, both neighbours fall short",
         train([machine("motor", foot("outboard", "-1450", h="-0.1..0.1"), foot("inboard", "-480")), machine("gearbox", foot("in", "310"), foot("out", "890")), machine("compressor", foot("in", "1680", "-0.1.."), foot("out", "2740", "-0.1..", "-0.3..0.3"))],
               [joint("-90", "0.29 0.18 0.2 -0.3", short_coupling("0.06", "0.7")), joint("1270", "0.2 0.4 0.17 0.11", short_coupling("0.07", "0.8"))], "gearbox"))
    case("vector-largest", "vector_largest", "both planes together, with the largest move as the measure",
         train([machine("motor", foot("outboard", "-1270", "-0.2..3", "-0.15..1"), foot("inboard", "-390", "-0.2..3", "-0.15..1")), machine("pump", foot("in", "450"), foot("out", "1210"))],
               [joint("-125", "-0.33 -0.23 -0.36 -0.25", short_coupling("0.08", "0.6"))], "pump", work="largest_move"))
    case("four-machines", "four", "four machines, per plane, the third stays and the first is base-bound",
         train([machine("motor", foot("a", "0", "0..3"), foot("b", "820", "0..3")), machine("fluid coupling", foot("c", "1530", "-0.2..1"), foot("d", "2040", "-0.2..1")), machine("gearbox", foot("e", "2790"), foot("f", "3420")), machine("mill", foot("g", "4310", h="-0.2..0.2"), foot("h", "5880", h="-0.2..0.2"))],
               [joint("1190", "0.1 0.2 -0.16 0.1", short_coupling("0.1", "1", True)), joint("2400", "0.15 -0.2 0.2 0.25", short_coupling("0.1", "1", True)), joint("3870", "0.3 0.1 0.1 -0.2", spacer("1", True), span="320")], "gearbox"))
    case("six-machines", "six", "six machines, the third of which stays",
         train([machine("m%d" % k, foot("a", "%d" % (k * 1700 + 200), "-9..9", "-9..9"), foot("b", "%d" % (k * 1700 + 1100 + 30 * k), "-9..9", "-9..9")) for k in range(6)],
               [joint("%d" % (k * 1700 + 1490 + 7 * k), v, short_coupling("0.08", "0.9", True)) for k, v in enumerate(("0.3 0.2 -0.2 0.1", "-0.4 0.3 0.35 -0.2", "0.5 0.1 0.6 0.4", "-0.3 -0.45 -0.7 0.5", "0.25 0.35 0.45 -0.55"))], "m2"))
    case("fewest-within", "fewest", "tolerance reached with as few feet as possible",
         train([machine("motor", foot("outboard", "-1350", h="-0.1..0.1"), foot("inboard", "-460", h="-0.1..0.1")), machine("pump", foot("in", "480", h="-0.05..0.05"), foot("out", "1510", h="-0.05..0.05"))],
               [joint("15", "0.32 0.5 0.36 0.44", short_coupling("0.12", "1.1", True))], work="fewest_feet"))

    # out of reach
    case("one-way-out", "one_way_out", "out of reach, and each of the ends that are named suffices alone",
         train([machine("motor", foot("outboard", "-1280", h="-1.5..1.5"), foot("inboard", "-410", h="-0.2..1.5")), machine("pump", foot("in", "430"), foot("out", "1220"))],
               [joint("15", "-0.42 0.25 0.15 0.1", P)], "pump"))
    case("several-ways", "ways_out", "a base-bound motor that comes within its limits all the same",
         train([machine("motor", foot("outboard", "-1370", "0..0.1"), foot("inboard", "-480", "0..0.1")), machine("pump", foot("in", "490", "-1..0.2"), foot("out", "1460", "-1..0.2"))],
               [joint("-30", "0.1 0.2 -0.62 -0.1", short_coupling("0.06", "0.6", True))]))
    case("reference-is-the-way", "reference_a_way_out", "the gearbox that was to stay is the way out",
         train([machine("motor", foot("outboard", "-1330", "0..3"), foot("inboard", "-450", "0..3")), machine("gearbox", foot("in", "350"), foot("out", "940"))],
               [joint("-60", "0.05 0.1 -0.33 0.15", P)], "gearbox"))
    case("reference-vector", "reference_way_vector", "the same with both planes together",
         train([machine("motor", foot("outboard", "-1340", "-0.05..3", "-0.3..0.3"), foot("inboard", "-455", "-0.05..3", "-0.3..0.3")), machine("gearbox", foot("in", "345"), foot("out", "935"))],
               [joint("-65", "0.03 0.1 -0.36 -0.1", S)], "gearbox"))
    case("no-way-alone", "no_way_out", "both feet of the motor are held from below: neither alone brings tolerance",
         train([machine("motor", foot("outboard", "-1260", "0..2", "0"), foot("inboard", "-420", "0..2", "0")), machine("pump", foot("in", "400", "0", "0"), foot("out", "1170", "0", "0"))],
               [joint("-10", "0.41 1.7 -0.83 -2.2", P)]))
    case("vector-ways", "vector_ways", "sideways and downwards too far together: each foot's way out",
         train([machine("motor", foot("outboard", "-1220", "-0.1..3", "-0.1..1"), foot("inboard", "-395", "-0.1..3", "-0.1..1")), machine("pump", foot("in", "415"), foot("out", "1180"))],
               [joint("92", "-0.352 -0.04 -0.334 -0.03", S)], "pump"))
    case("no-feet-reference", "reference_without_feet", "a vertical pump without feet stays: it cannot be a way out",
         train([machine("motor", foot("outboard", "-1240", "0..3"), foot("inboard", "-385", "0..3")), {"name": "line shaft"}],
               [joint("-160", "0.02 0.1 -0.21 0.25", P)], "line shaft"))
    case("line-shaft-between", "reference_between", "a shaft without feet of its own stays between motor and pump",
         train([machine("motor", foot("outboard", "-1610", "-0.2..2"), foot("inboard", "-720", "-0.2..2")), {"name": "line shaft"}, machine("pump", foot("in", "1530"), foot("out", "2440"))],
               [joint("10", "0.12 0.05 -0.33 -0.05", P), joint("980", "0.25 0.35 -0.14 0.27", P)], "line shaft"))

    # hard
    case("in-line", "nothing_to_do", "everything is on target already",
         train([machine("motor", foot("outboard", "-1290"), foot("inboard", "-430")), machine("pump", foot("in", "440"), foot("out", "1170"))],
               [joint("0", "0.03 -0.1 0.12 0.2", S, "0.03 -0.1 0.12 0.2")]))
    case("just-on-target", "on_a_limit", "the last shim comes out, and it is just enough",
         train([machine("motor", foot("outboard", "-1200", "-0.54.."), foot("inboard", "-400", "-0.38..")), machine("pump", foot("in", "400"), foot("out", "1100"))],
               [joint("0", "0.2 0.1 -0.3 0.2", S)], "pump"))
    case("just-short", "short_by_a_hair", "5 um short of the target, which is well within tolerance",
         train([machine("motor", foot("outboard", "-1200", "-0.535.."), foot("inboard", "-400", "-0.38..")), machine("pump", foot("in", "400"), foot("out", "1100"))],
               [joint("0", "0.2 0.1 -0.3 0.2", P)], "pump"))
    case("must-move", "zero_excluded", "a soft base forces feet up by 0.4 mm at least: limits that exclude zero",
         train([machine("motor", foot("outboard", "-1360", "0.4..2"), foot("inboard", "-470", "0.5..2")), machine("pump", foot("in", "460"), foot("out", "1340", h="0.15..0.4"))],
               [joint("-20", "0.22 0.35 -0.12 0.4", P)]))
    case("zero-width", "zero_width", "feet that are to move by exactly so much",
         train([machine("motor", foot("outboard", "-1330", "0.3"), foot("inboard", "-440", "0.2..0.5")), machine("pump", foot("in", "470"), foot("out", "1290", "-0.05"))],
               [joint("35", "0.31 0.2 0.31 -0.36", P)]))
    case("small-rig", "small", "a laboratory rig of a few millimetres",
         train([machine("motor", foot("o", "-12.6", "-0.0005..0.004"), foot("i", "-4.1", "-0.0005..0.004")), machine("brake", foot("i", "4.3"), foot("o", "11.9"))],
               [joint("0.2", "-0.0016 0.2 -0.0015 -0.1", short_coupling("0.0005", "0.5", True))], "brake"))
    case("ship-shaft", "large", "a shaft line of 90 m",
         train([machine("engine", foot("aft", "-21000", "-3..20"), foot("fwd", "-9000", "-3..20")), machine("bearing", foot("a", "31 m", h="-2..2"), foot("b", "55 m", h="-2..2")), machine("thrust block", foot("c", "81 m"), foot("d", "90 m"))],
               [joint("-2500", "4 -0.3 -6 0.2", short_coupling("1.1", "0.12", True)), joint("71 m", "7.5 0.2 3 -0.1", short_coupling("1.4", "0.15", True))], "thrust block"))
    case("far-zero", "far_zero", "the tape begins 60 m in front of the first machine",
         train([machine("motor", foot("outboard", "60230"), foot("inboard", "61090")), machine("pump", foot("in", "61920"), foot("out", "62700"))],
               [joint("61505", "0.23 0.41 -0.17 0.29", S)], "pump"))
    case("equal-ends", "equal", "equal distances and equal limits: many plans are equally good until the squares decide",
         train([machine("motor", foot("outboard", "-1200", "-0.1..2"), foot("inboard", "-400", "-0.1..2")), machine("pump", foot("in", "400", "-0.1..2"), foot("out", "1200", "-0.1..2"))],
               [joint("0", "0.4 0 -0.4 0", P)]))
    case("dowelled-reference", "reference_of_three", "a reference of three feet: none of them alone can give way",
         train([machine("motor", foot("outboard", "-1320", "0..3"), foot("inboard", "-450", "0..3")), machine("gearbox", foot("a", "360"), foot("b", "650"), foot("c", "950"))],
               [joint("-48", "0.05 0.1 -0.31 0.2", P)], "gearbox"))
    case("on-tolerance", "on_tolerance", "what is left stands exactly on its limit: within",
         train([machine("motor", foot("outboard", "-1300", "0", "-0.3..0.3"), foot("inboard", "-500", "0", "-0.3..0.3")), machine("pump", foot("in", "500"), foot("out", "1300"))],
               [joint("-160", "0.1 0.1 0.07 0.2", short_coupling("0.07", "0.6", True))], "pump"))
    case("one-plane-short", "one_plane_short", "one plane reaches its target, the other not even tolerance",
         train([machine("motor", foot("outboard", "-1310", h="-0.1..0.1"), foot("inboard", "-435", h="-0.1..0.1")), machine("pump", foot("in", "465"), foot("out", "1250"))],
               [joint("22", "0.33 0.1 0.27 -0.33", P)], "pump"))
    case("spacer-as-short", "spacer_also_short", "a spacer with limits of a short coupling beside: only the flex planes count",
         train([machine("motor", foot("outboard", "-1870", "0..2"), foot("inboard", "-830", "0..2")), machine("pump", foot("in", "790"), foot("out", "1690"))],
               [joint("0", "0.9 0.6 -0.5 -0.1", spacer("0.9", True, also={"offset": "0.1 mm", "slope": "0.4 mm/m"}), span="800")], "pump"))
