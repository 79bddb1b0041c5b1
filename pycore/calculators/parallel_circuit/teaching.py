"""What a lesson on the topic needs: the levels of its problems, the lesson plan, the readings at a rig."""

from pycore.words.lesson_plans import (
    COVER_DEMONSTRATION,
    LessonPlan,
    LessonStage,
    cover_handouts_of,
    cover_stops,
    handouts_of,
    rig_of,
)
from pycore.words.rig import DISCHARGED, JAW, RecordingSheet

LEVELS = {
    "support": "a resistor in parallel with a coil of known reactance",
    "core": "resistor, coil and capacitor; the reactances must be calculated first",
    "stretch": "a coil that also has resistance, in parallel with a resistor and a capacitor",
}
"""What each level asks of a learner: read off the generator, which never changes."""

PLAN = LessonPlan(
    slug="parallel-circuit",
    aim=(
        "Find the current of each branch and draw the currents with the common voltage as reference. Explain why the "
        "supply current is less than the branch currents added as numbers."
    ),
    parts=(
        LessonStage("Starter", 5, (
            "On the board: {values}. What do parallel branches have in common? The voltage, so it is drawn first this "
            "time.",
            "Everyone estimates the supply current. Keep the estimates.",
        )),
        LessonStage("Demonstration", 15, (
            "Each branch by itself: {current_1}, {current_2}, {current_3}. Branch 2 has resistance and inductance: "
            "find its impedance first, then its current, then its angle.",
            "Lesson view: the resistor’s current is in phase with V, the current of the coil branch lags, the "
            "capacitor’s current leads by 90°.",
            "Sum: {answer}. As plain numbers the branch currents give nearly twice as much. Why? The reactive "
            "currents of coil and capacitor are opposite in phase and partly cancel.",
        )),
        LessonStage("Guided work", 15, (
            "Everyone draws the three currents at {scale}. Stop after the second: will the capacitor make the sum "
            "longer or shorter?",
            "Measure the angle between V and the supply current: {phase_angle}.",
        )),
        LessonStage("Independent work", 20, (
            "Each learner has a different circuit from the class set: each current and angle, then the drawing, then "
            "a check by admittance.",
            "Extra work: at which frequency are supply current and voltage in phase? Here: {resonance}.",
        )),
        LessonStage("Exit question", 5, (
            "A resistor of 24 Ω and a coil of 32 Ω reactance in parallel on 240 V: what is the supply current?",
            "{exit_current}, from 10 A and 7.5 A at right angles. A learner who says 17.5 A added the sizes.",
        )),
    ),
    exit_values=(("b1", "24"), ("b2", "j32"), ("b3", ""), ("supply", "240 V")),
    handouts=handouts_of("parallel-circuit", rig_of("parallel-circuit")),
    listen=("branch-as-numbers", "branch-reactance-only", "kinds-exchanged", "plain-sum", "impedances-in-series"),
    cover_says=(
        "Write on the board: {values}. Ask everyone to estimate the supply current and write it down. 5 minutes.",
        COVER_DEMONSTRATION,
        "Hand out the problem sheet. Write the three branch currents from the answers below on the board, with their "
        "angles from the finished drawing. Learners draw and add them. 25 minutes.",
        "Learners who finish early draw them again in another order: the end point must be the same. 10 minutes.",
        "Ask: why is the supply current only {answer}, less than the branch currents added as numbers? They point in "
        "different directions. 5 minutes.",
    ),
    cover_stops=cover_stops(),
    cover_handouts=cover_handouts_of("parallel-circuit"),
)  # fmt: skip

READINGS = RecordingSheet(
    "parallel-circuit", "Parallel circuit", ("V", "I₁, A", "I₂, A", "I₃, A", "supply I, A"),
    f"{JAW} Always in this order: voltage, each branch, supply current.", "the supply current", "A",
    "mean of supply I; limit of the meter", "from the branches' values and V", (DISCHARGED,),
)  # fmt: skip
