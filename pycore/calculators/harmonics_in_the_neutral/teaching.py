"""What a lesson on the topic needs: the levels of its problems, the lesson plan, the readings at a rig."""

from pycore.words.lesson_plans import (
    LessonPlan,
    LessonStage,
    cover_handouts_of,
    cover_stops,
    handouts_of,
    rig_of,
)
from pycore.words.rig import JAW, NEUTRAL_STAYS, RecordingSheet

LEVELS = {
    "support": "the third harmonic of whole amperes at equal power factor",
    "core": "the fundamental beside a third harmonic, in tenths of an ampere",
    "stretch": "the third harmonic where the lines lag by different angles",
}
"""What each level asks of a learner: read off the generator, which never changes."""

PLAN = LessonPlan(
    slug="harmonics-in-the-neutral",
    of_lines=True,
    aim="See why third harmonics add in the neutral where the fundamentals cancel, and find what the neutral carries.",
    parts=(
        LessonStage("Starter", 5, (
            "On the board: {values}, a fifth of each at three times the frequency. Ask: balanced lamps, three equal "
            "lines; can the neutral still carry current? Keep the answers.",
        )),
        LessonStage("Demonstration", 15, (
            "On the page, open the waveforms below the answer: three fundamentals 120° apart, then the third harmonic "
            "of each: 3 × 120° is a whole turn, so all three lie on one another.",
            "Fundamental in the neutral: {neutral_1}. Third order: {neutral_3}. Classroom view: each order is drawn by "
            "itself.",
            "Together {answer}, by root of the sum of squares: different frequencies never add as phasors.",
        )),
        LessonStage("Guided work", 15, (
            "Everyone draws order 3 at {scale}. The angles differ because the lines’ own angles count three times.",
            "Then in pairs: one draws order 1 beside it, both compare. Why does that sum fall so far short of its "
            "lines added?",
        )),
        LessonStage("Independent work", 20, (
            "A load of their own from the class set: draw one order, reckon the other, put both together.",
            "Done early: at which share of third harmonic does the neutral of equal lines carry as much as a line? "
            "About 35 % of the fundamental.",
        )),
        LessonStage("Exit question", 5, (
            "Three equal lines with 10 A at the mains frequency and 4 A of third harmonic each, in phase: what is in "
            "the neutral?",
            "{exit_neutral_current}, all of it third harmonic, more than each line’s {exit_line_1}. Who says 0 A has "
            "thought of the fundamental only.",
        )),
    ),
    exit_values=(("i1", "10"), ("i2", "10"), ("i3", "10"), ("a1", "0"), ("a2", "0"), ("a3", "0"), ("h3", "40")),
    handouts=handouts_of("harmonics-in-the-neutral", rig_of("harmonics-in-the-neutral")),
    listen=("order-not-multiplied", "all-orders", "plain-sum", "left-out", "other-scale-at-tip"),
    cover_says=(
        "Ask: three equal lamps on three lines; can the wire that brings the current back still carry any? Count "
        "hands. 5 minutes.",
        "Open the classroom view. Press the arrow key for each move and read its sentence aloud. 15 minutes.",
        "Hand out the problem sheet: one frequency alone is drawn, as its note says. Learners copy the moves. 25 "
        "minutes.",
        "Early finishers draw order 1 as well: the order is a choice on the page. 10 minutes.",
        "Say: with 4 A of third harmonic in each of three equal lines the neutral carries {exit_neutral_current}. "
        "5 minutes.",
    ),
    cover_stops=cover_stops("Whether a building’s neutral is thick enough: a licensed person decides, not a sheet."),
    cover_handouts=cover_handouts_of("harmonics-in-the-neutral"),
)  # fmt: skip

READINGS = RecordingSheet(
    "harmonics-in-the-neutral", "Harmonics in the neutral", ("L1", "L2", "L3", "N", "N, order 3"),
    f"{JAW} A meter for true r.m.s. values. Always in this order: L1, L2, L3, N.", "the neutral, all orders", "A",
    "mean of N; limit of the meter", "root of the squares of its orders", (NEUTRAL_STAYS,),
)  # fmt: skip
