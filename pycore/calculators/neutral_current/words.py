"""What the neutral-current page says beside its figures."""

from pycore.words.phrase import Phrase, Symbol, say

Name = Phrase | Symbol

TITLE = "Neutral current"
DESCRIPTION = (
    "The neutral current of an unbalanced star-connected load: calculated, drawn to scale move by move, "
    "and printed true to the millimetre."
)
SCENARIO = "Village theatre, three dimmer racks in star"

CAUTIONS = (
    "These sheets teach; they do not size an installation. A neutral’s size, protection and harmonics are "
    "decided by the local wiring rules and a licensed person.",
    "Readings on a live three-phase system are for competent or supervised people on a rig made for it. "
    "One conductor in the jaw of the clamp, and the right measurement category.",
    "Never open a neutral on a live system: voltages at single-phase loads can rise to the line voltage and, "
    "with mixed reactances, beyond it. A lost combined neutral and earth can make metalwork live.",
    "A neutral may carry current when a line is off. A clamp meter never proves a circuit dead: isolate, and "
    "prove dead with a proved tester, before changing a connection.",
    "Ask which method your examining body accepts.",
)


NEUTRAL, METER_ON_NEUTRAL, BY_FORMULA = "Neutral", "meter on the neutral", "By the closed formula"


def angle_by_protractor(angle: str, sense: str, origin: Name) -> Phrase:
    """Where the neutral points, as a protractor reads it."""
    return say("{angle} {sense} from {origin}", angle=angle, sense=sense, origin=origin)


def angle_on(origin: Name) -> Phrase:
    """The neutral lies on the first direction."""
    return say("in line with {origin}", origin=origin)


def angle_polar(angle: str, origin: Name) -> Phrase:
    """Where the neutral points, as a polar angle."""
    return say("at {angle} from {origin}", angle=angle, origin=origin)


def on_sheet(length: str) -> Phrase:
    """How long the neutral is on the paper."""
    return say("{length} on the sheet", length=length)


def no_arrow() -> Phrase:
    """Zero has no arrow."""
    return say("no arrow to draw")


def balanced() -> Phrase:
    """Currents and angles equal."""
    return say("The load is balanced: three equal currents 120° apart add to nothing.")


def closed_not_balanced() -> Phrase:
    """The sum is zero by chance."""
    return say(
        "The three currents add to nothing although the load is not balanced: the figure closes by itself."
    )


def below_largest(neutral: str, largest: str) -> Phrase:
    """First sanity check at equal power factor."""
    return say(
        "Check: at equal power factor the neutral never carries more than the largest line. "
        "{neutral} is within {largest}.",
        neutral=neutral,
        largest=largest,
    )


def unequal_power_factors() -> Phrase:
    """The sanity check does not hold."""
    return say(
        "The power factors differ, so the neutral may carry more than the largest line: "
        "the usual check does not hold here."
    )


def one_line(line: str) -> Phrase:
    """Only one line carries current."""
    return say(
        "Only {line} carries current, so the neutral carries the same. There is nothing to construct.",
        line=line,
    )


def zero_line(lines: str) -> Phrase:
    """Lines without current have no arrow."""
    return say("{lines} carries no current and has no arrow.", lines=lines)


def zero_lines(lines: str) -> Phrase:
    """Several lines without current."""
    return say("{lines} carry no current and have no arrow.", lines=lines)


def small_line(line: str) -> Phrase:
    """A phasor too short for an arrow."""
    return say("At this scale {line} is shorter than 4 mm: it is drawn as a dot with a label.", line=line)


def small_lines(lines: str) -> Phrase:
    """Several phasors too short for an arrow."""
    return say("At this scale {lines} are shorter than 4 mm: they are drawn as dots with labels.", lines=lines)


def small_neutral(length: str) -> Phrase:
    """A sum too short to be measured."""
    return say(
        "The neutral is only {length} on this sheet: too short to measure its length or angle well.", length=length
    )


def predict_first() -> Phrase:
    """Before the first move."""
    return say(
        "**Predict first.** Sketch the arrows freehand: which way will the sum point, and can it be longer than "
        "the longest line?"
    )


def angle_label(voltage: Name, line: str, *, mirrored: bool) -> Phrase:
    """What the neutral's angle is counted from, and which sense is positive in this picture."""
    sense = "clockwise" if mirrored else "anticlockwise"
    return say(
        "angle from {voltage}, the {line} phase voltage, {sense} positive in this picture",
        voltage=voltage,
        line=line,
        sense=sense,
    )


def prints_blank(label: str) -> Phrase:
    """A name, group or date that the sheet's lettering cannot set."""
    return say(
        "{label} has signs that the sheet’s lettering lacks: it prints blank, to be written by hand.", label=label
    )


def meter(reading: str, calculated: str, difference: str, share: str, higher: bool) -> Phrase:
    """The meter's reading beside the calculation."""
    return say(
        "Meter on the neutral: {reading}. The calculation gives {calculated}, so the reading is "
        "{difference} ({share}) {side}.",
        reading=reading,
        calculated=calculated,
        difference=difference,
        share=share,
        side="higher" if higher else "lower",
    )


def meter_same(reading: str) -> Phrase:
    """Reading and calculation agree as written."""
    return say("Meter on the neutral: {reading}, the same as the calculation.", reading=reading)


def meter_zero(reading: str) -> Phrase:
    """A reading where the calculation gives nothing."""
    return say("Meter on the neutral: {reading}. The calculation gives 0 A.", reading=reading)


def caption(paper: str, orientation: str, scale: str, chosen: bool) -> Phrase:
    """Paper and scale below the sheet."""
    tail = ", the largest listed scale that fits" if chosen else ""
    return say(
        "{paper} {orientation}, {scale}{tail}.",
        paper=paper_name(paper),
        orientation=orientation,
        scale=scale,
        tail=tail,
    )


def alternative(what: str, scale: str, length: str) -> Phrase:
    """What another order or way round would give."""
    return say("{what}: {scale}, neutral {length}", what=what, scale=scale, length=length)


def does_not_fit(given: str, paper: str, over: str, scale: str, papers: str) -> str:
    """A scale of the user's own that is too large for the paper."""
    bigger = f" {paper_name(papers)} would take it as it is." if papers else ""
    return (
        f"At 1 cm = {given} the figure does not fit {paper_name(paper)}: {over}. "
        f"It is drawn at 1 cm = {scale}, which fits.{bigger}"
    )


def paper_name(paper: str) -> str:
    """A paper as it is named in a sentence."""
    return paper[:1].upper() + paper[1:]


def use_scale(scale: str) -> str:
    """Offer of a scale that fits."""
    return f"Use 1 cm = {scale}"


def use_paper(paper: str) -> str:
    """Offer of a paper that takes the scale."""
    return f"Use {paper_name(paper)} paper"


def too_wide(width: str, height: str) -> str:
    """By how much a figure passes the paper; either may be empty."""
    if width and height:
        return f"it is {width} too wide and {height} too high"
    return f"it is {width} too wide" if width else f"it is {height} too high"


def pair_first(first: str, second: str) -> str:
    """An order of pairing by its lines: L1 with L2 first."""
    return f"{first} with {second} first"


def chain(lines: str) -> str:
    """An order of drawing: L1, L2, L3."""
    return lines


def components_intro(up: bool, origin: Name) -> Phrase:
    """Which angle, and which function gives which part."""
    if up:
        return say(
            "Angles are counted clockwise from straight up, where {origin} points. The level part is "
            "size × sine, the upright part size × cosine.",
            origin=origin,
        )
    return say(
        "Angles are counted anticlockwise from the right, where {origin} points. The level part is "
        "size × cosine, the upright part size × sine.",
        origin=origin,
    )


def rounding_note(decimals: int) -> Phrase:
    """How the working rounds."""
    return say(
        "Parts are written to {decimals} decimals and carried on unrounded; only the answer is rounded.",
        decimals=str(decimals),
    )


def pythagoras() -> Phrase:
    """Length of the sum."""
    return say("**Pythagoras** gives the size from the two sums.")


def arctangent() -> Phrase:
    """Angle of the sum."""
    return say("**The arctangent** gives the angle to the level axis; the signs say which quarter.")


def quarter(right: bool, up: bool, angle: str, result: Phrase) -> Phrase:
    """The quadrant and the angle from the first direction."""
    return say(
        "The sum points to the {side} and {height}, {angle} from the level axis: that is {result}.",
        side="right" if right else "left",
        height="up" if up else "down",
        angle=angle,
        result=result,
    )


def on_axis(way: str, result: Phrase) -> Phrase:
    """One part is zero."""
    return say("One part is 0, so the sum points {way}: that is {result}.", way=way, result=result)


def formula_intro() -> Phrase:
    """When the closed formula holds."""
    return say(
        "For three lines 120° apart at equal power factor, with {a}, {b}, {c} their sizes:",
        a=Symbol("a"),
        b=Symbol("b"),
        c=Symbol("c"),
    )


def formula_differences() -> Phrase:
    """The cancellation-free form."""
    return say("The same from the differences, which shows that equal currents give 0:")


def formula_no_angle() -> Phrase:
    """What the formula cannot give."""
    return say("The formula gives the size only. For the angle, draw or use components.")


def formula_fails() -> Phrase:
    """Why the closed formula is refused."""
    return say(
        "The closed formula √(a² + b² + c² − ab − bc − ca) holds only when all three lines have the same "
        "power factor, so that they stand 120° apart. Here they do not: use components or draw."
    )


def by_method(method: str, order: str, arms: int) -> Phrase:
    """Title of a working: its method and, where it matters, its order."""
    if method == "components":
        return say("By components")
    if arms < 3:
        return say("By parallelogram") if method == "parallelogram" else say("Tip to tail")
    if method == "tip-to-tail":
        return say("Tip to tail: {order}", order=order)
    return say("By parallelogram: {order}", order=order)
