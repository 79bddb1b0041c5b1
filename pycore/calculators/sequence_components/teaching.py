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
from pycore.words.rig import JAW, NEUTRAL_STAYS, RecordingSheet

LEVELS = {
    "support": "the zero sequence of whole amperes 120° apart",
    "core": "the zero or the negative sequence, angles in steps of 10°",
    "stretch": "any of the three components, angles in steps of 5°",
}
"""What each level asks of a learner: read off the generator, which never changes."""

PLAN = LessonPlan(
    slug="sequence-components",
    of_lines=True,
    aim="Take three unequal currents apart into zero, positive and negative sequence by drawing, and say what each "
        "does.",
    parts=(
        LessonStage("Starter", 5, (
            "On the board: {values}. Ask: balanced currents add to what? To nothing. These do not: what is left over "
            "is shared by the three lines alike.",
        )),
        LessonStage("Demonstration", 15, (
            "Zero sequence first: add the three as they are and divide by three. Sum {threefold}, so {zero} in each "
            "line.",
            "The operator a: turn by 120° and nothing else. Let one learner turn a ruler on the board.",
            "Classroom view of the positive sequence: the second line turned by 120°, the third by 240°, then added. "
            "{positive}. The negative sequence turns them the other way round: {negative}.",
        )),
        LessonStage("Guided work", 15, (
            "Everyone draws the zero sequence at {scale}. Last move: divide by three. Who forgets it?",
            "Then half the room draws the positive, half the negative component: a choice on the page.",
        )),
        LessonStage("Independent work", 20, (
            "Currents of their own from the class set, the component as the sheet asks.",
            "Done early: put the three components of one line together again. The line’s own current must come back.",
        )),
        LessonStage("Exit question", 5, (
            "Line 1 carries 30 A, the other two nothing. How large is each component, and what does the neutral carry?",
            "{exit_zero}, {exit_positive} and {exit_negative}; the neutral carries {exit_neutral_current}, three times "
            "the zero sequence. Who says 30 A for each has not divided by three.",
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
        "Write on the board: {values}. Say: we look for the part that all three lines share. 5 minutes.",
        "Open the classroom view. Press the arrow key for each move and read its sentence aloud. 15 minutes.",
        "Hand out the problem sheet. Learners add the three arrows tip to tail, measure, and divide by three. 25 "
        "minutes.",
        "Early finishers draw the positive sequence: a choice on the page; the moves say what is turned. 10 minutes.",
        "Ask: one line carries 30 A, the others nothing. How large is each part? {exit_zero} each. 5 minutes.",
    ),
    cover_stops=cover_stops("What negative sequence does to a motor: write the question down for the lecturer."),
    cover_handouts=cover_handouts_of("sequence-components"),
)  # fmt: skip

READINGS = RecordingSheet(
    "sequence-components", "Sequence components", ("L1", "L2", "L3", "N"),
    f"{JAW} Always in this order: L1, L2, L3, N. Their angles: ____ , ____ , ____",
    "the neutral, three times I₀", "A", "mean of N; limit of the meter", "from L1, L2, L3 and their angles",
    (NEUTRAL_STAYS,),
)  # fmt: skip
