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
from pycore.words.rig import RecordingSheet

LEVELS = {
    "support": "both readings positive",
    "core": "both readings positive, down to a power factor near 0.5",
    "stretch": "one reading negative",
}
"""What each level asks of a learner: read off the generator, which never changes."""

PLAN = LessonPlan(
    slug="two-wattmeters",
    aim=(
        "From the readings of two wattmeters, find the active power, reactive power and phase angle of a balanced "
        "three-wire load."
    ),
    parts=(
        LessonStage("Starter", 5, (
            "On the board: {values}. Three lines but only two wattmeters: is the power of one line missed? Discuss in "
            "pairs.",
        )),
        LessonStage("Demonstration", 15, (
            "On the page, open the phasor diagram below the answer. Each wattmeter measures its own line current and "
            "a voltage between lines, which is 30° from the phase voltage. So the two read different values: "
            "{reading_1} and {reading_2}.",
            "Sum of both: {power}. √3 times (first reading minus second reading): {reactive_power}.",
            "Lesson view: the two readings in one line, tip to tail, then the reactive power at right angles. The "
            "third side is S.",
        )),
        LessonStage("Guided work", 15, (
            "Everyone draws it at {scale} and measures S ({apparent_power}) and the angle ({lag}).",
            "Ask: at a lag of 60°, what does the second wattmeter read? Zero. And above 60°? It reads backwards, and "
            "its reading is negative.",
        )),
        LessonStage("Independent work", 20, (
            "Each learner has different readings from the class set: P, Q, S and the angle. Check with the tangent "
            "formula.",
            "Extra work: why is this method wrong if a neutral carries current?",
        )),
        LessonStage("Exit question", 5, (
            "A balanced load, phase sequence L1, L2, L3: wattmeter 1 on L1 reads 2000 W, wattmeter 2 on L2 reads "
            "−500 W. What are the power and the power factor?",
            "{exit_power} and {exit_power_factor}. A learner who says 2500 W ignored the minus sign. Ask what the "
            "minus sign means: a power factor below 0.5.",
        )),
    ),
    exit_values=(("known", "readings"), ("w1", "2000"), ("w2", "-500")),
    handouts=handouts_of("two-wattmeters", rig_of("two-wattmeters")),
    listen=("root-three-forgotten", "readings-exchanged", "wrong-way-at-tip", "plain-sum"),
    cover_says=(
        "Write on the board: {values}. Say: the two wattmeters read {reading_1} and {reading_2}. Ask for the total "
        "power: add the readings. {power}. 5 minutes.",
        COVER_DEMONSTRATION,
        "Hand out the problem sheet. Learners draw both readings in one line and the reactive power at right angles "
        "to them. 25 minutes.",
        "Learners who finish early type the same load with a lag of 60° on the page. What does the second "
        "wattmeter read? Zero. 10 minutes.",
        "Ask: readings of 2000 W and −500 W, what is the power? {exit_power}. 5 minutes.",
    ),
    cover_stops=cover_stops("Nobody moves a lead of a real wattmeter without the lecturer, even with the supply off."),
    cover_handouts=cover_handouts_of("two-wattmeters"),
)  # fmt: skip

READINGS = RecordingSheet(
    "two-wattmeters", "Two wattmeters", ("V lines", "I, A", "P₁, W", "P₂, W"),
    "Always in this order: voltage, current, both wattmeters (with plus or minus sign).", "the apparent power", "VA",
    "√3 × V × I; limits of both meters", "from P₁ and P₂",
    ("Leads were connected with the supply off and proved dead; no current circuit is opened under load.",),
)  # fmt: skip
