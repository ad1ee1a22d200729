package sheet

// scene is where an exercise happens. All of them are invented.
type scene struct {
	stationary, movable string // the machines, with their tags
	opening             string
}

var scenes = []scene{
	{"pump WP-3", "motor WM-3", "The paper mill at Tarnwick has rebuilt the white-water pump of its second machine, and the coupling is bolted up again tonight."},
	{"pump HL-2", "motor HM-2", "At the Stonebeck waterworks a high-lift pump comes back from its overhaul, and the reservoir is to be filled before the weekend."},
	{"compressor GC-1", "motor GM-1", "The glycol compressor of the Quillbrook brewery has a new bed of grout, which has had its week to set."},
	{"chilled-water pump CW-12", "motor CM-12", "In the cellar of the Ellerholm dairy a chilled-water pump has eaten two seals since the spring."},
	{"fan KF-4", "motor KM-4", "The kiln fan of the Osterfell brickworks shook its holding-down bolts loose, and the kiln is cold for three days."},
	{"gearbox SG-7", "turbine ST-7", "Between two campaigns the Fennmoor sugar works has the small mill turbine off its seat."},
	{"blower AB-2", "motor AM-2", "The aeration blower of the Pellwater sewage works went over to its spare motor, whose feet do not match the old pads."},
	{"generator LG-1", "engine LE-1", "On the tidal island of Skerrow the lamps hang on one generator, and it has just been lifted back onto its frame."},
	{"crusher pinion RP-5", "motor RM-5", "At the Marrowdale quarry the drive of the secondary crusher was realigned by eye in January, and its coupling is worn out in June."},
	{"feed-water pump BF-1", "turbine BT-1", "The boiler house of the Arlund linen works starts its feed-water pump again after the summer shutdown."},
}

func (d *draw) scene() scene { return oneOf(d, scenes...) }

// tell is the title and the story of an exercise.
func (s scene) tell(title string, p Problem) (string, string) {
	return title + ": " + s.movable, s.opening + " " + upper(s.stationary) + " stays where it is, " + s.movable +
		" can be moved. " + p.task()
}

// upper writes the first letter as a capital.
func upper(s string) string {
	if s != "" && 'a' <= s[0] && s[0] <= 'z' {
		return string(s[0]-'a'+'A') + s[1:]
	}
	return s
}

// tasks say what is wanted of each problem.
var tasks = map[string]string{
	"job":             "The readings below were taken before anything was loosened. Work out how the shafts lie at the coupling, and how far the movable machine has to go at every foot until they lie in line.",
	"growth":          "The readings below were taken cold, before anything was loosened, and both machines grow as they warm up. Work out how the shafts lie at the coupling, where the movable one has to lie cold, and how far it has to go at every foot so that both lie in line when they are warm.",
	"sweep":           "One sweep of the rim dial is all that the night shift left behind. Put it in order, and work out where the movable shaft lies at the dial.",
	"sag":             "Before anything is measured, the bracket goes onto a straight mandrel. Work out how far it droops.",
	"gap_from_slope":  "The slope of the movable shaft is known from yesterday. Work out how far the faces of the coupling stand open, so that a feeler can confirm it.",
	"slope_from_gap":  "All that anyone measured was the coupling, with feelers. Work out the slope of the movable shaft.",
	"flex_tilts":      "A spacer coupling joins them, and its maker limits what each flex plane may bend. Work out the tilts that both have to take as the shafts lie now.",
	"cold_target":     "Both are to lie in line when they are warm. Work out where the movable shaft has to lie cold.",
	"target_readings": "The shafts are to be left out of line on purpose. Work out what the crew has to see when they lie right.",
	"soft_foot":       "Each foot was loosened by itself with a dial on it, all others tight. Work out how far each lifts above the movement that all make.",
	"sliding_limit":   "The maker of the coupling names a sliding speed that its parts stand. Work out at which misalignment they would reach it. That is no permission to run there.",
	"flange_shims":    "The movable machine hangs on a flange with four bolts and has no feet. Work out the shims under the bolts, and how far the face has to slide.",
	"shim_stacks":     "The corrections are known; now the packs have to be made up. Work out what is to lie under each foot, and choose pieces from the box and from the packs that come to just that.",
}

// task is what is wanted of the problem.
func (p Problem) task() string {
	if p.Job != nil && p.Job.Movable != nil {
		return tasks["growth"]
	}
	for _, f := range p.fields() {
		if f.given {
			return tasks[f.name]
		}
	}
	return ""
}
