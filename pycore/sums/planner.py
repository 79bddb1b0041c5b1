"""The drawings of a case on its paper: every order of every method, at a scale of its own or at one for all methods."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Protocol

from pycore.constructions.construction import Arm, Construction, DrawingConvention
from pycore.sheet.plan import ANY_SCALE, Candidate, Finest, PaperChoice, Plan, beside_companions, own_scale, ranked
from pycore.sheet.scale import shared_scale
from pycore.sheet.space import Space, space_of
from pycore.sums.wording import CompanionPhasors


class Drawable(Protocol):
    """What a case says of its drawings."""

    methods: tuple[str, ...]
    picture: DrawingConvention

    @property
    def choices(self) -> Mapping[str, str]:
        """The form's choices by name."""

    @property
    def companions(self) -> CompanionPhasors | None:
        """Phasors of a second quantity."""

    @property
    def printed(self) -> str:
        """The print style."""

    def ways(self) -> tuple[str, ...]:
        """The allowed orientations of the paper."""

    def possible(self, method: str) -> str:
        """The method itself, if it is possible."""

    def orders(self, method: str, requested: str = "") -> tuple[str, ...]:
        """The orders of a method."""

    def spaces(self, method: str, order: str) -> tuple[Space, ...]:
        """The space of each order of a method, if it is known without its construction; else empty."""

    def build(self, method: str, order: str) -> Construction:
        """The construction of a method in an order."""


class Planner:
    """The plans of one case, each made once. It keeps plans only, not the case, so that neither holds the other."""

    def __init__(self) -> None:
        self._plans: dict[tuple[str, str, float | None, float | None], tuple[Plan, ...]] = {}
        self._candidates: dict[tuple[str, str], tuple[Candidate, ...]] = {}
        self._finest: dict[tuple[str, float | None], Finest] = {}

    def plans(
        self, case: Drawable, method: str, order: str, scale: float | None, second: float | None
    ) -> tuple[Plan, ...]:
        """Return a plan for each order of a method, the best first."""
        key = method, order, scale, second
        if key not in self._plans:
            self._plans[key] = self.choose(case, self.candidates(case, method, order), order, scale, second)
        return self._plans[key]

    def candidates(self, case: Drawable, method: str, order: str) -> tuple[Candidate, ...]:
        """Return the constructions of a method, one for each order that is allowed."""
        key = method, order
        if key not in self._candidates:
            built = (case.build(method, one) for one in case.orders(method, order))
            self._candidates[key] = tuple(candidate(case, construction) for construction in built)
        return self._candidates[key]

    def choose(
        self, case: Drawable, candidates: Sequence[Candidate], order: str, scale: float | None, second: float | None
    ) -> tuple[Plan, ...]:
        """Put constructions on the paper, the best first. ``order``: the one asked for, if any."""
        finest = self.finest(case, order, second) if scale is None else ANY_SCALE
        plans = ranked(candidates, case.picture, _paper(case), scale, finest)
        return tuple(_whole(case, plan, second, finest) for plan in plans)

    def finest(self, case: Drawable, order: str, second: float | None) -> Finest:
        """Return the scales that the drawings by all methods of the page share, so that sheets by two of them can be
        laid on each other; none if each has the finest of its own."""
        key = order, second
        if key not in self._finest:
            shared = case.choices["one-scale"] == "yes"
            self._finest[key] = self._shared(case, order, second) if shared else ANY_SCALE
        return self._finest[key]

    def _shared(self, case: Drawable, order: str, second: float | None) -> Finest:
        methods = [method for method in case.methods if case.possible(method) == method]
        if len(methods) < 2:
            return ANY_SCALE
        own = [own_scale(self._spaces(case, method, order), _paper(case)) for method in methods]
        finest = Finest(shared_scale(own))
        if not finest.scale or not case.companions:
            return finest
        drawings = [self.candidates(case, method, order) for method in methods]
        plans = [ranked(candidates, case.picture, _paper(case), None, finest)[0] for candidates in drawings]
        return replace(finest, second=max(_whole(case, plan, second, finest).second for plan in plans))

    def _spaces(self, case: Drawable, method: str, order: str) -> tuple[Space, ...]:
        """Return the space that each order of a method takes; nothing is constructed for it that need not be."""
        known = () if (method, order) in self._candidates or case.companions else case.spaces(method, order)
        return known or tuple(one.space for one in self.candidates(case, method, order))


def candidate(case: Drawable, construction: Construction) -> Candidate:
    """Return a construction with the space that it and its companions take."""
    return Candidate(construction, space_of(construction, case.picture, _companions(case)))


def _companions(case: Drawable) -> tuple[Arm, ...]:
    return case.companions.arms if case.companions else ()


def _paper(case: Drawable) -> PaperChoice:
    choices = case.choices
    return PaperChoice(choices["paper"], case.ways(), choices["steps"], case.printed, bool(_companions(case)))


def _whole(case: Drawable, plan: Plan, second: float | None, finest: Finest) -> Plan:
    """Return a plan with its companions, if there are any."""
    beside = _companions(case)
    return beside_companions(plan, beside, second, case.choices["steps"], finest) if beside else plan
