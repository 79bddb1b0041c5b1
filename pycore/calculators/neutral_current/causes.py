"""Possible reasons why two answers disagree: each with the size it would need, and what to measure next."""

import math
from collections.abc import Callable

from pycore import quantity
from pycore.accuracy.single_errors import single_errors
from pycore.calculators.neutral_current import explain
from pycore.calculators.neutral_current.case import NeutralCase
from pycore.quantity import NO_BREAK_SPACE
from pycore.sheet.plan import Plan
from pycore.sums.sentences import StepSentences
from pycore.sums.wording import degrees_text, length_text
from pycore.words import accuracy as words
from pycore.words import plain
from pycore.words import verdict as verdict_words
from pycore.words.phrase import Phrase, listed

Amount = Callable[[float], str]
MOST_SLIPS = 2
MOST_OF_A_KIND = 4
MOST_CLASSES = 3


def measured_causes(case: NeutralCase, reading: float, amount: Amount) -> tuple[Phrase, ...]:
    """Possible reasons for a reading (A) of the neutral, the most plausible kind first."""
    kinds: dict[str, list[explain.Explanation]] = {}
    for cause in explain.explanations(case.solution.lines, reading):
        if cause.strain <= explain.MOST_STRAIN and _shows(case, cause, amount):
            kinds.setdefault(cause.kind, []).append(cause)
    return tuple(_cause_phrase(case, kind, members, amount) for kind, members in kinds.items())


def _shows(case: NeutralCase, cause: explain.Explanation, amount: Amount) -> bool:
    """Whether the size of a cause is more than zero as it is printed."""
    size, mark = math.fabs(cause.size), case.notation.mark
    if cause.kind == explain.ANGLE:
        return degrees_text(size, mark) != degrees_text(0.0, mark)
    return cause.kind not in (explain.LINE, explain.NEUTRAL) or amount(size) != amount(0.0)


def _cause_phrase(case: NeutralCase, kind: str, members: list[explain.Explanation], amount: Amount) -> Phrase:
    mark, first = case.notation.mark, members[0]
    if kind == explain.ANGLE:
        return words.why_angle(listed([_other_lag(case, cause) for cause in members[:MOST_OF_A_KIND]]))
    by_line = [
        (case.lines[cause.line - 1], math.fabs(cause.size), cause.size > 0) for cause in members[:MOST_OF_A_KIND]
    ]
    if kind == explain.LINE:
        return words.why_reading(
            listed([words.one_reading(line, amount(size), more=more) for line, size, more in by_line])
        )
    if kind == explain.HARMONIC:
        return words.why_harmonic(quantity.fixed(first.size, 1 if first.size < 10.0 else 0, mark))
    if kind == explain.NEUTRAL:
        return words.why_neutral(amount(math.fabs(first.size)), high=first.size > 0)
    return words.why_range(quantity.plain(float(f"1e{int(first.size)}"), mark))


def _other_lag(case: NeutralCase, cause: explain.Explanation) -> str:
    """The lag of a line that would give the reading, and the one that was stated (degrees, lead negative)."""
    stated = case.entered.lags[cause.line - 1].degrees
    wanted, known = (_phase(degrees, case.notation.mark) for degrees in (stated + cause.size, stated))
    return words.one_angle(case.lines[cause.line - 1], wanted, known)


def _phase(degrees: float, mark: str) -> str:
    text = degrees_text(math.fabs(degrees), mark)
    flat = text == degrees_text(0.0, mark)
    return words.phase_of(text, lags=degrees > 0.0 and not flat, leads=degrees < 0.0 and not flat)


def drawn_causes(case: NeutralCase, plan: Plan, drawn: float) -> tuple[Phrase, ...]:
    """Possible reasons for a drawn value (A): typical mistakes that give it, then single errors of hand."""
    mark = case.notation.mark
    right = length_text(case.solution.current * plan.factor, mark)
    phrases = [verdict_words.measure_line(right, length_text(drawn * plan.factor, mark))]
    mistakes = _mistakes(case, drawn)
    phrases += mistakes or (verdict_words.NO_MISTAKE,)
    return (*phrases, *_single_errors(case, plan, drawn))


def _mistakes(case: NeutralCase, drawn: float) -> list[Phrase]:
    # The catalogue is wanted only when a drawing disagrees; the first answer need not wait for its import.
    from pycore.practice.explaining import LearnerAnswer, causes
    from pycore.practice.task import NO_LIMITS
    from pycore.sums.task import task_of

    task = task_of(case)
    phrases: list[Phrase] = []
    for cause in causes(task, LearnerAnswer(drawn), NO_LIMITS)[:MOST_CLASSES]:
        phrases += [
            verdict_words.mistake(plain(one.name), case.amount(one.size), plain(one.look)) for one in cause.mistakes
        ]
    return phrases


def _single_errors(case: NeutralCase, plan: Plan, drawn: float) -> list[Phrase]:
    """The smallest single errors that would give the drawn length."""
    construction, mark = plan.construction, case.notation.mark
    steps = [step for step in construction.steps for _ in step.moves]
    sentences = StepSentences(plan, case.notation)
    phrases: list[Phrase] = []
    for error in single_errors(construction, plan.factor, case.hand, drawn)[:MOST_SLIPS]:
        sentence = plain(sentences.sentence(steps[error.move])[0][:1]).rstrip(".,")
        size = degrees_text(error.size, mark)
        if error.kind.startswith("length"):
            size = quantity.plain(round(math.fabs(error.size), 1), mark) + f"{NO_BREAK_SPACE}mm"
        phrases.append(verdict_words.slip(words.TOOLS[error.kind], sentence, size))
    return phrases
