"""What a lesson on the topic needs: the levels of its problems, the lesson plan, the readings at a rig."""

from pycore.words.lesson_plans import (
    LessonPlan,
    LessonStage,
    cover_handouts_of,
    cover_stops,
    handouts_of,
    rig_of,
)
from pycore.words.rig import RecordingSheet

LEVELS = {
    "support": "both readings above zero",
    "core": "both readings above zero, down to a power factor near 0.5",
    "stretch": "one reading below zero",
}
"""What each level asks of a learner: read off the generator, which never changes."""

PLAN = LessonPlan(
    slug="two-wattmeters",
    aim="From the readings of two wattmeters find power, reactive power and angle of a balanced three-wire load.",
    parts=(
        LessonStage("Starter", 5, (
            "On the board: {values}. Three lines, only two wattmeters: is one line’s power lost? Let pairs argue it.",
        )),
        LessonStage("Demonstration", 15, (
            "On the page, open the phasor diagram below the answer: each meter sees its own line current and a "
            "voltage between "
            "lines, 30° away from the phase voltage. So the meters read {reading_1} and {reading_2}, not the same.",
            "Sum of both: {power}. √3 times their difference, the second less the first: {reactive_power}.",
            "Classroom view: readings one after the other, the reactive power square to them; the slanting line is S.",
        )),
        LessonStage("Guided work", 15, (
            "Everyone draws it at {scale}, reads S ({answer}) and the angle ({lag}).",
            "Ask: the same load at 60°, what does the first meter show? Nothing. And beyond? It reads backwards, and "
            "its reading counts as minus.",
        )),
        LessonStage("Independent work", 20, (
            "Readings of their own from the class set: P, Q, S, angle; check by the tangent formula.",
            "Done early: why does none of this hold with a neutral that carries current?",
        )),
        LessonStage("Exit question", 5, (
            "Two wattmeters on a balanced load read −500 W and 2000 W. Power, and power factor?",
            "{exit_power} and {exit_power_factor}. Who says 2500 W has lost the minus; then ask what the minus tells: "
            "power factor below 0.5.",
        )),
    ),
    exit_values=(("known", "readings"), ("w1", "-500"), ("w2", "2000")),
    handouts=handouts_of("two-wattmeters", rig_of("two-wattmeters")),
    listen=("root-three-forgotten", "readings-exchanged", "wrong-way-at-tip", "plain-sum"),
    cover_says=(
        "Write on the board: {values}. Say: two meters read {reading_1} and {reading_2}. Ask for the whole power: just "
        "add them. {power}. 5 minutes.",
        "Open the classroom view. Press the arrow key for each move and read its sentence aloud. 15 minutes.",
        "Hand out the problem sheet. Learners draw both readings in one line and the reactive power square to them. "
        "25 minutes.",
        "Early finishers: the same load at 60°, typed on the page. What does the first meter show? Nothing. 10 "
        "minutes.",
        "Ask: readings of −500 W and 2000 W, what is the power? {exit_power}. 5 minutes.",
    ),
    cover_stops=cover_stops("Leads of real wattmeters: nobody moves one, not even with the supply off, without the "
                            "lecturer."),
    cover_handouts=cover_handouts_of("two-wattmeters"),
)  # fmt: skip

READINGS = RecordingSheet(
    "two-wattmeters", "Two wattmeters", ("V lines", "I, A", "P₁, W", "P₂, W"),
    "Always in this order: voltage, current, both wattmeters with their signs.", "the apparent power", "VA",
    "√3 × V × I; limits of both meters", "from P₁ and P₂",
    ("Leads were connected with the supply off and proved dead; no current circuit is opened under load.",),
)  # fmt: skip
