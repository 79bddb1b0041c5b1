"""The accuracy of hand and meter, in plain words or with the vocabulary of the GUM."""

from pycore.words.phrase import Phrase, say

TITLE = "How accurate are drawing and meter?"
HANDS = (
    ("practised", "practised: 0.5 mm, 0.5°"),
    ("ordinary", "ordinary: 1 mm, 1°"),
)
OWN_HAND = ("own", "your own values")
HAND = "Accuracy of the hand"
HAND_MM = "Ruler, standard deviation (mm)"
HAND_DEGREES = "Protractor, standard deviation (°)"
DRAWN_FIELD = "Drawn value"
DRAWN_HELP = (
    "Optional: the neutral current that you measured on a drawing, in amperes (10.4 A) or as a length (52 mm or 5.2 "
    "cm)."
)
PERCENT = "Meter: % of reading"
DIGITS = "Meter: digits"
DIGIT = "Meter: value of one digit"
METERS = "Meters"
METER_SETS = (("several", "one for each reading"), ("one", "the same for all"))
LEVEL = "Wording"
LEVELS = (("plain", "plain"), ("full", "technical, with uncertainties"))
DIGIT_HELP = "Empty: the last digit of the readings as they are typed, 0.1 A for 12.6 A."
METER_HELP = "The limit of error, such as 2 % of the reading plus 5 digits, is in the meter’s manual."


AGREE_TITLE = "Do drawing, calculation and meter agree?"


def title(*, compared: bool) -> Phrase:
    """Heading of the section; ``compared``: there is a result to compare with the calculation."""
    return say(AGREE_TITLE if compared else TITLE)


HAND_TITLE = say("How accurate is a hand drawing?")


def by_hand(symbol: Phrase, amount: str) -> Phrase:
    """The tolerance beside the headline, with the phasor that it belongs to."""
    return say("{symbol} by hand ± {amount}", symbol=symbol, amount=amount)


def tolerance_label(symbol: Phrase) -> Phrase:
    """The label of a drawing's tolerance, with the phasor that it belongs to."""
    return say("{symbol}: 95 of 100 careful drawings differ from it by at most", symbol=symbol)


def hand_intro(length: str, angle: str) -> Phrase:
    """The assumed errors of a hand."""
    return say(
        "Drawing and reading by hand have small random errors. Their standard deviation is {length} for lengths and "
        "{angle} for angles. About 95 of 100 single lengths are within twice that. These errors are carried through "
        "every move. 95 of 100 drawings of these values are within:",
        length=length,
        angle=angle,
    )


def hand_intro_plain(length: str, angle: str) -> Phrase:
    """The same in plain wording: ``length`` and ``angle`` contain 95 of 100 single errors."""
    return say(
        "Hands make small random errors. 95 of 100 lengths are right within {length}, and 95 of 100 angles within "
        "{angle}. These errors are carried through every move. 95 of 100 drawings of these values are within:",
        length=length,
        angle=angle,
    )


HEAD = say("method"), say("by hand ±"), say("on paper ±"), say("share")


def marked(title: str) -> str:
    """A method whose lines cross flatly."""
    return f"{title} *"


def most_forgiving(method: str) -> Phrase:
    """The most accurate method for these values."""
    return say("**{method}** is the most accurate method for these values on this paper.", method=method)


def flat(angle: str) -> Phrase:
    """Lines that cross too flatly."""
    return say(
        "On the sheet two lines cross at only {angle}. A small error then moves the crossing point a long way. "
        "Another order or method is more accurate.",
        angle=angle,
    )


def too_flat(amount: str, better: str) -> Phrase:
    """A drawing with this order says little, because its lines cross at a very small angle; which method is better."""
    return say(
        "**Do not draw this order.** Its lines cross at a very small angle, so careful drawings can be {amount} too "
        "long or too short. An answer may differ by a tenth of the longest arrow, not more. Choose instead: {better}.",
        amount=amount, better=better,
    )  # fmt: skip


def too_unsure(amount: str) -> Phrase:
    """A drawing that says little, where no other says more."""
    return say(
        "**A drawing cannot be accurate with these values:** careful drawings can be {amount} too long or too short. "
        "No other order or method is better. Use the calculation.",
        amount=amount,
    )


FLAT_ROWS = say(
    "* Lines cross at a very small angle here, so small errors have a large effect. The figure comes from 800 "
    "simulated drawings; a few drawings are much further out."
)


ELLIPSE_NOTE = "95 of 100 careful drawings end inside the ellipse."


def why_angle(cases: str) -> Phrase:
    """A line's power factor."""
    return say(
        "**Another lag than stated:** {cases} would explain it. Next, measure the phase angle of that line. "
        "If it is as stated, this is not the cause.",
        cases=cases,
    )


def phase_of(angle: str, *, lags: bool, leads: bool) -> str:
    """How a current stands to its voltage; ``angle`` without its sign."""
    return f"{'lagging' if lags else 'leading'} {angle}" if lags or leads else "in phase"


def one_angle(line: str, wanted: str, stated: str) -> str:
    """A line with the lag that would explain a reading, beside the one that was stated."""
    return f"{line} {wanted} (stated: {stated})"


def why_reading(cases: str) -> Phrase:
    """A line's reading."""
    return say(
        "**A line current was misread:** {cases} would explain it. Next, read that line again at the same moment as "
        "the neutral.",
        cases=cases,
    )


def one_reading(line: str, amount: str, *, more: bool) -> str:
    """A line, and the current by which its reading would have to differ."""
    return f"a current in {line} that is {amount} {'larger' if more else 'smaller'}"


def why_harmonic(percent: str) -> Phrase:
    """A third harmonic."""
    return say(
        "**Third harmonic:** each line would need a third harmonic of {percent} % of its fundamental, in phase in all "
        "three lines. In phase, the three add up in the neutral. Next, read the neutral with a meter that shows "
        "harmonics (150 Hz on a 50 Hz supply).",
        percent=percent,
    )


def why_range(factor: str) -> Phrase:
    """A wrong range."""
    return say(
        "**Wrong range:** the reading is {factor} times the calculated value. Next, check the meter’s range and the "
        "decimal mark.",
        factor=factor,
    )


def why_neutral(amount: str, *, high: bool) -> Phrase:
    """The neutral's own reading."""
    return say(
        "**The neutral was read {amount} too {side}.** Next, read it again with another meter, with the jaw closed "
        "around the neutral only.",
        amount=amount,
        side="high" if high else "low",
    )




BUDGET_HEAD = say("source of error"), say("contributes ±"), say("share of variance")
BUDGET_TITLE = say("Where the error of the drawing comes from, the largest part first (standard uncertainties):")


def contribution(step: str, kind: str) -> str:
    """One line of the budget."""
    return f"{TOOLS[kind]}: {step}"


TOOLS = {"angle": "protractor", "length": "ruler", "length-2": "compasses", "parallel": "set square"}
FINAL_READING = "ruler: measuring the result"
