"""What a lesson on the topic needs: the levels of its problems, the lesson plan, the readings at a rig."""

from pycore.words.lesson_plans import (
    COVER_DEMONSTRATION,
    Handout,
    LessonPlan,
    LessonStage,
    cover_handouts_of,
    cover_stops,
    handouts_of,
)

LEVELS = {
    "support": "three resistances in tens of ohms",
    "core": "three resistances of common values",
    "stretch": "one of the loads has reactance",
}
"""What each level asks of a learner: read off the generator, which never changes."""

PLAN = LessonPlan(
    slug="open-neutral",
    of_lines=True,
    aim=(
        "Show on paper what a lost neutral does to three unequal loads. Which load gets too much voltage? Why may "
        "nobody open a neutral?"
    ),
    parts=(
        LessonStage("Starter", 5, (
            "Read the caution above aloud first. This lesson is on paper only: nobody tries this out.",
            "On the board: {values}. The neutral is lost. Which load gets too much voltage: the one with the most "
            "power or the one with the least? Show of hands.",
        )),
        LessonStage("Demonstration", 15, (
            "Draw three phase voltages from one point and join the tips. The supply fixes these corners, whatever the "
            "loads are.",
            "Lesson view: find the star point with two loads at a time. Alone, the loads on L1 and L2 are in series "
            "and divide 400 V: mark the point on the side. The third load moves it on a line to its own corner. Two "
            "such lines cross at the star point.",
            "The star point moves by {answer}. Ask: towards which corner, and why? Towards the line of the load with "
            "the smallest resistance.",
            "Measure from the new point to each corner: {voltage_1}, {voltage_2}, {voltage_3} instead of 231 V each.",
        )),
        LessonStage("Guided work", 15, (
            "Everyone draws the triangle at {scale}, finds the star point and measures all three voltages.",
            "Ask: which load has 302 V? The load on L3, which normally takes the least power, for example a lamp or a "
            "charger. What happens? It can fail or catch fire, and then the voltages change again.",
        )),
        LessonStage("Independent work", 20, (
            "Each learner has different loads from the class set. They draw, read three voltages and check the "
            "displacement by Millman’s formula. One sentence says which load gets too much voltage. With reactance "
            "(stretch), the displacement is calculated first and then drawn.",
            "Extra work: disconnect one load. How are the other two connected now? In series across 400 V.",
        )),
        LessonStage("Exit question", 5, (
            "Two equal loads on L1 and L2, nothing on L3, neutral lost, 400 V between lines: what voltage does each "
            "load get?",
            "{exit_voltage_1}: the two loads are in series, so each gets half of 400 V. That is 87 % of 231 V: a "
            "heater then gives about 75 % of its power. A learner who says 231 V forgot that the neutral is lost.",
        )),
    ),
    exit_values=(("z1", "40"), ("z2", "40"), ("z3", "")),
    handouts=handouts_of("open-neutral", Handout("The same loads with the neutral connected", "open-neutral",
                                                 (("method", "tip-to-tail"),))),
    listen=("load-left-out", "impedance-for-admittance", "line-for-phase", "wrong-way", "turned-round"),
    cover_says=(
        "Read the caution above aloud. Say: we draw this because nobody may try it. Ask: which load gets too much "
        "voltage, the one with the most power or the one with the least? 5 minutes.",
        COVER_DEMONSTRATION,
        "Hand out the problem sheet. Learners draw the triangle, mark the two points as in the lesson view, and "
        "find the star point where the lines cross. Then they measure three voltages. 25 minutes.",
        "Everyone writes one sentence: which load gets too much voltage, and how much. 10 minutes.",
        "Ask again: the most power or the least? The load that normally takes the least has the largest resistance: "
        "L3 with {voltage_3}. 5 minutes.",
    ),
    cover_stops=cover_stops(
        "If anyone wants to see this on a rig or at home: no. Nobody may ever open a neutral on a live system.",
        "If a learner reports flickering or very bright lamps at home: these can be signs of a lost neutral, which "
        "can kill. Say at once: switch off at the main switch if that is safe. Touch no metalwork. Call the network "
        "operator’s emergency number now. Then tell the lecturer.",
    ),
    cover_handouts=cover_handouts_of("open-neutral"),
)  # fmt: skip

READINGS = None
"""No readings are taken with an open neutral."""
