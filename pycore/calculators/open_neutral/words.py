"""What the page of the open neutral says."""

from collections.abc import Sequence

from pycore.words import cautions
from pycore.words.phrase import Phrase, Symbol, plain, say
from pycore.words.sums import SumWords

Name = Phrase | Symbol
TITLE = "Open neutral"
DESCRIPTION = (
    "The voltage that each load gets when the neutral opens: how far the star point of three unequal loads moves, "
    "drawn to scale."
)
SCENARIO = "Community hall, three heaters in star"
WARNING = (
    "Never open a neutral on a live system. The voltage across single-phase loads can rise to the line voltage and, "
    "with mixed reactances, above it. If a combined neutral and earth conductor is lost, metalwork can become live. "
    "This page is for work on paper only. Flickering or very bright lamps at home can be signs of a lost neutral. "
    "Switch off at the main switch if that is safe. Touch no metalwork. Call the network operator’s emergency number "
    "now."
)
CAUTIONS = (
    WARNING,
    cautions.NEUTRAL_CARRIES,
    cautions.COMPETENT_WITH_CLAMP,
    cautions.LICENSED_PERSON,
    cautions.EXAMINING_BODY,
)
VOLTAGE = "Line voltage"
LOAD_HELP = (
    "Ohms, such as 20 or 20 + j10; or the power at phase voltage, such as 3 kW. Empty or “open”: no load."
)
METHODS = (("displacement", "Neutral open"), ("tip-to-tail", "Neutral connected"))
PHASE = "the L1 phase voltage"
VOLTS = SumWords("voltage", "phase voltages", "volts", "the star point is not displaced")
AMPERES = SumWords("current", "line currents", "amperes", "the neutral carries 0 A and no arrow is drawn")
SHIFT = "Displacement of the star point"
NEUTRAL = "Neutral current if the neutral is connected"
RESULT_OPEN, RESULT_WHOLE = "the displacement of the star point", "the neutral current"
GUESS_OPEN = "which load gets the highest voltage, and how high it is"
MEASURE_TOO = ", then measure each load’s voltage"
"""What a sheet asks for beside the displacement."""
TASK_OPEN = (
    "The neutral is open. Calculate the displacement of the star point. Draw the triangle and the displacement"
    f"{MEASURE_TOO}"
)
TASK_FOUND = (
    "The neutral is open. Draw the triangle of the line voltages and find the load’s star point in it"
    f"{MEASURE_TOO}"
)
"""The task where the star point is found by drawing."""
TASK_WHOLE = "The neutral is connected. Find its current by drawing"
FIND_CROSSING = (
    "The two new dashed lines cross at the load’s star point. Draw from the common point to it: this is {result}. "
    "Write it in the table."
)
"""The last of the moves that find the star point of three loads, in a problem for easy reading."""
FIND_MARK = (
    "The mark is the load’s star point. Draw from the common point to it: this is {result}. Write it in the table."
)
"""The same for two loads."""


def share_of_two(lines: Sequence[str], tips: Sequence[str]) -> list[str]:
    """The first moves that find the star point: two loads alone divide the line voltage."""
    return [
        f"Think of the loads on {lines[0]} and {lines[1]} alone: they are in series on the line voltage. Calculate the "
        f"voltage of the load on {lines[0]}.",
        f"Mark this voltage as a length on the dashed line from the tip of {tips[0]} to the tip of {tips[1]}. Start at "
        f"the tip of {tips[0]}.",
    ]


def to_third_tip(tips: Sequence[str]) -> str:
    """The move after them, where a third load is connected."""
    return f"Draw a dashed line from this mark to the tip of {tips[2]}."


def again_with(lines: Sequence[str], tips: Sequence[str]) -> list[str]:
    """The same with another pair of loads."""
    return [
        f"Do the same with the loads on {lines[0]} and {lines[1]}: start at the tip of {tips[0]}, and draw from the "
        f"mark to the tip of {tips[2]}."
    ]


TITLE_WHOLE = "Neutral connected"


def load_label(line: str) -> str:
    """Label of a load's field."""
    return f"Load on {line}"


def on_voltage(loads: str, volts: str, sequence: str) -> str:
    """The values in words."""
    return f"{loads} on {volts} between lines" + (f", sequence {sequence}" if sequence else "")


def on_line(line: str, load: str) -> str:
    """A load with the line it is on."""
    return f"{line} {load}"


NOTHING_CONNECTED = "none"
"""Stands for the value of an empty field."""


def bad_load(label: str, typed: str) -> str:
    """Message for a field that cannot be read as a load."""
    return (
        f"{label} cannot be read: “{typed[:24]}”. Enter ohms, such as 20 or 20 + j10, or a power, such as 3 kW. For "
        "no load, leave it empty or write open."
    )


NO_LOADS = "No load is connected. Enter at least one, such as 20 Ω."
"""Message if all three fields are empty."""

WITHOUT_BOUND = (
    "These reactances cancel, or almost cancel. The voltage of the star point would have no limit, or be more than "
    "1000 times the supply voltage. Change one of them. Real components have some resistance."
)
"""Message if the admittances add to zero, or nearly."""


def too_much_voltage(line: str, volts: str, share: str, load: str) -> Phrase:
    """Which load has too much."""
    return say("**{line} has too much voltage:** its load of {load} gets {volts}, {share} of the normal voltage.",
               line=line, volts=volts, share=share, load=load)  # fmt: skip


def several_too_much(lines: str, voltages: str) -> Phrase:
    """Which loads have too much, the highest voltage first."""
    return say("**{lines} have too much voltage:** {voltages}.", lines=lines, voltages=voltages)


def several_too_little(lines: str, voltages: str) -> Phrase:
    """Which loads have too little, the lowest voltage first."""
    return say("{lines} have too little voltage: {voltages}.", lines=lines, voltages=voltages)


def share_of_normal(volts: str, share: str, *, first: bool) -> str:
    """A voltage among several, the first with what the share is of: 302.4 V (131 % of the normal voltage)."""
    return f"{volts} ({share} of the normal voltage)" if first else f"{volts} ({share})"


def each(volts: str, share: str) -> str:
    """One voltage of several loads."""
    return f"{volts} each ({share} of the normal voltage)"


def too_little_voltage(line: str, volts: str, share: str, load: str) -> Phrase:
    """Which load has too little."""
    return say("{line} has too little voltage: its load of {load} gets {volts}, {share} of the normal voltage.",
               line=line, volts=volts, share=share, load=load)  # fmt: skip


def largest_resistance_rule(*, several_largest: bool, several_smallest: bool) -> Phrase:
    """The rule for resistances."""
    return say(
        "The {largest} the largest resistance (the least power at normal voltage) {gets} the highest voltage. The "
        "star point moves towards the {smallest} with the smallest resistance.",
        largest="loads with" if several_largest else "load with",
        gets="get" if several_largest else "gets",
        smallest="lines of the loads" if several_smallest else "line of the load",
    )


def in_series(first: str, second: str, volts: str) -> Phrase:
    """Exactly two loads are connected."""
    return say((
        "With the neutral open, the loads on {first} and {second} are in series across the line voltage of {volts}."
    ),
               first=first, second=second, volts=volts)  # fmt: skip


def alone(line: str) -> Phrase:
    """Exactly one load is connected."""
    return say(
        "Only the load on {line} is connected. With the neutral open no current can flow. The star point then has the "
        "full phase voltage and is dangerous to touch.",
        line=line,
    )


OUTSIDE = say(
    "The star point is outside the triangle of the line voltages, because the loads have unlike phase angles. The "
    "voltage of a load can then be higher than the line voltage."
)
"""Mixed reactances."""

EQUAL_LOADS = say(
    "The three loads are equal, so the star point stays at the centre. The load currents add to zero there, and a "
    "connected neutral carries no current."
)
"""The displacement is zero because all three loads are equal."""

SPECIAL_LOADS = say(
    "The loads are not equal, but their currents happen to add to zero. So the star point stays at the centre, and a "
    "connected neutral carries no current."
)
"""The displacement is zero although the loads are not equal."""

CONSTANT_IMPEDANCE = say(
    "Each load is assumed to have a constant impedance. Real loads change with the voltage, or fail."
)
"""The assumption of every result on this page."""


def neutral_connected(amount: str) -> Phrase:
    """What a connected neutral would change, on the page of the open neutral."""
    return say(
        "With the neutral connected, each load has its normal voltage and the neutral carries {amount}.", amount=amount
    )


def neutral_open(amount: str) -> Phrase:
    """What an open neutral would change, on the page of the connected neutral."""
    return say((
        "If the neutral opened, the star point would be displaced by {amount}. The next lines describe this case:"
    ),
               amount=amount)  # fmt: skip


COMPARE = "Both cases side by side"
LINE, SUM = "line", "sum"
HEAD = (LINE, "load", "voltage, neutral connected", "current, neutral connected", "voltage, neutral open", (
    "per cent of normal"
), "current, neutral open")


MILLMAN = say(
    "Millman: voltage of the star point = sum of the currents that the loads take at their phase voltages ÷ sum "
    "of their admittances, all as phasors (for resistances, the admittance is 1/R)."
)
"""The theorem in words."""

BY_DISPLACEMENT = "Displacement of the star point"
CALCULATED = "By calculation (Millman)"
STAR_POINT_SYMBOLS = {"RST": Symbol("V", "M")}
"""Symbol of the star point's displacement where a line is called S, by the names of the lines."""


def star_point_symbol(names: str) -> Symbol:
    """The symbol of the star point's displacement: V_S, or V_M where the names of the lines have an S."""
    return STAR_POINT_SYMBOLS.get(names, Symbol("V", "S"))



MISTAKES = {
    "load-left-out": (
        "the load on {a} was left out",
        "Every connected load is part of both sums.",
    ),
    "impedance-for-admittance": (
        "impedances were used instead of admittances",
        "First divide 1 by each impedance. The smallest impedance has the largest effect.",
    ),
    "angles-ignored": (
        "the angles of the loads were ignored: their sizes were used as plain numbers",
        "An admittance has an angle too: a coil turns its current back, a capacitor turns it forward.",
    ),
    "line-for-phase": (
        "the line voltage was used instead of the phase voltage",
        "With its neutral connected, each load in star has the line voltage divided by √3.",
    ),
}  # fmt: skip
"""Mistakes of this calculator alone: what happened, and the advice."""

SHORT: dict[str, str] = {
    "load-left-out": "a load left out",
    "impedance-for-admittance": "impedances instead of admittances",
    "angles-ignored": "angles of the loads ignored",
    "line-for-phase": "line voltage instead of phase voltage",
}
"""Mistakes of this calculator alone, in few words."""


# The steps of the displaced star point.


TRIANGLE = say("**Join the three tips** with dashed lines: the triangle of the line voltages.")
"""Step: join the tips of the phase voltages."""

TRIANGLE_WHY = say("The supply fixes these three corners, whatever the loads are.")
"""Why the triangle does not depend on the loads."""


ITS_TIP = say(" Its tip is the load’s star point.")
"""What the drawn displacement ends at."""

SHIFT_WHY = say(
    "Size and angle are calculated by Millman’s formula (see the calculation), because the phase angles of these loads "
    "are different. Without a neutral, nothing holds the load’s star point: the three currents must add to zero."
)
"""Where the value comes from."""


def shift_alone(line: str) -> Phrase:
    """Where the star point is if only one load is connected."""
    return say(
        "Only the load on {line} is connected, so no current can flow. The star point then has the full phase voltage "
        "of {line}.",
        line=line,
    )


def voltage_of_load(symbol: Phrase, line: str) -> str:
    """What the symbol of a load's voltage means: U₁ is the voltage across the load on L1."""
    return f"{plain(symbol)} is the voltage across the load on {line}"


def voltage_without_load(symbol: Phrase, line: str) -> str:
    """The same where no load is connected."""
    return f"{plain(symbol)} is the voltage between the star point and {line}, which has no load"

NO_SHIFT = say(
    "**The star point stays at the centre.** The three load currents add to zero there, so the neutral would "
    "carry nothing."
)
"""Step if the displacement is zero."""


NEARLY_CENTRED = say("The star point stays at the centre, as nearly as a drawing can show.")
"""There is a displacement, but it is too small to be drawn."""
NEARLY_NO_SHIFT = say(
    "**The star point stays at the centre, as nearly as a drawing can show.** Draw no arrow for its displacement."
)
"""Step if the displacement is too small to be drawn."""


def divide(tip: Name, other_tip: Name, length: str, amount: str) -> Phrase:
    """Step: mark the star point of two loads alone on the side between their tips."""
    return say(
        "**Mark {length} on the dashed line** from the tip of {tip} to the tip of {other_tip}, starting at the tip of "
        "{tip}. It represents {amount}.",
        length=length, tip=tip, other_tip=other_tip, amount=amount,
    )  # fmt: skip


def divide_why(first: str, second: str, without: str, calculation: str) -> Phrase:
    """Why two loads divide the line voltage; ``without`` names the line of the third load, "" if there is none."""
    if not without:
        return say(
            "The loads on {first} and {second} are in series. The load on {first} gets {calculation}, so the star "
            "point is here.",
            first=first, second=second, calculation=calculation,
        )  # fmt: skip
    return say(
        "Without the load on {without}, the loads on {first} and {second} would be in series. The load on {first} "
        "would get {calculation}, so the star point would be here.",
        first=first, second=second, without=without, calculation=calculation,
    )  # fmt: skip


def divider(volts: str, load: str, other: str, amount: str) -> str:
    """The share of the line voltage that a load has in series with another."""
    return f"{volts} × {load} ÷ ({load} + {other}) = {amount}"


def cut(tip: Name) -> Phrase:
    """Step: join the mark with the third tip."""
    return say("**Join this mark with the tip of {tip}** by a dashed line.", tip=tip)


def cut_why(line: str) -> Phrase:
    """Why the star point is on that line."""
    return say("The load on {line} moves the star point along this line, towards its own corner.", line=line)


def star_point(name: Name, measured: Phrase, *, crossing: bool) -> Phrase:
    """Step: draw the displacement to the star point that was found."""
    place = "the crossing of the two dashed lines through the triangle" if crossing else "the mark"
    return say(
        "**Draw {name}** from the common point to {place}, which is the load’s star point. Length: {measured}",
        name=name, place=place, measured=measured,
    )  # fmt: skip


STAR_POINT_WHY = say("With all three loads connected, the star point must be on both lines.")
"""Why the star point is at the crossing."""


def load_step(name: Name, start: Name, tip: Name, measured: Phrase) -> Phrase:
    """A load's voltage drawn and measured."""
    return say(
        "**Draw and measure {name},** from {start} to the tip of {tip}: {measured}",
        name=name, start=start, tip=tip, measured=measured,
    )  # fmt: skip
