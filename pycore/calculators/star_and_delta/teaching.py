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
from pycore.words.rig import JAW, RecordingSheet

LEVELS = {
    "support": "three equal loads in star: the line voltage from two phase voltages",
    "core": "three unequal resistances in delta: one line current",
    "stretch": "loads with reactance in delta, either phase sequence",
}
"""What each level asks of a learner: read off the generator, which never changes."""

PLAN = LessonPlan(
    slug="star-and-delta",
    aim="Find a line current of a delta load as the difference of two branch currents, and say when √3 may be used.",
    parts=(
        LessonStage("Starter", 5, (
            "On the board: {values}. Ask: which two branches are connected to line 1? Which current flows away from "
            "that point, and which flows towards it?",
            "Who would multiply by √3? Count the hands. The loads are not equal.",
        )),
        LessonStage("Demonstration", 15, (
            "Branch currents by Ohm’s law with the line voltage: {branch_1}, {branch_2}, {branch_3}.",
            "Lesson view: the branch current that is subtracted is turned by 180°, then added. Ask for its new "
            "angle first.",
            "Line 1 carries {answer}. √3 times its branch current would be about 35 A. √3 is correct for equal loads "
            "only.",
        )),
        LessonStage("Guided work", 15, (
            "Everyone draws line 1 at {scale}. Then half the class draws line 2 and half line 3 ({line_2}, {line_3}). "
            "Choose the line on the page.",
            "Draw the three line currents tip to tail on one sheet: the figure closes. Why? There is no fourth wire, "
            "so they must add to zero.",
        )),
        LessonStage("Independent work", 20, (
            "Each learner has different loads from the class set. First sketch which arrow is turned by 180°.",
            "Extra work: the same three loads in star with a neutral. What does each line carry?",
        )),
        LessonStage("Exit question", 5, (
            "Three equal loads of 20 Ω in delta on 400 V: branch current and line current?",
            "{exit_branch_1} in each branch, {exit_line_1} in each line: here √3 is correct. A learner who says 20 A "
            "for the line gave the branch current; one who says 11.5 A used the phase voltage.",
        )),
    ),
    exit_values=(("z1", "20"), ("z2", ""), ("z3", "")),
    handouts=handouts_of("star-and-delta", rig_of("star-and-delta")),
    listen=("added", "first-turned", "branch-for-line", "root-three-unbalanced", "star-voltage"),
    cover_says=(
        "Write on the board: {values}. Ask: how large is the current in line 1? Everyone writes an estimate. 5 "
        "minutes.",
        COVER_DEMONSTRATION,
        "Hand out the problem sheet. Write the branch currents from the answers below on the board. Learners draw "
        "line 1. 25 minutes.",
        "Learners who finish early draw line 2 (choose the line on the same page). 10 minutes.",
        "Ask: three equal loads of 20 Ω in delta on 400 V. What current is in each line? {exit_line_1}. 5 minutes.",
    ),
    cover_stops=cover_stops(
        "Nobody changes a rig from star to delta without the lecturer. The rig must be isolated and proved dead first."
    ),
    cover_handouts=cover_handouts_of("star-and-delta"),
)  # fmt: skip

READINGS = RecordingSheet(
    "star-and-delta", "Star and delta", ("V lines", "I₁₂, A", "I₃₁, A", "I₁, A"),
    f"{JAW} Always in this order: voltage between lines, both branches, the line.", "the line current I₁", "A",
    "mean of I₁; limit of the meter", "from I₁₂ and I₃₁ at their angles",
    ("Star or delta was connected with the supply off and proved dead, and the supervisor has checked it.",),
)  # fmt: skip
