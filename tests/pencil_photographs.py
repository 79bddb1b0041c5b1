"""Photographs of pencilled sheets as a phone takes them, made up: pencils are uneven, lines run on, tries are rubbed
out, there is lettering; paper bends, is folded and dark on one side, and a thumb hides some marks.
"""

import io
import math
from dataclasses import dataclass

import numpy as np
from pencilled import NEUTRAL, Pencilled
from photographs import BAND, Camera, camera, colours_at, light_on, rendered_page
from PIL import Image, ImageDraw, ImageFilter

from pycore import geometry
from pycore.geometry import Point

SMALL = 0.3
"""How often a photograph is of 2,200 pixels; the others are finer."""


@dataclass(frozen=True)
class Shot:
    """The photograph of a pencilled sheet, the camera, how far the paper bends, and what is peculiar to it."""

    picture: Image.Image
    camera: Camera
    sheet: Pencilled
    lost: int
    folded: bool


# The pencil.

SIGNS = {
    "0": [[(0.5, 0), (0.1, 0.3), (0.1, 0.7), (0.5, 1), (0.9, 0.7), (0.9, 0.3), (0.5, 0)]],
    "1": [[(0.2, 0.7), (0.6, 1), (0.6, 0)]],
    "2": [[(0.1, 0.8), (0.5, 1), (0.9, 0.7), (0.1, 0), (0.9, 0)]],
    "3": [[(0.1, 0.9), (0.8, 0.9), (0.4, 0.55), (0.9, 0.3), (0.5, 0), (0.1, 0.1)]],
    "4": [[(0.7, 0), (0.7, 1), (0.1, 0.3), (0.95, 0.3)]],
    "5": [[(0.9, 1), (0.2, 1), (0.2, 0.55), (0.8, 0.5), (0.8, 0.1), (0.1, 0)]],
    "6": [[(0.8, 1), (0.2, 0.5), (0.2, 0.1), (0.7, 0), (0.9, 0.3), (0.5, 0.5), (0.2, 0.3)]],
    "7": [[(0.1, 1), (0.9, 1), (0.4, 0)]],
    "8": [[(0.5, 0.5), (0.2, 0.8), (0.5, 1), (0.8, 0.8), (0.2, 0.2), (0.5, 0), (0.8, 0.2), (0.5, 0.5)]],
    "9": [[(0.8, 0.7), (0.3, 0.6), (0.3, 0.95), (0.8, 0.95), (0.7, 0)]],
    "I": [[(0.5, 0), (0.5, 1)], [(0.3, 0), (0.7, 0)], [(0.3, 1), (0.7, 1)]],
    "A": [[(0, 0), (0.5, 1), (1, 0)], [(0.2, 0.4), (0.8, 0.4)]],
    "N": [[(0.1, 0), (0.1, 1), (0.9, 0), (0.9, 1)]],
    "m": [[(0, 0), (0, 0.6)], [(0, 0.5), (0.3, 0.6), (0.4, 0)], [(0.4, 0.5), (0.8, 0.6), (0.9, 0)]],
    "=": [[(0, 0.3), (0.9, 0.3)], [(0, 0.6), (0.9, 0.6)]],
    ".": [[(0.4, 0), (0.5, 0.08)]],
    "v": [[(0, 0.4), (0.3, 0), (1.2, 1.3)]],
}


class Pencil:
    """A layer of pencil on a sheet: ink from 0 to 1 at so many pixels for each mm."""

    def __init__(self, size: tuple[int, int], per_mm: float, random: np.random.Generator) -> None:
        self.layer = Image.new("L", size, 0)
        self.pen, self.per_mm, self.random = ImageDraw.Draw(self.layer), per_mm, random
        self.weight = random.uniform(0.28, 0.55)
        self.dark = random.uniform(0.55, 0.95)

    def pixel(self, at: Point) -> tuple[float, float]:
        """Where a place (mm) lies."""
        return at.x * self.per_mm, self.layer.height - at.y * self.per_mm

    def line(self, start: Point, end: Point, dark: float, weight: float, dash: tuple[float, float] | None) -> None:
        """A line by the ruler: nearly straight, of uneven darkness."""
        length = geometry.distance(start, end)
        if length < 0.3:
            return
        along = end.minus(start).times(1.0 / length)
        across = Point(-along.y, along.x)
        count = max(2, int(length / 1.2))
        bow, press = self.random.normal(0, 0.06), dark
        previous, drawn = start, 0.0
        for k in range(1, count + 1):
            t = k / count
            wave = bow * math.sin(math.pi * t) + self.random.normal(0, 0.025)
            here = start.plus(along.times(length * t)).plus(across.times(wave))
            press = 0.7 * press + 0.3 * dark * self.random.uniform(0.7, 1.25)
            drawn += length / count
            bare = dash is not None and (drawn % (dash[0] + dash[1])) > dash[0]
            if not bare:
                shade = int(255 * min(1.0, press))
                self.pen.line([self.pixel(previous), self.pixel(here)], shade, max(1, round(weight * self.per_mm)))
            previous = here

    def head(self, start: Point, end: Point, dark: float) -> None:
        """An open arrowhead, not quite even."""
        way = geometry.direction(end, start)
        for side in (1, -1):
            wing = end.moved(self.random.uniform(2.6, 4.6), way + side * self.random.uniform(13, 26))
            self.line(end.moved(self.random.uniform(0, 0.3), way), wing, dark, self.weight, None)

    def write(self, text: str, at: Point, size: float, dark: float) -> None:
        """Handwriting from its lower left corner."""
        x, slant = at.x, self.random.uniform(-0.05, 0.25)
        for sign in text:
            for path in SIGNS.get(sign, ()):
                nodes = [Point(x + size * (0.6 * u + slant * v) + self.random.normal(0, 0.04 * size),
                               at.y + size * v + self.random.normal(0, 0.04 * size)) for u, v in path]  # fmt: skip
                shade = int(255 * dark * self.random.uniform(0.7, 1))
                self.pen.line([self.pixel(p) for p in nodes], shade, max(1, round(0.35 * self.per_mm)), joint="curve")
            x += size * self.random.uniform(0.7, 0.95)

    def finished(self) -> np.ndarray:
        """The layer with the paper's grain in it."""
        ink = np.asarray(self.layer.filter(ImageFilter.GaussianBlur(0.06 * self.per_mm)), np.float32) / 255
        grain = max(2, round(0.16 * self.per_mm))
        shape = (ink.shape[0] // grain + 1, ink.shape[1] // grain + 1)
        rough = np.clip(self.random.normal(0.85, 0.3, shape), 0, 1.15).astype(np.float32)
        rough = np.asarray(Image.fromarray(rough).resize((ink.shape[1], ink.shape[0]), Image.Resampling.BILINEAR))
        return np.clip(ink * rough, 0, 1)


COLOURS = ((52, 52, 60), (52, 52, 60), (52, 52, 60), (30, 40, 120), (150, 40, 40), (30, 100, 60))


def on_paper(paper: Image.Image, sheet: Pencilled, per_mm: float, random: np.random.Generator) -> Image.Image:
    """A rendered sheet with all that the learner drew and wrote."""
    pencil = Pencil(paper.size, per_mm, random)
    dash = (random.uniform(2, 4.5), random.uniform(1, 2.4))
    for stroke in sheet.strokes:
        dark = pencil.dark * (random.uniform(0.25, 0.5) if stroke.faint else random.uniform(0.8, 1.1))
        step = stroke.end.minus(stroke.start)
        length = max(1.0, geometry.distance(stroke.start, stroke.end))
        run_on = random.uniform(0, 2.5) if random.random() < 0.3 and not stroke.arrow else 0.0
        off = Point(*random.normal(0, 0.12, 2))
        end = stroke.end.plus(step.times(run_on / length)).plus(off)
        weight = pencil.weight * (1.25 if stroke.arrow else 0.9)
        pencil.line(stroke.start.plus(off), end, dark, weight, dash if stroke.dashed else None)
        if stroke.arrow:
            pencil.head(stroke.start, stroke.end, dark)
        if random.random() < 0.12:  # A first try, rubbed out.
            way, turn = geometry.direction(stroke.start, stroke.end), random.uniform(-7, 7)
            tried = stroke.start.moved(length * random.uniform(0.7, 1.1), way + turn)
            pencil.line(stroke.start, tried, pencil.dark * random.uniform(0.06, 0.2), 1.2 * pencil.weight, None)
        if stroke.arrow and random.random() < 0.65:
            middle = stroke.start.plus(step.times(random.uniform(0.35, 0.75)))
            away = random.choice([-1, 1]) * random.uniform(3, 6)
            beside = middle.moved(away, geometry.direction(stroke.start, stroke.end) + 90)
            figures = f"{random.uniform(4, 30):.1f}A", f"{random.integers(20, 120)}mm"
            text = str(random.choice(["I1", "I2", "I3", "IN", *figures]))
            pencil.write(text, beside, random.uniform(2.6, 4.5), 0.8 * pencil.dark)
        if stroke.arrow and random.random() < 0.3:  # A tick where the length was set off.
            way = geometry.direction(stroke.start, stroke.end) + 90
            pencil.line(stroke.end.moved(-1.5, way), stroke.end.moved(1.5, way), dark, 0.8 * pencil.weight, None)
    for _ in range(int(random.integers(0, 4))):
        at = Point(random.uniform(205, 255), random.uniform(85, 130))
        pencil.write(f"{random.uniform(4, 30):.1f}=I{random.integers(1, 4)}", at, 3.5, pencil.dark)
    if random.random() < 0.35:
        at = Point(random.uniform(38, 150), random.uniform(26, 40))
        pencil.write(f"IN={random.uniform(4, 30):.1f}A", at, 4.0, pencil.dark)
    if random.random() < 0.15:
        pencil.write("v", Point(random.uniform(40, 180), random.uniform(30, 180)), 8.0, pencil.dark)
    ink = pencil.finished()[..., None]
    colour = np.array(COLOURS[int(random.integers(0, len(COLOURS)))], np.float32)
    base = np.asarray(paper, np.float32)
    return Image.fromarray(np.clip(base * (1 - ink) + np.minimum(base, colour) * ink, 0, 255).astype(np.uint8))


# The photograph.


def photographed(sheet: Pencilled, seed: int, longer: int = 0) -> Shot:
    """The photograph of a sheet; ``longer``: pixels of its longer side, else by its number."""
    random = np.random.default_rng(7_000_000 + seed)
    side = longer or (2200 if random.random() < SMALL else 3000)
    layout = NEUTRAL.case(sheet.form).sheet_plan().layout
    held = float(random.choice([0, 90, 180, 270], p=[0.5, 0.08, 0.34, 0.08])) + random.uniform(-12, 12)
    lie = random.uniform(0, 360)
    seen_by = camera(
        (side, round(0.75 * side)), (layout.width, layout.height), random.uniform(0, 25), lie,
        held - 2 * lie, random.uniform(-0.03, 0.01),
    )  # fmt: skip
    per_mm = min(12.0, max(6.0, 1.1 * side / max(layout.width, layout.height)))
    paper = on_paper(rendered_page("neutral-current", tuple(sorted(sheet.form.items())), per_mm), sheet, per_mm, random)
    lost = int(random.integers(1, 3)) if random.random() < 0.15 else 0
    paper = _marks_lost(paper, sheet, per_mm, lost, random)
    folded = bool(random.random() < 0.2)
    curl = random.uniform(0, 0.7) if random.random() < 0.5 else 0.0
    picture = _taken(paper, per_mm, seen_by, random, folded=folded, curl=curl)
    data = io.BytesIO()
    picture.save(data, "JPEG", quality=int(random.integers(70, 93)))
    return Shot(Image.open(data).convert("RGB"), seen_by, sheet, lost, folded)


def _marks_lost(
    paper: Image.Image, sheet: Pencilled, per_mm: float, lost: int, random: np.random.Generator
) -> Image.Image:
    """A thumb on some of the marks."""
    if lost:
        pen = ImageDraw.Draw(paper)
        for index in random.choice(len(sheet.want.marks), lost, replace=False):
            at = sheet.want.marks[index]
            u, v, reach = at.x * per_mm, paper.height - at.y * per_mm, random.uniform(4, 7) * per_mm
            pen.ellipse([u - reach, v - reach, u + reach, v + reach], (205, 160, 135))
    return paper


def _taken(
    paper: Image.Image, per_mm: float, seen_by: Camera, random: np.random.Generator, *, folded: bool, curl: float
) -> Image.Image:
    """The light, the paper's bends, the lens and the sensor."""
    height, width = seen_by.height, seen_by.width
    way, shadow, light = random.uniform(0, 2 * math.pi), random.uniform(-0.5, 0.8), random.uniform(0.05, 0.4)
    u, v = (np.linspace(-1, 1, size, dtype=np.float32) for size in (width, height))
    fold_at, fold_dark = random.uniform(0.3, 0.7) * paper.width / per_mm, random.uniform(0.04, 0.12)
    phone = (random.uniform(-0.9, 0.3), random.uniform(-0.9, 0.3), random.uniform(0.5, 0.9), random.uniform(0.1, 0.3))
    whole, noise = np.asarray(paper), random.uniform(2, 7)
    bends = random.uniform(0, 2 * math.pi)
    sharp = np.empty((height, width, 3), np.uint8)
    for top in range(0, height, BAND):
        rows = slice(top, min(top + BAND, height))
        x, y = seen_by.sheet_places(rows)
        if curl:
            y = y + curl * np.sin(2 * math.pi * x / 420 + bends)
            x = x + 0.5 * curl * np.sin(2 * math.pi * y / 380 + bends)
        shade = light_on(u, v[rows], way, shadow, light)
        grid_u, grid_v = np.meshgrid(u, v[rows])
        near = np.maximum(np.abs(grid_u - phone[0]) - phone[2], np.abs(grid_v - phone[1]) - phone[2])
        shade = shade * (1 - phone[3] / (1 + np.exp(np.clip(near * 25, -30, 30))))
        if folded:
            crease = x - fold_at
            shade = shade * (1 - fold_dark * np.exp(-((crease / 0.8) ** 2))) * (1 - 0.06 * (crease > 0))
        sharp[rows] = np.clip(colours_at(whole, per_mm, x, y) * shade[..., None], 0, 255).astype(np.uint8)
    blur = random.uniform(0.5, 1.2) * width / 3000 + 0.25
    blurred = np.asarray(Image.fromarray(sharp).filter(ImageFilter.GaussianBlur(blur)))
    grain = random.normal(0, noise, (height, width, 1)).astype(np.float32)
    return Image.fromarray(np.clip(blurred + grain, 0, 255).astype(np.uint8))
