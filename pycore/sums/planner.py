"""The drawings of a case on its paper: every order of every method, at a scale of its own or at one for all methods."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Protocol

from pycore.constructions.construction import Arm, Construction, DrawingConvention
from pycore.sheet.plan import ANY_SCALE, Candidate, Finest, Plan, beside_companions, candidate, ranked
from pycore.sheet.scale import shared_scale
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

    def build(self, method: str, order: str) -> Construction:
        """The construction of a method in an order."""


class Planner:
    """The plans of one case; each is made once."""

    def __init__(self, case: Drawable) -> None:
        self.case = case
        self._plans: dict[tuple[str, str, float | None, float | None], tuple[Plan, ...]] = {}
        self._candidates: dict[tuple[str, str], tuple[Candidate, ...]] = {}
        self._finest: dict[tuple[str, float | None], Finest] = {}

    def plans(self, method: str, order: str, scale: float | None, second: float | None) -> tuple[Plan, ...]:
        """Return a plan for each order of a method, the best first."""
        key = method, order, scale, second
        if key not in self._plans:
            self._plans[key] = self.choose(self.candidates(method, order), order, scale, second)
        return self._plans[key]

    def candidates(self, method: str, order: str) -> tuple[Candidate, ...]:
        """Return the constructions of a method, one for each order that is allowed."""
        key = method, order
        if key not in self._candidates:
            built = (self.case.build(method, one) for one in self.case.orders(method, order))
            self._candidates[key] = tuple(self.candidate(construction) for construction in built)
        return self._candidates[key]

    def candidate(self, construction: Construction) -> Candidate:
        """Return a construction with the room that it takes."""
        return candidate(construction, self.case.picture, self._companions)

    def choose(
        self, candidates: Sequence[Candidate], order: str, scale: float | None, second: float | None
    ) -> tuple[Plan, ...]:
        """Put constructions on the paper, the best first. ``order``: the one asked for, if any."""
        finest = self.finest(order, second) if scale is None else ANY_SCALE
        return tuple(self._whole(plan, second, finest) for plan in self._ranked(candidates, scale, finest))

    @property
    def _companions(self) -> tuple[Arm, ...]:
        return self.case.companions.arms if self.case.companions else ()

    def _ranked(self, candidates: Sequence[Candidate], scale: float | None, finest: Finest) -> tuple[Plan, ...]:
        case, choices = self.case, self.case.choices
        how = choices["paper"], case.ways(), scale, choices["steps"], self._companions, case.printed
        return ranked(candidates, case.picture, *how, finest)

    def _whole(self, plan: Plan, second: float | None, finest: Finest) -> Plan:
        """Return a plan with its companions, if there are any."""
        beside = self._companions
        return beside_companions(plan, beside, second, self.case.choices["steps"], finest) if beside else plan

    def finest(self, order: str, second: float | None) -> Finest:
        """Return the scales that the drawings by all methods of the page share, so that sheets by two of them can be
        laid on each other; none if each has the finest of its own."""
        key = order, second
        if key not in self._finest:
            self._finest[key] = self._shared(order, second) if self.case.choices["one-scale"] == "yes" else ANY_SCALE
        return self._finest[key]

    def _shared(self, order: str, second: float | None) -> Finest:
        methods = [method for method in self.case.methods if self.case.possible(method) == method]
        if len(methods) < 2:
            return ANY_SCALE
        drawings = [self.candidates(method, order) for method in methods]
        own = [self._ranked(candidates, None, ANY_SCALE)[0] for candidates in drawings]
        finest = Finest(shared_scale([plan.scale for plan in own]))
        if not finest.scale or not self._companions:
            return finest
        plans = [self._ranked(candidates, None, finest)[0] for candidates in drawings]
        return replace(finest, second=max(self._whole(plan, second, finest).second for plan in plans))
