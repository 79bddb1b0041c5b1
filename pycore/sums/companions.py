"""Sentences for a phasor of a second quantity."""

from pycore.constructions.construction import Step
from pycore.constructions.moves import TurnAngle, length_of, turn_of
from pycore.constructions.names import arm_key
from pycore.sums.on_paper import OnPaper
from pycore.words import constructions as words
from pycore.words.phrase import Phrase


def companion_sentence(sentences: OnPaper, step: Step) -> tuple[Phrase, Phrase]:
    """Return how a companion is drawn, and why it has its own scale. Raises TypeError if there are no companions."""
    notation, readings = sentences.notation, sentences.figure.readings
    if notation.companions is None:
        raise TypeError("a companion is drawn that nobody spoke of")
    arm = next(arm for arm in notation.companions.arms if arm.number == step.arm_numbers[0])
    move = next(move for move in sentences.construction.companions if move.phasor == arm.key)
    tag, length, first = notation.tags[arm.key], sentences.length(length_of(move, readings)), step.moves[0]
    if isinstance(first, TurnAngle):
        turn, zero = turn_of(first, readings), sentences.zero_name(first)
        sentence = words.companion(tag, zero, sentences.degrees(turn), sentences.sense(turn), sentences.place, length)
    else:
        sentence = words.companion_first(tag, sentences.direction(arm.angle), sentences.place, length)
    scale, amount = notation.second(sentences.plan.second), notation.companions.writing.amount(arm.size)
    return sentence, words.companion_why(notation.companions.words.plural, scale, amount) + notation.companions.why


def partial_sum_sentence(sentences: OnPaper, step: Step) -> tuple[Phrase, Phrase]:
    """Return how the sum of the first two arrows of a tip to tail is drawn, and what it means."""
    tag, end = (
        sentences.notation.tags[arm_key(sentences.construction.order)],
        words.tip_of(sentences.tag(step.arm_numbers[-1])),
    )
    return words.on_the_way(tag, sentences.place, end), sentences.notation.words.on_the_way
