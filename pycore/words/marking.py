"""What the page says of an answer: kindly, in plain words, without giving the right one away."""

from collections.abc import Sequence

from pycore.words.phrase import Phrase, listed, plain, say

ANSWER = "Your answer"
ANGLE = "Angle"
FIRST = "First diagonal"
FIRST_ANGLE = "Angle of the first diagonal"
ANGLES = {"": ANGLE, "first": FIRST_ANGLE}
"""What the angle of a value is called, by the value's key, "" for the answer; other values are sizes only."""
EARLIER = {"first": FIRST, "across": "Sum of the horizontal components", "up": "Sum of the vertical components"}


def no_answer(label: str, units: Sequence[str]) -> str:
    """Nothing was typed."""
    return f"{label} is empty. Enter a number in {listed(units)}."


def unreadable(label: str, typed: str, units: Sequence[str]) -> str:
    """Not a number in a unit that is accepted."""
    return f"{label}: “{typed.strip()}” cannot be read. Enter a number in {listed(units)}, such as 10.4 {units[0]}."


def negative(label: str, typed: str) -> str:
    """A size below zero."""
    return f"{label}: “{typed.strip()}” is negative. A size is never negative; the angle gives the direction."


def size_only(label: str) -> str:
    """A size that has no angle of its own was typed with one."""
    return f"{label}: enter a size only, without an angle."


def bad_angle(label: str, typed: str) -> str:
    """Not an angle."""
    return f"{label}: “{typed.strip()}” is not an angle from −360° to 360°. Enter degrees, such as 78.5."


def within(how: str, off: str, allowed: str) -> Phrase:
    """Right, as far as this way of finding it can tell."""
    if how == "drawn":
        return say(
            "**Correct.** Your answer differs from the calculated value by {off}. A careful drawing may differ by ± "
            "{allowed}.",
            off=off, allowed=allowed,
        )  # fmt: skip
    return say((
        "**Correct.** Your answer differs from the calculated value by {off}. The tolerance is ± {allowed}."
    ), off=off, allowed=allowed)


def exactly(allowed: str) -> Phrase:
    """Right to the last digit."""
    return say("**Correct**, to the last digit. The tolerance is ± {allowed}.", allowed=allowed)


def size_right() -> Phrase:
    """The size fits; its direction was not stated."""
    return say("**The size is right.** Now give its direction too: the angle, and which way it turns.")


def which_side() -> Phrase:
    """Size and angle fit on one side, and the side was not stated."""
    return say("**Size and angle are right.** Which way does it turn: clockwise or anticlockwise?")


def three_figures() -> Phrase:
    """Right as far as two figures go."""
    return say("**Right, give three figures.** Two figures are too few for a calculated answer.")


def near(side: str) -> Phrase:
    """Outside the tolerance, but not by much."""
    return say("**Look again.** Your answer is {side}. The difference is a little more than the tolerance.", side=side)


def far(side: str, times: str) -> Phrase:
    """Well outside the tolerance."""
    return say("**Not yet.** Your answer is {side}. The difference is {times} the tolerance.", side=side, times=times)


TOO_LARGE, TOO_SMALL, WRONG_ANGLE = "too large", "too small", "right in size but wrong in angle"


def times(count: int) -> str:
    """So many times a tolerance."""
    return {2: "more than twice", 3: "more than three times"}.get(count, "many times")


OR_ELSE = say("If the unit is right, something else could have happened:")
"""Before causes that are possible beside another unit."""


def meant(unit: str, typed: str) -> Phrase:
    """The number is right in another unit."""
    return say(
        "**The number is right, but the unit is wrong:** it is correct in {unit}, not in {typed}. Write the unit "
        "after the number.",
        unit=unit, typed=typed,
    )  # fmt: skip


FOLLOWS = say(
    "**Correct from your own earlier value.** The later steps are right. Check the earlier value again."
)


def wrong_before(label: str) -> Phrase:
    """An earlier value is off."""
    return say("{label}: the difference is more than the tolerance.", label=label)


def one_cause(names: Sequence[Phrase], looks: Sequence[Phrase]) -> Phrase:
    """Mistakes that give this very answer, named together, and where to look for each."""
    return (*say("You get this answer if "), *_either(names), ".", *_each(looks))


def perhaps(names: Sequence[Phrase], looks: Sequence[Phrase]) -> Phrase:
    """The same, as one of several explanations."""
    return (*say("It could be that "), *_either(names), ".", *_each(looks))


def _each(looks: Sequence[Phrase]) -> Phrase:
    return tuple(piece for look in looks for piece in (" ", *look))


MOST_TOGETHER = 4
"""Mistakes named in one sentence at most."""


def _either(names: Sequence[Phrase]) -> Phrase:
    phrase_so_far: Phrase = ()
    for index, name in enumerate(names[:MOST_TOGETHER]):
        phrase_so_far += (" or ", *name) if index else name
    return (*phrase_so_far, ", or for another reason") if len(names) > MOST_TOGETHER else phrase_so_far


def several(count: int) -> Phrase:
    """More than one class of mistakes fits."""
    return say("{count} kinds of mistake could give this answer:", count={2: "Two", 3: "Three"}.get(count, str(count)))


NO_CAUSE = say("This answer does not match a typical mistake. Check the steps again, one by one.")
ASK_ANGLE = say("Enter the angle too. It shows which of these mistakes it is.")


def announced(phrases: Sequence[Phrase]) -> str:
    """A judgement as it is read out."""
    return " ".join(plain(phrase) for phrase in phrases)


def bad_limit(typed: str, unit: str, least: str, most: str) -> str:
    """A lecturer's own tolerance that cannot be used."""
    return f"Tolerance: “{typed}” cannot be used. Enter {least} to {most} {unit}, or leave it empty."
