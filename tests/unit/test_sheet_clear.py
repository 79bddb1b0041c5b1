"""Nothing on a sheet touches what it should not: labels, table, title block, notes, bars, frame."""

from collections import Counter
from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest
from calculators.neutral_current.forms import form as form_of
from calculators.neutral_current.forms import forms
from host import shelf
from unit.sheets import DEFAULT, NEUTRAL, Lettered, Stroke, frame_of, on_page, strokes, texts

from pycore.drawing import Arc, Page
from pycore.forms.opening import ReopenInfo
from pycore.geometry import Box
from pycore.sheet import compose
from pycore.sheet.media import PAPERS

COUNT = 300


def touching(words: list[Lettered], ink: list[Stroke], frame: Box) -> list[str]:
    """Every text that touches a stroke or another text, or leaves the frame, each said in words."""
    said, near = [], _near(ink)
    for index, text in enumerate(words):
        if not frame.holds(text.box):
            said.append(f"{text.words!r} ({text.group}) leaves the frame")
        said += [
            f"{text.words!r} ({text.group}) overlaps {other.words!r} ({other.group})"
            for other in words[index + 1 :]
            if text.box.meets(other.box)
        ]
        said += [
            f"{text.words!r} ({text.group}) touches {stroke.source}"
            for stroke in near(text.box)
            if text.box.grown(stroke.half).meets_segment(stroke.start, stroke.end)
        ]
    return said


def _near(ink: list[Stroke]) -> Callable[[Box], list[Stroke]]:
    """A function that gives the strokes whose own rectangle, ink included, meets a box: few of a sheet's thousands."""
    if not ink:
        return lambda box: []
    ends = np.array([(*stroke.start, *stroke.end) for stroke in ink])
    half = np.array([stroke.half for stroke in ink]) + 1e-6  # what lies on an edge is left to the exact test
    left, right = np.minimum(ends[:, 0], ends[:, 2]) - half, np.maximum(ends[:, 0], ends[:, 2]) + half
    bottom, top = np.minimum(ends[:, 1], ends[:, 3]) - half, np.maximum(ends[:, 1], ends[:, 3]) + half

    def near(box: Box) -> list[Stroke]:
        meets = (left < box.right) & (right > box.left) & (bottom < box.top) & (top > box.bottom)
        return [ink[index] for index in np.flatnonzero(meets)]

    return near


def faults_of(page: Page, frame: Box | None = None) -> list[str]:
    """What is wrong on a page; its own frame is the edge unless another is given."""
    words = texts(page)
    return touching(words, strokes(page, words), frame or frame_of(page))


def told(faults: list[tuple[int, str]]) -> str:
    """How many faults of each kind, and the first twenty."""
    kinds = Counter(" ".join(word for word in fault.split() if word in ("touches", "overlaps", "leaves"))
                    for _, fault in faults)  # fmt: skip
    return f"{dict(kinds)}\n" + "\n".join(f"problem {number}: {fault}" for number, fault in faults[:20])


def test_the_eye_for_touching_sees_what_each_pair_alone_would_show():
    """Strokes that are near are all that can touch: texts moved about random sheets, with the choice and without."""
    seen = fewer = 0
    for number, form in enumerate(forms(12)):
        page = NEUTRAL.sheet_page(form)
        ink = strokes(page)
        near, moved = _near(ink), []
        for text in texts(page):
            left, bottom, right, top = text.box
            box = Box(left + number, bottom - 2 * number, right + number, top - 2 * number)
            moved.append(replace(text, box=box))
            touched = [stroke for stroke in ink if box.grown(stroke.half).meets_segment(stroke.start, stroke.end)]
            chosen = near(box)
            seen += len(touched)
            assert touched == [one for one in chosen if box.grown(one.half).meets_segment(one.start, one.end)]
            assert len(chosen) < len(ink)
        beside = strokes(page, moved)
        assert touching(moved, ink, page.box) == touching(moved, beside, page.box)
        fewer += len(ink) - len(beside)
    assert seen > 50 and fewer > 1_000


def test_no_text_of_three_hundred_random_sheets_touches_a_line_or_another_text_or_leaves_the_frame():
    """All methods, orders, papers, names and pictures; sizes over three decades; balanced, collinear, nearly so."""
    faults, labels = [], 0
    for number, form in enumerate(forms(COUNT)):
        page = NEUTRAL.sheet_page(form)
        labels += sum(text.step is not None for text in texts(page))
        faults += [(number, fault) for fault in faults_of(page)]
    assert labels > 4 * COUNT
    assert [] == faults, told(faults)


@pytest.mark.parametrize("number", [1269, *range(9, 300, 10)])
def test_arcs_and_marks_stay_in_the_frame_too(number: int):
    """The scale is chosen by straight strokes; then the figure is moved, or its arcs are drawn smaller."""
    page = NEUTRAL.sheet_page({**form_of(number), "paper": "A5"})
    frame = frame_of(page).grown(1e-6)
    figure = Page(page.width, page.height, tuple(placed.item for placed in on_page(page, object) if placed.step))
    ends = [point for stroke in strokes(figure) for point in (stroke.start, stroke.end)]
    assert [] == [at for at in ends if not (frame.left <= at.x <= frame.right and frame.bottom <= at.y <= frame.top)]


def test_no_label_of_three_hundred_phone_views_touches_a_line_or_another_label_or_leaves_the_view():
    faults, labels = [], 0
    for number, form in enumerate(forms(COUNT)):
        page = NEUTRAL.answer(form, ("view",)).views["phone"]
        words = texts(page)
        labels += len(words)
        faults += [(number, fault) for fault in touching(words, strokes(page, words), page.box)]
    assert labels > 4 * COUNT
    assert [] == faults, told(faults)


def tags_wanted(form: dict[str, str], keys: set[str]) -> Counter:
    """The tags that the phasors drawn must bear, by the names asked for."""
    names = {"L123": "123", "ABC": "ABC", "RYB": "RYB", "RST": "RST"}[form["names"]]
    index = dict(zip("123", names, strict=True))
    made = {"sum": "IN", "return": "−IN"}
    made.update({f"i{n}": "I" + index[n] for n in "123"})
    made.update({f"i{a}{b}": f"I{index[a]} + I{index[b]}" for a, b in ("12", "13", "23")})
    return Counter(made[key] for key in keys)


def first_current(form: dict[str, str]) -> str:
    """The tag of the first line that carries current."""
    key = next(f"i{n}" for n in "123" if form[f"i{n}"] != "0")
    return next(iter(tags_wanted(form, {key})))


def test_every_phasor_and_every_angle_that_is_drawn_bears_its_label():
    """One tag for each phasor (copies apart), one number of degrees for each angle's arc; none is left out."""
    missing = []
    for number, form in enumerate(forms(COUNT)):
        page = NEUTRAL.sheet_page(form)
        labels = Counter(text.words for text in texts(page) if text.step is not None)
        drawn = {placed.phasor for placed in on_page(page, object) if placed.phasor and not placed.copy}
        wanted = tags_wanted(form, drawn)
        missing += [(number, f"no tag {tag}") for tag in (wanted - labels)]
        # The faint direction that angles are counted from bears the name of the current it belongs to.
        named = wanted + Counter([first_current(form)])
        missing += [(number, f"{tag} too often") for tag in wanted if labels[tag] > named[tag]]
        if form["parallels"] != "compasses":
            # The sense of rotation is an arc too, but of no step.
            arcs = len([placed for placed in on_page(page, Arc) if placed.step])
            degrees = sum(count for words, count in labels.items() if words.endswith("°"))
            missing += [(number, f"{arcs} arcs, {degrees} angles")] * (arcs != degrees)
    assert [] == missing, told(missing)


def widest_accepted() -> str:
    """A text so wide that one more narrow letter would be refused."""
    text = "m" * 26
    while shelf.ask("neutral-current", {**DEFAULT, "place": text + "i"})[0]["errors"] == []:
        text += "i"
    return text


WIDEST = "the widest that is accepted"
PLACES = (
    "", WIDEST, "a " + "n" * 28 + " bcdefg nnnnn", "Community hall, three heating banks in star",
    "Great Northern College of Building Crafts, room 4", "W" * 20, "Nebengebäudestraßenbeleuchtungsverteilerraum",
    "a b c d e f g h i j k l m n o p q r s t u v w x y z a b c d",
)  # fmt: skip


@pytest.mark.parametrize("place", PLACES)
@pytest.mark.parametrize("orientation", ["landscape", "portrait"])
@pytest.mark.parametrize("paper", list(PAPERS))
def test_the_furniture_of_every_paper_both_ways_round_stands_clear(paper: str, orientation: str, place: str):
    """With a table of five rows, long names and amounts of most digits; the place is printed whole."""
    place = widest_accepted() if place == WIDEST else place
    form = {"i1": "1018.4", "i2": "1011.7", "i3": "1524.6", "paper": paper, "orientation": orientation, "place": place,
            "a1": "-31.8", "a2": "12.5", "a3": "101.3", "reference": "voltage", "names": "RYB"}  # fmt: skip
    for method in ("parallelogram", "tip-to-tail", "components")[: 1 if place else 3]:
        for angles in ("protractor", "polar"):
            page = NEUTRAL.sheet_page({**form, "method": method, "angles": angles})
            assert [] == faults_of(page)
            block = [text.words for text in sorted(texts(page), key=lambda text: -text.box.top)
                     if text.group == "title-block"]  # fmt: skip
            assert "".join(place.split()) in "".join("".join(block).split())


@pytest.mark.parametrize("orientation", ["landscape", "portrait"])
@pytest.mark.parametrize("paper", list(PAPERS))
def test_the_notes_of_every_paper_are_printed_whole(paper: str, orientation: str):
    """Scale, reminder to print at 100 %, and what the sheet is not for stand in the field; the answer stands above its
    table."""
    page = NEUTRAL.sheet_page({"paper": paper, "orientation": orientation})
    said = {group: " ".join(text.words for text in texts(page) if text.group == group)
            for group in ("words", "scale", "foot")}  # fmt: skip
    assert "1\u00a0cm\u00a0=\u00a0" in said["scale"]
    assert said["foot"].startswith("Print at 100 %")
    assert said["foot"].endswith("For teaching. Not for sizing an installation.")
    assert said["words"].startswith("The neutral current IN is 11.6\u00a0A, 87.5° anticlockwise from I1.")


LOADS = {
    "equal": {}, "unequal": {"a1": "-31.8", "a2": "12.5", "a3": "101.3", "names": "RYB", "reference": "voltage"},
}  # fmt: skip


@pytest.mark.parametrize("load", list(LOADS))
@pytest.mark.parametrize("sheet", ["construction", "problem", "overlay"])
@pytest.mark.parametrize("orientation", ["landscape", "portrait"])
@pytest.mark.parametrize("paper", list(PAPERS))
def test_no_kind_of_sheet_leaves_out_the_end_of_its_notes(paper: str, orientation: str, sheet: str, load: str):
    """Every note that the sheet was given stands on it to its last word, and nothing touches."""
    form = {**DEFAULT, **LOADS[load], "paper": paper, "orientation": orientation, "sheet": sheet}
    given: list[str] = []
    write = compose.column

    def column(layout, writing):
        given.extend((writing.sentence, *writing.notes))
        return write(layout, writing)

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(compose, "column", column)
        page = NEUTRAL.sheet_page(form)
    printed = "".join("".join(text.words.split()) for text in texts(page) if text.group == "words")
    # A symbol such as V_R or I₁ is printed with its index.
    plain = str.maketrans("₀₁₂₃₄₅₆₇₈₉", "0123456789", "_")
    assert [] == [note for note in given if "".join(note.translate(plain).split()) not in printed]
    assert given
    assert [] == faults_of(page)


OPENINGS = {
    "none": ReopenInfo(), "code": ReopenInfo("https://folio.example/neutral-current/", True),
    "address": ReopenInfo("https://folio.example/neutral-current/", False),
}  # fmt: skip


@pytest.mark.parametrize("opening", list(OPENINGS))
@pytest.mark.parametrize("orientation", ["landscape", "portrait"])
@pytest.mark.parametrize("paper", list(PAPERS))
def test_every_kind_of_sheet_stands_clear_with_a_code_an_address_or_neither(paper: str, orientation: str, opening: str):
    """Problem, construction and overlay of the example; name, group and date left to be written by hand."""
    form = {**DEFAULT, "paper": paper, "orientation": orientation, "names": "RYB", "reference": "voltage"}
    kinds = ("problem", "construction", "overlay")
    for kind, page in zip(kinds, NEUTRAL.pages(form, OPENINGS[opening], kinds), strict=True):
        assert (kind, []) == (kind, faults_of(page))
