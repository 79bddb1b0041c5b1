"""What could be why two answers disagree: each cause with the size it would need, and what to measure next."""

import math
from collections.abc import Callable

from pycore import quantity
from pycore.accuracy import explain
from pycore.accuracy.single_errors import single_errors
from pycore.calculators.neutral_current.case import NeutralCase
from pycore.constructions import deviations
from pycore.quantity import NO_BREAK_SPACE
from pycore.sheet.plan import Plan
from pycore.sums.sentences import StepSentences
from pycore.sums.wording import degrees_text, reading_text
from pycore.words import accuracy as words
from pycore.words import plain
from pycore.words import verdict as verdict_words
from pycore.words.phrase import Phrase

Amount = Callable[[float], str]
MOST_SLIPS = 2
MOST_OF_A_KIND = 4
MOST_CLASSES = 3


def measured_causes(case: NeutralCase, read: float, amount: Amount) -> tuple[Phrase, ...]:
    """What could explain a reading of the neutral, the most plausible kind first."""
    found = [
        one for one in explain.explanations(case.solution.lines, read) if one.strain <= explain.MOST_STRAIN
    ]
    kinds: dict[str, list[explain.Explanation]] = {}
    for one in found:
        kinds.setdefault(one.kind, []).append(one)
    return tuple(_told(case, kind, members, amount) for kind, members in kinds.items())


def _told(case: NeutralCase, kind: str, members: list[explain.Explanation], amount: Amount) -> Phrase:
    mark, first = case.notation.mark, members[0]
    sized = [(case.lines[one.line - 1], math.fabs(one.size), one.size > 0) for one in members[:MOST_OF_A_KIND]]
    if kind == explain.ANGLE:
        return words.why_angle(
            words.listed([words.one_angle(line, degrees_text(size, mark), lags=more) for line, size, more in sized])
        )
    if kind == explain.LINE:
        return words.why_reading(
            words.listed([words.one_reading(line, amount(size), more=more) for line, size, more in sized])
        )
    if kind == explain.HARMONIC:
        return words.why_harmonic(quantity.fixed(first.size, 1 if first.size < 10.0 else 0, mark))
    if kind == explain.NEUTRAL:
        return words.why_neutral(amount(math.fabs(first.size)), high=first.size > 0)
    return words.why_range(quantity.plain(float(f"1e{int(first.size)}"), mark))


def drawn_causes(case: NeutralCase, plan: Plan, drawn: float, amount: Amount) -> tuple[Phrase, ...]:
    """What could explain a drawn value: the catalogued mistakes that give it, else the slips that would."""
    mark = case.notation.mark
    right = reading_text(case.solution.current * plan.factor, mark)
    made = [verdict_words.measure_line(right, reading_text(drawn * plan.factor, mark))]
    named = _mistakes(case, drawn)
    made += named or (verdict_words.NO_MISTAKE,)
    return (*made, *_slips(case, plan, drawn))


def _mistakes(case: NeutralCase, drawn: float) -> list[Phrase]:
    # The catalogue is wanted only when a drawing disagrees; the first answer need not wait for its import.
    from pycore.practice.marking import LearnerAnswer, causes
    from pycore.practice.task import NO_LIMITS
    from pycore.sums.task import task_of

    task = task_of(case)
    made: list[Phrase] = []
    for cause in causes(task, LearnerAnswer(drawn), NO_LIMITS)[:MOST_CLASSES]:
        names = words.either([plain(mistake.name) for mistake in cause.mistakes])
        first = cause.mistakes[0]
        made.append(verdict_words.mistakes(names, case.amount(first.size), plain(first.look)))
    return made


def _slips(case: NeutralCase, plan: Plan, drawn: float) -> list[Phrase]:
    """The smallest single slips that would give the drawn length."""
    construction, mark = plan.construction, case.notation.mark
    steps = [step for step in construction.steps for _ in step.moves]
    sentences = StepSentences(plan, case.notation)
    made: list[Phrase] = []
    for slip in single_errors(construction, plan.factor, case.hand, drawn)[:MOST_SLIPS]:
        told = plain(sentences.sentence(steps[slip.move])[0][:1]).rstrip(".,")
        size = degrees_text(slip.size, mark)
        if slip.kind in deviations.LENGTHS:
            size = quantity.plain(round(math.fabs(slip.size), 1), mark) + f"{NO_BREAK_SPACE}mm"
        made.append(verdict_words.slip(words.TOOLS[slip.kind], told, size))
    return made
