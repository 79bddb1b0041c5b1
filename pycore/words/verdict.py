"""Drawn, calculated and measured results compared, in plain words or with E_n."""

from pycore.words.phrase import Phrase, Symbol, say

DRAWING, CALCULATION, METER = "the drawing", "the calculation", "the meter"
SHORT = {DRAWING: "Drawn", CALCULATION: "Calculated", METER: "Measured"}
PICTURE_TITLE = "Drawn, calculated and measured on one axis"
HINT = (
    "Enter what the meter on the neutral reads, or what you measured on your drawing, under “Compare”. It is then "
    "compared with the calculation here."
)


def hint() -> Phrase:
    """What this section does once there is something to compare."""
    return say(HINT)


def capital(who: str) -> str:
    """A result’s name at the start of a sentence."""
    return who[:1].upper() + who[1:]


def compared(who: str, first: str, other: str, second: str, apart: str) -> str:
    """Two results and how far they are apart."""
    return f"{capital(who)} gives {first}, {other} {second}. The difference is {apart}."


def agree(compared_words: str, can: str, why: str) -> Phrase:
    """Two results agree."""
    return say(
        "{compared} With {why}, a difference of up to {can} is normal: **they agree.**",
        compared=compared_words,
        can=can,
        why=why,
    )


def disagree(compared_words: str, can: str, why: str) -> Phrase:
    """Two results do not agree."""
    return say(
        "{compared} With {why}, the difference should be at most {can}: **they do not agree.**",
        compared=compared_words,
        can=can,
        why=why,
    )


def by_hand(length: str, angle: str) -> str:
    """The hand in words."""
    return f"a hand with standard deviations of {length} and {angle}"


PLAIN_HANDS = {"practised": "a careful drawing", "ordinary": "an ordinary drawing"}
"""The hand in plain wording, by the hand that is chosen."""


def just_outside(compared_words: str, can: str, why: str) -> Phrase:
    """Two results that disagree by very little."""
    return say(
        "{compared} With {why}, the difference should be at most {can}: **just outside, so they do not quite agree.** "
        "Measure again before you look for a reason.",
        compared=compared_words,
        can=can,
        why=why,
    )


def by_meters(percent: str, digits: str, digit: str, *, one: bool) -> str:
    """The meters in words; ``digit`` is the value of one digit."""
    limit = f"± ({percent} % of reading + {digits} digits of {digit})"
    return f"one meter with a limit of {limit} for all readings" if one else f"meters with a limit of {limit}"


def both(hand: str, meters: str) -> str:
    """Hand and meters."""
    return f"{hand}, and {meters}"


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


EN_MEANS = say(
    "{e} is the difference divided by its uncertainty U (about 95 %). Errors that both results share are left out. "
    "The results agree if {e} is at most 1 (ISO 13528, ISO/IEC 17043).",
    e=Symbol("E", "n"),
)


SHARED_VALUES = "Both use the same line currents, so only the error of the drawing can make them different."
SHARED_GAIN = (
    "The same meter read the lines and the neutral. Assumed: its error in per cent is the same for all readings. So "
    "it hardly changes the comparison. Its error in digits is different for each reading."
)
ONE_METER = say(
    "Assumed: the meter’s error in per cent is the same for all readings. Its error in digits is different for each "
    "reading."
)
"""What is assumed of one meter, in plain wording."""
SEVERAL_METERS = say("Assumed: each reading has its own meter, and the meters’ errors do not depend on each other.")
"""What is assumed of several meters, in plain wording."""
SHARED_NOTHING = "Each reading has its own meter. Assumed: the meters’ errors do not depend on each other."
NO_LIMIT = say(
    "With a limit of ± 0, the meter must show exactly the calculated value. No meter does that: look for its "
    "limit of error in the manual."
)


def digit_from_readings(digit: str) -> Phrase:
    """What one digit of the meter is taken to be, if it was not entered."""
    return say(
        "One digit of the meter is taken as {digit}, the last digit of the readings as typed. If the display shows "
        "more or fewer digits, open “Accuracy of hand and meter”. Enter the value of one digit there.",
        digit=digit,
    )


def coarse(digit: str, reading: str) -> Phrase:
    """A display too coarse for the value."""
    return say(
        "One digit of this meter is {digit} and the reading is {reading}, so this range is too coarse. Use a smaller "
        "range, or check the value of one digit.",
        digit=digit,
        reading=reading,
    )


def wide_limit(limit: str, reading: str) -> Phrase:
    """A limit as large as the reading."""
    return say(
        "The error of this meter can be {limit} at a reading of {reading}, so this agreement proves nothing.",
        limit=limit,
        reading=reading,
    )


NOTHING_READ = say("The meter shows 0. Is the load switched on? Is the jaw closed around the neutral only?")


def repeated(count: str, mean: str, scatter: str) -> Phrase:
    """Repeated readings."""
    return say(
        "{count} readings, mean {mean}. Their scatter gives the mean a standard uncertainty of about {scatter}. The "
        "limit of the meter comes on top.",
        count=count,
        mean=mean,
        scatter=scatter,
    )


def repeated_plainly(count: str, mean: str, half: str) -> Phrase:
    """Repeated readings in plain wording."""
    return say(
        "{count} readings, mean {mean}. Because the readings scatter, the mean can be {half} too high or too low. The "
        "limit of the meter comes in addition.",
        count=count,
        mean=mean,
        half=half,
    )


def repeated_alike(count: str, mean: str) -> Phrase:
    """Repeated readings that show no scatter."""
    return say(
        "{count} readings, all {mean}. Their scatter is less than the last digit, so only the limit of the meter "
        "counts.",
        count=count,
        mean=mean,
    )


READ_ONCE = say(
    "The neutral was read once. One reading cannot show scatter, so only the limit of the meter counts. Enter "
    "repeated readings with spaces between them."
)


def few_readings(count: str) -> Phrase:
    """Few repeats do not show the scatter well."""
    return say(
        "With only {count} readings, the scatter itself is uncertain. More readings show it better.", count=count
    )


def few_readings_factors(count: str, factor: str, whole_factor: str) -> Phrase:
    """The coverage factors of few readings: of their scatter alone, and of the whole difference."""
    return say(
        "With only {count} readings, the scatter itself is uncertain. For the scatter alone, the factor is {factor}, "
        "not 2 (JCGM 100:2008, G.4). For the difference, of which the scatter is a part, it is {whole_factor}.",
        count=count,
        factor=factor,
        whole_factor=whole_factor,
    )


WHY_DRAWN = say("**Possible reasons in the drawing,** and what to check:")
WHY_MEASURED = say("**Possible reasons in the reading,** the most likely first, each with the size it would need:")
ONE_NUMBER = say("One reading cannot show which reason is right. The next measurement can.")


def measure_line(length: str, mm: str) -> Phrase:
    """First check the reading off the drawing."""
    return say(
        "First measure the drawn line again: the correct length is {length}; you read {mm}.", length=length, mm=mm
    )


def mistake(name: str, amount: str, look: str) -> Phrase:
    """A mistake that would give nearly what was drawn."""
    return say("**If {name},** the drawing gives {amount}. {look}", name=name, amount=amount, look=look)


NO_MISTAKE = say("No typical mistake gives this length.")


def slip(tool: str, step: str, size: str) -> Phrase:
    """One slip that alone would explain it."""
    return say(
        "**One single error with the {tool}** of {size} at “{step}” would explain it. Measure that again on the "
        "drawing.",
        tool=tool,
        step=step,
        size=size,
    )


SEE_WHY = "Possible reasons"
SEE_COMPARISON = "See the comparison"


def reading_apart(reading: str, calculated: str, apart: str) -> Phrase:
    """At the head of the page: how far a reading is from the calculation."""
    return say("Meter {reading}, calculation {calculated}: {apart} apart.", reading=reading, calculated=calculated,
               apart=apart)  # fmt: skip


def reading_disagrees(can: str) -> Phrase:
    """After that: the reading is further from the calculation than the meters explain."""
    return say("The limits of the meters explain at most {can}: **they do not agree.**", can=can)


def reading_just_outside(can: str) -> Phrase:
    """After that: the reading is a little further from the calculation than the meters explain."""
    return say(
        "The limits of the meters explain at most {can}: **just outside, so they do not quite agree.** Measure again "
        "first.",
        can=can,
    )


def reading_agrees(can: str) -> Phrase:
    """After that: the meters explain the difference between reading and calculation."""
    return say("The limits of the meters explain up to {can}: **they agree.**", can=can)


def picture_row(short: str, value: str, half: str) -> str:
    """The label of one interval."""
    return f"{short} {value} ± {half}" if half else f"{short} {value}"


PICTURE_MEANING = say(
    "Each bar shows where 95 of 100 such results lie. Two results can share part of their errors, so the bars "
    "alone do not show whether they agree. The sentences below say it."
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
