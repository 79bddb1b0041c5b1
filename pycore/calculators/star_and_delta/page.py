"""The page ``/star-and-delta/``: line and phase values, and one of them built by drawing."""

import math
from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING

from pycore import phasor, quantity
from pycore.calculators.neutral_current.fields import BY_NAME as NEUTRAL_FIELDS
from pycore.calculators.star_and_delta import words
from pycore.calculators.star_and_delta.circuit import Solution, ThreeLoads, solve
from pycore.calculators.star_and_delta.workings import working
from pycore.constructions.construction import Arm, Picture
from pycore.forms import conventions
from pycore.forms.conventions import choice_field
from pycore.forms.loads import read_load
from pycore.forms.reading import Reader
from pycore.practice.task import CALCULATED, DRAWN, Mistake
from pycore.quantity import NO_BREAK_SPACE
from pycore.sheet.plan import Plan
from pycore.sums import amounts as figures
from pycore.sums.accuracy import SumAccuracy
from pycore.sums.answer import Field, Output, Working
from pycore.sums.case import SumCase
from pycore.sums.fields import drawing_fields
from pycore.sums.notes import SMALL_SHEET, SheetWords, sheet_words
from pycore.sums.page import SumPage, outputs_on_paper
from pycore.sums.problem import SheetProblem, read_sheet
from pycore.sums.wording import Telling
from pycore.trig import ROOT_THREE
from pycore.words import Phrase, Symbol, plain, say
from pycore.words import sums as sum_words
from pycore.words.loads import OPEN

if TYPE_CHECKING:
    from pycore.practice.codes import Code

NAMES = ("z1", "z2", "z3")
NEXT = {1: 2, 2: 3, 3: 1}
BEFORE = {1: 3, 2: 1, 3: 2}
FIELDS: tuple[Field, ...] = (
    *(
        Field(name, words.load_label(number), "phasor", "values", default, "Ω",
              help=words.LOAD_HELP if number == 3 else "", sample=f"i{number}")
        for number, (name, default) in enumerate(zip(NAMES, ("20", "25", "40"), strict=True), start=1)
    ),
    Field("volts", words.VOLTAGES["line"], "quantity", "values", "400", "V"),
    choice_field("connection", words.CONNECTION, "method", "delta", words.CONNECTIONS),
    choice_field("line", words.LINE, "loads", "1",
                 tuple((str(n), words.line_option(f"L{n}", f"L{NEXT[n]}")) for n in NEXT)),
    choice_field("known", words.KNOWN, "loads", "line", words.KNOWN_VOLTAGES),
    NEUTRAL_FIELDS["sequence"],
    NEUTRAL_FIELDS["names"],
    *drawing_fields("units", words.ZERO),
)  # fmt: skip
BY_NAME = {field.name: field for field in FIELDS}
Loads = tuple[complex | None, complex | None, complex | None]


def other_of(connection: str, line: int) -> int:
    """The number of the phasor that is taken off: the next line's voltage, or the branch before."""
    return NEXT[line] if connection == "star" else BEFORE[line]


def tags_of(connection: str, line: int, names: str) -> tuple[dict[int, Phrase], Symbol, Symbol]:
    """Tags of the three phasors, the symbol of what is drawn, and that of the voltage at 0°."""
    short = {number: name.removeprefix("L") for number, name in enumerate(conventions.NAMES[names], start=1)}
    between = {number: short[number] + short[NEXT[number]] for number in NEXT}
    if connection == "star":
        phases: dict[int, Phrase] = {number: (Symbol("V", short[number]),) for number in NEXT}
        return phases, Symbol("V", between[line]), Symbol("V", short[1])
    branches: dict[int, Phrase] = {number: (Symbol("I", between[number]),) for number in NEXT}
    return branches, Symbol("I", short[line]), Symbol("V", between[1])


class StarDeltaCase(SumCase):
    """Two phasors of the three, the second turned round."""

    slug = "star-and-delta"
    fields = FIELDS
    scenario = words.SCENARIO
    on_sheet = words.TITLE
    typed_sizes = False

    def __init__(self, problem: SheetProblem, solution: Solution) -> None:
        self.solution, self.star = solution, problem["connection"] == "star"
        self.result_word = words.RESULTS[problem["connection"]]
        line = self.line = int(problem["line"])
        other = self.other = other_of(problem["connection"], line)
        own, symbol, origin = tags_of(problem["connection"], line, problem["names"])
        self.own = own
        values = solution.phases if self.star else solution.branches
        # In delta angles count from the voltage between the first two lines.
        turn = 1.0 + 0j if self.star else phasor.polar(1.0, -phasor.angle(solution.between[0]))
        self.values = tuple(value * turn for value in values)
        drawn = ((line, self.values[line - 1]), (other, -self.values[other - 1]))
        arms = tuple(
            Arm(f"i{number}", number, phasor.magnitude(value), _tidy(phasor.angle(value)))
            for number, value in drawn if value != 0
        )  # fmt: skip
        tags = {f"i{number}": tag for number, tag in own.items()}
        tags[f"i{other}"] = ("−", *own[other])
        tags |= {"i12": ("",), "i13": ("",), "i23": ("",), "sum": (symbol,), "return": ("−", symbol)}
        reference = arms[0].angle if problem["reference"] == "current" else 0.0
        telling = Telling(
            tags=tags,
            lines=tuple(plain(tags[f"i{number}"]) for number in (1, 2, 3)),
            reference=tags[arms[0].key] if arms[0].angle == reference else (origin,),
            voltage=(origin,),
            writing=problem.writing,
            protractor=problem["protractor"],
            polar=problem["angles"] == "polar",
            words=words.VOLTS if self.star else words.AMPERES,
        )
        picture = Picture(problem["first"], problem["rotation"], reference)
        super().__init__(problem, arms, telling.lines, picture, telling)

    def further_mistakes(self, plan: Plan) -> tuple[Mistake, ...]:
        """Added for taken off, a branch for the line, the root of three where loads differ, slips of impedance."""
        return tuple(self._mistakes())

    def _difference(self, values: "tuple[complex, ...]") -> complex:
        return values[self.line - 1] - values[self.other - 1]

    def _mistakes(self) -> Iterator[Mistake]:
        turn, both = phasor.polar(1.0, -self.picture.reference), (DRAWN, CALCULATED)
        first, second = self.values[self.line - 1], self.values[self.other - 1]
        yield _mistake("added", both, (first + second) * turn)
        yield _mistake("first-turned", both, (second - first) * turn)
        for number, value in ((self.line, first), (self.other, second)):
            if value != 0:
                # It is where a drawing ends that leaves the other out.
                yield _mistake("branch-for-line", both, value * turn, named=self.own[number])
        if self.star:
            return
        yield _mistake("star-voltage", both, self.total * turn / ROOT_THREE)
        if not self.solution.balanced and first != 0:
            root = ROOT_THREE * phasor.magnitude(first)
            yield _mistake("root-three-unbalanced", both, None, root, self.own[self.line])
        yield from self._of_loads(turn)

    def _of_loads(self, turn: complex) -> Iterator[Mistake]:
        """What comes of loads whose size or angle was taken wrongly."""
        loads = self.solution.given.loads
        if all(load is None or load.imag == 0 for load in loads):
            return
        sizes = [0.0 if load is None else 1.0 / phasor.magnitude(load) for load in loads]
        added = [0.0 if load is None else 1.0 / (load.real + math.fabs(load.imag)) for load in loads]
        angles = [0.0 if load is None else phasor.angle(load) for load in loads]
        across = [value * phasor.polar(1.0, -phasor.angle(self.solution.between[0])) for value in self.solution.between]
        straight = tuple(volt * size for volt, size in zip(across, sizes, strict=True))
        yield _mistake("angles-of-loads", (DRAWN, CALCULATED), self._difference(straight) * turn)
        slipped = tuple(
            volt * phasor.polar(share, -angle) for volt, share, angle in zip(across, added, angles, strict=True)
        )
        yield _mistake("size-by-adding", (DRAWN, CALCULATED), self._difference(slipped) * turn)

    def sheet_words(self, plan: Plan, kind: str) -> SheetWords:
        """The notes of a kind of sheet and what it shows."""
        given = self.given_words(short=plan.layout.paper == SMALL_SHEET)
        back = self.star and self.problem["known"] == "line"
        task = words.TASK_BACK if back else words.TASKS[self.problem["connection"]]
        return sheet_words(self, plan, kind, task, given)

    @property
    def connected(self) -> bool:
        """Whether any load is there at all; in star the voltages can be drawn without."""
        return any(load is not None for load in self.solution.given.loads)

    def load_text(self, number: int) -> str:
        """A load as it is said."""
        load = self.solution.given.loads[number - 1]
        return OPEN if load is None else figures.impedance(load, self.telling.mark)

    def given_words(self, *, short: bool = False) -> str:
        """Loads, connection, voltage and sequence; where room is ``short``, the usual sequence is left out."""
        if not self.connected:
            loads = words.NO_LOADS
        elif self.solution.balanced:
            loads = words.each(self.load_text(1))
        else:
            named = zip(self.load_names(), (1, 2, 3), strict=True)
            loads = ", ".join(words.named_load(name, self.load_text(number)) for name, number in named)
        volts = quantity.plain(round(self.solution.given.line_voltage, 2), self.telling.mark)
        told = words.between_lines(f"{volts}{NO_BREAK_SPACE}V")
        one, two, three = conventions.line_names(self.problem["names"])
        sequence = (one, two, three) if self.problem["sequence"] == "123" else (one, three, two)
        order = "" if short and self.problem["sequence"] == "123" else ", ".join(sequence)
        return words.given(loads, self.problem["connection"], told, order)

    def load_names(self) -> tuple[str, ...]:
        """Each load's symbol: by its line in star, by both its lines in delta."""
        short = [name.removeprefix("L") for name in conventions.line_names(self.problem["names"])]
        indices = short if self.star else [short[number - 1] + short[NEXT[number] - 1] for number in (1, 2, 3)]
        return tuple(plain((Symbol("Z", index),)) for index in indices)


def _tidy(angle: float) -> float:
    """An angle that is a whole degree but for rounding, as that degree: 30, not 29.999999999999996."""
    near = float(round(angle))
    return near if math.fabs(angle - near) < 1e-9 else angle


def _mistake(
    key: str, how: tuple[str, ...], point: complex | None, size: float | None = None, named: Phrase = ()
) -> Mistake:
    name, look = words.mistake(key, a=named)
    given = phasor.magnitude(point) if point is not None else size or 0.0
    return Mistake(key, how, given, point, name, look)


def _loads(reader: Reader) -> Loads:
    first = read_load(reader, "z1", words.bad_load)
    second, third = (read_load(reader, name, words.bad_load) if reader.given(name) else first for name in NAMES[1:])
    return first, second, third


class StarAndDelta(SumPage[StarDeltaCase]):
    """The page ``/star-and-delta/``."""

    slug = "star-and-delta"
    title = words.TITLE
    description = words.DESCRIPTION
    scenario = words.SCENARIO
    fields = FIELDS
    cautions = words.CAUTIONS
    topic = 2

    def case(self, form: Mapping[str, str]) -> StarDeltaCase:
        """The form as a case. Raises InputError."""
        reader = Reader(form, BY_NAME, self.labels(form))
        connection, line = reader.choice("connection"), int(reader.choice("line"))
        loads = _loads(reader)
        volts = reader.amount("volts", "V", 1.0, 1e5) or 400.0
        between = volts * ROOT_THREE if reader.choice("known") == "phase" else volts
        other = other_of(connection, line)
        if not reader.faults and connection == "delta" and loads[line - 1] is None and loads[other - 1] is None:
            reader.fault(NAMES[line - 1], words.nothing_flows(reader.label(NAMES[line - 1])))
        if reader.faults:
            reader.finish()
        solution = solve(ThreeLoads(connection, between, loads, reader.choice("sequence")))
        drawn, unit = (solution.phases, "V") if connection == "star" else (solution.branches, "A")
        finely = ".4g" if connection == "star" else ".3g"
        sizes = [float(format(phasor.magnitude(drawn[number - 1]), finely)) for number in (line, other)]
        return StarDeltaCase(read_sheet(reader, FIELDS, sizes, unit, computed=True), solution)

    def outputs(self, case: StarDeltaCase, plan: Plan) -> tuple[Output, ...]:
        """What is drawn, then every line and phase value, and the power."""
        solution, mark, writing = case.solution, case.telling.mark, case.telling.writing
        angle = sum_words.NONE if case.angle is None else quantity.fixed(case.angle, 1, mark) + "°"
        size = case.amount(case.size).partition(NO_BREAK_SPACE)[0]
        names = conventions.NAMES[case.problem["names"]]
        made = [
            Output("result", case.size, size, writing.unit, words.drawn(case.telling.tags["sum"], star=case.star)),
            Output("result-angle", case.angle, angle, label=say(sum_words.ANGLE)),
            _value("phase-voltage", phasor.magnitude(solution.phases[0]), "V", mark, say(words.PHASE_VOLTAGE)),
            _value("line-voltage", solution.given.line_voltage, "V", mark, say(words.LINE_VOLTAGE)),
        ]
        labels = [(words.of_load(number), words.of_line(name)) for number, name in enumerate(names, start=1)]
        for place, (kind, values) in enumerate((("branch", solution.branches), ("line", solution.lines))):
            made += [
                _value(f"{kind}-{number}", phasor.magnitude(value), "A", mark, label[place])
                for number, (value, label) in enumerate(zip(values, labels, strict=True), start=1)
            ]
        apparent = phasor.magnitude(solution.power)
        made += [
            _value("power", solution.power.real, "W", mark, say(words.POWER)),
            _value("reactive", solution.power.imag, "var", mark, say(words.REACTIVE)),
            Output("factor", solution.power.real / apparent, quantity.fixed(solution.power.real / apparent, 3, mark),
                   label=say(words.FACTOR))
            if apparent else Output("factor", None, sum_words.NONE, label=say(words.FACTOR)),
        ]  # fmt: skip
        return (*made, *outputs_on_paper(case, plan, "result-length"))

    def given(self, case: StarDeltaCase) -> Phrase:
        """The values in words."""
        return (case.given_words(),)

    def remarks(self, case: StarDeltaCase) -> tuple[Phrase, ...]:
        """What is built here, √3 where it holds, and the other connection."""
        solution, mark = case.solution, case.telling.mark
        result, first, second = case.telling.tags["sum"], case.own[case.line], case.own[case.other]
        made = [words.is_difference(result, first, second)]
        current = figures.amount(phasor.magnitude(solution.lines[0]), "A", mark)
        if case.star:
            made.append(words.root_three(result, first, ahead=solution.given.sequence == "123"))
        elif solution.balanced:
            branch = figures.amount(phasor.magnitude(solution.branches[0]), "A", mark)
            made.append(words.balanced_delta(current, branch))
        else:
            made.append(words.unbalanced_delta())
        if solution.balanced and case.connected:
            given = solution.given
            name = "delta" if case.star else "star"
            other = solve(ThreeLoads(name, given.line_voltage, given.loads, given.sequence))
            flows = figures.amount(phasor.magnitude(other.lines[0]), "A", mark)
            power, here = (figures.amount(one.power.real, "W", mark) for one in (other, solution))
            made.append(words.other_connection(name, flows, power, current, here))
        return tuple(made)

    def calculated(self, case: StarDeltaCase, plan: Plan) -> tuple[Working, ...]:
        """Every line and phase value with numbers, and what a hand can do."""
        return (working(case), SumAccuracy(case).working(plan))

    def echo(self, case: StarDeltaCase) -> dict[str, Mapping[str, str]]:
        """Each load's size and angle."""
        made: dict[str, Mapping[str, str]] = {}
        mark = case.telling.mark
        for name, load in zip(NAMES, case.solution.given.loads, strict=True):
            said = OPEN if load is None else figures.polar(load, "Ω", mark)
            made[name] = {"said": "" if load is not None and load.imag == 0 and case.problem.typed[name] else said}
        return made

    def labels(self, form: Mapping[str, str]) -> dict[str, str]:
        """What the voltage is that is given."""
        return {"volts": words.VOLTAGES.get(form.get("known", "line"), words.VOLTAGE)}

    def options(self, form: Mapping[str, str]) -> dict[str, dict[str, str]]:
        """The lines by their names, each with what is taken off: in star the next line's voltage."""
        names = conventions.NAMES.get(form.get("names", "L123"), conventions.NAMES["L123"])
        shown = {str(n): words.line_option(names[n - 1], names[NEXT[n] - 1]) for n in NEXT}
        if form.get("connection", "delta") == "delta":
            shown = {str(n): names[n - 1] for n in NEXT}
        return {"line": shown}

    def practice_form(self, code: "Code", choices: Mapping[str, str] | None = None) -> dict[str, str]:
        """The form that holds a code's problem, with a class's own choices. Raises NoProblem."""
        # Only practice needs it; the first answer need not wait for its import.
        from pycore.calculators.star_and_delta.practice_form_tmp import form_of

        return form_of(code, choices)


def _value(name: str, value: float, unit: str, mark: str, label: Phrase) -> Output:
    told, _, written = figures.amount(value, unit, mark).partition(NO_BREAK_SPACE)
    return Output(name, value, told, written, label)
