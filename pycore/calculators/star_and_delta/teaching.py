"""What a lesson on the topic needs: the levels of its problems, the lesson plan, the readings at a rig."""

from pycore.words.lesson_plans import (
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
    "core": "three resistances in delta that differ: one line current",
    "stretch": "loads with reactance in delta, in either sequence",
}
"""What each level asks of a learner: read off the generator, which never changes."""

PLAN = LessonPlan(
    slug="star-and-delta",
    aim="Build a line current of a delta as the difference of two branch currents, and say when √3 may be used.",
    parts=(
        LessonStage("Starter", 5, (
            "On the board: {values}. Ask: which two branches meet at line 1, and which way does "
            "each current point there?",
            "Who would multiply by √3? Keep the count: the loads differ.",
        )),
        LessonStage("Demonstration", 15, (
            "Branch currents by Ohm’s law on the full line voltage: {branch_1}, {branch_2}, {branch_3}.",
            "Classroom view: the branch that arrives is turned round before it is added. Ask for the angle first.",
            "Line 1 carries {answer}; √3 times its branch would be about 35 A. √3 holds for equal loads alone.",
        )),
        LessonStage("Guided work", 15, (
            "Everyone draws line 1 at {scale}. Then half the room draws line 2, half line 3 ({line_2}, {line_3}): the "
            "line is a choice on the page.",
            "Put the three line currents together on one sheet: they close. Why must they? There is no fourth wire.",
        )),
        LessonStage("Independent work", 20, (
            "Loads of their own from the class set. Sketch first which arrow is turned round.",
            "Done early: the same three loads in star, with neutral: which line carries what?",
        )),
        LessonStage("Exit question", 5, (
            "Three equal loads of 20 Ω in delta on 400 V: branch current and line current?",
            "{exit_branch_1} in each branch, {exit_line_1} in each line: here √3 holds. Who says 20 A for the line has "
            "read off a branch; who says 11.5 A has taken the voltage to neutral.",
        )),
    ),
    exit_values=(("z1", "20"), ("z2", ""), ("z3", "")),
    handouts=handouts_of("star-and-delta", rig_of("star-and-delta")),
    listen=("added", "first-turned", "branch-for-line", "root-three-unbalanced", "star-voltage"),
    cover_says=(
        "Write on the board: {values}. Ask: what flows in line 1? Guess and write it down. "
        "5 minutes.",
        "Open the classroom view. Press the arrow key for each move and read its sentence aloud. 15 minutes.",
        "Hand out the problem sheet. Give the branch currents from the answers below; learners draw line 1. 25 "
        "minutes.",
        "Early finishers draw line 2: the line is a choice on the same page. 10 minutes.",
        "Ask: three equal loads of 20 Ω in delta on 400 V, what does a line carry? {exit_line_1}. 5 minutes.",
    ),
    cover_stops=cover_stops("Changing anything on a rig from star to delta: only with the lecturer, dead and proved."),
    cover_handouts=cover_handouts_of("star-and-delta"),
)  # fmt: skip

READINGS = RecordingSheet(
    "star-and-delta", "Star and delta", ("V lines", "I₁₂, A", "I₃₁, A", "I₁, A"),
    f"{JAW} Always in this order: voltage between lines, both branches, the line.", "the line current I₁", "A",
    "mean of I₁; limit of the meter", "from I₁₂ and I₃₁ at their angles",
    ("Star or delta was connected with the supply off and proved dead, and seen by the supervisor.",),
)  # fmt: skip
