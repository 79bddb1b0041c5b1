"""Which sheet of a problem is requested."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from pycore.forms.opening import ReopenInfo, SetPlace
from pycore.sheet import kinds


@dataclass(frozen=True, slots=True)
class SheetRequest:
    """Which sheet is requested: its kind, how it is opened again (and its place in a class set), the code of its values
    ("" if none), its number among the sheets of the problem, and the form that the printed code opens by itself (empty
    where that is not asked for)."""

    kind: str
    opening: ReopenInfo = field(default_factory=ReopenInfo)
    code: str = ""
    number: int = 1
    by_code: Mapping[str, str] = field(default_factory=dict)

    @property
    def problem_of_set(self) -> SetPlace | None:
        """The place in a class set, if this is a learner's problem sheet; else None."""
        return self.opening.issue if self.kind == kinds.PROBLEM else None

    @property
    def any_method(self) -> bool:
        """Whether the learner chooses the method."""
        return bool(self.problem_of_set and self.problem_of_set.any_method)

    @property
    def of_paper(self) -> bool:
        """Whether this is a learner's sheet of a question paper, which asks for one result."""
        return bool(self.problem_of_set and self.problem_of_set.question)

    @property
    def calculated(self) -> bool:
        """Whether the sheet has room for a calculated answer."""
        return self.problem_of_set is None or self.problem_of_set.calculated

    @property
    def own_scale(self) -> bool:
        """Whether the learner chooses the scale."""
        return bool(self.problem_of_set and self.problem_of_set.own_scale)
