"""What a lesson on the topic needs: the levels of its problems, the lesson plan, the readings at a rig."""

from pycore.words.lesson_plans import (
    LessonPlan,
    LessonStage,
    cover_handouts_of,
    cover_stops,
    handouts_of,
)

LEVELS = {
    "support": "two phasors of whole amperes, at an angle that a set square has",
    "core": "three phasors in tenths of an ampere, at angles in steps of 5°",
    "stretch": "one phasor minus two others, at angles in whole degrees",
}
"""What each level asks of a learner: read off the generator, which never changes."""

PLAN = LessonPlan(
    slug="add-phasors",
    aim="Add two phasors by drawing and by components, and explain why the sizes alone must not be added.",
    parts=(
        LessonStage("Starter", 5, (
            "On the board: {values}. Everyone estimates the size of the sum and writes it down.",
            "Ask: what is the largest possible sum, and the smallest? 35 A if both point the same way, 5 A if they "
            "point opposite ways. A guess outside this range cannot be right.",
        )),
        LessonStage("Demonstration", 15, (
            "Open the lesson view. Show tip to tail, one move at a time. Before each reading, ask the class for it.",
            "At the tip ask: where does the protractor’s centre go now? On the tip, with its zero line back along the "
            "line just drawn.",
            "Read the result: {answer}, {length} at {scale}. Then the components: {sum_along} along 0° and "
            "{sum_across} along 90°. Pythagoras gives the same size.",
        )),
        LessonStage("Guided work", 15, (
            "Everyone draws the same two phasors as a parallelogram. The answer is the same: which method was "
            "quicker, and why?",
            "Check the drawings with the overlay. Ask one learner to add a third phasor to the drawing.",
        )),
        LessonStage("Independent work", 20, (
            "Each learner has a different problem from the class set: estimate, draw, measure, check by components.",
            "Extra work: subtract the second phasor instead of adding it (“What to find” on the page). Which arrow "
            "turned round?",
        )),
        LessonStage("Exit question", 5, (
            "12 A at 0° and 5 A at 90°: what is the sum, and at what angle?",
            "{exit_sum} at {exit_sum_angle}. A learner who says 17 A added the sizes; one who says 7 A subtracted "
            "them.",
        )),
    ),
    exit_values=(("p1", "12 at 0"), ("p2", "5 at 90")),
    handouts=handouts_of("add-phasors"),
    listen=("plain-sum", "other-scale-at-tip", "wrong-way-at-tip", "parts-added", "taken-off"),
    cover_says=(
        "Write on the board: {values}. Ask everyone to estimate the size of the sum. It must be between 5 A and 35 A. "
        "5 minutes.",
        "Open the lesson view. Press the right arrow key for each move and read the sentence aloud. 15 minutes.",
        "Hand out the problem sheet. Learners draw the sum tip to tail with ruler and protractor. 25 minutes.",
        "Learners who finish early draw it again as a parallelogram (choose the method on the same page) and compare. "
        "10 minutes.",
        "Ask at the end: 12 A at 0° and 5 A at 90°, what is the sum? {exit_sum}. 5 minutes.",
    ),
    cover_stops=cover_stops("Questions about why currents have angles: write them down for the lecturer."),
    cover_handouts=cover_handouts_of("add-phasors"),
)  # fmt: skip

READINGS = None
"""Phasors by themselves: there is nothing to read at a rig."""
