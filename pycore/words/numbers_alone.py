"""The words of a lesson about the numbers without their directions, and of its last frame."""

from collections.abc import Sequence

from pycore.words.phrase import Phrase, Symbol, say

IN_ONE_LINE = say("Why not just use the numbers? Lay all arrows in one line, end to end.")
ONE_LINE_WHY = say("This is right only if all arrows point the same way.")
ONE_LINE_LESS_WHY = say("This is right only if the phasors themselves have the same direction.")
TURNED = say("Turn each arrow to its own direction.")
TURNED_WHY = say("An arrow adds its whole length only along its own direction. Size and direction both count.")
SAME_WAY_WHY = say("Here all arrows lie in one line, so the numbers alone give the answer.")


def numbers_alone(numbers: Sequence[tuple[str, bool]], amount: str, *, exact: bool) -> Phrase:
    """The numbers without directions, each with whether it is subtracted. ``exact``: they add up as printed."""
    pieces = numbers[0][0]
    for number, subtracted in numbers[1:]:
        pieces += f" − {number}" if subtracted else f" + {number}"
    return say("{numbers} = {amount}" if exact else "{numbers} ≈ {amount}", numbers=pieces, amount=amount)


def not_the_numbers(name: Phrase | Symbol, amount: str, alone: str) -> Phrase:
    """The sum of the phasors beside that of the numbers."""
    return say("{name} is {amount}, not {alone}.", name=name, amount=amount, alone=alone)


FINISHED = "Finished drawing"
FINISHED_SENTENCE = say("The drawing is finished.")
