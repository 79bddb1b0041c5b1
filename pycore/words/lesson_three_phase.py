"""Lesson plans of what three lines do: harmonics, open neutral, two wattmeters, sequence components."""

from pycore.words.lesson_plans import (
    Handout,
    LessonPlan,
    Part,
    cover_handouts_of,
    cover_stops,
    handouts_of,
    rig_of,
)

HARMONICS = LessonPlan(
    slug="harmonics-in-the-neutral",
    aim="See why third harmonics add in the neutral where the fundamentals cancel, and find what the neutral carries.",
    parts=(
        Part("Starter", 5, (
            "On the board: {values}, a fifth of each at three times the frequency. Ask: balanced lamps, three equal "
            "lines; can the neutral still carry current? Keep the answers.",
        )),
        Part("Demonstration", 15, (
            "On the page, open the waveforms below the answer: three fundamentals 120° apart, then the third harmonic "
            "of each: 3 × 120° is a whole turn, so all three lie on one another.",
            "Fundamental in the neutral: {neutral_1}. Third order: {neutral_3}. Classroom view: each order is drawn by "
            "itself.",
            "Together {answer}, by root of the sum of squares: different frequencies never add as phasors.",
        )),
        Part("Guided work", 15, (
            "Everyone draws order 3 at {scale}. The angles differ because the lines’ own angles count three times.",
            "Then in pairs: one draws order 1 beside it, both compare. Why does that sum fall so far short of its "
            "lines added?",
        )),
        Part("Independent work", 20, (
            "A load of their own from the class set: draw one order, reckon the other, put both together.",
            "Done early: at which share of third harmonic does the neutral of equal lines carry as much as a line? "
            "About 35 % of the fundamental.",
        )),
        Part("Exit question", 5, (
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

OPEN_NEUTRAL = LessonPlan(
    slug="open-neutral",
    aim="Show on paper what a lost neutral does to three unequal loads, which load suffers, and why nobody opens one.",
    parts=(
        Part("Starter", 5, (
            "Read the caution above aloud before anything else. This lesson is paper only: there is nothing to try "
            "out.",
            "On the board: {values}. The neutral is lost. Which load gets too much: the one that takes the most power "
            "or the one that takes the least? Hands.",
        )),
        Part("Demonstration", 15, (
            "Three phase voltages from one point, tips joined: the supply holds these corners whatever happens.",
            "Classroom view: the star point moves by {answer}. Ask which corner it moves towards, and why: the load "
            "that takes most pulls it.",
            "Measure from the new point to each corner: {voltage_1}, {voltage_2}, {voltage_3} instead of 231 V each.",
        )),
        Part("Guided work", 15, (
            "Everyone draws the triangle at {scale} and measures all three voltages.",
            "Ask: what has 302 V on it? The small load on L3: a lamp, a charger. What does it do? It fails, and then "
            "the load is another one.",
        )),
        Part("Independent work", 20, (
            "Loads of their own from the class set: shift by Millman’s formula, drawing, three voltages, and one "
            "sentence on who suffers.",
            "Done early: let one load be nothing at all. What do the other two become? Two loads in series on 400 V.",
        )),
        Part("Exit question", 5, (
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

WATTMETERS = LessonPlan(
    slug="two-wattmeters",
    aim="From the readings of two wattmeters find power, reactive power and angle of a balanced three-wire load.",
    parts=(
        Part("Starter", 5, (
            "On the board: {values}. Three lines, only two wattmeters: is one line’s power lost? Let pairs argue it.",
        )),
        Part("Demonstration", 15, (
            "On the page, open the phasor diagram below the answer: each meter sees its own line current and a "
            "voltage between "
            "lines, 30° away from the phase voltage. So the meters read {reading_1} and {reading_2}, not the same.",
            "Sum of both: {power}. √3 times their difference, the second less the first: {reactive_power}.",
            "Classroom view: readings one after the other, the reactive power square to them; the slanting line is S.",
        )),
        Part("Guided work", 15, (
            "Everyone draws it at {scale}, reads S ({answer}) and the angle ({lag}).",
            "Ask: the same load at 60°, what does the first meter show? Nothing. And beyond? It reads backwards, and "
            "its reading counts as minus.",
        )),
        Part("Independent work", 20, (
            "Readings of their own from the class set: P, Q, S, angle; check by the tangent formula.",
            "Done early: why does none of this hold with a neutral that carries current?",
        )),
        Part("Exit question", 5, (
            "Two wattmeters on a balanced load read −500 W and 2000 W. Power, and power factor?",
            "{exit_power} and {exit_power_factor}. Who says 2500 W has lost the minus; then ask what the minus tells: "
            "power factor below 0.5.",
        )),
    ),
    exit_values=(("known", "readings"), ("w1", "-500"), ("w2", "2000")),
    handouts=handouts_of("two-wattmeters", rig_of("two-wattmeters")),
    listen=("root-three-forgotten", "readings-exchanged", "wrong-way-at-tip", "plain-sum"),
    cover_says=(
        "Write on the board: {values}. Say: two meters read {reading_1} and {reading_2}. Ask for the whole power: just "
        "add them. {power}. 5 minutes.",
        "Open the classroom view. Press the arrow key for each move and read its sentence aloud. 15 minutes.",
        "Hand out the problem sheet. Learners draw both readings in one line and the reactive power square to them. "
        "25 minutes.",
        "Early finishers: the same load at 60°, typed on the page. What does the first meter show? Nothing. 10 "
        "minutes.",
        "Ask: readings of −500 W and 2000 W, what is the power? {exit_power}. 5 minutes.",
    ),
    cover_stops=cover_stops("Leads of real wattmeters: nobody moves one, not even with the supply off, without the "
                            "lecturer."),
    cover_handouts=cover_handouts_of("two-wattmeters"),
)  # fmt: skip

SEQUENCE = LessonPlan(
    slug="sequence-components",
    aim="Take three unequal currents apart into zero, positive and negative sequence by drawing, and say what each "
        "does.",
    parts=(
        Part("Starter", 5, (
            "On the board: {values}. Ask: balanced currents add to what? To nothing. These do not: what is left over "
            "is shared by the three lines alike.",
        )),
        Part("Demonstration", 15, (
            "Zero sequence first: add the three as they are and divide by three. Sum {threefold}, so {zero} in each "
            "line.",
            "The operator a: turn by 120° and nothing else. Let one learner turn a ruler on the board.",
            "Classroom view of the positive sequence: the second line turned by 120°, the third by 240°, then added. "
            "{positive}. The negative sequence turns them the other way round: {negative}.",
        )),
        Part("Guided work", 15, (
            "Everyone draws the zero sequence at {scale}. Last move: divide by three. Who forgets it?",
            "Then half the room draws the positive, half the negative component: a choice on the page.",
        )),
        Part("Independent work", 20, (
            "Currents of their own from the class set, the component as the sheet asks.",
            "Done early: put the three components of one line together again. The line’s own current must come back.",
        )),
        Part("Exit question", 5, (
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
