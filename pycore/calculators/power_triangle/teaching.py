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
from pycore.words.rig import DISCHARGED, RecordingSheet

LEVELS = {
    "support": "the apparent power of one load, from active power and power factor",
    "core": "the capacitor’s reactive power for a target, single-phase",
    "stretch": "the capacitor’s reactive power for a target, three-phase",
}
"""What each level asks of a learner: read off the generator, which never changes."""

PLAN = LessonPlan(
    slug="power-triangle",
    aim="Draw active, reactive and apparent power as a triangle, and find the capacitor that brings the power factor "
        "to a target.",
    parts=(
        LessonStage("Starter", 5, (
            "On the board: {values}. The energy meter counts kWh, that is active power over time. The cable must "
            "carry the full current, which depends on kVA.",
            "All estimate the line current before and after correction.",
        )),
        LessonStage("Demonstration", 15, (
            "Draw P to the right and, from its tip, Q at right angles, upward: {active_power} and {reactive_power}. "
            "The third side is S, {apparent_power}: measure it; do not add P and Q.",
            "Lesson view: P does not change. Mark the target angle at the start; where its line meets Q, the "
            "capacitor’s reactive power ends. It points straight down from the tip of Q.",
            "Capacitor: {correction}. In delta {capacitance_delta} each, in star {capacitance_star} each. Ask: why "
            "three times as much in star?",
        )),
        LessonStage("Guided work", 15, (
            "Everyone draws both triangles at {scale}. Before the capacitor is drawn, ask: where must its tip be to "
            "give the target angle?",
            "Measure S after correction: {apparent_power_after}. The current falls from {line_current} to "
            "{line_current_after}.",
        )),
        LessonStage("Independent work", 20, (
            "Each learner has a different load from the class set: triangle, target, kvar. Check with Q = P · tan φ.",
            "Extra work: how many kvar are needed for power factor 1? Is the last step worth it?",
        )),
        LessonStage("Exit question", 5, (
            "A load takes 3 kW and 4 kvar (lagging). What are its apparent power and its power factor?",
            "{exit_apparent_power} and {exit_power_factor}. A learner who says 7 kVA added P and Q as plain numbers.",
        )),
    ),
    exit_values=(("power", "5 kVA"), ("factor", "0.6 lag"), ("target", "")),
    handouts=handouts_of("power-triangle", rig_of("power-triangle")),
    listen=("whole-corrected", "remaining-taken", "apparent-subtracted", "cosines-subtracted", "apparent-for-active"),
    cover_says=(
        "Write on the board: {values}. Ask for an estimate: by how much does the current fall? 5 minutes.",
        COVER_DEMONSTRATION,
        "Hand out the problem sheet. Learners draw P, then Q at right angles to it. They mark the target angle at the "
        "start: where its line meets Q, the capacitor’s arrow ends. They measure that arrow. Give P and Q from the "
        "answers below to learners who need them. 25 minutes.",
        "Learners who finish early: the same load with a target of 1. How long is the capacitor’s arrow now? 10 "
        "minutes.",
        "Ask: 3 kW and 4 kvar (lagging), how many kVA? {exit_apparent_power}, not 7. 5 minutes.",
    ),
    cover_stops=cover_stops(
        "Nobody touches or measures capacitors in this lesson: they stay charged after the supply is off."
    ),
    cover_handouts=cover_handouts_of("power-triangle"),
)  # fmt: skip

READINGS = RecordingSheet(
    "power-triangle", "Power triangle", ("V", "I, A", "P, W", "I after, A"),
    "Always in this order: voltage, current, power; then the current with the capacitor connected.",
    "the apparent power before", "VA", "V × I (three phases: × √3)", "from P and the power factor stated",
    (DISCHARGED, "The capacitor is connected with the supply off and proved dead."),
)  # fmt: skip
