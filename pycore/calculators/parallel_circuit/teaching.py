"""What a lesson on the topic needs: the levels of its problems, the lesson plan, the readings at a rig."""

from pycore.words.lesson_plans import (
    LessonPlan,
    LessonStage,
    cover_handouts_of,
    cover_stops,
    handouts_of,
    rig_of,
)
from pycore.words.rig import DISCHARGED, JAW, RecordingSheet

LEVELS = {
    "support": "a resistor beside a coil of known reactance",
    "core": "resistor, coil and capacitor, the reactances worked out first",
    "stretch": "a coil with resistance of its own beside resistor and capacitor",
}
"""What each level asks of a learner: read off the generator, which never changes."""

PLAN = LessonPlan(
    slug="parallel-circuit",
    aim="Find the current of each branch, draw them on the common voltage, and see why the whole is less than the "
        "branches added as numbers.",
    parts=(
        LessonStage("Starter", 5, (
            "On the board: {values}. What do branches side by side share? The voltage: it is drawn first this time.",
            "Everyone guesses the whole current. Keep the guesses.",
        )),
        LessonStage("Demonstration", 15, (
            "Each branch alone: {current_1}, {current_2}, {current_3}. Branch 2 has resistance and coil: impedance "
            "first, then Ohm’s law, then its angle.",
            "Classroom view: the resistor’s current lies along V, the coil branch lags, the capacitor leads by 90°.",
            "Sum: {answer}. As plain numbers the branches would give nearly twice as much: where did it go? Coil and "
            "capacitor hand current to each other.",
        )),
        LessonStage("Guided work", 15, (
            "Everyone draws the three currents at {scale}. Stop after the second: with the capacitor still to come, is "
            "the whole going to be longer or shorter?",
            "Read the angle of the whole current from V: {phase_angle}.",
        )),
        LessonStage("Independent work", 20, (
            "Branches of their own from the class set: each current and angle, then the drawing, then admittance as "
            "the check.",
            "Done early: which frequency brings whole current and voltage in phase? Here {resonance}.",
        )),
        LessonStage("Exit question", 5, (
            "A resistor of 24 Ω and a coil of 32 Ω reactance side by side on 240 V: what is the whole current?",
            "{exit_current}, from 10 A and 7.5 A at a right angle. Who says 17.5 A has added the sizes.",
        )),
    ),
    exit_values=(("b1", "24"), ("b2", "j32"), ("b3", ""), ("supply", "240 V")),
    handouts=handouts_of("parallel-circuit", rig_of("parallel-circuit")),
    listen=("branch-as-numbers", "branch-reactance-only", "kinds-exchanged", "plain-sum", "impedances-in-series"),
    cover_says=(
        "Write on the board: {values}. Ask everyone to guess the whole current and write it down. 5 minutes.",
        "Open the classroom view. Press the arrow key for each move and read its sentence aloud. 15 minutes.",
        "Hand out the problem sheet. Give the three branch currents from the answers below with their angles as the "
        "finished drawing shows them; learners draw and add. 25 minutes.",
        "Early finishers draw them again in another order: the end must be the same point. 10 minutes.",
        "Ask: why is the whole only {answer}, less than the branches added? They point different ways. 5 minutes.",
    ),
    cover_stops=cover_stops(),
    cover_handouts=cover_handouts_of("parallel-circuit"),
)  # fmt: skip

READINGS = RecordingSheet(
    "parallel-circuit", "Parallel circuit", ("V", "I₁, A", "I₂, A", "I₃, A", "whole I, A"),
    f"{JAW} Always in this order: voltage, each branch, the whole.", "the whole current", "A",
    "mean of whole I; limit of the meter", "from the branches' values and V", (DISCHARGED,),
)  # fmt: skip
