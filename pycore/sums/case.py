"""The case: a sum of phasors to be drawn, with everything that several parts of the answer need."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from pycore import phasor, quantity
from pycore.accuracy import hand as hands
from pycore.accuracy.hand import HANDS, Hand, Spread
from pycore.constructions.components import components
from pycore.constructions.construction import Arm, Construction, DrawingConvention, nearly_zero
from pycore.constructions.methods import COMPONENTS, FIRST_PAIR, METHODS, PAIR_ORDERS, PARALLELOGRAM, TIP_TO_TAIL
from pycore.constructions.names import SUM_KEY
from pycore.constructions.parallelogram import parallelogram
from pycore.constructions.tip_to_tail import chain_of, tip_to_tail
from pycore.drawing import Ink
from pycore.forms import conventions, links
from pycore.forms.fields import Field
from pycore.phasor import wrap
from pycore.practice.task import FurtherQuestion
from pycore.sheet import compose, kinds
from pycore.sheet.media import ORIENTATIONS
from pycore.sheet.plan import Plan
from pycore.sheet.space import Space, known_spaces
from pycore.sheet.styles import OWN_PAPER, TOO_SMALL_FOR_READING, USUAL
from pycore.sums.frozen import FrozenAfterInit
from pycore.sums.misfit import SECOND, ChosenPlan, chosen_plan
from pycore.sums.planner import Planner
from pycore.sums.problem import SheetProblem
from pycore.sums.sentences import StepSentences, direction_phrase
from pycore.sums.wording import CompanionPhasors, Notation, SheetWords, millimetres_text
from pycore.words import answers as words
from pycore.words import form as form_words
from pycore.words import moves_list, plain
from pycore.words import sheet as paper_words
from pycore.words import sums as sum_words
from pycore.words.phrase import Phrase, Symbol

CHOSEN_TO_FIT = ("method", "order", "paper", "orientation", "own-way", "scale", SECOND)
"""The keys that every printed link names, whether the user or the sheet chose them."""


@dataclass(frozen=True, slots=True)
class ComponentRow:
    """A row of the table of components: symbol, size, calculated angle (degrees); key, if its unit is its own."""

    tag: Phrase
    size: float
    angle: float
    key: str = ""


class SumCase(metaclass=FrozenAfterInit):
    """A sum of phasors to be drawn, with everything that several parts of the answer need; frozen.

    Plans and scatter are calculated once. A page's own case sets ``slug`` and ``fields``, passes its arms to
    ``__init__``, and supplies the words of its sheets. ``lines``: names of the arms in sentences, by number from 1.
    """

    slug = ""
    fields: tuple[Field, ...] = ()
    scenario = ""
    on_sheet = ""
    """What its sheets are called."""

    def __init__(
        self,
        problem: SheetProblem,
        arms: tuple[Arm, ...],
        lines: tuple[str, ...],
        picture: DrawingConvention,
        notation: Notation,
    ) -> None:
        self.problem, self.arms, self.lines = problem, arms, lines
        self.picture, self.notation = picture, notation.sealed()
        self.planner = Planner()
        self._spreads: dict[tuple[str, str, float], Spread] = {}
        self._scatters: dict[tuple[str, str, float], Spread] = {}
        self.total: complex = phasor.total(phasor.polar(arm.size, arm.angle) for arm in arms)
        self.method = self.possible(problem["method"])

    def __setattr__(self, name: str, value: object) -> None:
        if "_sealed" in self.__dict__:
            raise AttributeError(f"{type(self).__name__} is frozen: {name}")
        super().__setattr__(name, value)

    @property
    def choices(self) -> Mapping[str, str]:
        """The form's choices by name."""
        return self.problem.choices

    @property
    def hand(self) -> Hand:
        """The hand that draws."""
        return HANDS[self.problem["hand"]]

    @property
    def size(self) -> float:
        """Size of the sum."""
        return phasor.magnitude(self.total)

    @property
    def closed(self) -> bool:
        """Whether the sum is zero, or too short for any drawing to show it."""
        return nearly_zero(self.total, self.arms)

    @property
    def angle(self) -> float | None:
        """Angle of the sum in degrees; None if the sum is zero."""
        return None if self.total == 0 else phasor.angle(self.total)

    @property
    def symbol(self) -> Symbol:
        """The symbol of the sum."""
        first = self.notation.tags[SUM_KEY][0]
        return first if isinstance(first, Symbol) else Symbol(plain(self.notation.tags[SUM_KEY]))

    sum_word: Phrase = ("sum",)
    """What the sum is called in a sentence."""
    taught_order = ""
    """The order of the phasors that lessons teach first, among the workings; "" for none."""
    methods: tuple[str, ...] = METHODS
    """The constructions that a page offers."""
    method_in_task = True
    """Whether a sheet's task names the method too."""
    to_work_out = ""
    """What of the arms must be worked out, where that is not all of them."""
    typed_sizes = True
    """Whether the arms' sizes are what was typed; a problem sheet leaves room for those found on the way."""

    def typed(self, key: str) -> bool:
        """Return whether this arm's size was typed, where arms differ."""
        return self.typed_sizes

    def typed_angle(self, key: str) -> bool:
        """Return whether this arm's direction is given; a problem sheet leaves room for those found on the way."""
        return self.typed(key) and not self.turning_moves

    sheets = 1
    """How many sheets the problem has, pages of moves not counted."""
    is_sum = True
    """Whether what is drawn last is the sum of the arms."""

    def typed_amount(self, arm: Arm) -> str:
        """Return an arm's size as it was typed, for a problem sheet."""
        return self.notation.writing.as_typed(arm.size)

    typed_companions = True
    """The same of the companions' sizes."""
    @property
    def part_letter(self) -> str:
        """The letter of one of the arms at the head of its components."""
        return self.symbol.letter

    part_word = "phasor"
    """What one of the arms is called at the head of a table."""

    def inks(self) -> dict[str, Ink]:
        """Ink of each phasor by key: the class's own colours, if the page has a choice of them."""
        return conventions.form_inks(self.problem.choices, self.fields)

    def ticks(self) -> Mapping[str, int]:
        """Number of ticks of each phasor by key."""
        return conventions.TICKS

    def parts(self) -> tuple[ComponentRow, ...]:
        """The phasors in the table of components: the arms, unless a page has others of size zero."""
        return tuple(ComponentRow(self.notation.tags[arm.key], arm.size, arm.angle) for arm in self.arms)

    def table_results(self, construction: Construction) -> tuple[tuple[Phrase, str], ...]:
        """Results in a sheet's table that no phasor shows: symbol over unit, and number; counted in ``further`` too."""
        return ()

    def finding_moves(self, construction: Construction) -> tuple[str, ...]:
        """The moves that find the last phasor, or another point, by drawing, in a problem for easy reading."""
        return ()

    def before_steps(self, construction: Construction) -> Phrase:
        """What a construction needs beforehand, in front of its steps; () for nothing."""
        return ()

    def further(self, construction: Construction) -> tuple[ComponentRow, ...]:
        """Return further results that are read off the drawing."""
        return ()

    def row_tag(self, key: str) -> Phrase:
        """Return a phasor's symbol as used in the table of a sheet."""
        return self.notation.tags[key]

    def units_head(self) -> str:
        """The unit in the heading of the column of amounts."""
        return self.notation.writing.unit

    def zero_reason(self) -> Phrase:
        """Return why there is no sum to draw."""
        return sum_words.CLOSED if self.total == 0 else sum_words.NEARLY_CLOSED

    @property
    def companions(self) -> CompanionPhasors | None:
        """Phasors of a second quantity on the same sheet; None if there are none."""
        return self.notation.companions

    def voltages(self) -> Mapping[str, float]:
        """Angle of each arm's own voltage by key; empty if arms have none."""
        return {}

    @cached_property
    def printed(self) -> str:
        """The print style (``usual``, ``large``, ``easy``); ``usual`` on paper that is too small for another; ``own``
        for the learner's own paper."""
        chosen = self.problem["print"]
        return USUAL if chosen != OWN_PAPER and self.problem["paper"] in TOO_SMALL_FOR_READING else chosen

    @property
    def on_own_paper(self) -> bool:
        """Whether the learner draws on blank paper of their own."""
        return self.printed == OWN_PAPER

    result_word = ""
    """What is to be found, in the moves of a sheet for easy reading; "" for the sum's own word."""
    guess_word = ""
    """What is guessed first, where that is something else."""
    turning_moves: tuple[str, ...] = ()
    """Which phasors are turned there before they are added, and by how much."""
    last_moves: tuple[str, ...] = ()
    """What is done there with the sum once it is measured."""

    def sheet_values_text(self, plan: Plan, *, any_method: bool = False) -> tuple[str, ...]:
        """Return the given values for a sheet for easy reading, one line for each."""
        notes = self.known(plan, any_method=any_method)
        return tuple(line for note in notes for line in moves_list.lines_of(note))

    def further_question(self) -> str:
        """Return a question beyond the problem, as a problem sheet asks it; "" for none."""
        return ""

    def beyond(self) -> FurtherQuestion | None:
        """Return the answer to the further question; None if there is none."""
        return None

    def begun_keys(self, plan: Plan) -> tuple[str, ...]:
        """Return the keys of the phasors that a problem sheet already shows."""
        return compose.begun_keys(plan.construction) if self.problem["start"] == kinds.TWO else ()

    def begun(self, plan: Plan) -> tuple[str, ...]:
        """Return the names of these phasors."""
        return tuple(plain(self.notation.tags[key]) for key in self.begun_keys(plan))

    has_formula = False
    """Whether the page has a working by a closed formula."""

    def known(self, plan: Plan, *, any_method: bool = False) -> tuple[str, ...]:
        """Return what must be known before drawing: the notes of a problem sheet."""
        return self.sheet_words(plan, kinds.PROBLEM, self.method_words(plan, any_method=any_method)).notes

    def sheet_title(self, kind: str) -> str:
        """Return the title of a kind of sheet."""
        return sum_words.sheet_titles(self.on_sheet)[kind]

    def sheet_words(self, plan: Plan, kind: str, method: str) -> SheetWords:
        """Return the notes of a kind of sheet and its description for people who cannot see it.

        ``method``: as the title block names it.
        """
        raise NotImplementedError

    def values_text(self) -> str:
        """Return the values in words."""
        raise NotImplementedError

    def value_texts(self) -> tuple[str, ...]:
        """Return each value as finely as sheets print it, with a point, for ever: check codes are made of it."""
        raise NotImplementedError

    def possible(self, method: str) -> str:
        """Return the method, or tip to tail if a parallelogram is not possible with one arm, or with four or more."""
        return TIP_TO_TAIL if method == PARALLELOGRAM and not 2 <= len(self.arms) <= 3 else method

    def orders(self, method: str, requested: str = "") -> tuple[str, ...]:
        """Return the orders that differ for this method and number of arms."""
        if method == COMPONENTS or len(self.arms) == 1:
            return (FIRST_PAIR,)
        if requested:
            return (requested,)
        return PAIR_ORDERS if len(self.arms) == 3 else (FIRST_PAIR,)

    def spaces(self, method: str, order: str) -> tuple[Space, ...]:
        """Return the space of each order of a method, if known without its construction; not beside companions."""
        return known_spaces(method, self.orders(method, order), self.arms, self.picture, self.problem["resultant"])

    def build(self, method: str, order: str) -> Construction:
        """Return the construction of a method in an order."""
        reference, resultant = self.picture.reference, self.problem["resultant"]
        if method == COMPONENTS:
            return components(self.arms, self.picture, resultant)
        if method == TIP_TO_TAIL:
            return tip_to_tail(self.arms, order, reference, resultant)
        return parallelogram(self.arms, order, reference, self.problem["parallels"], resultant)

    def ways(self) -> tuple[str, ...]:
        """The allowed orientations of the paper."""
        chosen = self.problem["orientation"]
        return (chosen,) if chosen else ORIENTATIONS

    def plans(
        self, method: str, order: str = "", scale: float | None = None, second: float | None = None
    ) -> tuple[Plan, ...]:
        """Return a plan for each order of a method on the problem's paper, the best first."""
        return self.planner.plans(self, method, order, scale, second)

    def plans_to_tell(self, method: str) -> tuple[Plan, ...]:
        """Return the plan of each order of a method as the page tells its moves: on own paper, all at its scale."""
        plan = self.sheet_plan()
        return self.plans(method, "", plan.scale, plan.second or None) if self.on_own_paper else self.plans(method)

    def spread(self, plan: Plan) -> Spread:
        """Return the scatter of a hand's drawings of a plan, to first order. Cached; fast enough for every edit."""
        key = plan.construction.method, plan.construction.order, plan.factor
        if key not in self._spreads:
            self._spreads[key] = hands.spread(plan.construction, plan.factor, self.hand, first_order=True)
        return self._spreads[key]

    def scatter(self, plan: Plan) -> Spread:
        """Return the scatter to first order, or by sampling where first order fails (about 15 ms)."""
        first = self.spread(plan)
        if not first.flat:
            return first
        key = plan.construction.method, plan.construction.order, plan.factor
        if key not in self._scatters:
            self._scatters[key] = hands.spread(plan.construction, plan.factor, self.hand)
        return self._scatters[key]

    def sheet_plan(self) -> Plan:
        """Return the plan of the drawing on the sheet."""
        return self.chosen.plan

    @cached_property
    def chosen(self) -> ChosenPlan:
        """The plan of the drawing on the sheet: where a chosen scale does not fit, with one that fits and a fault with
        offers, so that a link still opens with other values."""
        return chosen_plan(self)

    def order_words(self, method: str, order: str) -> str:
        """Return an order in words, with the lines' names."""
        if method == TIP_TO_TAIL:
            return ", ".join(self.lines[arm.number - 1] for arm in chain_of(self.arms, order))
        if method == COMPONENTS or len(self.arms) < 2:
            return ""
        # Two phasors have one pair, whichever is asked for.
        first, second = (arm.number for arm in self.arms) if len(self.arms) == 2 else (int(number) for number in order)
        return words.pair_first(self.lines[first - 1], self.lines[second - 1])

    def method_title(self, method: str, order: str) -> Phrase:
        """Return the title of a construction among the workings."""
        return words.by_method(method, self.order_words(method, order), len(self.arms))

    def method_words(self, plan: Plan, *, any_method: bool = False) -> str:
        """Return the method for the title block; ``any_method``: each learner chooses one."""
        if any_method:
            return paper_words.ANY_METHOD
        names = dict(form_words.METHODS)
        method = plan.construction.method
        if method == COMPONENTS or len(self.arms) < 3:
            return names[method]
        return f"{names[method]}, {self.order_words(method, plan.construction.order)}"

    def link(self, plan: Plan, kind: str = "", code: str = "") -> tuple[tuple[str, str], ...]:
        """Return the link pairs that reproduce a kind of sheet (``""``: the one in the form), with the code of its
        values, if any.

        What was chosen to fit is named; private fields are left out. Each version fixes its defaults for ever, so a key
        with its default is left out.
        """
        resolved = {**self.problem.typed, "code": code}
        resolved["sheet"] = kind or resolved["sheet"]
        resolved["method"], resolved["order"] = plan.construction.method, plan.construction.order
        resolved["own-way" if self.on_own_paper else "orientation"] = plan.layout.orientation
        misfit = self.chosen.misfit
        resolved["scale"] = quantity.exact(plan.scale) if misfit or not resolved["scale"] else resolved["scale"]
        if self.companions and (misfit or not resolved.get(SECOND)):
            resolved[SECOND] = quantity.exact(plan.second)
        return links.form_pairs(resolved, self.fields, CHOSEN_TO_FIT)

    # What stands beside the headline.

    def length(self, plan: Plan) -> str:
        """Return the length of the sum on the sheet as text."""
        return millimetres_text(self.size * plan.factor, self.notation.mark)

    def direction(self, plan: Plan) -> Phrase:
        """Return the direction of the sum in words."""
        sentences = StepSentences(plan, self.notation)
        angle = self.angle or 0.0
        return direction_phrase(sentences, wrap(angle - self.picture.reference))

    def amount(self, value: float) -> str:
        """Return a result as text."""
        return self.notation.writing.amount(value)
