"""An answer made by hand: what the renderer is tested with, whatever the calculators say today."""

from collections.abc import Mapping

from pycore.drawing import Arrow, Circle, Group, Line, Page, Run, Text
from pycore.errors import Fault, InputError
from pycore.forms.fields import Field, Option
from pycore.geometry import Point
from pycore.sums.answer import Alternative, Answer, Equation, Grid, Move, Output, Paragraph, Working
from pycore.words.formula import Bracketed, Fraction, Function, Number, Root, Square, row
from pycore.words.phrase import Emphasis, Symbol, say

I1, I2, I3, IN = Symbol("I", "1"), Symbol("I", "2"), Symbol("I", "3"), Symbol("I", "N")


def phasor(key: str, step: int, tip: Point, ink: str, origin: Point, width: float = 0.5) -> Group:
    """One phasor's arrow with its tag."""
    head = 8.2 if width > 0.5 else 4.6
    arrow = Arrow(origin, tip, width, ink, head)  # type: ignore[arg-type]
    tag = Text((Run("I", "italic", 7.0), Run(key[-1].upper(), "regular", 5.0, -1.2)), tip.plus(Point(3, 3)))
    return Group((Group((arrow,), phasor=key), tag), step=step)


def drawing(width: float, height: float, origin: Point, scale: float = 1.0) -> Page:
    """Three phasors, their sum and two parallels."""

    def at(length: float, degrees: float) -> Point:
        return origin.moved(length * scale, degrees)

    first, second, third, total = at(92, 90), at(56, -30), at(123, 210), at(58.1, 177.5)
    corner = first.plus(second).minus(origin)
    items = (
        Group((Line(Point(5, 5), Point(width - 5, 5), 0.7),), name="frame"),
        phasor("i1", 1, first, "brown", origin),
        phasor("i2", 2, second, "black", origin),
        phasor("i3", 3, third, "grey", origin),
        Group((Line(first, corner, 0.25, "black", (3, 0.75)), Line(second, corner, 0.25, "brown", (3, 0.75))), step=4),
        phasor("sum", 5, total, "blue", origin, 1.0),
        Circle(origin, 1.2, 0.25, "ink", "sheet"),
        Text((Run("1 cm = 2 A", "regular", 6.0),), Point(10, height - 14)),
    )
    return Page(width, height, items, "Neutral current", "Three phasors and their sum, drawn to scale.")


def parallelogram() -> Working:
    """A construction with moves."""
    return Working(
        "parallelogram-12", say("By parallelogram"),
        (
            Move(1, say("**Choose the scale.** 1 cm = 2 A. The longest line, 24.6 A, becomes 123 mm.")),
            Move(2, say("**Draw {i}.** Straight up from the star point, 92.0 mm.", i=I1), say("It leads the way.")),
            Paragraph(say("A line under 4 mm is a dot and a label."), caution=True),
            Move(3, say("**Set off 60° at the tip of {i}.** Zero line back along {i}.", i=I1)),
        ),
        on_sheet=True,
    )  # fmt: skip


def components() -> Working:
    """A calculation with a table and formulas."""
    a, b = Number("18.4", "A"), Number("11.2", "A")
    first = (say("{i}", i=I1), say("18.4"), say("0.00"), say("18.40"))
    last = ((Emphasis((IN,)),), say("11.6"), say("−11.6"), say("0.5"))
    grid = Grid((say("phasor"), say("A"), say("across"), say("up")), (first, last), total=True)
    lines = (
        row(IN, "=", Root(row(Square(a), "+", Square(b), "−", Bracketed(row(a, "×", b))))),
        row(
            "α", "=", Function("arctan", Bracketed(Fraction(Number("0.5"), Number("−11.6")))), "=", Number("177.5", "°")
        ),
    )
    return Working("components", say("By components"), (grid, Equation(lines, say("Then Pythagoras:"))))


def answer(form: Mapping[str, str]) -> Answer:
    """The answer that never changes, except for what was typed for L1."""
    given = say("{a} A, 11.2 A, 24.6 A", a=form.get("i1", "18.4"))
    outputs = (
        Output("neutral-current", 11.6310790558, "11.6", "A", say("Neutral")),
        Output("neutral-angle", -87.5123456789012, "87.5", "°", say("anticlockwise from {i}", i=I1)),
        Output("neutral-length", 58.1553952790, "58.1", "mm", say("on the sheet")),
        Output("undefined", None, "none", "", say("undefined")),
    )
    summary = (say("87.5° anticlockwise from {i}", i=I1), say("58.1 mm on the sheet"), say("by hand ± 0.2 A"))
    return Answer(
        "example", "Neutral current", outputs, given, summary,
        (say("Less than the largest line, 24.6 A, as it must be."),), (say("The reading & the rest <stay>."),),
        say("A4 landscape, 1 cm = 2 A"), (Alternative(say("L2 with L3 first"), (("order", "23"),)),),
        drawing(297, 210, Point(195, 110)), {"phone": drawing(180, 175, Point(120, 78), 0.9)},
        (components(), parallelogram()),
        {"a1": {"degrees": "31.8° lag", "said": "31.8° lag", "factor": "0.850", "sense": "lag"}},
    )  # fmt: skip


class ExampleCalculator:
    """A calculator with one field of every kind."""

    slug = "example"
    topic = None
    board, job = "Three-phase", ""
    title = "Neutral current"
    description = "What the neutral carries when three lines load it unevenly."
    scenario = "Community hall, three heating banks in star."
    cautions = (say("**Never open a neutral on a live system.**"), "Live readings are for competent people.")
    warning = ""
    fields = (
        Field("i1", "L1", "quantity", "values", "18.4", "A", sample="i1"),
        Field("i2", "L2", "quantity", "values", "11.2", "A", sample="i2"),
        Field("i3", "L3", "quantity", "values", "24.6", "A", sample="i3"),
        Field("a1", "L1 lag", "angle", "loads", "0", "°", "Degrees, negative if it leads, or a power factor."),
        Field("method", "Method", "choice", "method", "parallelogram", options=(
            Option("parallelogram", "Parallelogram"), Option("components", "Components"))),
        Field("order", "First pair", "choice", "picture", "12", options=(
            Option("", "chosen to fit"), Option("12", "L1 with L2"), Option("23", "L2 with L3"))),
        Field("paper", "Paper", "choice", "sheet", "A4", options=(Option("A4", "A4"), Option("A3", "A3"))),
        Field("title", "Title", "text", "words", "", help="Printed in the title block."),
    )  # fmt: skip

    def inks(self, form: Mapping[str, str]) -> Mapping[str, str]:
        """Always the same inks."""
        return {"i1": "brown", "i2": "black", "i3": "grey", "sum": "blue"}

    def figure(self, form: Mapping[str, str]) -> Page:
        """The fixed sheet."""
        return self.answer(form).sheet

    def answer(self, form: Mapping[str, str]) -> Answer:
        """The fixed answer; InputError for "bad"."""
        if form.get("i1") == "bad":
            raise InputError(Fault("i1", "bad", "L1 is no number.", "bad"))
        return answer(form)
