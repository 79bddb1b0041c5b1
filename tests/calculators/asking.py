"""A calculator's answers as a browser gets them: its request through the API, its results read from the HTML."""

import json
import re
from collections.abc import Mapping
from dataclasses import dataclass

from pycore.api import handle
from pycore.sums.answer import Answer, Move

OUTPUT = re.compile(r'<output name="([^"]+)" data-value="([^"]*)"')
PARTS = ("answer", "sheet", "view", "workings")


@dataclass(frozen=True)
class Asking:
    """Asks one page, with a form of which a test changes some values."""

    slug: str
    form: Mapping[str, str]

    def ask(self, **values: str) -> dict:
        """The whole reply."""
        request = {"do": "answer", "page": self.slug, "form": {**self.form, **values}, "parts": PARTS}
        return json.loads(handle(json.dumps(request))[0])

    def results(self, **values: str) -> dict[str, float]:
        """Every result that has a value, by name."""
        reply = self.ask(**values)
        assert reply["ok"], reply["errors"]
        return {name: float(value) for name, value in OUTPUT.findall("".join(reply["regions"].values())) if value}


def moves_of(answer: Answer, key: str) -> list[Move]:
    """The moves of one working of an answer."""
    working = next(one for one in answer.workings if one.key == key)
    return [block for block in working.blocks if isinstance(block, Move)]
