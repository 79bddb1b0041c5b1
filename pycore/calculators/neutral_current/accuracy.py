"""How near hand and meter can come for a neutral current: the comparison of every sum, with a verdict."""

from pycore.calculators.neutral_current.case import NeutralCase
from pycore.calculators.neutral_current.verdict import NeutralVerdict
from pycore.sheet.plan import Plan
from pycore.sums.accuracy import SumAccuracy
from pycore.sums.answer import Block
from pycore.words import accuracy as words


class NeutralAccuracy(SumAccuracy):
    """The same with the reading of a meter on the neutral."""

    case: NeutralCase
    title = words.title()

    def __init__(self, case: NeutralCase) -> None:
        super().__init__(case)

    def judge(self, plan: Plan) -> list[Block]:
        """Drawn, calculated and measured beside each other, and what could be why they disagree."""
        return NeutralVerdict(self.case, plan).blocks()
