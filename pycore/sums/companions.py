"""The sentence of a step that draws a phasor of another quantity, and the fault of a scale that does not fit it."""


from pycore import quantity
from pycore.constructions.companions import companion_moves
from pycore.constructions.construction import Step
from pycore.constructions.moves import TurnAngle, length_of, turn_of
from pycore.errors import Fault, Offer
from pycore.sheet.plan import Plan
from pycore.sums.on_paper import OnPaper
from pycore.sums.wording import Notation
from pycore.words import answers as neutral_words
from pycore.words import constructions as words
from pycore.words import sums as sum_words
from pycore.words.phrase import Phrase

SECOND = "second-scale"
"""The form's field, and the link's key, of the companions' scale."""


def told_companion(teller: OnPaper, step: Step) -> tuple[Phrase, Phrase]:
    """How it is drawn, and why: its scale is its own. Raises TypeError where nobody spoke of companions."""
    telling, readings = teller.telling, teller.figure.readings
    if telling.companions is None:
        raise TypeError("a companion is drawn that nobody spoke of")
    arm = next(arm for arm in telling.companions.arms if arm.number == step.about[0])
    move = next(move for move in companion_moves(teller.construction) if move.phasor == arm.key)
    tag, length, first = telling.tags[arm.key], teller.length(length_of(move, readings)), step.moves[0]
    if isinstance(first, TurnAngle):
        turn, zero = turn_of(first, readings), teller.zero_name(first)
        sentence = words.companion(tag, zero, teller.degrees(turn), teller.sense(turn), teller.place, length)
    else:
        sentence = words.companion_first(tag, teller.way(arm.angle), teller.place, length)
    scale, amount = telling.second(teller.plan.second), telling.companions.writing.amount(arm.size)
    return sentence, words.companion_why(telling.companions.words.plural, scale, amount) + telling.companions.why


def told_on_the_way(teller: OnPaper, step: Step) -> tuple[Phrase, Phrase]:
    """The sum of the first two arrows of a tip to tail, drawn for itself, and what it is."""
    tag, end = teller.telling.tags[f"i{teller.construction.order}"], words.tip_of(teller.tag(step.about[-1]))
    return words.on_the_way(tag, teller.place, end), teller.telling.words.on_the_way


def second_too_large(telling: Notation, typed: str, plan: Plan, fitting: Plan) -> Fault:
    """The fault of a scale of the companions that does not fit, and what would. Raises TypeError without companions."""
    if telling.companions is None:
        raise TypeError("there are no companions")
    writing = telling.companions.writing
    given, fits = writing.scale(plan.second), writing.scale(fitting.second)
    offer = Offer(neutral_words.use_scale(fits), ((SECOND, quantity.exact(fitting.second)),))
    message = sum_words.second_does_not_fit(given, fits, telling.companions.words.plural)
    return Fault(SECOND, typed, message, offers=(offer,))
