"""Photographs of sheets as a phone would take them, made up: a rendered sheet with lines drawn by hand on it,
seen by a camera from any side, through a lens that bends lines, in uneven light, blurred and with noise."""

import io
import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import pairwise

import numpy as np
import pypdfium2
from PIL import Image, ImageDraw, ImageFilter

from pycore import geometry
from pycore.calculators.registry import CALCULATORS
from pycore.drawing import Circle, Document, Group, Page
from pycore.forms.fields import default_form
from pycore.forms.opening import ReopenInfo
from pycore.geometry import Point
from pycore.practice.drawn import points_to_find
from pycore.sheet.media import Layout
from pycore.sheet.skeleton import check_bar
from pycore.sums.photograph import photo_task
from pycore.writers import pdf

OPENING = ReopenInfo("https://www.folio.example/neutral-current/", True)
PENCIL = (58, 58, 66)
DESK = (112, 88, 66)
BAND = 64
"""So many rows of a picture are worked out at once."""


@dataclass(frozen=True)
class Camera:
    """From a sheet's mm (y up) to a photograph's pixels (v down)."""

    matrix: np.ndarray
    width: int
    height: int
    bend: float = 0.0

    def seen(self, x: float, y: float) -> tuple[float, float]:
        """Where a point of the sheet is seen."""
        straight = self.matrix @ [x, y, 1.0]
        off = straight[:2] / straight[2] - self.middle
        u, v = self.middle + off * (1 + self.bend * (off @ off) / self.reach**2)
        return float(u), float(v)

    @property
    def middle(self) -> np.ndarray:
        """The middle of the picture."""
        return np.array([self.width / 2, self.height / 2])

    @property
    def reach(self) -> float:
        """Half the picture's diagonal."""
        return math.hypot(self.width, self.height) / 2

    def sheet_places(self, rows: slice) -> tuple[np.ndarray, np.ndarray]:
        """For the middle of every pixel of these rows the point of the sheet that it shows."""
        columns, lines = (np.arange(size, dtype=np.float32) + 0.5 for size in (self.width, self.height))
        u, v = np.meshgrid(columns, lines[rows])
        off_u, off_v = u - self.middle[0], v - self.middle[1]
        if self.bend:
            straight_u, straight_v = off_u, off_v
            for _ in range(8):
                grown = 1 + self.bend * (straight_u**2 + straight_v**2) / self.reach**2
                straight_u, straight_v = off_u / grown, off_v / grown
            off_u, off_v = straight_u, straight_v
        u, v = off_u + self.middle[0], off_v + self.middle[1]
        back = np.linalg.inv(self.matrix)
        depth = back[2, 0] * u + back[2, 1] * v + back[2, 2]
        x = (back[0, 0] * u + back[0, 1] * v + back[0, 2]) / depth
        y = (back[1, 0] * u + back[1, 1] * v + back[1, 2]) / depth
        return x, y


def _about(axis: int, degrees: float) -> np.ndarray:
    c, s = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
    turned = np.eye(3)
    one, other = [k for k in range(3) if k != axis]
    turned[one, one], turned[one, other], turned[other, one], turned[other, other] = c, -s, s, c
    return turned


def camera(
    size: tuple[int, int], paper: tuple[float, float], tilt: float, lie: float, roll: float, bend: float = 0.0
) -> Camera:
    """A camera that sees the whole paper, as near as it can be: tilted from straight above, towards the side
    ``lie``, rolled about its own axis (degrees)."""
    width, height = size
    focal = 0.8 * max(size)
    rotation = _about(2, roll) @ _about(2, lie) @ _about(0, 180 + tilt) @ _about(2, -lie)
    lens = np.array([[focal, 0, width / 2], [0, focal, height / 2], [0, 0, 1]])
    centred = np.array([[1, 0, -paper[0] / 2], [0, 1, -paper[1] / 2], [0, 0, 1]])
    near, far = 30.0, 6000.0
    for _ in range(40):
        away = (near + far) / 2
        whole = lens @ np.column_stack([rotation[:, 0], rotation[:, 1], [0, 0, away]]) @ centred
        made = Camera(whole / whole[2, 2], width, height, bend)
        corners = [whole @ [x, y, 1.0] for x in (0.0, paper[0]) for y in (0.0, paper[1])]
        seen = [(p[0] / p[2], p[1] / p[2]) for p in corners if p[2] > 1.0]
        inside = [0.02 * width < u < 0.98 * width and 0.02 * height < v < 0.98 * height for u, v in seen]
        near, far = (near, away) if len(inside) == 4 and all(inside) else (away, far)
    return made


IN_THE_FIELD = {"registration", "check-bar", "turning", "scale", "foot", "zero"}


def printed_before(page: Page, sheet: Layout, places: Sequence[Point]) -> Page:
    """The sheet as it was printed before: larger marks inside the field, check bars that do not meet, and nothing of
    today's furniture between them."""
    marks = [one for place in places for one in (Circle(place, 1.2, 0.0, fill="ink"), Circle(place, 2.6, 0.7))]
    upright = Point(sheet.frame.left + 4.0, min(sheet.area.bottom + 3.0, sheet.height - 17.0 - sheet.bar))
    level = Point(min(sheet.area.left + 8.0, sheet.width - 17.0 - sheet.bar), sheet.area.bottom - 6.0)
    bars = [
        check_bar(at, sheet.bar, sheet.bar_text, sheet.style.note, upright=at is upright) for at in (upright, level)
    ]
    others = [item for item in page.items if getattr(item, "name", "") not in IN_THE_FIELD]
    return replace(page, items=(*others, *bars, Group(tuple(marks), name="registration")))


@lru_cache(maxsize=8)
def rendered_page(slug: str, form: tuple[tuple[str, str], ...], per_mm: float) -> Image.Image:
    """The first page of a calculator's form."""
    page = CALCULATORS[slug].pages(dict(form), OPENING)[0]
    data = pdf.write(Document((page,), "sheet"))
    return pypdfium2.PdfDocument(io.BytesIO(data))[0].render(scale=per_mm * 25.4 / 72).to_pil().convert("RGB")


@lru_cache(maxsize=8)
def _rendered(form: tuple[tuple[str, str], ...], per_mm: float, *, before: bool = False) -> Image.Image:
    neutral = CALCULATORS["neutral-current"]
    page = neutral.pages(dict(form), OPENING)[0]
    if before:
        older = [place for _, place in photo_task(neutral, dict(form)).older]
        page = printed_before(page, neutral.case(dict(form)).sheet_plan().layout, older)
    data = pdf.write(Document((page,), "sheet"))
    return pypdfium2.PdfDocument(io.BytesIO(data))[0].render(scale=per_mm * 25.4 / 72).to_pil().convert("RGB")


Stroke = tuple[tuple[float, float], tuple[float, float]]


def drawn_on(sheet: Image.Image, strokes: Sequence[Stroke], per_mm: float, seed: int) -> Image.Image:
    """A copy of a sheet with pencil lines on it (mm from its lower left corner): not quite straight, of uneven
    weight, each with an open arrowhead."""
    random = np.random.default_rng(seed)
    paper = sheet.copy()
    pen = ImageDraw.Draw(paper)

    def pixel(x: float, y: float) -> tuple[float, float]:
        return x * per_mm, sheet.height - y * per_mm

    for (x1, y1), (x2, y2) in strokes:
        length = math.hypot(x2 - x1, y2 - y1)
        if length == 0:
            continue
        along, across = ((x2 - x1) / length, (y2 - y1) / length), (-(y2 - y1) / length, (x2 - x1) / length)
        wave = random.normal(0, 0.12, 9)
        wave[0] = wave[-1] = 0.0
        points = [
            pixel(x1 + (x2 - x1) * k / 8 + across[0] * wave[k], y1 + (y2 - y1) * k / 8 + across[1] * wave[k])
            for k in range(9)
        ]
        pen.line(points, PENCIL, max(1, round(per_mm * random.uniform(0.35, 0.6))), joint="curve")
        for side in (1, -1):
            wing = (x2 - 3.5 * along[0] + side * 1.2 * across[0], y2 - 3.5 * along[1] + side * 1.2 * across[1])
            pen.line([pixel(x2, y2), pixel(*wing)], PENCIL, max(1, round(0.4 * per_mm)))
    return paper


def colours_at(whole: np.ndarray, per_mm: float, x: np.ndarray, y: np.ndarray) -> np.ndarray:
    """The colours of a rendered sheet at places on it (mm), those of the desk beside it."""
    column, row = x * per_mm - 0.5, whole.shape[0] - y * per_mm - 0.5
    inside = (column > 0) & (row > 0) & (column < whole.shape[1] - 1.001) & (row < whole.shape[0] - 1.001)
    column, row = np.where(inside, column, 0), np.where(inside, row, 0)
    left, top = column.astype(np.intp), row.astype(np.intp)
    over, down = (column - left)[..., None], (row - top)[..., None]
    flat, at, width = whole.reshape(-1, 3), top * whole.shape[1] + left, whole.shape[1]
    upper = flat.take(at, 0) * (1 - over) + flat.take(at + 1, 0) * over
    lower = flat.take(at + width, 0) * (1 - over) + flat.take(at + width + 1, 0) * over
    return np.where(inside[..., None], upper * (1 - down) + lower * down, np.array(DESK, dtype=np.float32))


def shot(
    sheet: Image.Image, per_mm: float, seen_by: Camera, *, seed: int = 0, blur: float = 0.8, noise: float = 5.0,
    light: float = 0.35,
) -> Image.Image:  # fmt: skip
    """The photograph: ``blur`` and ``noise`` in pixels and grey levels, ``light`` how much of it one side lacks."""
    random = np.random.default_rng(seed)
    height, width = seen_by.height, seen_by.width
    way, shadow = random.uniform(0, 2 * math.pi), random.uniform(-0.5, 0.8)
    u, v = (np.linspace(-1, 1, size, dtype=np.float32) for size in (width, height))
    sharp = np.empty((height, width, 3), dtype=np.uint8)
    for top in range(0, height, BAND):
        rows = slice(top, min(top + BAND, height))
        colours = colours_at(np.asarray(sheet), per_mm, *seen_by.sheet_places(rows))
        sharp[rows] = np.clip(colours * light_on(u, v[rows], way, shadow, light)[..., None], 0, 255).astype(np.uint8)
    blurred = np.asarray(Image.fromarray(sharp).filter(ImageFilter.GaussianBlur(blur)))
    for top in range(0, height, BAND):
        rows = slice(top, min(top + BAND, height))
        grain = random.normal(0, noise, (*blurred[rows].shape[:2], 1)).astype(np.float32)
        sharp[rows] = np.clip(blurred[rows].astype(np.float32) + grain, 0, 255).astype(np.uint8)
    return Image.fromarray(sharp)


def light_on(u: np.ndarray, v: np.ndarray, way: float, shadow: float, light: float) -> np.ndarray:
    """How much light falls at columns ``u`` and rows ``v`` (-1 to 1): from one side, with the edge of a soft shadow, as
    a hand or a phone throws it."""
    u, v = np.meshgrid(u, v)
    shade = 0.92 - light * (0.5 + 0.5 * (math.cos(way) * u + math.sin(way) * v))
    edge = math.cos(way + 1) * u + math.sin(way + 1) * v - shadow
    shade *= 1 - 0.5 * light / (1 + np.exp(-edge * 12))
    return shade


@dataclass(frozen=True)
class Conditions:
    """How one photograph was taken."""

    megapixels: float
    tilt: float
    lie: float
    roll: float
    bend: float
    blur: float
    noise: float
    light: float


def conditions(seed: int, megapixels: float | None = None) -> Conditions:
    """A fair photograph: the whole sheet in view, tilted up to 40 degrees, any way round."""
    random = np.random.default_rng(1000 + seed)
    mp = float(np.exp(random.uniform(0, math.log(12)))) if megapixels is None else megapixels
    # A hand shakes by angles: in a finer picture the same shake is more pixels.
    return Conditions(
        mp, random.uniform(0, 40), random.uniform(0, 360), random.choice([0, 90, 180, 270]) + random.uniform(-20, 20),
        random.uniform(-0.03, 0.01), random.uniform(0.4, 0.9) * math.sqrt(max(1.0, mp / 3)), random.uniform(2, 9),
        random.uniform(0.05, 0.5),
    )  # fmt: skip


def photograph(
    form: Mapping[str, str], paper: tuple[float, float], strokes: Sequence[Stroke], seed: int,
    megapixels: float | None = None, taken: Conditions | None = None, *, before: bool = False,
) -> tuple[Image.Image, Camera]:  # fmt: skip
    """A photograph of a form's sheet with lines on it, and the camera that saw it."""
    how = taken or conditions(seed, megapixels)
    long_side = round(math.sqrt(how.megapixels * 1e6 * 4 / 3))
    size = (long_side, round(long_side * 0.75))
    seen_by = camera(size, paper, how.tilt, how.lie, how.roll, how.bend)
    per_mm = min(12.0, max(3.0, 1.15 * long_side / max(paper)))
    sheet = drawn_on(_rendered(tuple(sorted(form.items())), per_mm, before=before), strokes, per_mm, seed)
    taken_picture = shot(sheet, per_mm, seen_by, seed=seed, blur=how.blur, noise=how.noise, light=how.light)
    return taken_picture, seen_by


PARALLELOGRAMS = ("O T1", "O T2", "T1 R", "T2 R", "O R", "O T3", "R N", "T3 N", "O N")
"""The lines of two parallelograms, by their ends."""


@dataclass(frozen=True)
class Taken:
    """A photograph of a drawing, the camera, the drawing's true points and the sheet's marks (mm), its paper."""

    picture: Image.Image
    camera: Camera
    points: Mapping[str, tuple[float, float]]
    marks: tuple[tuple[float, float], ...]
    form: Mapping[str, str]
    before: bool = False

    @property
    def editions(self) -> tuple[tuple[tuple[float, float], ...], ...]:
        """The places of the marks of today and of those before, as the finder is given them."""
        want = photo_task(CALCULATORS["neutral-current"], self.form)
        return want.marks, tuple(place for _, place in want.older)

    def jpeg(self, exif: int = 1) -> bytes:
        """The picture as a file; ``exif`` is the turn that its viewer must make."""
        data = io.BytesIO()
        turned = {1: self.picture, 6: self.picture.transpose(Image.Transpose.ROTATE_90)}[exif]
        tags = Image.Exif()
        tags[0x0112] = exif
        turned.save(data, "JPEG", quality=90, exif=tags)
        return data.getvalue()


def taken(
    seed: int, choices: Mapping[str, str] | None = None, slip: tuple[str, float] | None = None,
    how: Conditions | None = None, megapixels: float | None = None, *, before: bool = False,
) -> Taken:  # fmt: skip
    """A photograph of the example as drawn by hand on its problem sheet; ``before``: with the marks that sheets had
    before. With ``slip`` an arrow from the common point
    (its tip's name) is turned by so many degrees, and what follows is drawn from it."""
    page = CALCULATORS["neutral-current"]
    form = default_form(page.fields) | {"sheet": "problem", **(choices or {})}
    want = photo_task(page, form)
    drawing, figure = want.drawing, want.drawing.construction.figure.points
    points = {
        name: want.origin.plus(drawing.picture.place(figure[name], drawing.factor))
        for name in points_to_find(drawing.construction)
    }
    if slip:
        start, tip = points["O"], points[slip[0]]
        points[slip[0]] = start.moved(geometry.distance(start, tip), geometry.direction(start, tip) + slip[1])
        points["R"] = points["T1"].plus(points["T2"]).minus(start)
        points["N"] = points["R"].plus(points["T3"]).minus(start)
    pairs = [pair.split() for pair in PARALLELOGRAMS] if "R" in points else [*pairwise(points), ("O", "N")]
    layout = page.case(form).sheet_plan().layout
    strokes = [(tuple(points[one]), tuple(points[other])) for one, other in pairs]
    picture, seen_by = photograph(form, (layout.width, layout.height), strokes, seed, megapixels, how, before=before)
    marks = tuple(place for _, place in (want.older if before else want.numbered))
    return Taken(picture, seen_by, points, marks, form, before)
