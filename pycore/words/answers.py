"""Sentences beside an answer that every calculator may use."""

from pycore.words.constructions import first_line
from pycore.words.phrase import Phrase, Symbol, say

Name = Phrase | Symbol


def angle_by_protractor(angle: str, sense: str, origin: Name) -> Phrase:
    """The direction of the sum as read on a protractor."""
    return say("{angle} {sense} from {origin}", angle=angle, sense=sense, origin=origin)


def angle_on(origin: Name) -> Phrase:
    """The sum points in the first direction."""
    return say("in line with {origin}", origin=origin)


def angle_polar(angle: str, origin: Name) -> Phrase:
    """The direction of the sum as a polar angle."""
    return say("at {angle} from {origin}", angle=angle, origin=origin)


def with_article(name: str) -> str:
    """What is to be found, in the middle of a sentence."""
    return f"the {name}"


def on_paper(name: Phrase, length: str, *, own: bool) -> Phrase:
    """The length of the sum on our sheet, or on the learner's ``own`` paper."""
    return say("{name} is {length} on {paper}", name=name, length=length, paper="your paper" if own else "the sheet")


NO_ARROW = say("no arrow to draw")


def small_line(line: Phrase) -> Phrase:
    """A phasor too short for an arrow."""
    return say("At this scale {line} is shorter than 4 mm, so it is drawn as a dot with a label.", line=line)


def small_lines(lines: Phrase) -> Phrase:
    """Several phasors too short for an arrow."""
    return say("At this scale {lines} are shorter than 4 mm: they are drawn as dots with labels.", lines=lines)


PREDICT_FIRST = say(
    "**Estimate first.** Sketch the arrows freehand. In which direction will the result point, and how long is it?"
)


def largest_scale(usual: str, *, shared: bool) -> str:
    """Why this scale; ``usual``: the scales to choose from, ``shared``: a larger one fits this method, not all."""
    every = " every method" if shared else ""
    return f"Largest drawing that fits{every}, with {usual} … per cm."


def caption(paper: str, orientation: str, scale: str, reason: str) -> Phrase:
    """Paper and scale below the sheet, and why this scale ("" if it was typed)."""
    tail = f" {reason}" if reason else ""
    return say(
        "{paper} {orientation}, {scale}.{tail}",
        paper=paper_name(paper),
        orientation=orientation,
        scale=scale,
        tail=tail,
    )


def own_caption(paper: str, orientation: str, scale: str) -> Phrase:
    """Paper and scale of a drawing for the learner's own paper, and what is printed of it."""
    return say(
        "Your own {paper}: {scale}. Only the drawing is printed, at its place on your paper.",
        paper=own_paper_name(paper, orientation), scale=scale,
    )  # fmt: skip


def scale_now(scale: str, *, chosen: bool) -> str:
    """The scale of the drawing, beside its field; ``chosen``: to fit, nobody typed it."""
    return f"{scale}, chosen to fit." if chosen else f"{scale}."


def own_margin(paper: str, orientation: str, margin: str) -> str:
    """What a drawing leaves free on the learner's own paper."""
    return f"{own_paper_name(paper, orientation)}: {margin} stays free at every edge."


def left_blank(label: str) -> str:
    """A name, group or date that cannot be printed."""
    return (
        f"{label}: there is no font here for one of its letters, or it did not load. It is left blank, to be written "
        "by hand."
    )


def takers(paper: str, turned: str, larger: str, *, blank: bool) -> str:
    """What takes a drawing at a scale that does not fit: the ``paper`` turned, the learner's own ``blank`` paper of
    that size, a ``larger`` one ("" for none)."""
    listed = [f"on {own_paper_name(paper, turned)}"] if turned else []
    listed += [f"on blank {paper_name(paper)} paper of your own"] if blank else []
    listed += [f"on {paper_name(larger)}"] if larger else []
    return " or ".join(listed)


def does_not_fit(scale_text: str, paper: str, over: str, scale: str, fits_on: str) -> str:
    """A chosen scale that is too large for the paper; ``fits_on``: what takes it ("" for nothing)."""
    bigger = f" It would fit {fits_on} at your scale." if fits_on else ""
    return (
        f"At 1 cm = {scale_text} the drawing does not fit on {paper_name(paper)}: {over}. It is drawn at 1 cm = "
        f"{scale}.{bigger}"
    )


def paper_name(paper: str) -> str:
    """A paper as it is named in a sentence."""
    return paper[:1].upper() + paper[1:]


def own_paper_name(paper: str, orientation: str) -> str:
    """A paper of the learner's own: A4 paper, portrait."""
    return f"{paper_name(paper)} paper ({orientation})"


def use_scale(scale: str) -> str:
    """Offer of a scale that fits."""
    return f"Use 1 cm = {scale}"


def draw_on_own(paper: str) -> str:
    """Offer of blank paper of the learner's own."""
    return f"Draw on my own {paper_name(paper)}"


def turn_paper(way: str) -> str:
    """Offer of the paper turned."""
    return f"Turn the paper: {way}"


def use_paper(paper: str) -> str:
    """Offer of a paper that takes the scale."""
    return f"Use {paper_name(paper)} paper"


def too_wide(width: str, height: str) -> str:
    """By how much a figure exceeds the paper; either text may be empty."""
    if width and height:
        return f"it is {width} too wide and {height} too high"
    return f"it is {width} too wide" if width else f"it is {height} too high"


def pair_first(first: str, second: str) -> str:
    """An order by its lines: L1 with L2 first."""
    return f"{first} with {second} first"


def components_intro(up: bool, origin: Phrase) -> Phrase:
    """Which angle is used, and which function gives which component."""
    if up:
        return say(
            "Angles are measured clockwise from straight up, {origin}; anticlockwise angles are negative. Horizontal "
            "component = size × sine; vertical component = size × cosine.",
            origin=first_line(origin),
        )
    return say(
        "Angles are measured anticlockwise from the right, {origin}. Horizontal component = size × cosine; vertical "
        "component = size × sine.",
        origin=first_line(origin),
    )


def rounding_note(decimals: int, *, carried: bool) -> Phrase:
    """How the working rounds: ``carried`` if each line goes on with the digits printed before it."""
    if not carried:
        return say("Components are shown to {decimals} decimal places. ", decimals=str(decimals)) + MORE_DIGITS
    return say(
        "Components are rounded to {decimals} decimal places, and the next lines use these numbers. The answer is "
        "rounded last.",
        decimals=str(decimals),
    )


MORE_DIGITS: Phrase = say(
    "The calculation uses more digits than are printed. With the printed digits, the last digit of a result can be "
    "different."
)
"""For a working whose results do not all follow from the digits that it prints."""


def carried_figures(count: int, final: int) -> Phrase:
    """How a circuit's working rounds: with so many figures along the way, and so many in its answers."""
    return say(
        "Each line uses the numbers printed before it. Numbers that are used again have {count} figures, so that the "
        "answers are right to {final} figures.",
        count=str(count), final=str(final),
    )  # fmt: skip


PYTHAGORAS = say(
    "**Pythagoras** gives the size from the two sums, {x} across and {y} up.", x=Symbol("X"), y=Symbol("Y")
)
ARCTANGENT = say(
    "**The arctangent** gives the angle to the horizontal axis. The signs of the components give the quadrant."
)


def quarter(right: bool, up: bool, angle: str, result: Phrase) -> Phrase:
    """The quadrant and the angle from the first direction."""
    return say(
        "The sum points to the {side} and {height}, {angle} from the horizontal axis: that is {result}.",
        side="right" if right else "left",
        height="up" if up else "down",
        angle=angle,
        result=result,
    )


def answer_sense(sense: str) -> Phrase:
    """Which sense of rotation is positive in the answer, where the working measures angles the other way."""
    return say("In the answer, {sense} is positive.", sense=sense)


def on_axis(direction: str, result: Phrase) -> Phrase:
    """One component is zero."""
    return say(
        "One component is 0, so the sum points {direction}: that is {result}.", direction=direction, result=result
    )


def by_method(method: str, order: str, arms: int) -> Phrase:
    """Title of a working: its method and, where it matters, its order."""
    if method == "components":
        return say("By components")
    if arms < 3:
        return say("By parallelogram") if method == "parallelogram" else say("Tip to tail")
    if method == "tip-to-tail":
        return say("Tip to tail: {order}", order=order)
    return say("By parallelogram: {order}", order=order)
