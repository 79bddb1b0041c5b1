"""What the page says of an answer: kindly, in plain words, without giving the right one away."""

from collections.abc import Sequence

from pycore.words.phrase import Phrase, plain, say

ANSWER = "Your answer"
ANGLE = "Angle"
FIRST = "First diagonal"
FIRST_ANGLE = "Angle of the first diagonal"
EARLIER = {"first": FIRST, "across": "Sum of the parts across", "up": "Sum of the parts upwards"}


def _listed(units: Sequence[str]) -> str:
    return units[0] if len(units) == 1 else ", ".join(units[:-1]) + " or " + units[-1]


def no_answer(label: str, units: Sequence[str]) -> str:
    """Nothing was typed."""
    return f"{label} is empty: give a number in {_listed(units)}."


def unreadable(label: str, given: str, units: Sequence[str]) -> str:
    """Not a number in a unit that is accepted."""
    return f"{label}: “{given.strip()}” cannot be read. Give a number in {_listed(units)}, such as 10.4 {units[0]}."


def negative(label: str, given: str) -> str:
    """A size below zero."""
    return f"{label}: “{given.strip()}” is below zero. A length has no sign: its direction is the angle."


def bad_angle(label: str, given: str) -> str:
    """Not an angle."""
    return f"{label}: “{given.strip()}” is no angle from −360° to 360°. Give degrees, such as 78.5."


def within(how: str, off: str, allowed: str) -> Phrase:
    """Right, as far as this way of finding it can tell."""
    if how == "drawn":
        return say(
            "**Right.** It is {off} from the calculated value, within the ± {allowed} of a careful drawing.",
            off=off, allowed=allowed,
        )  # fmt: skip
    return say("**Right.** It is {off} from our value, within ± {allowed}.", off=off, allowed=allowed)


def exactly(allowed: str) -> Phrase:
    """Right to the last digit."""
    return say("**Right**, to the last digit. ± {allowed} would have done.", allowed=allowed)


def near(side: str) -> Phrase:
    """Outside the tolerance, but not by much."""
    return say("**Look again.** It is near, but {side} by more than a careful hand should be.", side=side)


def far(side: str, times: str) -> Phrase:
    """Well outside the tolerance."""
    return say("**Not yet.** It is {side}, by {times} the tolerance.", side=side, times=times)


TOO_LARGE, TOO_SMALL, WRONG_ANGLE = "too large", "too small", "right in size, but not in direction"


def times(count: int) -> str:
    """So many times a tolerance."""
    return {2: "over twice", 3: "over three times"}.get(count, "many times")


def meant(unit: str, given: str) -> Phrase:
    """The number is right in another unit."""
    return say(
        "**The number is right, its unit is not:** it fits as {unit}, not as {given}. Write the unit beside it.",
        unit=unit, given=given,
    )  # fmt: skip


def follows() -> Phrase:
    """Later steps are right for the earlier value."""
    return say(
        "**It follows from your own earlier value:** from there on you worked rightly. Look at that value again."
    )


def wrong_before(label: str) -> Phrase:
    """An earlier value is off."""
    return say("{label} is off by more than the tolerance.", label=label)


def one_cause(names: Sequence[Phrase], look: Phrase) -> Phrase:
    """Mistakes that give this very answer, named together, and where to look."""
    return (*say("This is what comes out if "), *_either(names), ". ", *look)


def perhaps(names: Sequence[Phrase], look: Phrase) -> Phrase:
    """The same, as one of several causes."""
    return (*say("Perhaps "), *_either(names), ". ", *look)


def _either(names: Sequence[Phrase]) -> Phrase:
    told: Phrase = ()
    for index, name in enumerate(names):
        told += (" or ", *name) if index else name
    return told


def several(count: int) -> Phrase:
    """More than one class of mistakes fits."""
    return say("{count} things would give this answer:", count={2: "Two", 3: "Three"}.get(count, str(count)))


def fits_scale(other: str, sheet: str) -> Phrase:
    """A length that is right at another scale."""
    return say("It would be right at {other}; this sheet’s scale is {sheet}. Which is your drawing’s?", other=other,
               sheet=sheet)  # fmt: skip


def no_cause() -> Phrase:
    """No catalogued mistake fits."""
    return say("No usual mistake gives this answer: go through the steps once more, one by one.")


def ask_angle() -> Phrase:
    """An angle would tell causes apart."""
    return say("Give the angle too: it tells these apart.")


def announced(phrases: Sequence[Phrase]) -> str:
    """A judgement as it is read out."""
    return " ".join(plain(phrase) for phrase in phrases)


def bad_limit(given: str, unit: str, least: str, most: str) -> str:
    """A lecturer's own tolerance that cannot be used."""
    return f"Own tolerance: “{given}” cannot be used. Give {least} to {most} {unit}, or leave it empty."
