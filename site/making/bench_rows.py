"""What the bench says: rows of two figures with their ratio and goal, and findings that are counted; both are shown and
kept as soon as they are measured."""

import json
import time
from collections.abc import Mapping
from dataclasses import asdict, dataclass, field
from pathlib import Path

from making.progress import say


@dataclass(frozen=True)
class Row:
    """One line of the table: our figure beside another's (`beside` says whose), in `unit`; `goal`: the most that ours
    may be of the other's."""

    name: str
    ours: float
    other: float
    unit: str
    beside: str = "stock Pyodide"
    goal: float | None = None

    @property
    def ratio(self) -> float:
        """Ours divided by the other's."""
        return self.ours / self.other

    @property
    def is_missed(self) -> bool:
        """Whether the goal is not reached."""
        return self.goal is not None and self.ratio > self.goal

    @property
    def line(self) -> str:
        """The row as it is printed."""
        ours, other = f"{self.ours:.2f} {self.unit}", f"{self.other:.2f} {self.unit}"
        goal = "" if self.goal is None else f"{'MISSED' if self.is_missed else 'goal'} {self.goal:g}"
        return f"{self.name:40}{ours:>12}{other:>12}{self.ratio:>8.2f}  {goal:12}  {self.beside}"


HEAD = f"{'':40}{'ours':>12}{'other':>12}{'ratio':>8}  {'':12}  beside"


@dataclass(frozen=True)
class Finding:
    """Something counted: `values` by name, and those of them that should be otherwise (`missed`)."""

    name: str
    values: Mapping[str, object]
    missed: tuple[str, ...] = ()

    @property
    def is_missed(self) -> bool:
        """Whether something should be otherwise."""
        return bool(self.missed)

    @property
    def line(self) -> str:
        """The finding as it is printed."""
        counted = ", ".join(f"{name} {value}" for name, value in self.values.items())
        return f"{self.name}: {counted}" + (f"  MISSED: {', '.join(self.missed)}" if self.missed else "")


Result = Row | Finding


@dataclass
class Record:
    """Results of a run by the name of their measurement, in a file of JSON that holds the latest of each."""

    path: Path
    missed: list[str] = field(default_factory=list)

    def keep(self, measurement: str, results: list[Result]) -> None:
        """Show results and keep them; what else the file holds stays."""
        if any(isinstance(result, Row) for result in results):
            say(HEAD)
        for result in results:
            say(result.line)
        self.missed += [result.name for result in results if result.is_missed]
        kept = self._read()
        kept[measurement] = {
            "measured": time.strftime("%Y-%m-%d %H:%M:%S"),
            "results": [{**asdict(one), **({"ratio": one.ratio} if isinstance(one, Row) else {})} for one in results],
        }
        self.path.parent.mkdir(parents=True, exist_ok=True)
        self.path.write_text(json.dumps(kept, indent=2), encoding="utf-8")

    def fail(self, measurement: str, reason: str) -> None:
        """Show that a measurement came to nothing; the others stand."""
        say(f"{measurement}: FAILED: {reason}")
        self.missed.append(measurement)

    def _read(self) -> dict[str, object]:
        try:
            read = json.loads(self.path.read_text("utf-8"))
        except (OSError, ValueError):
            return {}
        return read if isinstance(read, dict) else {}
