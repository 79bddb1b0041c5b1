"""Sheets plotted by matplotlib: the same phasors, page and scale, from values by numpy alone."""

import io

import numpy
from matplotlib.backends.backend_pdf import FigureCanvasPdf, PdfPages
from matplotlib.figure import Figure

INCH = 25.4
SYMBOLS = {"i1": "$I_1$", "i2": "$I_2$", "i3": "$I_3$", "sum": "$I_N$"}


def canvas(width: float, height: float) -> tuple[Figure, object]:
    """An empty page of this size in mm, and axes over all of it whose unit is a millimetre, y up."""
    figure = Figure(figsize=(width / INCH, height / INCH), frameon=False)
    FigureCanvasPdf(figure)
    axes = figure.add_axes((0.0, 0.0, 1.0, 1.0))
    axes.set(xlim=(0.0, width), ylim=(0.0, height))
    axes.axis("off")
    return figure, axes


def plot_arrows(axes: object, tails: dict[str, complex], tips: dict[str, complex], *, labelled: bool = False) -> None:
    """A plain line for each phasor, mm; with a head and its symbol where it is to look like a sheet."""
    for key, tip in tips.items():
        tail = tails[key]
        axes.plot([tail.real, tip.real], [tail.imag, tip.imag], color="black", linewidth=1.4)
        if labelled:
            axes.annotate("", (tip.real, tip.imag), (tail.real, tail.imag), arrowprops={"arrowstyle": "-|>"})
            middle = (tail + tip) / 2 + 3j
            axes.text(middle.real, middle.imag, SYMBOLS.get(key, key), fontsize=14)


def written(figures: list[Figure]) -> bytes:
    """The pages as one PDF, without a date."""
    stream = io.BytesIO()
    with PdfPages(stream, metadata={"CreationDate": None}) as document:
        for figure in figures:
            document.savefig(figure)
    return stream.getvalue()


def placed(vectors: dict[str, complex], order: tuple[str, ...], origin: complex) -> tuple[dict, dict]:
    """Tails and tips by phasor: those of ``order`` one at the tip of the last, the rest from the origin."""
    tails = dict.fromkeys(vectors, origin)
    for key, before in zip(order, numpy.cumsum([0.0, *(vectors[key] for key in order)]), strict=False):
        tails[key] = origin + complex(before)
    return tails, {key: tails[key] + vector for key, vector in vectors.items()}
