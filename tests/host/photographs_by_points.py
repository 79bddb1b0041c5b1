"""What pycore makes of points in photographs, as digests: read here and inside the site's Pyodide."""

import hashlib
import json

from pycore import api
from pycore.calculators.registry import CALCULATORS
from pycore.forms.fields import default_form

METHODS = ("parallelogram", "tip-to-tail", "components")
COUNT = 60


def _ask(**more: object) -> dict:
    form = default_form(CALCULATORS["neutral-current"].fields) | {"method": METHODS[more.pop("number") % 3]}
    text, _ = api.handle(json.dumps({"do": "photo", "page": "neutral-current", "form": form, **more}))
    return json.loads(text)


def _seen(x: float, y: float, number: int) -> list[float]:
    """A slanting picture, another one for each number; only what is exact in every host."""
    depth = 1.0 + x * (number % 7 - 3) * 2e-4 + y * (number % 5 - 2) * 3e-4
    return [(150.0 + 4.1 * x + 0.3 * y) / depth, (1200.0 - 4.4 * y + 0.2 * x) / depth]


def digests() -> dict[str, str]:
    """A digest of every reply, by number; some drawings are right, some off, some marks too."""
    made = {}
    for number in range(COUNT):
        opened = _ask(number=number)
        marks = [_seen(mark["x"], mark["y"], number) for mark in opened["marks"]]
        marks[number % 8][0] += 0.7 * (number % 4)
        taps = {
            tap["name"]: _seen(60 + 17.0 * k * (1 + number % 3) % 110, 40 + 29.0 * k * (1 + number % 4) % 90, number)
            for k, tap in enumerate(opened["taps"])
        }
        photo = {"width": 2000, "height": 1500, "tap": 1.5}
        reply = _ask(number=number, photo=photo, marks=marks, ground="marks", byHand=False, taps=taps)
        made[str(number)] = hashlib.sha256(json.dumps([opened, reply], sort_keys=True).encode()).hexdigest()
    return made
