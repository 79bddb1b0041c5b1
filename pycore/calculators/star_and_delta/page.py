"""The page ``/star-and-delta/``: line and phase values, and one of them built by drawing."""

from collections.abc import Mapping

from pycore import phasor, quantity
from pycore.calculators.star_and_delta import TOPIC, words
from pycore.calculators.star_and_delta.case import StarDeltaCase, other_of, read_loads
from pycore.calculators.star_and_delta.circuit import ThreeLoads, solve
from pycore.calculators.star_and_delta.fields import BY_NAME, FIELDS, NAMES, NEXT
from pycore.calculators.star_and_delta.workings import all_three, working
from pycore.forms import conventions
from pycore.forms.common import lines_of
from pycore.forms.reading import Reader
from pycore.quantity import NO_BREAK_SPACE
from pycore.sheet.plan import Plan
from pycore.sums import amounts as figures
from pycore.sums.accuracy import SumAccuracy
from pycore.sums.answer import Output, Working
from pycore.sums.page import SumPage, angle_text, outputs_on_paper
from pycore.sums.problem import read_sheet
from pycore.trig import ROOT_THREE
from pycore.words import boards
from pycore.words import sums as sum_words
from pycore.words.phrase import Phrase, say


class StarAndDelta(SumPage[StarDeltaCase]):
    """The page ``/star-and-delta/``."""

    slug = "star-and-delta"
    room = __package__
    title = words.TITLE
    description = words.DESCRIPTION
    scenario = words.SCENARIO
    fields = FIELDS
    cautions = words.CAUTIONS
    topic = TOPIC
    board = boards.THREE_PHASE

    def case(self, form: Mapping[str, str]) -> StarDeltaCase:
        """The form as a case. Raises InputError."""
        reader = Reader(form, BY_NAME, self.labels(form))
        connection, line = reader.choice("connection"), int(reader.choice("line"))
        loads = read_loads(reader)
        volts = reader.amount("volts", "V", 1.0, 1e5) or 400.0
        between = volts * ROOT_THREE if reader.choice("known") == "phase" else volts
        other = other_of(connection, line)
        if not reader.faults and connection == "delta" and loads[line - 1] is None and loads[other - 1] is None:
            reader.fault(NAMES[line - 1], words.nothing_flows(reader.label(NAMES[line - 1])))
        reader.finish()
        solution = solve(ThreeLoads(connection, between, loads, reader.choice("sequence")))
        drawn, unit = (solution.phases, "V") if connection == "star" else (solution.branches, "A")
        finely = ".4g" if connection == "star" else ".3g"
        sizes = [float(format(phasor.magnitude(drawn[number - 1]), finely)) for number in (line, other)]
        return StarDeltaCase(read_sheet(reader, FIELDS, sizes, unit, computed=True), solution)

    def outputs(self, case: StarDeltaCase, plan: Plan) -> tuple[Output, ...]:
        """What is drawn, then every line and phase value, and the power."""
        solution, mark, writing = case.solution, case.notation.mark, case.notation.writing
        size = case.amount(case.size).partition(NO_BREAK_SPACE)[0]
        names = conventions.NAMES[case.problem["names"]]
        outputs = [
            Output("result", case.size, size, writing.unit, words.drawn(case.notation.tags["sum"], star=case.star)),
            Output("result-angle", case.angle, angle_text(case), label=say(sum_words.ANGLE)),
            _value("phase-voltage", phasor.magnitude(solution.phases[0]), "V", mark, say(words.PHASE_VOLTAGE)),
            _value("line-voltage", solution.circuit.line_voltage, "V", mark, say(words.LINE_VOLTAGE)),
        ]
        labels = [(words.of_load(number), words.of_line(name)) for number, name in enumerate(names, start=1)]
        for place, (kind, values) in enumerate((("branch", solution.branches), ("line", solution.lines))):
            outputs += [
                _value(f"{kind}-{number}", phasor.magnitude(value), "A", mark, label[place])
                for number, (value, label) in enumerate(zip(values, labels, strict=True), start=1)
            ]
        apparent = phasor.magnitude(solution.power)
        outputs += [
            _value("power", solution.power.real, "W", mark, say(words.POWER)),
            _value("reactive", solution.power.imag, "var", mark, say(words.REACTIVE)),
            Output("factor", solution.power.real / apparent, quantity.fixed(solution.power.real / apparent, 3, mark),
                   label=say(words.FACTOR))
            if apparent else Output("factor", None, sum_words.NONE, label=say(words.FACTOR)),
        ]  # fmt: skip
        return (*outputs, *outputs_on_paper(case, plan, "result-length"))

    def remarks(self, case: StarDeltaCase) -> tuple[Phrase, ...]:
        """What is built here, √3 where it holds, and the other connection."""
        solution, mark = case.solution, case.notation.mark
        result, first, second = case.notation.tags["sum"], case.own[case.line], case.own[case.other]
        sentences = [words.is_difference(result, first, second)]
        current = figures.amount(phasor.magnitude(solution.lines[0]), "A", mark)
        if case.star:
            sentences.append(words.root_three(result, first, ahead=solution.circuit.sequence == "123"))
        elif solution.balanced:
            branch = figures.amount(phasor.magnitude(solution.branches[0]), "A", mark)
            sentences.append(words.balanced_delta(current, branch))
        else:
            sentences.append(words.UNBALANCED_DELTA)
        if solution.balanced and case.connected:
            circuit = solution.circuit
            name = "delta" if case.star else "star"
            other = solve(ThreeLoads(name, circuit.line_voltage, circuit.loads, circuit.sequence))
            flows = figures.amount(phasor.magnitude(other.lines[0]), "A", mark)
            power, here = (figures.amount(one.power.real, "W", mark) for one in (other, solution))
            sentences.append(words.other_connection(name, flows, power, current, here))
        return tuple(sentences)

    def calculated(self, case: StarDeltaCase, plan: Plan) -> tuple[Working, ...]:
        """Every line and phase value with numbers, and what a hand can do."""
        return (all_three(case), working(case), SumAccuracy(case).working(plan))

    def echo(self, case: StarDeltaCase) -> dict[str, Mapping[str, str]]:
        """Each load in the form in which it was not typed; of an empty field, the load that it repeats."""
        return {name: {"said": case.echo_of(number)} for number, name in enumerate(NAMES, start=1)}

    def labels(self, form: Mapping[str, str]) -> dict[str, str]:
        """What the voltage is that is given, and the scale in the unit of what is drawn."""
        unit = "V" if form.get("connection") == "star" else "A"
        voltage = words.VOLTAGES.get(form.get("known", "line"), words.VOLTAGE)
        return {"volts": voltage, "scale": sum_words.scale_label(unit)}

    def options(self, form: Mapping[str, str]) -> dict[str, dict[str, str]]:
        """The lines by their names, each with what is subtracted: in star the next line's voltage."""
        names = lines_of(form)
        options = {str(n): words.line_option(names[n - 1], names[NEXT[n] - 1]) for n in NEXT}
        if form.get("connection", "delta") == "delta":
            options = {str(n): names[n - 1] for n in NEXT}
        return {"line": options}


def _value(name: str, value: float, unit: str, mark: str, label: Phrase) -> Output:
    number, _, written_unit = figures.amount(value, unit, mark).partition(NO_BREAK_SPACE)
    return Output(name, value, number, written_unit, label)


PAGE = StarAndDelta()
