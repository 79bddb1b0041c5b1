"""Accuracy of hand and meter for a neutral current: the comparison that every sum has, with a verdict."""

from pycore.calculators.neutral_current.case import NeutralCase
from pycore.calculators.neutral_current.verdict import NeutralVerdict
from pycore.sheet.plan import Plan
from pycore.sums.accuracy import SumAccuracy
from pycore.sums.answer import Block
from pycore.words import accuracy as words


class NeutralAccuracy(SumAccuracy):
    """The accuracy of a sum, with a meter reading of the neutral current."""

    case: NeutralCase

    def __init__(self, case: NeutralCase) -> None:
        super().__init__(case)
        entered = case.entered
        self.title = words.title(compared=entered.drawn is not None or entered.measured is not None)

    def judge(self, plan: Plan) -> list[Block]:
        """Drawn, calculated and measured results compared, and possible reasons for a difference."""
        return NeutralVerdict(self.case, plan).blocks()
