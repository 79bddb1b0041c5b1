"""Drawn, calculated and measured beside each other: whether they agree, in plain words or with E_n."""

from pycore.words.phrase import Phrase, Symbol, say

DRAWING, CALCULATION, METER = "the drawing", "the calculation", "the meter"
SHORT = {DRAWING: "Drawn", CALCULATION: "Calculated", METER: "Measured"}
PICTURE_TITLE = "Drawn, calculated and measured on one axis"
HINT = (
    "Type what a meter on the neutral shows, or under Hand and meter the drawn value, and it is compared here with the "
    "calculation."
)


def hint() -> Phrase:
    """What this section does once there is something to compare."""
    return say(HINT)


def capital(who: str) -> str:
    """A result’s name at the start of a sentence."""
    return who[:1].upper() + who[1:]


def compared(who: str, first: str, other: str, second: str, apart: str) -> str:
    """Two results and how far they are apart."""
    return f"{capital(who)} says {first}, {other} {second}: {apart} apart."


def agree(compared_words: str, can: str, why: str) -> Phrase:
    """Two results agree."""
    return say(
        "{compared} With {why} they can be {can} apart without either being wrong: **they agree.**",
        compared=compared_words,
        can=can,
        why=why,
    )


def disagree(compared_words: str, can: str, why: str) -> Phrase:
    """Two results do not agree."""
    return say(
        "{compared} With {why} they should be no more than {can} apart: **they do not agree.**",
        compared=compared_words,
        can=can,
        why=why,
    )


def by_hand(length: str, angle: str) -> str:
    """The hand in words."""
    return f"a hand that works to {length} and {angle}"


def by_meters(percent: str, digits: str, *, one: bool) -> str:
    """The meters in words."""
    limit = f"± ({percent} % of reading + {digits} digits)"
    return f"one meter of {limit} for all readings" if one else f"meters of {limit}"


def both(hand: str, meters: str) -> str:
    """Hand and meters."""
    return f"{hand}, and {meters},"


def en(number: str, apart: str, expanded: str, factor: str, shared: str) -> Phrase:
    """E_n of a pair, and what both share."""
    return say(
        "{e} = {apart} ÷ {expanded} = {number} (expanded uncertainty of the difference, factor {factor}). {shared}",
        e=Symbol("E", "n"),
        apart=apart,
        expanded=expanded,
        number=number,
        factor=factor,
        shared=shared,
    )


def en_means() -> Phrase:
    """What E_n is."""
    return say(
        "{e} is the difference over its expanded uncertainty at about 95 %, with what both results share taken out; "
        "results agree when it is at most 1 (ISO 13528, ISO/IEC 17043).",
        e=Symbol("E", "n"),
    )


SHARED_VALUES = "Both start from the same line currents, so that only the drawing’s own error parts them."
SHARED_GAIN = (
    "The same meter read the lines and the neutral: if it reads 1 % high it reads all of them 1 % high, so that this "
    "can hardly part the two."
)
SHARED_NOTHING = "Each reading has its own meter, so that nothing is shared."


def no_limit() -> Phrase:
    """A meter without any error."""
    return say(
        "A meter of ± 0 would have to show exactly what is calculated. No meter does: its limit stands in its "
        "booklet."
    )


def coarse(digit: str, reading: str) -> Phrase:
    """A display too coarse for the value."""
    return say(
        "One digit of this meter is {digit}, and the reading {reading}: it cannot tell. Take a smaller range, or look "
        "at what one digit is.",
        digit=digit,
        reading=reading,
    )


def wide_limit(limit: str, reading: str) -> Phrase:
    """A limit as large as the reading."""
    return say(
        "This meter may be {limit} out at a reading of {reading}: that the two agree then says nothing.",
        limit=limit,
        reading=reading,
    )


def nothing_read() -> Phrase:
    """A neutral that reads zero."""
    return say("The meter shows 0: is the load on, and is the jaw closed round the neutral alone?")


def repeated(count: str, mean: str, scatter: str) -> Phrase:
    """Repeated readings."""
    return say(
        "{count} readings, mean {mean}. By their scatter the mean is good to about {scatter}, beside what the meter "
        "itself may be out.",
        count=count,
        mean=mean,
        scatter=scatter,
    )


def repeated_alike(count: str, mean: str) -> Phrase:
    """Repeated readings that show no scatter."""
    return say(
        "{count} readings, all {mean}: they scatter by less than the last digit, so that only the meter’s own limit "
        "counts.",
        count=count,
        mean=mean,
    )


def read_once() -> Phrase:
    """A single reading has no scatter."""
    return say(
        "The neutral was read once, and one reading shows no scatter: only the meter’s own limit counts. Repeated "
        "readings, with spaces between them, would show it."
    )


def few_readings(count: str, factor: str) -> Phrase:
    """Few repeats need a wider interval."""
    return say(
        "With only {count} readings their scatter is itself uncertain: the factor is {factor} instead of 2 (JCGM "
        "100:2008, G.4).",
        count=count,
        factor=factor,
    )


def why_drawn() -> Phrase:
    """Before what could be wrong with a drawing."""
    return say("**Why the drawing may differ,** and where to look:")


def why_measured() -> Phrase:
    """Before what could be why a reading differs."""
    return say("**Why the reading may differ,** the likeliest first, each with the size it would need:")


def one_number() -> Phrase:
    """What one number cannot do."""
    return say("One reading cannot tell which: the next measurement decides.")


def measure_line(length: str, mm: str) -> Phrase:
    """First check the reading off the drawing."""
    return say(
        "First measure the drawn line again: {length} would be right, and {mm} was read.", length=length, mm=mm
    )


def mistakes(names: str, amount: str, look: str) -> Phrase:
    """A class of mistakes that would give what was drawn."""
    return say("**If {names},** the drawing gives {amount}. {look}", names=names, amount=amount, look=look)


def no_mistake() -> Phrase:
    """None of the catalogue fits."""
    return say("None of the usual mistakes gives this length.")


def slip(tool: str, step: str, size: str) -> Phrase:
    """One slip that alone would explain it."""
    return say(
        "**One slip of the {tool}** alone would have to be {size}, at “{step}”. Measure that again on the drawing.",
        tool=tool,
        step=step,
        size=size,
    )


SEE_WHY = "What could be why"


def reading_disagrees(can: str) -> Phrase:
    """At the head of the page: a reading is further from the calculation than the meters explain."""
    return say("The meters explain no more than {can}: **reading and calculation do not agree.**", can=can)


def picture_row(short: str, value: str, half: str) -> str:
    """The label of one interval."""
    return f"{short} {value} ± {half}" if half else f"{short} {value}"


def picture_meaning() -> Phrase:
    """What the bars are."""
    return say(
        "Each bar reaches as far as 95 in 100 such results would. Two results share a part of their errors, so that "
        "bars alone do not tell whether they agree: the sentences do."
    )


def picture_told(rows: str) -> str:
    """The picture for those who do not see it."""
    return f"{PICTURE_TITLE}: {rows}."


def drawn_length(length: str, scale: str, amount: str) -> str:
    """How a drawn length was understood."""
    return f"{length} at {scale}: {amount}"


def drawn_amount(amount: str, length: str) -> str:
    """How a drawn amount was understood."""
    return f"{amount}, {length} on this sheet"


def mean_of(count: str, mean: str) -> str:
    """How repeated readings were understood."""
    return f"{count} readings, mean {mean}"
