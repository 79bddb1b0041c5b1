"""The form of the neutral-current page: its labels, its help, the names of its options."""

METER = "Meter on the neutral"
METER_HELP = "Optional: the reading of a clamp meter on the neutral. Only on a training rig, under supervision."
LAG_HELP = (
    "Angle in degrees by which the current lags its own phase voltage (minus if it leads), or a power factor such as "
    "0.85 lag."
)
SEQUENCE = "Phase sequence"
SEQUENCE_HELP = (
    "The order in which the phase voltages reach their peaks. It belongs to the supply. At equal power factor it "
    "changes only the angle of the neutral current; at unequal power factors it can change the size too."
)
METHOD = "Method"
METHODS = (("parallelogram", "Parallelogram"), ("tip-to-tail", "Tip to tail"), ("components", "Components"))
ORDER = "Which two first"
BEST_FIT = "best fit"
PARALLELS = "Parallels by"
PARALLEL_TOOLS = (("protractor", "protractor"), ("set-squares", "set squares"), ("compasses", "compasses"))
PROTRACTOR = "Protractor"
PROTRACTORS = (("180", "half circle, 180°"), ("360", "full circle, 360°"))
FIRST = "First direction"
FIRSTS = (("up", "up"), ("right", "to the right"))
REFERENCE = "What points in this direction"
FIRST_CURRENT = "the first current"
ROTATION = "Sense of rotation"
ROTATIONS = (("anticlockwise", "anticlockwise"), ("clockwise", "clockwise"))
ROTATION_HELP = "This changes the drawing only, not the answer."
RESULTANT = "Neutral current drawn as"
RESULTANTS = (("sum", "the sum of the line currents"), ("returning", "the returning current"))
SHEET = "Kind of sheet"
SHEETS = (
    ("construction", "construction: every step is drawn"),
    ("problem", "problem: values and room to draw"),
    ("overlay", "overlay: for checking a hand drawing"),
)
START = "Drawn for the learner"
STARTS = (
    ("yes", "the common point"),
    ("no", "nothing"),
    ("two", "the common point and two phasors"),
)
FURTHER = "A further question"
NO_FURTHER = "none"
MIRROR = "Mirror the overlay"
MIRRORS = (("no", "no"), ("yes", "yes, to lay it face down"))
PAPER = "Paper"
PAPERS = (("A5", "A5"), ("A4", "A4"), ("A3", "A3"), ("A2", "A2"), ("letter", "Letter"), ("tabloid", "Tabloid"))
ORIENTATION = "Paper orientation"
ORIENTATIONS = (("landscape", "landscape"), ("portrait", "portrait"))
SCALE = "A per cm"
OWN_PAPER = "I draw on"
OWN_PAPERS = (("", "a printed sheet"), *((name, f"my own {label}") for name, label in PAPERS))
OWN_WAY = "My paper is"
STEPS = "Scales to choose from"
STEP_SETS = (("all", "1, 2, 2.5, 4, 5"), ("125", "1, 2, 5"))
ONE_SCALE = "One scale for every method"
ONE_SCALE_CHOICES = (("yes", "yes"), ("no", "no, the largest for each"))
ONE_SCALE_HELP = "Sheets of one problem by two methods can then be compared line by line."
NAMES = "Line names"
NAME_SETS = (("L123", "L1 L2 L3"), ("ABC", "A B C"), ("RYB", "R Y B"), ("RST", "R S T"))
COLOURS = "Line colours"
COLOUR_SETS = (
    ("iec", "IEC"),
    ("british-old", "older British"),
    ("american-208", "N. American, 208 V"),
    ("american-480", "N. American, 480 V"),
)
DECIMAL = "Decimal mark"
DECIMALS = (("point", "point: 18.4"), ("comma", "comma: 18,4"))
ANGLES = "Angles"
ANGLE_STYLES = (("protractor", "as on a protractor"), ("polar", "polar, −180° to 180°"))
PLACE = "Place"
PLACE_HELP = "Printed in the title block."
WHO = "Name"
WHO_HELP = "Printed on this sheet only. Never part of a link."
GROUP = "Group"
DATE = "Date"


def lag_of(line: str) -> str:
    """Label of a line's angle of lag; a value that says so is a lead, or a power factor."""
    return f"Lag of {line}"


def two_lines(first: str, second: str) -> str:
    """An option that names two lines."""
    return f"{first} and {second}"


def zero_by(line: str) -> str:
    """The option that asks which current of a line would leave nothing in the neutral."""
    return f"which current in {line} makes the neutral current zero"


def voltage_of(line: str) -> str:
    """An option that names a phase voltage."""
    return f"the {line} phase voltage"
