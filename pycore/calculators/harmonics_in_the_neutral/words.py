"""What the page of the harmonics in the neutral says."""

from pycore.words import cautions
from pycore.words.phrase import Phrase, Symbol, say
from pycore.words.sums import SumWords

TITLE = "Harmonics in the neutral"
DESCRIPTION = (
    "How much of each harmonic order flows in the neutral: by scale drawing, by calculation, as waveforms and as a "
    "spectrum."
)
SCENARIO = "Village theatre, dimmers and power supplies in star"
CAUTIONS = (
    "These sheets teach; they do not size an installation. The local wiring rules and a licensed person decide how "
    "large a neutral must be and how it is protected. They also decide about harmonics.",
    "Readings on a live three-phase system are for competent or supervised people on a rig made for it. Use a true "
    "r.m.s. meter of the right measurement category, with one conductor in the jaw of the clamp.",
    f"Never open a neutral on a live system. {cautions.NEUTRAL_CARRIES}",
    cautions.EXAMINING_BODY,
)
STATED = "The entered currents are"
STATEDS = (("fundamental", "the fundamentals"), ("total", "what a true r.m.s. meter reads"))
OF = "Percentages are of"
OFS = (("fundamental", "the fundamental"), ("total", "the total"))
DRAWN = "Order to draw"
SHARE_HELP = (
    "Per cent, the same in every line; or with an angle, such as 20 at 180. At 0°, a peak of the harmonic is at the "
    "same moment as a peak of the fundamental (cosine waves). A third harmonic that passes zero upward together with "
    "the fundamental (sine waves) is at 180°."
)
WORDS = SumWords(
    "current",
    "line currents",
    "amperes",
    "the neutral carries no current of this order",
    "This would be the neutral current of this order if {third} carried nothing.",
    "the returning current",
    "At every moment, the sum of the line currents returns through the neutral.",
)
NEUTRAL = "Neutral, all orders"


def share_label(order: int) -> str:
    """Label of an order's field."""
    return f"Order {order}"


def order_option(order: int) -> str:
    """An order in the choice of what is drawn."""
    return "1, the fundamental" if order == 1 else str(order)


ANGLE_NAME = say("0°")
"""The direction from which angles are counted."""


def bad_share(label: str, typed: str) -> str:
    """Text that is no share."""
    return f"{label} cannot be read: “{typed[:24]}”. Enter per cent from 0 to 200, such as 20, or 20 at 180."


def share_range(label: str, typed: str) -> str:
    """A share too large or too small."""
    return f"{label} is out of range: “{typed[:24]}”. Use 0, or 0.01 to 200 per cent."


def too_much(label: str) -> str:
    """Shares of the total that leave nothing."""
    return f"{label}: the harmonics together are as large as the total, so there is no fundamental left."


WITH_EQUAL_LAGS = {
    "zero": "it is in phase in all lines and adds up fully",
    "positive": "same phase sequence as the fundamental, 120° apart from line to line",
    "negative": "opposite phase sequence to the fundamental, 120° apart from line to line",
}
WITH_UNEQUAL_LAGS = {
    "zero": (
        "the lags of the lines are unequal and are multiplied by {order}, so it is not in phase and adds up only in "
        "part"
    ),
    "positive": "same phase sequence as the fundamental, but not 120° apart, because the lags of the lines are unequal",
    "negative": (
        "opposite phase sequence to the fundamental, but not 120° apart, because the lags of the lines are unequal"
    ),
}
"""What an order does in the neutral, by its sequence."""


def of_order(order: int, sequence: str, lines: str, neutral: str, *, equal: bool) -> Phrase:
    """What one order does; ``equal``: as with equal lags, in phase or 120° apart from line to line."""
    why = (WITH_EQUAL_LAGS if equal else WITH_UNEQUAL_LAGS)[sequence].format(order=order)
    return say(
        "Order {order} ({sequence} sequence): {why}. The lines carry {lines} of it, the neutral **{neutral}.**",
        order=str(order), sequence=sequence, why=why, lines=lines, neutral=neutral,
    )  # fmt: skip


def of_one_order(order: int) -> Phrase:
    """Label of one order's part in the neutral."""
    return say("{name}, order {order}", name=Symbol("I", "N"), order=str(order))


def of_all_orders(line: str) -> Phrase:
    """Label of a line's r.m.s. value."""
    return say("{line}, all orders", line=line)


def drawn(order: int, amount: str, length: str) -> Phrase:
    """Which order is on the sheet."""
    return say("drawn: order {order}, {amount}, {length}", order=str(order), amount=amount, length=length)


def more_than_lines(neutral: str, line: str) -> Phrase:
    """The warning that matters."""
    return say((
        "**The neutral carries {neutral}, more than any line ({line}).** The fuses in the lines do not protect the "
        "neutral against this."
    ),
               neutral=neutral, line=line)  # fmt: skip


def less_than_lines(neutral: str, line: str) -> Phrase:
    """The neutral beside the largest line."""
    return say((
        "The neutral carries {neutral}. The line with the largest current carries {line}."
    ), neutral=neutral, line=line)


TRIPLEN_RULE = say(
    "The lags of the lines are equal. So orders divisible by three are in phase in the three lines. They add up "
    "fully, whether their sizes are equal or not. The drawing of such an order shows it."
)
"""Why triplen orders add here."""

TRIPLEN_RULE_UNEQUAL = say(
    "Orders divisible by three add up fully only if they are in phase in the three lines, as with equal lags. Here the "
    "lags of the lines are unequal. The drawing of such an order shows how much of it adds up."
)
"""Why triplen orders add only in part here."""

SQUARES = say(
    "R.m.s. values of different orders are added as squares: {total} is the square root of the sum of the squares.",
    total=Symbol("I", "N"),
)
"""How orders go together."""

METER_WORDS = say("A meter that does not measure true r.m.s. shows a wrong value for such a current, usually too low.")
"""What a cheap meter does."""

CALCULATED = "By calculation, order by order"
HEAD = ("order", "sequence")
WAVES = "Waveforms and spectrum"
LARGEST_LINE, IN_NEUTRAL = "largest line current", "neutral current"


def waves_title(neutral: str) -> str:
    """What the picture of waves shows, for someone who cannot see it."""
    return (
        "The waves of the three line currents over one period, and below them the wave of the neutral current, "
        f"{neutral} r.m.s."
    )


def spectrum_title(amounts: str) -> str:
    """What the spectrum shows, for someone who cannot see it."""
    return f"Bar chart by harmonic order: the largest line current next to the neutral current. Neutral: {amounts}."


RESULT = "the neutral current of this order"
TASK = "Find the neutral current of this order by drawing"


def order_instructions(order: int, own: str = "", *, short: bool = False) -> str:
    """What a problem sheet says of the order drawn; ``own`` is the angle of its own, "" for none."""
    if short:
        return (
            f"At order {order}, multiply every angle by {order}{f', then add {own}' if own else ''}."
        ) if order > 1 else ""
    if order == 1:
        return "Draw the fundamental only."
    text = f"Draw order {order} only, with its own values. At order {order}, multiply every angle by {order}."
    return f"{text} Then add its own angle of {own}." if own else text


MISTAKES = {
    "order-not-multiplied": (
        "the angles are those of the fundamental",
        "At order {order}, multiply every angle of a line by {order}, then add the order’s own angle.",
    ),
    "all-orders": (
        "the answer is for all orders together",
        "Only the order that is drawn is asked for. Squares are used only to combine different orders.",
    ),
}


SHORT: dict[str, str] = {
    "order-not-multiplied": "angles not multiplied by the order",
    "all-orders": "all orders together",
}
"""Mistakes of this calculator alone, in few words."""
