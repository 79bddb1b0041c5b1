"""The study of hand drawing: simulated drawings, by numpy and matplotlib, kept by the hash of what they come from.

The points come from `carry_out` alone; numpy makes the random slips and the statistics, matplotlib the pictures.
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
    from matplotlib.axes import Axes

    from pycore.calculators.neutral_current.case import NeutralCase
    from pycore.constructions.construction import Construction
    from pycore.pages.study import Study

    Cloud = tuple[str, numpy.ndarray, numpy.ndarray]

DRAWINGS = 20_000
PROBLEMS = 400
SEED = 1
FORM = {"i1": "18.4", "i2": "11.2", "i3": "24.6", "scale": "2", "paper": "A3"}
FACTOR = 5.0
SCALES = (0.5, 1.0, 2.0, 5.0, 10.0)
INPUTS = (
    "accuracy", "constructions", "geometry.py", "phasor.py", "trig.py", "circuits", "sheet/plan.py", "sheet/scale.py",
)  # fmt: skip


def _hash() -> str:
    paths = [PYCORE / name for name in INPUTS]
    files = [file for path in paths for file in (stamps.files_under(path) if path.is_dir() else [path])]
    return stamps.hash_of_files([*files, SITE / "making" / "study.py"], ROOT)[:16]


def study(folder: Path) -> "Study":
    """The study's numbers as pycore's page wants them; its pictures are copied into `folder`."""
    kept = WORKSHOP / "study" / _hash()
    if not (kept / "numbers.json").exists():
        with step(f"simulating {DRAWINGS} hand drawings by each way"):
            _make(kept)
    folder.mkdir(parents=True, exist_ok=True)
    for picture in sorted(kept.glob("*.svg")):
        (folder / picture.name).write_bytes(picture.read_bytes())
    return _read(json.loads((kept / "numbers.json").read_text("utf-8")))


def _read(numbers: dict[str, Any]) -> "Study":
    from pycore.pages.study import Study, StudyRow

    return Study(
        DRAWINGS, "1 cm = 2 A", tuple(StudyRow(**row) for row in numbers["ways"]),
        tuple((scale, half) for scale, half in numbers["by_scale"]), PROBLEMS,
        tuple((title, share) for title, share in numbers["best"]), {"scatter": "scatter.svg", "scale": "scale.svg"},
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
    """Simulate, write numbers.json and the pictures."""
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
        clouds.append((title, ends, covariance))
    by_scale = _by_scale(case)
    numbers = {"ways": ways, "by_scale": by_scale, "best": _best()}
    folder.mkdir(parents=True, exist_ok=True)
    _pictures(folder, clouds, by_scale)
    (folder / "numbers.json").write_text(json.dumps(numbers), encoding="utf-8")


def _by_scale(case: "NeutralCase") -> list[tuple[str, float]]:
    """Half-width in per cent of the neutral against the scale, tip to tail."""
    from pycore.accuracy.hand import spread

    construction = case.build("tip-to-tail", "12")
    return [
        (f"1 cm = {scale:g} A", 100 * spread(construction, 10 / scale).half_width / case.solution.current)
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


def _pictures(folder: Path, clouds: list["Cloud"], by_scale: list[tuple[str, float]]) -> None:
    """The two pictures; no date and a fixed salt, so that equal numbers give equal bytes."""
    import matplotlib

    matplotlib.use("svg")
    matplotlib.rcParams.update({"svg.hashsalt": "phasor-folio", "font.size": 9, "svg.fonttype": "path"})
    from matplotlib import pyplot

    chosen = [cloud for cloud in clouds if cloud[0].endswith(("L1, L2, L3", "L1 with L2 first", "L1 with L3 first"))]
    figure, panels = pyplot.subplots(1, len(chosen), figsize=(11, 4), sharex=True, sharey=True, layout="constrained")
    for panel, cloud in zip(panels, chosen, strict=True):
        _panel(panel, cloud)
    figure.savefig(folder / "scatter.svg", metadata={"Date": None})
    pyplot.close(figure)
    figure, panel = pyplot.subplots(figsize=(7, 4), layout="constrained")
    panel.plot(SCALES, [half for _, half in by_scale], "o-", color="#00664B")
    panel.set_xlabel("amperes per centimetre")
    panel.set_ylabel("95 in 100 within, % of the neutral")
    panel.grid(color="#D2D8D0")
    figure.savefig(folder / "scale.svg", metadata={"Date": None})
    pyplot.close(figure)


def _panel(panel: "Axes", cloud: "Cloud") -> None:
    """One cloud of end points with its calculated ellipse, mm."""
    import numpy
    from matplotlib.patches import Ellipse

    from pycore.accuracy.hand import ELLIPSE

    title, ends, covariance = cloud
    points = ends[:600]
    panel.plot(points[:, 0], points[:, 1], ".", color="#6E767A", markersize=1, rasterized=False)
    values, vectors = numpy.linalg.eigh(covariance)
    angle = math.degrees(math.atan2(vectors[1, 1], vectors[0, 1]))
    axes = 2 * ELLIPSE * numpy.sqrt(values)
    panel.add_patch(Ellipse((0, 0), axes[1], axes[0], angle=angle, fill=False, color="#00664B", linewidth=1.5))
    panel.set_title(title, fontsize=9)
    panel.set_xlabel("mm")
    panel.set_aspect("equal")
    panel.set_xlim(-15, 15)
    panel.set_ylim(-15, 15)
    panel.grid(color="#D2D8D0")
