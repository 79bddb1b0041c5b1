"""What a lesson on the topic needs: the levels of its problems, the lesson plan, the readings at a rig."""

from pycore.words.lesson_plans import (
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
    "core": "the capacitor’s reactive power for a target, on one phase",
    "stretch": "the capacitor’s reactive power for a target, on three phases",
}
"""What each level asks of a learner: read off the generator, which never changes."""

PLAN = LessonPlan(
    slug="power-triangle",
    aim="Draw active, reactive and apparent power as a triangle, and find the capacitor that brings the power factor "
        "to a target.",
    parts=(
        LessonStage("Starter", 5, (
            "On the board: {values}. Who pays for what: the meter counts kW, the cable carries kVA.",
            "Everyone guesses the line current before and after correction.",
        )),
        LessonStage("Demonstration", 15, (
            "Draw P along, Q square up from its tip: {active_power} and {reactive_power}. The slanting side is S, "
            "{apparent_power}: measure it, do not add.",
            "Classroom view: the capacitor’s vars point straight down from the tip of Q. P stays as it is.",
            "Capacitor {correction}: in delta {capacitance_delta} each, in star {capacitance_star} each. Ask why "
            "three times as much in star.",
        )),
        LessonStage("Guided work", 15, (
            "Everyone draws both triangles at {scale}. Before the capacitor is drawn: where must its tip lie, so that "
            "the angle is that of the target?",
            "Read off S after correction: {apparent_power_after}. Current from {line_current} to {line_current_after}.",
        )),
        LessonStage("Independent work", 20, (
            "A load of their own from the class set: triangle, target, kvar; check by Q = P · tan φ.",
            "Done early: what would power factor 1 cost in kvar, and is the last bit worth it?",
        )),
        LessonStage("Exit question", 5, (
            "A load takes 3 kW and 4 kvar. Apparent power, and power factor?",
            "{exit_apparent_power} and {exit_power_factor}. Who says 7 kVA has added along two directions.",
        )),
    ),
    exit_values=(("power", "5 kVA"), ("factor", "0.6 lag"), ("target", "")),
    handouts=handouts_of("power-triangle", rig_of("power-triangle")),
    listen=("whole-corrected", "remaining-taken", "apparent-subtracted", "cosines-subtracted", "apparent-for-active"),
    cover_says=(
        "Write on the board: {values}. Ask for a guess: by how much does the current fall? 5 minutes.",
        "Open the classroom view. Press the arrow key for each move and read its sentence aloud. 15 minutes.",
        "Hand out the problem sheet. Learners draw P, then Q square to it, then the capacitor back down. Give P and Q "
        "from the answers below to those who are stuck. 25 minutes.",
        "Early finishers: the same load with a target of 1. How long is the capacitor’s arrow now? 10 minutes.",
        "Ask: 3 kW and 4 kvar, how many kVA? {exit_apparent_power}, not 7. 5 minutes.",
    ),
    cover_stops=cover_stops("Touching or measuring capacitors: they stay charged when the supply is off. Never today."),
    cover_handouts=cover_handouts_of("power-triangle"),
)  # fmt: skip

READINGS = RecordingSheet(
    "power-triangle", "Power triangle", ("V", "I, A", "P, W", "I after, A"),
    "Always in this order: voltage, current, power; then the current with the capacitor connected.",
    "the apparent power before", "VA", "V × I (three phases: × √3)", "from P and the power factor stated",
    (DISCHARGED, "The capacitor is connected with the supply off and proved dead."),
)  # fmt: skip
