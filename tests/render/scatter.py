"""Drawings of things scattered by a fixed sequence, and the digests of their files: run in both hosts."""

import hashlib
from collections.abc import Iterator

from pycore.drawing import Arc, Arrow, Circle, Document, Group, Ink, Line, Page, Run, Shape, Text
from pycore.geometry import Point
from pycore.writers import pdf, svg

PAGES = 150
INKS: tuple[Ink, ...] = ("brown", "black", "grey", "blue", "white")


def sequence() -> Iterator[float]:
    """Numbers from 0 to 1 that are the same everywhere."""
    state = 20240607
    while True:
        state = (state * 1103515245 + 12345) % 2147483648
        yield state / 2147483648


def scattered(numbers: Iterator[float]) -> Page:
    """An A4 page of arrows, arcs, lines and words at places that are no round numbers."""
    items = []
    for count in range(10):
        here, there = (Point(next(numbers) * 297, next(numbers) * 210) for _ in range(2))
        ink = INKS[count % len(INKS)]
        arrow = Arrow(here, here.moved(next(numbers) * 120, next(numbers) * 360 - 180), ink=ink, cased=ink == "black")
        symbol = (Run("I", "italic"), Run("N", size=3.5, rise=-0.8), Run(f" = {next(numbers) * 60:.1f}\u00a0A", "bold"))
        turn = next(numbers) * 360 if count % 2 else 0.0
        items += [
            Group((arrow,), step=count, phasor="i1"),
            Arc(here, next(numbers) * 75, next(numbers) * 360, next(numbers) * 720 - 360),
            Line(here, there, dash=(3.0, 0.75)),
            Circle(there, next(numbers) * 9, fill="rule"),
            Shape((here, there, arrow.tip), 0.7),
            Text(symbol, there, "middle", turn=turn),
        ]
    return Page(297.0, 210.0, tuple(items), "Scattered", "Things at no round numbers")


def digests() -> list[str]:
    """One digest for each page's SVG, each page's PDF and the PDF of all pages."""
    numbers = sequence()
    pages = tuple(scattered(numbers) for _ in range(PAGES))
    files = [svg.write(page, prefix="p", role="sheet").encode() for page in pages]
    files += [pdf.write(Document((page,), "One")) for page in pages]
    files.append(pdf.write(Document(pages, "All – Ω")))
    return [hashlib.sha256(file).hexdigest() for file in files]
