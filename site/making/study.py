"""The study of hand drawing: simulated drawings, by numpy, kept by the hash of what they come from.

The points come from `carry_out` alone; numpy makes the random slips and the statistics.
"""

import json
import math
from pathlib import Path
from typing import TYPE_CHECKING, Any

from making import stamps
from making.paths import PYCORE, ROOT, SITE, WORKSHOP
from making.progress import step

if TYPE_CHECKING:
    import numpy

    from pycore.calculators.neutral_current.case import NeutralCase
    from pycore.constructions.construction import Construction
    from pycore.pages.study import Study

DRAWINGS = 20_000
PROBLEMS = 400
SEED = 1
FORM = {"i1": "18.4", "i2": "11.2", "i3": "24.6", "scale": "2", "paper": "A3"}
FACTOR = 5.0
DOTS = 400
"""So many of the drawings are shown as dots."""
SHOWN = ("L1, L2, L3", "L1 with L2 first", "L1 with L3 first")
"""The ways whose drawings are shown, by the end of their titles."""
SCALES = (0.5, 1.0, 2.0, 5.0, 10.0)
INPUTS = (
    "accuracy", "constructions", "geometry.py", "phasor.py", "trig.py", "circuits", "sheet/plan.py", "sheet/scale.py",
)  # fmt: skip


def _hash() -> str:
    paths = [PYCORE / name for name in INPUTS]
    files = [file for path in paths for file in (stamps.files_under(path) if path.is_dir() else [path])]
    return stamps.hash_of_files([*files, SITE / "making" / "study.py"], ROOT)[:16]


def study() -> "Study":
    """The study's numbers as pycore's page wants them."""
    kept = WORKSHOP / "study" / _hash()
    if not (kept / "numbers.json").exists():
        with step(f"simulating {DRAWINGS} hand drawings by each way"):
            _make(kept)
    return _read(json.loads((kept / "numbers.json").read_text("utf-8")))


def _read(numbers: dict[str, Any]) -> "Study":
    from pycore.pages.study import Study, StudyRow
    from pycore.sheet.plots import Cloud

    clouds = [
        Cloud(one["title"], tuple((x, y) for x, y in one["points"]), one["major"], one["minor"], one["degrees"])
        for one in numbers["clouds"]
    ]
    return Study(
        DRAWINGS, "1 cm = 2 A", tuple(StudyRow(**row) for row in numbers["ways"]),
        tuple((scale, half) for scale, half in numbers["by_scale"]), PROBLEMS,
        tuple((title, share) for title, share in numbers["best"]), tuple(clouds),
    )  # fmt: skip


def _case(form: dict[str, str]) -> "NeutralCase":
    from pycore.calculators.neutral_current.case import NeutralCase
    from pycore.calculators.neutral_current.problem import read_problem

    return NeutralCase(read_problem(form))


def _ways(case: "NeutralCase") -> list[tuple[str, "Construction"]]:
    """Every method and order of a case as (title, construction)."""
    from pycore.words import answers as neutral
    from pycore.words import plain

    constructions = []
    for method in ("parallelogram", "tip-to-tail", "components"):
        for order in case.orders(method):
            title = plain(neutral.by_method(method, case.order_words(method, order), len(case.arms)))
            constructions.append((title, case.build(method, order)))
    return constructions


def _drawn(construction: "Construction", count: int) -> tuple["numpy.ndarray", "numpy.ndarray"]:
    """End points (mm from the exact one) and lengths read (mm) of so many drawings by a practised hand."""
    import numpy

    from pycore.accuracy.hand import PRACTISED
    from pycore.constructions.moves import DEVIATIONS, ConstructionError, carry_out

    random = numpy.random.default_rng(SEED)
    kinds = [(i, kind) for i, move in enumerate(construction.moves) for kind in DEVIATIONS.get(type(move), ())]
    spreads = numpy.array([PRACTISED.deviation(kind, FACTOR) for _, kind in kinds])
    keys = [f"{index}:{kind}" for index, kind in kinds]
    exact, ends, lengths = construction.end_point, [], []
    for slips in random.standard_normal((count, len(keys))) * spreads:
        try:
            figure = carry_out(construction.moves, dict(zip(keys, slips.tolist(), strict=True)))
        except ConstructionError:
            continue
        end = figure.points[construction.end]
        ends.append((FACTOR * (end.x - exact.x), FACTOR * (end.y - exact.y)))
        lengths.append(FACTOR * figure.readings["n"])
    return numpy.array(ends), numpy.array(lengths)


def _make(folder: Path) -> None:
    """Simulate, and write numbers.json."""
    import numpy

    from pycore.accuracy.hand import ELLIPSE, spread
    from pycore.constructions.construction import flattest

    case = _case(FORM)
    exact = FACTOR * case.solution.current
    ways, clouds = [], []
    for title, construction in _ways(case):
        calculated = spread(construction, FACTOR, first_order=True)
        ends, lengths = _drawn(construction, DRAWINGS)
        covariance = numpy.array(calculated.covariance) * FACTOR * FACTOR
        inside = numpy.einsum("ij,jk,ik->i", ends, numpy.linalg.inv(covariance), ends) <= ELLIPSE**2
        half = float(numpy.quantile(numpy.abs(lengths - exact), 0.95))
        ways.append({
            "title": title, "first_order": FACTOR * calculated.half_width, "simulated": half,
            "coverage": float(inside.mean()), "flattest": flattest(construction),
        })  # fmt: skip
        if title.endswith(SHOWN):
            clouds.append(_cloud(title, ends, covariance))
    numbers = {"ways": ways, "by_scale": _by_scale(case), "best": _best(), "clouds": clouds}
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "numbers.json").write_text(json.dumps(numbers), encoding="utf-8")


def _by_scale(case: "NeutralCase") -> list[tuple[float, float]]:
    """Half-width in per cent of the neutral against the scale, tip to tail."""
    from pycore.accuracy.hand import spread

    construction = case.build("tip-to-tail", "12")
    return [
        (scale, 100 * spread(construction, 10 / scale).half_width / case.solution.current)
        for scale in SCALES
    ]


def _best() -> list[tuple[str, float]]:
    """How often each way has the smallest half-width over random problems on A4."""
    import numpy

    from pycore.accuracy.hand import spread
    from pycore.words import answers as neutral
    from pycore.words import plain

    random = numpy.random.default_rng(SEED)
    counts: dict[str, int] = {}
    for _ in range(PROBLEMS):
        sizes = [f"{size:.1f}" for size in random.uniform(4, 40, 3)]
        case = _case(dict(zip(("i1", "i2", "i3"), sizes, strict=True)))
        best = math.inf, ""
        for method in ("parallelogram", "tip-to-tail", "components"):
            for plan in case.plans(method):
                half = spread(plan.construction, plan.factor, first_order=True).half_width
                order = case.order_words(method, plan.construction.order)
                best = min(best, (half, plain(neutral.by_method(method, order, 3))))
        counts[best[1]] = counts.get(best[1], 0) + 1
    return sorted(((title, count / PROBLEMS) for title, count in counts.items()), key=lambda pair: -pair[1])


def _cloud(title: str, ends: "numpy.ndarray", covariance: "numpy.ndarray") -> dict[str, Any]:
    """The first end points of a way as they are drawn, and the calculated ellipse, mm."""
    import numpy

    from pycore.accuracy.hand import ELLIPSE

    values, vectors = numpy.linalg.eigh(covariance)
    minor, major = (float(ELLIPSE * math.sqrt(value)) for value in values)
    points = [[round(float(x), 2), round(float(y), 2)] for x, y in ends[:DOTS]]
    degrees = math.degrees(math.atan2(vectors[1, 1], vectors[0, 1]))
    return {"title": title, "points": points, "major": major, "minor": minor, "degrees": degrees}
