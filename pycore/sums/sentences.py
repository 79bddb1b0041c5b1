"""The sentence of every step, made from the step's moves and its place on paper."""

import math
from collections.abc import Callable, Mapping

from pycore import quantity
from pycore.constructions import roles, step_kinds
from pycore.constructions.construction import Step, sum_of
from pycore.constructions.methods import COMPONENTS, TIP_TO_TAIL
from pycore.constructions.moves import DrawParallel, Join, Supplement, TurnAngle, turn_of
from pycore.constructions.names import (
    AXIS_ACROSS,
    AXIS_UP,
    DIAGONAL_LENGTH,
    RESULT_LENGTH,
    RESULTANT,
    RETURN_KEY,
    SUM_KEY,
    arm_key,
)
from pycore.phasor import wrap
from pycore.sums.answer import Block, Move
from pycore.sums.companions import companion_sentence, partial_sum_sentence
from pycore.sums.lags import lag_sentence, voltages_sentence
from pycore.sums.on_paper import PROTRACTOR_REACH, OnPaper
from pycore.sums.wording import length_text, supplement_text, whole_degrees, wider_than_right
from pycore.words import answers as answer_words
from pycore.words import components as parts
from pycore.words import constructions as words
from pycore.words import parallelogram as parallel
from pycore.words.phrase import Phrase


class StepSentences(OnPaper):
    """Words for one construction: a method for each kind of step returns the sentence and its reason."""

    # One method for each kind of step.

    def all_moves(self) -> tuple[Block, ...]:
        """Return every step as a numbered move."""
        steps = self.construction.numbered
        return tuple(Move(number, *self.sentence(step), self.has_protractor(step)) for number, step in steps)

    def sentence(self, step: Step) -> tuple[Phrase, Phrase]:
        """Return the sentence of a step and its reason."""
        write = self.notation.own_steps.get(step.name) or SENTENCES[step.name]
        sentence, reason = write(self, step)
        origin = self.origin(step) if step.name in DRAWS_PHASOR else ()
        return sentence, (*origin, " ", *reason) if origin and reason else (origin or reason)

    def origin(self, step: Step) -> Phrase:
        """Return where the direction of the phasor of a step comes from; () where that is what was typed."""
        key = arm_key(step.arm_numbers[-1])
        return self.notation.origins.get(key) or lag_sentence(self, step)

    def step_voltages(self, step: Step) -> tuple[Phrase, Phrase]:
        """The thin lines of the voltages."""
        return voltages_sentence(self, step)

    def step_scale(self, step: Step) -> tuple[Phrase, Phrase]:
        """The scale, and the length of the longest phasor at it."""
        sentence = words.choose_scale(self.notation.scale(self.plan.scale)) + self.longest_line()
        if self.plan.layout.style.blank:
            sentence = self.own_paper()
        return sentence, words.scale_why(self.notation.words.quantity, self.notation.words.units)

    def step_reference(self, step: Step) -> tuple[Phrase, Phrase]:
        """The faint first direction."""
        direction = self.direction(self.picture.reference)
        return words.draw_reference(self.notation.reference, direction, self.place), words.REFERENCE_WHY

    def step_companion(self, step: Step) -> tuple[Phrase, Phrase]:
        """A phasor of another quantity."""
        return companion_sentence(self, step)

    def step_on_the_way(self, step: Step) -> tuple[Phrase, Phrase]:
        """The sum of the first two arrows."""
        return partial_sum_sentence(self, step)

    def step_draw_first(self, step: Step) -> tuple[Phrase, Phrase]:
        """An arrow that needs no protractor."""
        number = step.arm_numbers[0]
        arm = next(arm for arm in self.construction.arms if arm.number == number)
        if self.is_dot(arm.size):
            sentence = words.dot_first(self.tag(number), self.length(arm.size), self.place, self.direction(arm.angle))
            return sentence, words.DOT_WHY
        sentence = words.draw_first(self.tag(number), self.direction(arm.angle), self.place, self.length(arm.size))
        return sentence, words.first_why(self.place)

    def step_draw_along(self, step: Step) -> tuple[Phrase, Phrase]:
        """An arrow on the axis from which angles are measured."""
        return self.step_draw_first(step)

    def step_draw(self, step: Step) -> tuple[Phrase, Phrase]:
        """An arrow from the common point, by protractor and ruler."""
        turn = next(move for move in step.moves if isinstance(move, TurnAngle))
        number = step.arm_numbers[0]
        angle = turn_of(turn, self.figure.readings)
        if angle in (180.0, 0.0):
            return self.step_draw_first(step)
        size, zero, length = self.degrees(angle), self.zero_name(turn), self.length(self.size(number))
        if self.is_dot(self.size(number)):
            way = words.way_from(size, self.sense(angle), zero)
            return words.dot(self.tag(number), length, self.place, way), words.DOT_WHY
        sentence = words.draw(self.tag(number), zero, size, self.sense(angle), self.place, length)
        return sentence, self.why_draw(turn, angle, zero)

    def why_draw(self, turn: TurnAngle, angle: float, zero: Phrase) -> Phrase:
        """Return which scale of the protractor to use, and what learners often get wrong here."""
        size = self.degrees(angle)
        if size in ON_ONE_LINE:
            return words.along_zero(zero, size, self.place)
        why = words.which_scale(zero, size, wider_than_right(angle))
        # The lines follow one another in the sense of lag; the last is reached sooner the other way.
        long_way = self.degrees(360.0 - (-angle if angle < 0 else angle))
        other = f"{long_way} {self.sense(-angle)}"
        if self.notation.protractor == "360":
            why += words.full_circle(other)
        elif wider_than_right(angle) > 0 and self.sense(angle) == self.sense(1.0):
            why += words.opposite_why(size, other)
        else:
            why += words.ZERO_LINE
        if self.zero_length(turn) < PROTRACTOR_REACH:
            why += words.extend(zero)
        return why

    def step_parallel(self, step: Step) -> tuple[Phrase, Phrase]:
        """The first dashed line of a parallelogram."""
        first, second, _, length = self.sides(step)
        move = step.moves[0]
        if isinstance(move, DrawParallel):
            sentence = parallel.parallel_by_set_squares(first, second, self.length(length))
            return sentence, parallel.SLIDE_WHY
        if not isinstance(move, TurnAngle):
            raise TypeError(f"a parallel is not drawn by {move}")
        angle = turn_of(move, self.figure.readings)
        own = isinstance(move.turn, Supplement)
        size = self.marked(move)
        between = (whole_degrees if own else self.degrees)(180.0 - math.fabs(angle))
        why = parallel.neighbouring_why(between, size, wider_than_right(round(angle) if own else angle))
        if self.zero_length(move) < PROTRACTOR_REACH:
            why += words.extend(first)
        sentence = parallel.parallel_by_protractor(
            first, self.angle_text(move), self.sense(angle), self.length(length), second
        )
        return sentence, why

    def marked(self, move: TurnAngle) -> str:
        """Return the size of a marked angle: in whole degrees if it comes from the learner's own reading."""
        if isinstance(move.turn, Supplement):
            return supplement_text(self.figure.readings[move.turn.reading])
        return self.degrees(turn_of(move, self.figure.readings))

    def angle_text(self, move: TurnAngle) -> str:
        """Return a marked angle; with "about" if it comes from the learner's own reading."""
        return words.about(self.marked(move)) if isinstance(move.turn, Supplement) else self.marked(move)

    def about_diagonal(self) -> str:
        """Return the length of the first diagonal as it should be read."""
        return self.length(self.figure.readings[DIAGONAL_LENGTH]).partition(" (")[0]

    def step_close(self, step: Step) -> tuple[Phrase, Phrase]:
        """The second dashed line; the two meet."""
        only = DIAGONAL_LENGTH not in self.figure.readings
        which = parallel.SECOND if len(step.arm_numbers) == 3 else ("" if only else parallel.FIRST)
        first, second, size, _ = self.sides(step)
        own = len(step.arm_numbers) == 3
        length = (
            parallel.as_the_diagonal(self.about_diagonal()) if own else parallel.of_length(self.length(size))
        )
        move = step.moves[0]
        if isinstance(move, TurnAngle):
            angle = turn_of(move, self.figure.readings)
            turn, to = self.angle_text(move), (parallel.IT if own else first)
            return parallel.close_by_protractor(which, second, turn, self.sense(angle), length, to), words.NOTHING
        if isinstance(move, DrawParallel):
            return parallel.close_by_set_squares(which, second, first, length), words.NOTHING
        return parallel.close_by_compasses(which, first, second), words.NOTHING

    def step_arcs(self, step: Step) -> tuple[Phrase, Phrase]:
        """Two compass arcs."""
        first, second, size, other = self.sides(step)
        length = words.about(self.about_diagonal()) if len(step.arm_numbers) == 3 else self.length(size)
        return parallel.cross_arcs(first, length, second, self.length(other)), parallel.ARCS_WHY

    def step_diagonal(self, step: Step) -> tuple[Phrase, Phrase]:
        """The first diagonal and what it means."""
        reading = self.figure.readings[DIAGONAL_LENGTH]
        end = words.LINE_END if self.before(step) == step_kinds.CARRY_ON else words.meeting(2)
        sentence = parallel.diagonal(end, self.measured(f"i{self.construction.order}", reading))
        both = step.arm_numbers[:2]
        third = next(arm.number for arm in self.construction.arms if arm.number not in both)
        names = [self.notation.lines[number - 1] for number in (*both, third)]
        return sentence, parallel.diagonal_why(self.notation.words.partial, names, both)

    def step_measure(self, step: Step) -> tuple[Phrase, Phrase]:
        """The angle between the diagonal and the third line."""
        first, second, _, _ = self.sides(step)
        expected = words.about(whole_degrees(self.figure.readings["between"]))
        return parallel.measure_between(first, second, expected), parallel.MEASURE_WHY

    def step_carry_on(self, step: Step) -> tuple[Phrase, Phrase]:
        """Two phasors nearly on one line, tip to tail."""
        first, second, _, size = self.sides(step)
        return parallel.carry_on(first, second, self.length(size)), words.NOTHING

    def step_result(self, step: Step) -> tuple[Phrase, Phrase]:
        """The sum."""
        joins = [move for move in self.construction.moves if isinstance(move, Join) and move.role == roles.PARALLEL]
        ends = {
            step_kinds.CARRY_ON: words.LINE_END,
            step_kinds.CORNER: self.corner_end(),
            step_kinds.CLOSE: words.meeting(len(joins)),
        }
        tip_to_tail = self.construction.method == TIP_TO_TAIL
        end = words.LAST_TIP if tip_to_tail else ends.get(self.before(step), words.LINE_END)
        return words.result(self.notation.tags[SUM_KEY], self.place, end), words.RESULT_WHY

    def corner_end(self) -> str:
        """Where the sum ends on the axes: the corner of the rectangle, or a mark on one axis."""
        return words.MARKED_SUM if 0 in self.sum_sides() else words.CORNER

    def step_read(self, step: Step) -> tuple[Phrase, Phrase]:
        """Length, amount and angle of the drawn sum."""
        reading = self.figure.readings[RESULT_LENGTH]
        returned = self.is_only_returning
        symbol = self.notation.tags[RETURN_KEY if returned else SUM_KEY]
        if self.is_dot(reading):
            return words.read_short(symbol, self.measured("sum", reading)), words.READ_WHY
        sentence = words.read(symbol, self.measured("sum", reading), self.sum_direction(returned))
        return sentence, self.returning_direction() or words.READ_WHY

    @property
    def is_only_returning(self) -> bool:
        """Whether the returning phasor is drawn without the sum, and measured in its place."""
        return any(step.name == step_kinds.RETURN_CLOSE for step in self.construction.steps)

    def returning_direction(self) -> Phrase:
        """Return how the returning phasor's direction follows from what the protractor shows; () if there is none."""
        if not self.is_only_returning:
            return ()
        read = wrap(self.figure.lines[RESULTANT].degrees - self.picture.reference)
        size = self.degrees(read)
        shown = size if size in ON_ONE_LINE else f"{size} {self.sense(read)}"
        return words.returning_read_why(self.notation.tags[RETURN_KEY], shown, self.sum_direction(True))

    def sum_direction(self, returned: bool = False) -> Phrase:
        """Return the direction of the sum (or of the returning phasor) in words."""
        turn = self.figure.lines[RESULTANT].degrees - self.picture.reference + (180.0 if returned else 0.0)
        return direction_phrase(self, wrap(turn))

    def step_zero(self, step: Step) -> tuple[Phrase, Phrase]:
        """The figure closes by itself: the sum is zero, or too short to be seen."""
        if sum_of(self.construction.arms) != 0:
            return words.NEARLY_CLOSES, words.NOTHING
        return words.closes(self.place, self.notation.words.closes), words.NOTHING

    def step_follow(self, step: Step) -> tuple[Phrase, Phrase]:
        """The next arrow, tip to tail."""
        before, number = step.arm_numbers
        move = next(move for move in step.moves if isinstance(move, TurnAngle))
        turn = turn_of(move, self.figure.readings)
        size, length = self.size(number), self.length(self.size(number))
        tag, last = self.tag(number), self.tag(before)
        back, straight = self.degrees(turn) == "0°", self.degrees(turn) in ON_ONE_LINE
        if straight and not self.is_dot(size):
            return words.follow_straight(tag, last, back, length), words.NOTHING
        if self.is_dot(size):
            angle = words.way_from(self.degrees(turn), self.sense(turn), words.back_along(last))
            way = words.way_along(last, back=back) if straight else angle
            return words.dot(tag, length, words.tip_of(last), way), words.DOT_WHY
        sentence = words.follow(tag, last, self.degrees(turn), self.sense(turn), length)
        why = words.follow_why(self.degrees(180.0 - (-turn if turn < 0 else turn)), self.degrees(turn))
        if self.zero_length(move) < PROTRACTOR_REACH:
            why += words.extend(last)
        return sentence, why

    def step_return_close(self, step: Step) -> tuple[Phrase, Phrase]:
        """The returning phasor closes the figure."""
        return words.return_close(self.notation.words.opposite), (self.notation.words.why_opposite,)

    def step_return(self, step: Step) -> tuple[Phrase, Phrase]:
        """The returning phasor from the common point."""
        length = self.length(self.figure.readings[RESULT_LENGTH])
        return words.return_opposite(self.notation.words.opposite, length), (self.notation.words.why_opposite,)

    def step_axes(self, step: Step) -> tuple[Phrase, Phrase]:
        """Two axes."""
        return parts.AXES, words.NOTHING

    def step_drop(self, step: Step) -> tuple[Phrase, Phrase]:
        """The components of one phasor on both axes."""
        number = step.arm_numbers[0]
        across, upward = self.figure.readings[f"x{number}"], self.figure.readings[f"y{number}"]
        right, up = self.parts(across, upward)
        sides = self.side_of(across), self.side_of(upward)
        if sides[0] == 0 and sides[1]:
            return parts.drop_on_axis(self.tag(number), words.UPRIGHT_AXIS, up, parts.NOTHING_ACROSS), words.NOTHING
        if sides[1] == 0 and sides[0]:
            return parts.drop_on_axis(self.tag(number), words.LEVEL_AXIS, right, parts.NOTHING_UPWARD), words.NOTHING
        return parts.drop(self.tag(number), right, up), words.NOTHING

    def side_of(self, amount: float) -> int:
        """Return the side of a component: +1, -1, or 0 if no ruler shows it."""
        millimetres = quantity.half_millimetres(self.millimetres(amount))
        return (millimetres > 0) - (millimetres < 0)

    def parts(self, across: float, upward: float) -> tuple[str, str]:
        """Return a horizontal and a vertical component as they are read off, in words."""
        return (
            parts.across_part(self.length(across), self.side_of(across)),
            parts.upward_part(self.length(upward), self.side_of(upward)),
        )

    def summed(self, axis: str) -> str:
        """Return the sum of the components on an axis in words: of those that were read off, as printed before it.

        Where these leave nothing of a sum that has a side, it is the drawing's own.
        """
        letter, amount = ("x", self.sums()[0]) if axis == AXIS_ACROSS else ("y", self.sums()[1])
        readings = (self.figure.readings[f"{letter}{arm.number}"] for arm in self.construction.arms)
        read = math.fsum(quantity.half_millimetres(self.millimetres(reading)) for reading in readings)
        side = self.side_of(amount)
        text = length_text(read if read * side > 0 else self.millimetres(amount), self.notation.mark)
        return parts.across_part(text, side) if axis == AXIS_ACROSS else parts.upward_part(text, side)

    def sums(self) -> tuple[float, float]:
        """Return the sums of the components on both axes."""
        readings = self.figure.readings
        across = math.fsum(readings[f"x{arm.number}"] for arm in self.construction.arms)
        return across, math.fsum(readings[f"y{arm.number}"] for arm in self.construction.arms)

    def sum_sides(self) -> tuple[int, int]:
        """Return the sides of both sums of components."""
        if self.construction.method != COMPONENTS:
            return (1, 1)
        across, upward = self.sums()
        return self.side_of(across), self.side_of(upward)

    def step_add(self, step: Step) -> tuple[Phrase, Phrase]:
        """The components added on each axis."""
        return parts.add_parts(self.summed(AXIS_ACROSS), self.summed(AXIS_UP)), words.NOTHING

    def step_corner(self, step: Step) -> tuple[Phrase, Phrase]:
        """The rectangle on both sums, or a mark if one is zero."""
        across, upward = self.summed(AXIS_ACROSS), self.summed(AXIS_UP)
        sides = self.sum_sides()
        if 0 in sides:
            return parts.corner_on_axis(across if sides[0] else upward), words.NOTHING
        return parts.corner(across, upward), words.NOTHING


ON_ONE_LINE = ("0°", "180°")
"""Angles, as they are written, between two directions on one line."""
DRAWS_PHASOR = (step_kinds.DRAW_FIRST, step_kinds.DRAW_ALONG, step_kinds.DRAW, step_kinds.FOLLOW)
"""The kinds of step that draw the phasor whose number comes last in ``arm_numbers``."""
SENTENCES: Mapping[str, Callable[[StepSentences, Step], tuple[Phrase, Phrase]]] = {
    step_kinds.SCALE: StepSentences.step_scale,
    step_kinds.REFERENCE: StepSentences.step_reference,
    step_kinds.VOLTAGES: StepSentences.step_voltages,
    step_kinds.COMPANION: StepSentences.step_companion,
    step_kinds.ON_THE_WAY: StepSentences.step_on_the_way,
    step_kinds.DRAW_FIRST: StepSentences.step_draw_first,
    step_kinds.DRAW_ALONG: StepSentences.step_draw_along,
    step_kinds.DRAW: StepSentences.step_draw,
    step_kinds.PARALLEL: StepSentences.step_parallel,
    step_kinds.CLOSE: StepSentences.step_close,
    step_kinds.ARCS: StepSentences.step_arcs,
    step_kinds.DIAGONAL: StepSentences.step_diagonal,
    step_kinds.MEASURE: StepSentences.step_measure,
    step_kinds.CARRY_ON: StepSentences.step_carry_on,
    step_kinds.RESULT: StepSentences.step_result,
    step_kinds.READ: StepSentences.step_read,
    step_kinds.ZERO: StepSentences.step_zero,
    step_kinds.FOLLOW: StepSentences.step_follow,
    step_kinds.RETURN_CLOSE: StepSentences.step_return_close,
    step_kinds.RETURN: StepSentences.step_return,
    step_kinds.AXES: StepSentences.step_axes,
    step_kinds.DROP: StepSentences.step_drop,
    step_kinds.ADD: StepSentences.step_add,
    step_kinds.CORNER: StepSentences.step_corner,
}
"""The method that words each kind of step; a calculator adds its own kinds (``Notation.own_steps``)."""


def direction_phrase(sentences: StepSentences, turn: float) -> Phrase:
    """Return a direction in the case's conventions: as read on a protractor from the first direction (``turn`` is
    measured from it), or as a polar angle from the phase voltage of L1."""
    if sentences.notation.polar:
        signed = wrap(turn + sentences.picture.reference)
        angle_text = quantity.fixed(signed, 1, sentences.notation.mark) + "°"
        return answer_words.angle_polar(angle_text, sentences.notation.voltage)
    if round(turn, 1) == 0.0:
        return answer_words.angle_on(words.as_line(sentences.notation.reference))
    return answer_words.angle_by_protractor(
        sentences.degrees(turn), sentences.sense(turn), sentences.notation.reference
    )
