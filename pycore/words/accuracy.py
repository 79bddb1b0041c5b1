"""How near a hand and a meter can come, in plain words or with the vocabulary of the GUM."""

from pycore.words.phrase import Phrase, say

TITLE = "How near a hand and a meter can come"
HANDS = (("practised", "practised: 0.5 mm, 0.5°"), ("ordinary", "ordinary: 1 mm, 1°"))
OWN_HAND = ("own", "your own figures")
HAND = "Hand that draws"
HAND_MM = "Slip of the ruler"
HAND_DEGREES = "Slip of the protractor"
DRAWN_FIELD = "Drawn value"
DRAWN_HELP = "Optional: the neutral as read off a drawing, in amperes (10.4 A) or as its length (52 mm or 5.2 cm)."
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


def hand_title() -> Phrase:
    """Heading of the section where no meter is read."""
    return say("How near a hand can come")


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
        "through every move: 95 in 100 drawings of these values come within:",
        length=length,
        angle=angle,
    )


def head() -> tuple[Phrase, ...]:
    """Head of the comparison of methods."""
    return say("method"), say("by hand ±"), say("on paper ±"), say("share")


def marked(title: str) -> str:
    """A way whose lines cross flatly."""
    return f"{title} *"


def most_forgiving(method: str) -> Phrase:
    """Which way is the best for these values."""
    return say("**{method}** is the most forgiving way for these values on this paper.", method=method)


def flat(angle: str) -> Phrase:
    """Lines that cross too flatly."""
    return say(
        "On the sheet two lines cross at only {angle}: a small slip moves the crossing far. Another order or method is "
        "more forgiving.",
        angle=angle,
    )


def flat_rows() -> Phrase:
    """Rows whose figure comes from simulated drawings."""
    return say(
        "* Lines cross so flatly here that small slips go far: the figure comes from 800 simulated drawings, and "
        "single drawings go further astray."
    )


def ellipse_note() -> str:
    """What the ellipse on an overlay means."""
    return "95 in 100 careful drawings end inside the ellipse."


def why_angle(cases: str) -> Phrase:
    """A line's power factor."""
    return say(
        "**A power factor other than stated:** {cases} would do. Next, measure the phase angle of that line: if it is "
        "as stated, this is not it.",
        cases=cases,
    )


def one_angle(line: str, angle: str, *, lags: bool) -> str:
    """A line and the angle by which it would have to be off."""
    return f"{line} {'lagging' if lags else 'leading'} {angle} more"


def why_reading(cases: str) -> Phrase:
    """A line's reading."""
    return say(
        "**A line misread:** {cases} would do. Next, read that line again, at the same moment as the neutral.",
        cases=cases,
    )


def one_reading(line: str, amount: str, *, more: bool) -> str:
    """A line and the current by which it would have to be off."""
    return f"{line} carrying {amount} {'more' if more else 'less'}"


def why_harmonic(percent: str) -> Phrase:
    """A third harmonic."""
    return say(
        "**Third harmonic:** the lines would have to carry {percent} % of it, which adds up in the neutral. Next, read "
        "the neutral with a meter that shows harmonics (at 150 Hz on a 50 Hz supply).",
        percent=percent,
    )


def why_range(factor: str) -> Phrase:
    """A wrong range."""
    return say(
        "**Wrong range:** the reading is {factor} times the calculation. Next, look at the meter’s range and the "
        "decimal mark.",
        factor=factor,
    )


def why_neutral(amount: str, *, high: bool) -> Phrase:
    """The neutral's own reading."""
    return say(
        "**The neutral misread:** by {amount} too {side}. Next, read it again with another meter, the jaw closed round "
        "the neutral alone.",
        amount=amount,
        side="much" if high else "little",
    )


def listed(cases: list[str]) -> str:
    """Cases of which any one would do."""
    return cases[0] if len(cases) == 1 else ", ".join(cases[:-1]) + " or " + cases[-1]


def either(names: list[str]) -> str:
    """Mistakes that give the same, of which one was made."""
    return ", or ".join(names)


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
