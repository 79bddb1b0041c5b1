"""What a lesson on the topic needs: the levels of its problems, the lesson plan, the readings at a rig."""

from pycore.words.lesson_plans import (
    Handout,
    LessonPlan,
    LessonStage,
    cover_handouts_of,
    cover_stops,
    handouts_of,
)

LEVELS = {
    "support": "three resistances in tens of ohms",
    "core": "three resistances of usual values",
    "stretch": "one of the loads has reactance",
}
"""What each level asks of a learner: read off the generator, which never changes."""

PLAN = LessonPlan(
    slug="open-neutral",
    of_lines=True,
    aim="Show on paper what a lost neutral does to three unequal loads, which load suffers, and why nobody opens one.",
    parts=(
        LessonStage("Starter", 5, (
            "Read the caution above aloud before anything else. This lesson is paper only: there is nothing to try "
            "out.",
            "On the board: {values}. The neutral is lost. Which load gets too much: the one that takes the most power "
            "or the one that takes the least? Hands.",
        )),
        LessonStage("Demonstration", 15, (
            "Three phase voltages from one point, tips joined: the supply holds these corners whatever happens.",
            "Classroom view: the star point moves by {answer}. Ask which corner it moves towards, and why: the load "
            "that takes most pulls it.",
            "Measure from the new point to each corner: {voltage_1}, {voltage_2}, {voltage_3} instead of 231 V each.",
        )),
        LessonStage("Guided work", 15, (
            "Everyone draws the triangle at {scale} and measures all three voltages.",
            "Ask: what has 302 V on it? The small load on L3: a lamp, a charger. What does it do? It fails, and then "
            "the load is another one.",
        )),
        LessonStage("Independent work", 20, (
            "Loads of their own from the class set: shift by Millman’s formula, drawing, three voltages, and one "
            "sentence on who suffers.",
            "Done early: let one load be nothing at all. What do the other two become? Two loads in series on 400 V.",
        )),
        LessonStage("Exit question", 5, (
            "Two equal loads on L1 and L2, nothing on L3, neutral lost, 400 V between lines: what does each get?",
            "{exit_voltage_1}: half of 400 V, too little to run on. Who says 231 V has kept the neutral.",
        )),
    ),
    exit_values=(("z1", "40"), ("z2", "40"), ("z3", "")),
    handouts=handouts_of("open-neutral", Handout("The same loads with the neutral whole", "open-neutral",
                                                 (("method", "tip-to-tail"),))),
    listen=("load-left-out", "impedance-for-admittance", "line-for-phase", "wrong-way", "turned-round"),
    cover_says=(
        "Read the caution above aloud. Say: we draw this because nobody may try it. Ask: which load "
        "gets too much voltage, the one that takes the most power or the least? 5 minutes.",
        "Open the classroom view. Press the arrow key for each move and read its sentence aloud. 15 minutes.",
        "Hand out the problem sheet. Give the shift and its angle from the answers below; learners draw the triangle "
        "and "
        "measure three voltages. 25 minutes.",
        "Everyone writes one sentence: which load suffers, and by how much. 10 minutes.",
        "Ask again: the most power or the least? The least, with the most ohms: L3 with {voltage_3}. 5 minutes.",
    ),
    cover_stops=cover_stops(
        "Anyone who wants to see it on a rig or at home: no. Nobody opens a neutral on a live system, today or ever.",
        "A learner who reports flickering or bright lamps at home: tell the lecturer the same day.",
    ),
    cover_handouts=cover_handouts_of("open-neutral"),
)  # fmt: skip

READINGS = None
"""No readings are taken with an open neutral."""
