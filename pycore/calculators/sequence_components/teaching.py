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
from pycore.words.rig import JAW, NEUTRAL_STAYS, RecordingSheet

LEVELS = {
    "support": "the zero sequence component, whole amperes 120° apart",
    "core": "the zero or the negative sequence component, angles in steps of 10°",
    "stretch": "any of the three components, angles in steps of 5°",
}
"""What each level asks of a learner: read off the generator, which never changes."""

PLAN = LessonPlan(
    slug="sequence-components",
    of_lines=True,
    aim=(
        "Find the zero, positive and negative sequence components of three unequal currents by drawing, and say what "
        "each means."
    ),
    parts=(
        LessonStage("Starter", 5, (
            "On the board: {values}. Ask: what do balanced currents add to? Zero. These do not: one third of their "
            "sum is the zero sequence component, the same in each line.",
        )),
        LessonStage("Demonstration", 15, (
            "Zero sequence first: add the three phasors without turning them, then divide by three. Sum: {threefold}, "
            "so {zero} in each line.",
            "The operator a turns a phasor by 120° in the positive direction (see the sense of rotation on the "
            "sheet); its size stays the same. Let one learner turn a ruler on the board.",
            "Lesson view of the positive sequence: turn the second phasor by 120° and the third by 240°, then add "
            "and divide by three: {positive}. For the negative sequence, turn the second by 240° and the third by "
            "120°: {negative}.",
        )),
        LessonStage("Guided work", 15, (
            "Everyone draws the zero sequence at {scale}. Last move: divide by three. Do not forget it.",
            "Then half the class draws the positive and half the negative sequence component (choose it on the page).",
        )),
        LessonStage("Independent work", 20, (
            "Each learner has different currents from the class set and finds the component that the sheet asks for.",
            "Extra work: add the three components of one line. The sum must be that line’s current.",
        )),
        LessonStage("Exit question", 5, (
            "Line 1 carries 30 A, the other two lines nothing. How large is each component? What does the neutral "
            "carry?",
            "{exit_zero}, {exit_positive} and {exit_negative}. The neutral carries {exit_neutral_current}, three "
            "times the zero sequence component. A learner who says 30 A for each did not divide by three.",
        )),
    ),
    exit_values=(("p1", "30 at 0"), ("p2", "0"), ("p3", "0")),
    handouts=handouts_of(
        "sequence-components",
        Handout("Positive sequence of the same currents", "sequence-components", (("part", "positive"),)),
        Handout("Negative sequence of the same currents", "sequence-components", (("part", "negative"),)),
        rig_of("sequence-components"),
    ),
    listen=("divided-already", "turned", "other-scale-at-tip", "wrong-way-at-tip", "left-out"),
    cover_says=(
        "Write on the board: {values}. Say: we look for the component that is the same in all three lines. 5 minutes.",
        COVER_DEMONSTRATION,
        "Hand out the problem sheet. Learners add the three arrows tip to tail, measure, and divide by three. 25 "
        "minutes.",
        "Learners who finish early draw the positive sequence (choose it on the page). The moves say which phasors "
        "are turned. 10 minutes.",
        "Ask: one line carries 30 A, the others nothing. How large is each component? {exit_zero} each. 5 minutes.",
    ),
    cover_stops=cover_stops("Questions about negative sequence and motors: write them down for the lecturer."),
    cover_handouts=cover_handouts_of("sequence-components"),
)  # fmt: skip

READINGS = RecordingSheet(
    "sequence-components", "Sequence components", ("L1", "L2", "L3", "N"),
    f"{JAW} Always in this order: L1, L2, L3, N. Their angles: ____ , ____ , ____",
    "the neutral, three times I₀", "A", "mean of N; limit of the meter", "from L1, L2, L3 and their angles",
    (NEUTRAL_STAYS,),
)  # fmt: skip
