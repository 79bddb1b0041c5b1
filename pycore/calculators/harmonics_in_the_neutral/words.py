"""What the page of the harmonics in the neutral says."""

from pycore.words.phrase import Phrase, Symbol, say
from pycore.words.sums import SumWords

TITLE = "Harmonics in the neutral"
DESCRIPTION = (
    "What each harmonic order of three line currents leaves in the neutral: by scale drawing, by calculation, as "
    "waveforms and as a spectrum."
)
SCENARIO = "Village theatre, dimmers and power supplies in star"
CAUTIONS = (
    "These sheets teach; they do not size an installation. Harmonics, a neutral’s size and its protection are decided "
    "by the local wiring rules and a licensed person.",
    "Readings on a live three-phase system are for competent or supervised people on a rig made for it. Use a meter "
    "that reads true r.m.s. values, of the right measurement category, with one conductor in the jaw of its clamp.",
    "Never open a neutral on a live system. A neutral may carry current when a line is off. A clamp meter never proves "
    "a circuit dead: isolate, and prove dead with a proved tester, before changing a connection.",
    "Ask which method your examining body accepts.",
)
STATED = "The currents typed are"
STATEDS = (("fundamental", "the fundamentals"), ("total", "what a true r.m.s. meter reads"))
OF = "Percentages are of"
OFS = (("fundamental", "the fundamental"), ("total", "the total"))
DRAWN = "Order that is drawn"
SHARE_HELP = (
    "Per cent, the same in every line; or with its angle, such as 20 at 180. At 0° the crests of the order and of the "
    "fundamental fall together (cosines); a third order that starts from zero with it (sines) stands at 180°."
)
WORDS = SumWords(
    "current",
    "line currents",
    "amperes",
    "the neutral carries nothing of this order",
    "The neutral would carry this of the order if {third} carried nothing.",
    "the returning current",
    "What flows out through the lines comes back through the neutral.",
)
NEUTRAL = "Neutral, all orders"


def share_label(order: int) -> str:
    """Label of an order's field."""
    return f"Order {order}"


def order_option(order: int) -> str:
    """An order in the choice of what is drawn."""
    return "1, the fundamental" if order == 1 else str(order)


def angle_name() -> Phrase:
    """The direction from which angles are counted."""
    return say("0°")


def bad_share(label: str, given: str) -> str:
    """Text that is no share."""
    return f"{label} cannot be read: “{given[:24]}”. Give per cent from 0 to 200, such as 20, or 20 at 180."


def share_range(label: str, given: str) -> str:
    """A share too large or too small."""
    return f"{label} is out of range: “{given[:24]}”. Accepted is 0, or 0.01 to 200 per cent."


def too_much(label: str) -> str:
    """Shares of the total that leave nothing."""
    return f"{label}: together the harmonics are as large as the total, so nothing is left for the fundamental."


def of_order(order: int, sequence: str, lines: str, neutral: str) -> Phrase:
    """What one order does."""
    why = {
        "zero": "all three lines have it in one direction, so that it adds up",
        "positive": "it turns as the fundamental does, 120° from line to line",
        "negative": "it turns against the fundamental, 120° from line to line",
    }[sequence]
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
    return say("**The neutral carries {neutral}, more than any line ({line}).** A fuse in a line does not see it.",
               neutral=neutral, line=line)  # fmt: skip


def less_than_lines(neutral: str, line: str) -> Phrase:
    """The neutral beside the largest line."""
    return say("The neutral carries {neutral}; the most loaded line {line}.", neutral=neutral, line=line)


def triplen_rule() -> Phrase:
    """When triplen orders add."""
    return say(
        "Orders divisible by three add up only as far as they are equal and in phase in the three lines; the drawing "
        "of such an order shows it."
    )


def squares() -> Phrase:
    """How orders go together."""
    return say(
        "R.m.s. values of different orders are added by their squares: {total} = root of the sum of the squares.",
        total=Symbol("I", "N"),
    )


def meter_words() -> Phrase:
    """What a cheap meter does."""
    return say("A meter that is not true r.m.s. reads such a current wrongly, mostly too low.")


CALCULATED = "By calculation, order by order"
HEAD = ("order", "sequence")
WAVES = "Waveforms and spectrum"
LARGEST_LINE, IN_NEUTRAL = "largest line current", "neutral current"


def waves_title(neutral: str) -> str:
    """What the picture of waves shows, for someone who cannot see it."""
    return f"Waves of the three line currents over one period, and below them the neutral's, which is {neutral} r.m.s."


def spectrum_title(told: str) -> str:
    """What the spectrum shows, for someone who cannot see it."""
    return f"Bars by order, the largest line beside the neutral. Neutral: {told}."


RESULT = "what the neutral carries of this order"
TASK = "Find what the neutral carries of this order by drawing"


def given_order(order: int, own: str = "", *, short: bool = False) -> str:
    """What a problem sheet says of the order drawn; ``own`` is the angle of its own, "" for none."""
    if short:
        return f"At order {order} angles count {order} times{f', then {own} more' if own else ''}." if order > 1 else ""
    if order == 1:
        return "The fundamental alone is drawn."
    told = f"Order {order} alone is drawn, with its own values. At order {order} every angle counts {order} times."
    return f"{told} Then its own angle of {own} is added." if own else told


MISTAKES = {
    "order-not-multiplied": (
        "the angles are those of the fundamental",
        "At order {order} every angle of a line counts {order} times, before the order’s own angle is added.",
    ),
    "all-orders": (
        "all orders together were given",
        "Only the order that is drawn is asked for here; the squares come in when the orders are put together.",
    ),
}


SHORT: dict[str, str] = {
    "order-not-multiplied": "angles not multiplied by the order",
    "all-orders": "all orders together",
}
"""Mistakes of this calculator alone, in few words."""
