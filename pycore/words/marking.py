"""What the page says of an answer: kindly, in plain words, without giving the right one away."""

from collections.abc import Sequence

from pycore.words.phrase import Phrase, in_sentence, listed, plain, say

ANSWER = "Your answer"
ANGLE = "Angle"
FIRST = "First diagonal"
FIRST_ANGLE = "Angle of the first diagonal"
ANGLES = {"": ANGLE, "first": FIRST_ANGLE}
"""What the angle of a value is called, by the value's key, "" for the answer; other values are sizes only."""
ON_THE_WAY = "Your intermediate results"
"""What the fields of these values are under."""
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


def sign_against_side(label: str, typed: str) -> str:
    """An angle whose minus turns it one way and whose side is the other."""
    return (
        f"{label}: the minus of “{typed.strip()}” turns one way, the direction that you chose the other. Leave out the "
        "minus, or choose the other direction."
    )


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
    sentence = "**Correct.** Your answer is the calculated value, rounded. The tolerance is ± {allowed}."
    return say(sentence, allowed=allowed)


def size_right(*, signed: bool = False) -> Phrase:
    """The size fits; its direction was not stated."""
    if signed:
        return say("**The size is right.** Now type the angle too, with its sign.")
    return say("**The size is right.** Now type the angle too, and which way it turns.")


NUMBERS_ONLY = say("Only your numbers were checked, not the drawing itself.")
ANGLE_TOO = say("Type the angle too: it has not been checked.")
"""Beside what is said of a size alone."""


def measured_from(origin: Phrase, here: Phrase) -> Phrase:
    """Size right, and the angle counted from another line that the page counts from too."""
    return say(
        "**Right in another sense.** You have measured the angle from {origin}. Here it is counted from {here}: type "
        "it from there.",
        origin=origin, here=here,
    )  # fmt: skip


def of_the_other_scale(here: Phrase) -> Phrase:
    """Size right, and the angle is what the protractor's other scale shows."""
    return say(
        "**The other scale of the protractor?** The size is right. Read the angle again: use the scale that has its 0 "
        "on {here}.",
        here=here,
    )  # fmt: skip


def of_the_other_arrow(other: Phrase, asked: Phrase) -> Phrase:
    """Size right, and the angle is that of the arrow that points the other way."""
    return say(
        "**Right in another sense.** You have measured the angle of {other}. {asked} points the opposite way: type its "
        "angle.",
        other=other, asked=asked,
    )  # fmt: skip


def which_side() -> Phrase:
    """Size and angle fit on one side, and the side was not stated."""
    return say("**Size and angle are right.** Which way does it turn: clockwise or anticlockwise?")


def three_figures() -> Phrase:
    """Right as far as two figures go."""
    return say("**Right, give three figures.** Two figures are too few for a calculated answer.")


def near(side: str) -> Phrase:
    """Outside the tolerance, but not by much."""
    return say("**Look again.** Your answer is {side}. The difference is a little more than the tolerance.", side=side)


def both_off(size: str, angle: str, *, wrong: bool) -> Phrase:
    """Size and angle are each inside their tolerance, and the end of the arrow is outside the ellipse of both."""
    opening = "**Not yet.**" if wrong else "**Look again.**"
    return say(
        opening + " Size and angle are each inside their tolerance, but not both together: the size is {size} off, the "
        "angle {angle}.",
        size=size, angle=angle,
    )  # fmt: skip


def wrong_by(angle: str) -> str:
    """A right size with a wrong angle, and by how much where that is little more than the tolerance."""
    return f"{WRONG_ANGLE}, by {angle}"


def read_as(typed: str, amount: str) -> Phrase:
    """How a length was understood, in front of what is said of it."""
    return say("You typed {typed}, that is {amount}. ", typed=typed, amount=amount)


def in_other_unit(typed: str, unit: str, name: Phrase, look: Phrase, *, written: str) -> Phrase:
    """A mistake that gives the same number in another unit; ``written``: the unit that was typed with the number, ""
    where it was chosen."""
    change = f"write {unit} in place of {written}" if written else f"choose {unit} beside the number"
    return say(
        "{typed} would be a typical mistake: you get it if {name}. {look} If you meant {unit}, {change} and check "
        "again.",
        typed=typed, unit=unit, name=name, look=look, change=change,
    )  # fmt: skip


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
        "**The number is right, but the unit is wrong:** it is correct in {unit}, not in {typed}. Choose {unit} "
        "beside the number, or write it after the number.",
        unit=unit, typed=typed,
    )  # fmt: skip


FOLLOWS = say(
    "**Correct from your own earlier value.** The later steps are right. Check the earlier value again."
)


def wrong_before(label: str) -> Phrase:
    """An earlier value is off."""
    return say("{label}: the difference is more than the tolerance.", label=label)


def right_before(label: str) -> Phrase:
    """An earlier value is right."""
    return say("{label}: right. Look at what comes after it.", label=label)


def part_right(label: str) -> Phrase:
    """A value found on the way is right, and no answer was typed yet."""
    return say("**{label}: right so far.** Go on from there, then type your answer.", label=label)


def part_wrong(label: str, side: str) -> Phrase:
    """A value found on the way is wrong, and no answer was typed yet."""
    return say("**{label}: not yet.** It is {side}.", label=label, side=side)


def of_part(label: str) -> Phrase:
    """Before the mistakes that give a wrong value found on the way."""
    return say("About your {label}:", label=in_sentence(label))


def one_cause(mistakes: Sequence[tuple[Phrase, Phrase]]) -> Phrase:
    """Mistakes that give this very answer, each by its name and where to look for it."""
    return _each(mistakes, "You get this answer if ", "Or if ")


def perhaps(mistakes: Sequence[tuple[Phrase, Phrase]]) -> Phrase:
    """The same, as one of several explanations."""
    return _each(mistakes, "It could be that ", "Or that ")


MOST_TOGETHER = 4
"""Mistakes of one cause that are named at most."""


def _each(mistakes: Sequence[tuple[Phrase, Phrase]], first: str, further: str) -> Phrase:
    """A sentence for each mistake; where to look stands behind the last one of those that share it."""
    looks: dict[Phrase, list[Phrase]] = {}
    for name, look in mistakes[:MOST_TOGETHER]:
        looks.setdefault(look, []).append(name)
    told: Phrase = ()
    for look, names in looks.items():
        for name in names:
            told += (f" {further}" if told else first, *name, ".")
        told += (" ", *look)
    return (*told, " There may be another reason.") if len(mistakes) > MOST_TOGETHER else told


def several(count: int) -> Phrase:
    """More than one class of mistakes fits."""
    return say("{count} kinds of mistake could give this answer:", count={2: "Two", 3: "Three"}.get(count, str(count)))


NO_CAUSE = say("This answer does not match a typical mistake.")
"""What is to be checked next stands behind it."""


def check_first(symbol: Phrase) -> Phrase:
    """A drawing is checked in parts: its first diagonal."""
    return say(
        "Check it in parts. Type the length of the first diagonal, {symbol}, under “{place}”: you learn whether the "
        "mistake is before or after it.",
        symbol=symbol, place=ON_THE_WAY,
    )  # fmt: skip


CHECK_SUMS = say(
    "Check it in parts. Type your two sums of components under “{place}”: you learn which of them is wrong.",
    place=ON_THE_WAY,
)
CHECK_DRAWING = say(
    "First check the length of each arrow at your scale. Then check how far each arrow turns, and which way. Then look "
    "at which end each arrowhead is. Last, read your answer again."
)
CHECK_CALCULATION = say(
    "First check the values that you used. Then check the angle of each phasor and the sign of each component. Last, "
    "look at the formula again."
)
CHECK_AFTER = say("So check the lines that you drew or added after that, and your last reading.")
"""What comes after right values found on the way."""
ASK_ANGLE = say("Enter the angle too. It shows which of these mistakes it is.")


BOTH_ARROWS = "Your arrow is dashed. The right arrow is solid."
YOURS = "yours"
HINT_MOVE = "Hint: this step"
ONE_MORE = "One more problem of this kind"


def step_says(number: int, sentence: Phrase) -> Phrase:
    """A step of the page's list, as the hint that names the move."""
    return (f"Step {number}. ", *sentence)


def announced(phrases: Sequence[Phrase]) -> str:
    """A judgement as it is read out."""
    return " ".join(plain(phrase) for phrase in phrases)


def bad_limit(typed: str, unit: str, least: str, most: str) -> str:
    """A lecturer's own tolerance that cannot be used."""
    return f"Tolerance: “{typed}” cannot be used. Enter {least} to {most} {unit}, or leave it empty."
