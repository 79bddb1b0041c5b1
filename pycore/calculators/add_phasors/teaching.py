"""What a lesson on the topic needs: the levels of its problems, the lesson plan, the readings at a rig."""

from pycore.words.lesson_plans import (
    LessonPlan,
    LessonStage,
    cover_handouts_of,
    cover_stops,
    handouts_of,
)

LEVELS = {
    "support": "two phasors of whole amperes, at an angle that set squares have",
    "core": "three phasors in tenths of an ampere, at angles in steps of 5°",
    "stretch": "one phasor less two others, at angles of whole degrees",
}
"""What each level asks of a learner: read off the generator, which never changes."""

PLAN = LessonPlan(
    slug="add-phasors",
    aim="Add two phasors by drawing and by their parts, and say why sizes alone must not be added.",
    parts=(
        LessonStage("Starter", 5, (
            "On the board: {values}. Everyone guesses the size of the sum and writes the guess down.",
            "Ask: what is the most it can be, what the least? 35 A if both point one way, 5 A if they point opposite "
            "ways. A guess outside cannot be right.",
        )),
        LessonStage("Demonstration", 15, (
            "Open the classroom view. Tip to tail, move by move; before each reading ask for it.",
            "At the tip ask: where does the protractor’s centre go now? On the tip, its zero back along the line.",
            "Read the result: {answer}, {length} at {scale}. Then the parts: {sum_along} along 0° and {sum_across} "
            "across. Pythagoras gives the same size.",
        )),
        LessonStage("Guided work", 15, (
            "Everyone draws the same two phasors as a parallelogram. Same answer: which way was quicker, and why?",
            "Walk round with the overlay. Ask one learner to add a third phasor of their own to the drawing.",
        )),
        LessonStage("Independent work", 20, (
            "A problem of their own from the class set: guess, draw, measure, check by parts.",
            "Done early: take the second phasor off instead of adding it (Difference, on the page). Which arrow "
            "turned?",
        )),
        LessonStage("Exit question", 5, (
            "12 A at 0° and 5 A at 90°: what is the sum, and at what angle?",
            "{exit_sum} at {exit_sum_angle}. Who says 17 A has added the sizes; who says 7 A has taken one off.",
        )),
    ),
    exit_values=(("p1", "12 at 0"), ("p2", "5 at 90")),
    handouts=handouts_of("add-phasors"),
    listen=("plain-sum", "other-scale-at-tip", "wrong-way-at-tip", "parts-added", "taken-off"),
    cover_says=(
        "Write on the board: {values}. Ask everyone to guess one number for the sum. It must lie between 5 A and 35 A. "
        "5 minutes.",
        "Open the classroom view. Press the arrow key for each move and read its sentence aloud. 15 minutes.",
        "Hand out the problem sheet. Learners draw the sum tip to tail with ruler and protractor. 25 minutes.",
        "Early finishers draw it again as a parallelogram, a choice on the same page, and compare. 10 minutes.",
        "Ask at the end: 12 A at 0° and 5 A at 90°, what is the sum? {exit_sum}. 5 minutes.",
    ),
    cover_stops=cover_stops("Why currents have angles at all: that is next week’s lesson, write the question down."),
    cover_handouts=cover_handouts_of("add-phasors"),
)  # fmt: skip

READINGS = None
"""No readings are taken with an open neutral."""
