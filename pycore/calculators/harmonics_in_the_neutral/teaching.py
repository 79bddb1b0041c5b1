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
    "support": "the third harmonic, whole amperes, equal power factor",
    "core": "the fundamental when there is a third harmonic too, in tenths of an ampere",
    "stretch": "the third harmonic where the lines lag by different angles",
}
"""What each level asks of a learner: read off the generator, which never changes."""

PLAN = LessonPlan(
    slug="harmonics-in-the-neutral",
    of_lines=True,
    aim=(
        "Explain why third harmonics can add in the neutral although the fundamentals cancel, and find the neutral "
        "current."
    ),
    parts=(
        LessonStage("Starter", 5, (
            "On the board: {values} at equal lags, each with a third harmonic of 20 % (three times the frequency). "
            "Ask: with three equal lines of LED lamps, can the neutral still carry current? Keep the answers.",
        )),
        LessonStage("Demonstration", 15, (
            "On the page, open the waveforms below the answer. For the third harmonic, every angle is multiplied by "
            "3. The 120° between the lines become 360°, a full turn. So with equal lags all three third harmonics are "
            "in phase. They add up as numbers.",
            "Fundamental in the neutral: {neutral_1}. Third harmonic: {neutral_3}. Lesson view: each order is "
            "drawn separately.",
            "Together: {answer}, the square root of the sum of the squares. Phasors of different frequencies must not "
            "be added.",
        )),
        LessonStage("Guided work", 15, (
            "Everyone draws order 3 at {scale}: three arrows in one line, because the lags are equal.",
            "Then in pairs: one learner draws order 1 next to it, and both compare. Why is the sum of order 1 so much "
            "smaller than its three currents added as numbers?",
        )),
        LessonStage("Independent work", 20, (
            "Each learner has a different load from the class set: draw one order, calculate the other, then combine "
            "both by squares.",
            "Extra work: enter lags of 0°, 20° and 30° on the page and draw order 3 again. The third harmonics are now "
            "0°, 60° and 90° behind: only partly in phase. How much smaller is their sum?",
            "More extra work: three equal lines with equal lags. At which percentage of third harmonic does the "
            "neutral carry as much as each line? About 35 % of the fundamental.",
        )),
        LessonStage("Exit question", 5, (
            "Three lines each carry 10 A at mains frequency and 4 A of third harmonic, at equal lags, so the third "
            "harmonics are in phase. What does the neutral carry?",
            "{exit_neutral_current}, all of it third harmonic. That is more than each line’s {exit_line_1}. A learner "
            "who says 0 A thought of the fundamental only.",
        )),
    ),
    exit_values=(("i1", "10"), ("i2", "10"), ("i3", "10"), ("a1", "0"), ("a2", "0"), ("a3", "0"), ("h3", "40")),
    handouts=handouts_of("harmonics-in-the-neutral", rig_of("harmonics-in-the-neutral")),
    listen=("order-not-multiplied", "all-orders", "left-out", "turned-round"),
    cover_says=(
        "Ask: three equal groups of LED lamps on three lines. Can the neutral, the shared return wire, still carry "
        "current? Count the hands. 5 minutes.",
        COVER_DEMONSTRATION,
        "Hand out the problem sheet. Only one frequency is drawn, as the note on the sheet says. Learners copy the "
        "moves. 25 minutes.",
        "Learners who finish early draw order 1 as well (choose the order on the page). 10 minutes.",
        "Say: with 4 A of third harmonic in each of three equal lines, in phase, the neutral carries "
        "{exit_neutral_current}. 5 minutes.",
    ),
    cover_stops=cover_stops(
        "Do not say whether the neutral of a building is large enough: a licensed person decides that."
    ),
    cover_handouts=cover_handouts_of("harmonics-in-the-neutral"),
)  # fmt: skip

READINGS = RecordingSheet(
    "harmonics-in-the-neutral", "Harmonics in the neutral", ("L1", "L2", "L3", "N", "N, order 3"),
    f"{JAW} A meter for true r.m.s. values. Always in this order: L1, L2, L3, N, then order 3 of N.",
    "the neutral, all orders", "A",
    "mean of N; limit of the meter", "root of the sum of squares, all orders", (NEUTRAL_STAYS,),
)  # fmt: skip
