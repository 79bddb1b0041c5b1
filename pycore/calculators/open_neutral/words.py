"""What the page of the open neutral says."""

from pycore.words.phrase import Phrase, Symbol, say
from pycore.words.sums import SumWords

Name = Phrase | Symbol
TITLE = "Open neutral"
DESCRIPTION = (
    "What happens to three unequal loads in star when the neutral opens: the star point moves inside the triangle of "
    "line voltages, drawn to scale, with the voltage that each load then has."
)
SCENARIO = "Community hall, three heaters in star"
WARNING = (
    "Never open a neutral on a live system. Voltages at single-phase loads can rise to the line voltage and, with "
    "mixed reactances, beyond it; a lost combined neutral and earth can make metalwork live. This page is for paper."
)
CAUTIONS = (
    WARNING,
    "A neutral may carry current when a line is off. A clamp meter never proves a circuit dead: isolate, and prove "
    "dead with a proved tester, before changing a connection.",
    "Readings on a live three-phase system are for competent or supervised people on a rig made for it. One conductor "
    "in the jaw of the clamp, and the right measurement category.",
    "These sheets teach; they do not size an installation: the local wiring rules and a licensed person decide.",
    "Ask which method your examining body accepts.",
)
VOLTAGE = "Line voltage"
LOAD_HELP = (
    "Ohms, such as 20 or 20 + j10; or the power at phase voltage, such as 3 kW. Empty or open: nothing connected."
)
METHODS = (("displacement", "Neutral open"), ("tip-to-tail", "Neutral whole"))
PHASE = "the L1 phase voltage"
VOLTS = SumWords("voltage", "phase voltages", "volts", "nothing is displaced")
AMPERES = SumWords("current", "line currents", "amperes", "the neutral carries 0 A and no arrow is drawn")
SHIFT = "Star point moves by"
NEUTRAL = "Neutral carries"
RESULT_OPEN, RESULT_WHOLE = "the shift of the star point", "the neutral current"
GUESS_OPEN = "which load gets the most voltage, and how much"
TASK_OPEN = (
    "The neutral is open. Work out by how much the star point is displaced, then draw the triangle, set it off, and "
    "measure each load’s voltage"
)
TASK_WHOLE = "The neutral is whole. Find its current by drawing"
TITLE_WHOLE = "Neutral whole"


def load_label(line: str) -> str:
    """Label of a load's field."""
    return f"Load on {line}"


def on_voltage(loads: str, volts: str, sequence: str) -> str:
    """The values in words."""
    return f"{loads} on {volts} between lines" + (f", sequence {sequence}" if sequence else "")


def on_line(line: str, load: str) -> str:
    """A load with the line it is on."""
    return f"{line} {load}"


def nothing_connected() -> str:
    """A load that is not there."""
    return "none"


def bad_load(label: str, given: str) -> str:
    """Text that is no load."""
    return (
        f"{label} cannot be read: “{given[:24]}”. Give ohms, such as 20 or 20 + j10, or a power such as 3 kW; leave it "
        "empty, or write open, for nothing connected."
    )


def no_loads() -> str:
    """Nothing is connected at all."""
    return "No load is connected: give at least one, such as 20 Ω."


def without_bound() -> str:
    """Reactances that cancel."""
    return (
        "These reactances cancel, or nearly: the star point’s voltage would be without bound, or more than 1000 times "
        "the supply’s. Change one of them; real parts have some resistance."
    )


def suffers(line: str, volts: str, share: str, load: str) -> Phrase:
    """Which load has too much."""
    return say("**{line} suffers:** its load of {load} gets {volts}, {share} of its usual voltage.",
               line=line, volts=volts, share=share, load=load)  # fmt: skip


def starves(line: str, volts: str, share: str, load: str) -> Phrase:
    """Which load has too little."""
    return say("{line} starves: its load of {load} gets {volts}, {share} of its usual voltage.",
               line=line, volts=volts, share=share, load=load)  # fmt: skip


def least_suffers() -> Phrase:
    """The rule for resistances."""
    return say(
        "It is the load that takes the least power, the one with the most ohms, that suffers: the star point moves "
        "towards the one that takes the most."
    )


def in_series(first: str, second: str, volts: str) -> Phrase:
    """Two loads and nothing else."""
    return say("With the neutral open {first} and {second} stand in series across the line voltage of {volts}.",
               first=first, second=second, volts=volts)  # fmt: skip


def alone(line: str) -> Phrase:
    """One load only."""
    return say(
        "Only {line} is connected: with its neutral open no current can flow, and its star point stands at the full "
        "phase voltage and is dangerous to touch.",
        line=line,
    )


def outside() -> Phrase:
    """Mixed reactances."""
    return say("The star point lies outside the triangle: with mixed reactances voltages can exceed the line voltage.")


def equal_loads() -> Phrase:
    """Nothing moves."""
    return say("Equal loads: the star point stays in the middle, and the neutral carries nothing.")


def constant() -> Phrase:
    """What is taken for granted."""
    return say("Each load is taken as a constant impedance. Real loads change with their voltage, or fail.")


def whole(amount: str) -> Phrase:
    """The other case."""
    return say(
        "With its neutral whole, each load has its usual voltage and the neutral carries {amount}.", amount=amount
    )


def opened(amount: str) -> Phrase:
    """The other case, from the side of the whole neutral."""
    return say("Were the neutral to open, the star point would move by {amount}. What follows tells of that:",
               amount=amount)  # fmt: skip


COMPARE = "Both cases side by side"
LINE, SUM = "line", "sum"
HEAD = (LINE, "load", "voltage, whole", "current, whole", "voltage, open", "share", "current, open")


def millman() -> Phrase:
    """The theorem in words."""
    return say(
        "Millman: the star point’s voltage is the sum of the currents that the loads would draw, divided by the sum of "
        "their admittances, all as phasors (for plain resistances: currents ÷ sum of 1/R)."
    )


BY_DISPLACEMENT = "The star point displaced"
CALCULATED = "By calculation (Millman)"
S = Symbol("V", "S")


MISTAKES = {
    "load-left-out": (
        "the load on {a} was left out",
        "Every load that is connected has its part in both sums.",
    ),
    "impedance-for-admittance": (
        "impedances were used where admittances belong",
        "Divide 1 by each impedance first: the smallest impedance counts most.",
    ),
    "line-for-phase": (
        "the line voltage was used for the phase voltage",
        "Each load in star has the line voltage divided by √3 while its neutral is whole.",
    ),
}  # fmt: skip
"""Mistakes of this calculator alone: what happened, and where to look."""

SHORT: dict[str, str] = {
    "load-left-out": "a load left out",
    "impedance-for-admittance": "impedances for admittances",
    "line-for-phase": "line voltage for phase voltage",
}
"""Mistakes of this calculator alone, in few words."""


# The steps of the displaced star point.


def triangle() -> Phrase:
    """The tips joined."""
    return say("**Join the three tips** with dashed lines: the triangle of the line voltages.")


def triangle_why() -> Phrase:
    """What the triangle stands for."""
    return say("The supply holds these three corners, whatever the load does.")


def shift(name: Name, zero: Name, angle: str, sense: str, length: str) -> Phrase:
    """The star point's voltage set off from the middle."""
    return say(
        "**Set off {name}.** Protractor’s centre on the common point, zero line along {zero}. Set off {angle} {sense} "
        "and draw {length}: its tip is the load’s star point.",
        name=name, zero=zero, angle=angle, sense=sense, length=length,
    )  # fmt: skip


def shift_why() -> Phrase:
    """Where the value comes from."""
    return say("With no neutral the load’s star point floats: it settles where the three currents add to nothing.")


def no_shift() -> Phrase:
    """Equal loads: nothing moves."""
    return say("**The star point stays in the middle.** The three loads are equal, so no neutral is missed.")


def load_step(name: Name, start: Name, tip: Name, length: str, amount: str) -> Phrase:
    """A load's voltage drawn and measured."""
    return say(
        "**Draw and measure {name},** from {start} to the tip of {tip}: about {length}, so {amount}.",
        name=name, start=start, tip=tip, length=length, amount=amount,
    )  # fmt: skip
