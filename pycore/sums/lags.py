"""Where the angles of currents come from that lag their own voltages by different angles."""

import math
from collections.abc import Sequence

from pycore import quantity
from pycore.constructions import step_kinds
from pycore.constructions.construction import Step
from pycore.constructions.names import arm_key
from pycore.phasor import wrap
from pycore.sums.on_paper import OnPaper
from pycore.sums.wording import OwnVoltage
from pycore.words import lags as words
from pycore.words.phrase import Phrase

SAME = 1e-6
"""Angles that differ by less are one angle, degrees."""
TURNS = (0.0, 360.0, -360.0)


def _degrees(paper: OnPaper, size: float) -> str:
    """The size of an angle as the form says it back: to a hundredth, so that sums hold as they are printed."""
    return quantity.plain(round(math.fabs(size), 2), paper.notation.mark) + "°"


def _turned(paper: OnPaper, turn: float) -> str:
    """A turn from a line: 120° clockwise."""
    return f"{_degrees(paper, turn)} {paper.sense(turn)}"


def voltages_sentence(paper: OnPaper, step: Step) -> tuple[Phrase, Phrase]:
    """Return the sentence for the thin lines of the voltages, the first from the first direction, the others from it;
    and why they are drawn."""
    owns = [paper.notation.own_voltages[arm_key(number)] for number in step.arm_numbers]
    reference = paper.picture.reference
    drawn = [own for own in owns if own.angle != reference]
    first, place = owns[0], paper.place
    direction = paper.direction(reference)
    if first.angle == reference:
        lines = [words.points(first.tag, direction)]
    elif paper.notation.reference == paper.notation.voltage:
        # The phase voltage that the angles are counted from has its line already.
        first, lines = OwnVoltage(paper.notation.voltage, reference, 0.0), list[Phrase]()
    else:
        lines = [words.turned_from(first.tag, _turned(paper, wrap(first.angle - reference)), direction)]
    others = (own for own in drawn if own is not first and own.angle != first.angle)
    lines += [words.turned_from(own.tag, _turned(paper, wrap(own.angle - first.angle)), first.tag) for own in others]
    return words.voltages([own.tag for own in drawn], place, lines), words.voltages_why(paper.sense(-1.0))


def lag_sentence(paper: OnPaper, step: Step) -> Phrase:
    """Return by how much a current lags its own voltage, and the sum that its angle on paper is; () where all lag
    alike."""
    number = step.arm_numbers[-1]
    own = paper.notation.own_voltages.get(arm_key(number))
    if own is None:
        return ()
    lag = words.lags if own.lag > 0 else words.leads
    said = lag(paper.tag(number), own.tag, _degrees(paper, own.lag)) if own.lag else words.in_phase(
        paper.tag(number), own.tag
    )
    return said + _sum_of_angles(paper, step, own)


def _sum_of_angles(paper: OnPaper, step: Step, own: OwnVoltage) -> Phrase:
    """The angle of a current from the line before it, or from the first direction, as a sum."""
    if step.name in (step_kinds.DRAW_FIRST, step_kinds.DRAW_ALONG):
        return ()
    before = _before(paper, step)
    between = wrap(own.angle - before.angle)
    turn = wrap(own.angle - own.lag - before.angle + before.lag)
    sense = 1.0 if turn > 0 else -1.0
    # Each part is counted in the sense in which the whole turns.
    parts = (sense * between, -sense * own.lag, sense * before.lag)
    whole = next((extra for extra in TURNS if math.fabs(math.fsum((*parts, extra)) - sense * turn) < SAME), 0.0)
    printed = [round(part, 2) for part in (parts[0] + whole, *parts[1:]) if part]
    if len(printed) < 2:
        return ()
    total = quantity.plain(round(math.fsum(printed), 2), paper.notation.mark) + "°"
    return words.angle_between(before.tag, _added(paper, printed), total, paper.sense(turn))


def _before(paper: OnPaper, step: Step) -> OwnVoltage:
    """The line that a current's angle is counted from, with the lag that it has itself."""
    notation = paper.notation
    keys = [arm_key(number) for number in step.arm_numbers]
    counted = keys[0] if len(keys) > 1 else arm_key(paper.construction.arms[0].number)
    own = notation.own_voltages[counted]
    if len(keys) > 1 or wrap(own.angle - own.lag) == wrap(paper.picture.reference):
        return OwnVoltage(notation.tags[counted], own.angle, own.lag)
    return OwnVoltage(notation.voltage, paper.picture.reference, 0.0)


def _added(paper: OnPaper, parts: Sequence[float]) -> str:
    """A sum of angles, in signs: 120° + 36.87° − 25.84°."""
    first, *others = parts
    texts = [quantity.MINUS * (first < 0) + _degrees(paper, first)]
    return " ".join((*texts, *(f"{quantity.MINUS if part < 0 else '+'} {_degrees(paper, part)}" for part in others)))
