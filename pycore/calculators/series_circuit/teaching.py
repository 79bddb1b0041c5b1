"""What a lesson on the topic needs: the levels of its problems, the lesson plan, the readings at a rig."""

from pycore.words.lesson_plans import (
    COVER_DEMONSTRATION,
    Handout,
    LessonPlan,
    LessonStage,
    cover_handouts_of,
    cover_stops,
    handouts_of,
    rig_of,
)
from pycore.words.rig import DISCHARGED, RecordingSheet

LEVELS = {
    "support": "the supply voltage, from known reactances and a known current",
    "core": "first the reactances from millihenries and microfarads at 50 Hz",
    "stretch": "a coil that also has resistance, at 50 or 60 Hz",
}
"""What each level asks of a learner: read off the generator, which never changes."""

PLAN = LessonPlan(
    slug="series-circuit",
    aim=(
        "Find the current and the voltages of R, L and C in series, and draw the voltages with the current as "
        "reference. Explain why one component can have a higher voltage than the supply."
    ),
    parts=(
        LessonStage("Starter", 5, (
            "On the board: {values}. Show of hands: can any one component have more than 230 V? Write down the number "
            "of hands.",
            "Ask: what do all three have in common? In series, the current. So draw the current first and measure all "
            "angles from it.",
        )),
        LessonStage("Demonstration", 15, (
            "Calculate the reactances first, aloud: 2πfL and 1 ÷ (2πfC), with 0.2 H and 100 µF, not 0.2 mH and 100 F.",
            "Impedance {impedance}, so the current is {current}. Then each voltage: {voltage_1}, {voltage_2}, "
            "{voltage_3}.",
            "Lesson view: the coil’s voltage leads the current by 90°; the capacitor’s voltage lags it by 90°. They "
            "point in opposite directions: subtract them first. The sum with the resistor’s voltage must equal the "
            "supply voltage: that is the check.",
        )),
        LessonStage("Guided work", 15, (
            "Everyone draws the same circuit at {scale}. There are two scales: one for volts and one for amperes.",
            "Come back to the first question: {voltage_2} across the coil on a 230 V supply. Who would answer "
            "differently now?",
            "Measure the angle between the supply voltage and the current: {phase_angle}. Its cosine is the power "
            "factor.",
        )),
        LessonStage("Independent work", 20, (
            "Each learner has a different circuit from the class set: calculate, draw, measure the sum, compare with "
            "the supply voltage.",
            "Extra work: at which frequency are both reactances equal? For this circuit: {resonance}.",
        )),
        LessonStage("Exit question", 5, (
            "R 30 Ω and a reactance of 40 Ω in series on 100 V: what flows?",
            "{exit_current}: the impedance is {exit_impedance}, not 70 Ω. A learner who says 1.43 A added R and X as "
            "plain numbers; they are at right angles.",
        )),
    ),
    exit_values=(("r", "30 Ω"), ("l", "40 Ω"), ("c", ""), ("supply", "100 V")),
    handouts=handouts_of("series-circuit", Handout("Impedance triangle of the same circuit", "series-circuit",
                                                   (("drawn", "impedances"),)), rig_of("series-circuit")),
    listen=("two-pi-forgotten", "micro-as-milli", "impedances-as-numbers", "reactances-added", "kinds-exchanged"),
    cover_says=(
        "Write on the board: {values}. Ask: can one component have more than 230 V? Count the hands and write the "
        "number down. 5 minutes.",
        COVER_DEMONSTRATION,
        "Hand out the problem sheet. Write the current and the three voltages from the answers below on the board, so "
        "that everyone can draw. 25 minutes.",
        "Ask each learner to measure the last line: it must be about 230 V. Learners who are far off draw it again. "
        "10 minutes.",
        "Ask again: can one component have more voltage than the supply? Yes: the coil has {voltage_2}. 5 minutes.",
    ),
    cover_stops=cover_stops("No experiments with resonance: components can have several times the supply voltage."),
    cover_handouts=cover_handouts_of("series-circuit"),
)  # fmt: skip

READINGS = RecordingSheet(
    "series-circuit", "Series circuit", ("I, A", "V of R", "V of L", "V of C", "supply, V"),
    "The same supply for all readings. Always in this order: current, each component, supply.",
    "the supply voltage", "V",
    "mean of supply; limit of the meter", "from the component values and I",
    (DISCHARGED, (
        "Components and leads are rated for more than the supply voltage: near resonance the voltage is higher."
    )),
)  # fmt: skip
