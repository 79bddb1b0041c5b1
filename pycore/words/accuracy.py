"""How near a hand and a meter can come, in plain words or with the vocabulary of the GUM."""

from pycore.words.phrase import Phrase, Symbol, say

Name = Phrase | Symbol

TITLE = "How near a hand and a meter can come"
HANDS = (("practised", "practised: 0.5 mm, 0.5°"), ("ordinary", "ordinary: 1 mm, 1°"))
HAND = "Hand that draws"
PERCENT = "Meter: % of reading"
DIGITS = "Meter: digits"
DIGIT = "Meter: one digit is"
METERS = "Meters"
METER_SETS = (("several", "a different one for each reading"), ("one", "the same one for all readings"))
LEVEL = "Words"
LEVELS = (("plain", "plain"), ("full", "with uncertainties"))
METER_HELP = "A meter’s limit, such as 2 % of the reading and 5 digits, stands in its booklet."


def title() -> Phrase:
    """Heading of the section."""
    return say(TITLE)


def by_hand(amount: str) -> Phrase:
    """The tolerance beside the headline."""
    return say("by hand ± {amount}", amount=amount)


def tolerance_label() -> Phrase:
    """What the tolerance means."""
    return say("95 in 100 careful drawings come within")


def hand_intro(length: str, angle: str) -> Phrase:
    """What a hand is taken to do."""
    return say(
        "This hand sets off and reads lengths to about {length} and angles to about {angle}. Each such slip is carried "
        "through every move: 95 in 100 drawings of these values come within",
        length=length,
        angle=angle,
    )


def head() -> tuple[Phrase, ...]:
    """Head of the comparison of methods."""
    return say("method"), say("by hand ±"), say("on paper ±"), say("share")


def at_least(text: str) -> str:
    """A figure that is only a lower bound."""
    return f"over {text}"


def most_forgiving(method: str) -> Phrase:
    """Which way is the best for these values."""
    return say("**{method}** is the most forgiving way for these values at this scale.", method=method)


def flat(angle: str) -> Phrase:
    """Lines that cross too flatly."""
    return say(
        "On the sheet two lines cross at only {angle}: a small slip moves the crossing far. Another order or method is "
        "more forgiving.",
        angle=angle,
    )


def flat_rows() -> Phrase:
    """Rows whose figure is a lower bound."""
    return say("“Over” marks ways in which lines cross so flatly that drawings scatter further than the figure says.")


def ellipse_note() -> str:
    """What the ellipse on an overlay means."""
    return "95 in 100 careful drawings end inside the ellipse."


def agrees(difference: str, can: str, meters: str) -> Phrase:
    """The reading and the calculation agree."""
    return say(
        "The reading and the calculation are {difference} apart. With {meters} they can be {can} apart without either "
        "being wrong: **they agree.**",
        difference=difference,
        can=can,
        meters=meters,
    )


def disagrees(difference: str, can: str, meters: str) -> Phrase:
    """The reading and the calculation do not agree."""
    return say(
        "The reading and the calculation are {difference} apart. With {meters} they should be no more than {can} "
        "apart: **they do not agree.** One of these could be why:",
        difference=difference,
        can=can,
        meters=meters,
    )


def meters(percent: str, digits: str, *, one: bool) -> str:
    """The meters in words."""
    limit = f"± ({percent} % of reading + {digits} digits)"
    return f"one meter of {limit} for all readings" if one else f"meters of {limit}"


def en_number(number: str, expanded: str) -> Phrase:
    """E_n in full."""
    return say(
        "{e} = difference ÷ expanded uncertainty of the difference (95 %, factor 2, what both share taken out) "
        "= {number}; the uncertainty is {expanded}. Results agree when {e} is at most 1 (ISO 13528).",
        e=Symbol("E", "n"),
        number=number,
        expanded=expanded,
    )


def shared_gain() -> Phrase:
    """Why one meter narrows it."""
    return say(
        "The same meter read the lines and the neutral: if it reads 1 % high, it reads all of them 1 % high, so that "
        "this part cannot part reading and calculation."
    )


def why_angle(line: str, angle: str, *, lags: bool) -> Phrase:
    """A line's power factor."""
    return say(
        "{line} may {verb} by {angle} more than stated. Measure its phase angle or power factor.",
        line=line,
        verb="lag" if lags else "lead",
        angle=angle,
    )


def why_reading(line: str, amount: str, *, more: bool) -> Phrase:
    """A line's reading."""
    return say(
        "{line} may carry {amount} {side} than stated. Read it again, with the neutral, at the same moment.",
        line=line,
        amount=amount,
        side="more" if more else "less",
    )


def why_harmonic(percent: str) -> Phrase:
    """A third harmonic."""
    return say(
        "The lines may carry {percent} % of third harmonic, which adds up in the neutral. Read the neutral at 150 Hz, "
        "or with a meter that shows harmonics.",
        percent=percent,
    )


def why_range(factor: str) -> Phrase:
    """A wrong range."""
    return say(
        "The reading is {factor} times the calculation: look at the meter’s range and the decimal mark.", factor=factor
    )


def one_number() -> Phrase:
    """What one number cannot do."""
    return say("One reading cannot tell which: the next measurement decides.")


def budget_head() -> tuple[Phrase, ...]:
    """Head of the budget of a drawing."""
    return say("what"), say("adds ±"), say("share of variance")


def budget_title() -> Phrase:
    """The budget of the drawing on the sheet."""
    return say("What contributes to the drawing on the sheet (standard uncertainties, largest first):")


def contribution(step: str, kind: str) -> str:
    """One line of the budget."""
    return f"{TOOLS[kind]}: {step}"


TOOLS = {"angle": "protractor", "length": "ruler", "length-2": "compasses", "parallel": "set square"}
FINAL_READING = "ruler: reading the result"
