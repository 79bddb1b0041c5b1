"""What a lesson on the topic needs: the levels of its problems, the lesson plan, the readings at a rig."""

from pycore.words.lesson_plans import (
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
    "support": "the supply voltage of known reactances and a known current",
    "core": "the reactances from millihenries and microfarads at 50 Hz first",
    "stretch": "a coil with resistance of its own, at 50 or 60 Hz",
}
"""What each level asks of a learner: read off the generator, which never changes."""

PLAN = LessonPlan(
    slug="series-circuit",
    aim="Find current and voltages of R, L and C in series, draw the voltages on the current, and explain why a part "
        "can have more volts than the supply.",
    parts=(
        LessonStage("Starter", 5, (
            "On the board: {values}. Show of hands: is more than 230 V possible across any one part? Keep the count.",
            "Ask what all three share. In series: the current. So the current is drawn first, and everything is "
            "counted from it.",
        )),
        LessonStage("Demonstration", 15, (
            "Reactances first, aloud: 2πfL and 1 ÷ (2πfC), with 0.2 H and 100 µF, not 0.2 mH and 100 F.",
            "Impedance {impedance}, so the current is {current}. Then each voltage: {voltage_1}, {voltage_2}, "
            "{voltage_3}.",
            "Classroom view: the coil’s voltage stands 90° ahead of the current, the capacitor’s 90° behind. The sum "
            "must come back to the supply: that is the check.",
        )),
        LessonStage("Guided work", 15, (
            "Everyone draws the same circuit at {scale}. Mind both scales: volts and amperes have their own.",
            "Ask back: {voltage_2} across the coil on a 230 V supply. Who kept their hand down at the start?",
            "Read the angle between supply and current off the drawing: {phase_angle}. Its cosine is the power factor.",
        )),
        LessonStage("Independent work", 20, (
            "A circuit of their own from the class set: work out, draw, measure the sum, compare with the supply.",
            "Done early: at which frequency would both reactances be equal? For this circuit {resonance}.",
        )),
        LessonStage("Exit question", 5, (
            "R 30 Ω and a reactance of 40 Ω in series on 100 V: what flows?",
            "{exit_current}: the impedance is {exit_impedance}, not 70 Ω. Who says 1.43 A has added ohms that stand "
            "at a "
            "right angle.",
        )),
    ),
    exit_values=(("r", "30 Ω"), ("l", "40 Ω"), ("c", ""), ("supply", "100 V")),
    handouts=handouts_of("series-circuit", Handout("Impedance triangle of the same circuit", "series-circuit",
                                                   (("drawn", "impedances"),)), rig_of("series-circuit")),
    listen=("two-pi-forgotten", "micro-as-milli", "impedances-as-numbers", "reactances-added", "kinds-exchanged"),
    cover_says=(
        "Write on the board: {values}. Ask: can one part have more than 230 V? Count hands and keep the number. "
        "5 minutes.",
        "Open the classroom view. Press the arrow key for each move and read its sentence aloud. 15 minutes.",
        "Hand out the problem sheet. The lengths come from the answers below: give the current and the three voltages, "
        "so that all can draw. 25 minutes.",
        "Ask each learner to measure the last line: it must come to 230 V. Who is far off draws it again. 10 minutes.",
        "Ask again: can one part have more than the supply? Yes: the coil has {voltage_2}. 5 minutes.",
    ),
    cover_stops=cover_stops("Resonance on a real bench: parts can have several times the supply’s voltage. Not today."),
    cover_handouts=cover_handouts_of("series-circuit"),
)  # fmt: skip

READINGS = RecordingSheet(
    "series-circuit", "Series circuit", ("I, A", "V of R", "V of L", "V of C", "supply, V"),
    "Same supply throughout. Always in this order: current, each part, supply.", "the supply voltage", "V",
    "mean of supply; limit of the meter", "from the parts' values and I",
    (DISCHARGED, "Parts and leads stand more than the supply: near resonance they get it."),
)  # fmt: skip
