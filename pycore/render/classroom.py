"""The requests of the lesson view: one step, and the link with its QR code."""

import re
from collections.abc import Mapping
from typing import Any, Protocol

from pycore.drawing import Page
from pycore.forms import links
from pycore.forms.opening import ReopenInfo
from pycore.geometry import Box
from pycore.render.lesson import code_html, lesson_regions, place_of
from pycore.sheet.code import code
from pycore.sums.answer import Answer
from pycore.sums.classroom import VIEWS, WAVE_STEP, WAVES
from pycore.sums.lesson_frame import LessonFrame
from pycore.words import classroom, plain
from pycore.words import lesson as words

CODE_SIDE = 100.0
"""Size of the code in units; the page enlarges it to the available space."""
DENSEST_CODE = 129
"""The most modules on a side that a camera at the back of a room can read (version 28; common practice, no source)."""


class ClassroomTopic(Protocol):
    """What a lesson needs from a calculator."""

    def lesson(self, form: Mapping[str, str], view: str, step: float) -> LessonFrame:
        """Return one step of a view. Raises InputError."""

    def lesson_number(self, form: Mapping[str, str], step: int) -> int:
        """Return the number of the first frame of a step of the page's list. Raises InputError."""

    def answer(self, form: Mapping[str, str], parts: tuple[str, ...]) -> Answer:
        """Return the answer to a form. Raises InputError."""


LAST, BEYOND = "last", 99999.0
"""The last step of a view as it is asked for, and a number that no view reaches."""
_PLACE = re.compile(r"[0-9]{1,5}(\.[0-9])?\Z")


def _step_of(requested: object) -> tuple[str, float]:
    """Return a requested place as text and as number; 0 if it is not a number. The waves have tenths."""
    text = str(requested)
    return text, float(text) if _PLACE.match(text) else 0.0


def _short(number: float) -> str:
    """Return a place as an address has it: 7, and 7.3 among the waves."""
    return f"{number:.10g}"


def step(calculator: ClassroomTopic, form: Mapping[str, str], request: Mapping[str, Any]) -> dict[str, Any]:
    """Return one step of a view; a step that does not exist opens the nearest one, with a notice.

    ``step`` is a frame, as links have it, or "last"; ``list_step`` is a step as it is numbered on the page. Raises
    InputError.
    """
    view = str(request.get("view", VIEWS[0]))
    notices = [] if view in VIEWS else [words.no_such_view(view)]
    view = view if view in VIEWS else VIEWS[0]
    requested, number = _step_of(request.get("step", "1"))
    typed = str(request.get("list_step", ""))
    if typed and view == VIEWS[0]:
        number = calculator.lesson_number(form, int(_step_of(typed)[1]))
    elif typed:
        requested, number = _step_of(typed)
    is_end = requested == LAST and not typed
    frame = calculator.lesson(form, view, BEYOND if is_end else number)
    progress = place_of(frame)
    if frame.view != view:
        notices.append(words.view_not_here(classroom.VIEWS[view]))
    elif typed and frame.place and typed != str(frame.place.step):
        notices.append(words.no_such_step(typed, frame.place.steps, progress))
    elif not typed and not is_end and int(number) != frame.number:
        notices.append(words.no_such_place(requested, progress))
    is_moment = frame.view == WAVES
    return {
        "ok": True,
        "regions": {name: str(html) for name, html in lesson_regions(frame).items()},
        "view": frame.view,
        "views": list(frame.views),
        "step": _short(1 + frame.turned / WAVE_STEP) if is_moment else frame.number,
        "steps": frame.count,
        "progress": progress,
        "notice": " ".join(notices),
        "hidden": plain(frame.question),
        "measured": frame.measured,
        "explained": frame.reason is not None,
        "turned": frame.turned,
        **_read_out(frame, progress),
    }


def _read_out(frame: LessonFrame, progress: str) -> dict[str, str]:
    """Return what is read aloud: all, while the class is asked, while the answer is hidden, and why."""
    own = [] if frame.asks_scale else [plain(frame.sentence)]
    sentences = [progress + ".", plain(frame.sentence)]
    reading = [plain(frame.reading)] if frame.reading else []
    whys = [plain(why) for why in frame.why]
    asking = [plain(frame.question)] if frame.question else [*reading, *whys]
    reason = frame.reason
    return {
        "announce": " ".join([*sentences, *reading, *whys]),
        "asked": " ".join([progress + ".", *own, *asking]),
        "blanked": " ".join([*(sentences if frame.reading else sentences[:1]), classroom.HIDDEN])
        if frame.answers
        else "",
        "why": " ".join(plain(one) for one in (reason.sentence, reason.why, reason.calculation)) if reason else "",
    }


def _place(request: Mapping[str, Any]) -> tuple[tuple[str, str], ...]:
    """Return the place in a lesson that a link should open; empty for the page itself."""
    place = request.get("lesson")
    if not isinstance(place, dict) or place.get("view") not in VIEWS:
        return ()
    pairs = [("view", str(place["view"])), ("step", _short(max(1.0, _step_of(place.get("step"))[1])))]
    return (*pairs, ("ask", "1")) if place.get("ask") == "1" else tuple(pairs)


def share(resolved: tuple[tuple[str, str], ...], request: Mapping[str, Any], opening: ReopenInfo) -> dict[str, Any]:
    """Return a link that opens the current state, and its QR code if requested."""
    link = f"{opening.base}#{links.fragment((*resolved, *_place(request)))}"
    if not opening.code:
        return {"ok": True, "link": link}
    drawn, note = _code_of(link, opening)
    return {"ok": True, "link": link, "regions": {"code": drawn}, "note": note}


def _code_of(link: str, opening: ReopenInfo) -> tuple[str, str]:
    """Return the QR code of a link, or the reason why there is none."""
    if not opening.reachable:
        return "", classroom.NO_CODE_HERE
    from pycore.writers import qr

    try:
        rows = qr.matrix(link)
    except ImportError:
        return "", classroom.NO_CODE_PART
    except ValueError:
        return "", classroom.NO_CODE_LONG
    if len(rows) > DENSEST_CODE:
        return "", classroom.NO_CODE_LONG
    drawn = code(rows, Box(0.0, 0.0, CODE_SIDE, CODE_SIDE))
    return str(code_html(Page(CODE_SIDE, CODE_SIDE, (drawn,), classroom.CODE, classroom.CODE))), ""
