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
from pycore.words.rig import JAW, NEUTRAL_STAYS, RecordingSheet

LEVELS = {
    "support": "whole amperes at equal power factor; the first two phasors are already drawn",
    "core": "tenths of an ampere at equal power factor",
    "stretch": "unequal power factors, and the question which current in the last line makes the neutral current zero",
}
"""What each level asks of a learner: read off the generator, which never changes."""

PLAN = LessonPlan(
    slug="neutral-current",
    of_lines=True,
    aim=(
        "Find the neutral current of three unequal line currents by drawing, and compare it with the calculation and "
        "a meter reading."
    ),
    parts=(
        LessonStage("Starter", 5, (
            "On the board: {values}, sine-shaped currents, equal power factor. Everyone writes an estimate of the "
            "neutral current in amperes.",
            "Ask: can it be more than the largest line current? For sine-shaped currents at equal power factor it "
            "cannot. (With harmonics, or unequal power factors, it can.) Keep the estimates.",
        )),
        LessonStage("Demonstration", 15, (
            "Open the lesson view. Show the parallelogram one move at a time. Hide each reading and ask the class "
            "for it first.",
            "At each angle ask: is it more or less than a right angle? Which 0 is on your line?",
            "Read the result: {answer}, {length} at {scale}. Whose estimate was closest?",
        )),
        LessonStage("Guided work", 15, (
            "Everyone draws the same values; two phasors are already drawn. Check the drawings with the overlay.",
            "Stop the class after the first diagonal. It would be the neutral current if the third line carried no "
            "current.",
        )),
        LessonStage("Independent work", 20, (
            "Each learner has a different problem from the class set: estimate, draw, measure, then check by "
            "calculation.",
            "Extra work: which current in the third line would make the neutral current zero?",
        )),
        LessonStage("Exit question", 5, (
            "Two lines carry 10 A each, the third carries nothing, equal power factor. What does the neutral carry?",
            "10 A. A learner who says 20 A added the sizes; one who says 0 A thought that the load was balanced.",
        )),
    ),
    handouts=handouts_of("neutral-current", rig_of("neutral-current")),
    listen=("stopped", "other-scale", "reversed", "wrong-way", "left-out"),
    cover_says=(
        "Write on the board: {values}. Ask everyone to estimate the neutral current and write it down. 5 minutes.",
        COVER_DEMONSTRATION,
        "Hand out the problem sheet. Learners copy the same moves with ruler and protractor. 25 minutes.",
        "Learners who finish early draw it again tip to tail (choose the method on the same page). 10 minutes.",
        "Ask at the end: two lines carry 10 A each, the third nothing, equal power factor. What does the neutral "
        "carry? 10 A. 5 minutes.",
    ),
    cover_stops=cover_stops(),
    cover_handouts=cover_handouts_of("neutral-current"),
)  # fmt: skip

READINGS = RecordingSheet(
    "neutral-current", "Neutral current", ("L1", "L2", "L3", "N"),
    f"{JAW} Always in this order: L1, L2, L3, N.", "the neutral", "A", "mean of N; limit of the meter",
    "from L1, L2, L3 and their limits", (NEUTRAL_STAYS,),
)  # fmt: skip
