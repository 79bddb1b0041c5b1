"""Lesson plans of the circuits: adding phasors, series, parallel, power triangle, star and delta."""

from pycore.words.lesson_plans import (
    Handout,
    LessonPlan,
    Part,
    cover_handouts_of,
    cover_stops,
    handouts_of,
    rig_of,
)

ADD = LessonPlan(
    slug="add-phasors",
    aim="Add two phasors by drawing and by their parts, and say why sizes alone must not be added.",
    parts=(
        Part("Starter", 5, (
            "On the board: {values}. Everyone guesses the size of the sum and writes the guess down.",
            "Ask: what is the most it can be, what the least? 35 A if both point one way, 5 A if they point opposite "
            "ways. A guess outside cannot be right.",
        )),
        Part("Demonstration", 15, (
            "Open the classroom view. Tip to tail, move by move; before each reading ask for it.",
            "At the tip ask: where does the protractor’s centre go now? On the tip, its zero back along the line.",
            "Read the result: {answer}, {length} at {scale}. Then the parts: {sum_along} along 0° and {sum_across} "
            "across. Pythagoras gives the same size.",
        )),
        Part("Guided work", 15, (
            "Everyone draws the same two phasors as a parallelogram. Same answer: which way was quicker, and why?",
            "Walk round with the overlay. Ask one learner to add a third phasor of their own to the drawing.",
        )),
        Part("Independent work", 20, (
            "A problem of their own from the class set: guess, draw, measure, check by parts.",
            "Done early: take the second phasor off instead of adding it (Difference, on the page). Which arrow "
            "turned?",
        )),
        Part("Exit question", 5, (
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

SERIES = LessonPlan(
    slug="series-circuit",
    aim="Find current and voltages of R, L and C in series, draw the voltages on the current, and explain why a part "
        "can have more volts than the supply.",
    parts=(
        Part("Starter", 5, (
            "On the board: {values}. Show of hands: is more than 230 V possible across any one part? Keep the count.",
            "Ask what all three share. In series: the current. So the current is drawn first, and everything is "
            "counted from it.",
        )),
        Part("Demonstration", 15, (
            "Reactances first, aloud: 2πfL and 1 ÷ (2πfC), with 0.2 H and 100 µF, not 0.2 mH and 100 F.",
            "Impedance {impedance}, so the current is {current}. Then each voltage: {voltage_1}, {voltage_2}, "
            "{voltage_3}.",
            "Classroom view: the coil’s voltage stands 90° ahead of the current, the capacitor’s 90° behind. The sum "
            "must come back to the supply: that is the check.",
        )),
        Part("Guided work", 15, (
            "Everyone draws the same circuit at {scale}. Mind both scales: volts and amperes have their own.",
            "Ask back: {voltage_2} across the coil on a 230 V supply. Who kept their hand down at the start?",
            "Read the angle between supply and current off the drawing: {phase_angle}. Its cosine is the power factor.",
        )),
        Part("Independent work", 20, (
            "A circuit of their own from the class set: work out, draw, measure the sum, compare with the supply.",
            "Done early: at which frequency would both reactances be equal? For this circuit {resonance}.",
        )),
        Part("Exit question", 5, (
            "R 30 Ω and a reactance of 40 Ω in series on 100 V: what flows?",
            "{exit_current}: the impedance is {exit_impedance}, not 70 Ω. Who says 1.43 A has added ohms that stand "
            "at a "
            "right angle.",
        )),
    ),
    exit_values=(("r", "30 Ω"), ("l", "40 Ω"), ("c", ""), ("supply", "100 V")),
    handouts=handouts_of("series-circuit", Handout("Impedance triangle of the same circuit", "series-circuit",
                                                   (("drawn", "impedances"),)), rig_of("series-circuit")),
    listen=("two-pi-forgotten", "micro-as-milli", "impedances-as-numbers", "reactances-added", "kinds-exchanged"),
    cover_says=(
        "Write on the board: {values}. Ask: can one part have more than 230 V? Count hands and keep the number. "
        "5 minutes.",
        "Open the classroom view. Press the arrow key for each move and read its sentence aloud. 15 minutes.",
        "Hand out the problem sheet. The lengths come from the answers below: give the current and the three voltages, "
        "so that all can draw. 25 minutes.",
        "Ask each learner to measure the last line: it must come to 230 V. Who is far off draws it again. 10 minutes.",
        "Ask again: can one part have more than the supply? Yes: the coil has {voltage_2}. 5 minutes.",
    ),
    cover_stops=cover_stops("Resonance on a real bench: parts can have several times the supply’s voltage. Not today."),
    cover_handouts=cover_handouts_of("series-circuit"),
)  # fmt: skip

PARALLEL = LessonPlan(
    slug="parallel-circuit",
    aim="Find the current of each branch, draw them on the common voltage, and see why the whole is less than the "
        "branches added as numbers.",
    parts=(
        Part("Starter", 5, (
            "On the board: {values}. What do branches side by side share? The voltage: it is drawn first this time.",
            "Everyone guesses the whole current. Keep the guesses.",
        )),
        Part("Demonstration", 15, (
            "Each branch alone: {current_1}, {current_2}, {current_3}. Branch 2 has resistance and coil: impedance "
            "first, then Ohm’s law, then its angle.",
            "Classroom view: the resistor’s current lies along V, the coil branch lags, the capacitor leads by 90°.",
            "Sum: {answer}. As plain numbers the branches would give nearly twice as much: where did it go? Coil and "
            "capacitor hand current to each other.",
        )),
        Part("Guided work", 15, (
            "Everyone draws the three currents at {scale}. Stop after the second: with the capacitor still to come, is "
            "the whole going to be longer or shorter?",
            "Read the angle of the whole current from V: {phase_angle}.",
        )),
        Part("Independent work", 20, (
            "Branches of their own from the class set: each current and angle, then the drawing, then admittance as "
            "the check.",
            "Done early: which frequency brings whole current and voltage in phase? Here {resonance}.",
        )),
        Part("Exit question", 5, (
            "A resistor of 24 Ω and a coil of 32 Ω reactance side by side on 240 V: what is the whole current?",
            "{exit_current}, from 10 A and 7.5 A at a right angle. Who says 17.5 A has added the sizes.",
        )),
    ),
    exit_values=(("b1", "24"), ("b2", "j32"), ("b3", ""), ("supply", "240 V")),
    handouts=handouts_of("parallel-circuit", rig_of("parallel-circuit")),
    listen=("branch-as-numbers", "branch-reactance-only", "kinds-exchanged", "plain-sum", "impedances-in-series"),
    cover_says=(
        "Write on the board: {values}. Ask everyone to guess the whole current and write it down. 5 minutes.",
        "Open the classroom view. Press the arrow key for each move and read its sentence aloud. 15 minutes.",
        "Hand out the problem sheet. Give the three branch currents from the answers below with their angles as the "
        "finished drawing shows them; learners draw and add. 25 minutes.",
        "Early finishers draw them again in another order: the end must be the same point. 10 minutes.",
        "Ask: why is the whole only {answer}, less than the branches added? They point different ways. 5 minutes.",
    ),
    cover_stops=cover_stops(),
    cover_handouts=cover_handouts_of("parallel-circuit"),
)  # fmt: skip

POWER = LessonPlan(
    slug="power-triangle",
    aim="Draw active, reactive and apparent power as a triangle, and find the capacitor that brings the power factor "
        "to a target.",
    parts=(
        Part("Starter", 5, (
            "On the board: {values}. Who pays for what: the meter counts kW, the cable carries kVA.",
            "Everyone guesses the line current before and after correction.",
        )),
        Part("Demonstration", 15, (
            "Draw P along, Q square up from its tip: {active_power} and {reactive_power}. The slanting side is S, "
            "{apparent_power}: measure it, do not add.",
            "Classroom view: the capacitor’s vars point straight down from the tip of Q. P stays as it is.",
            "Capacitor {correction}: in delta {capacitance_delta} each, in star {capacitance_star} each. Ask why "
            "three times as much in star.",
        )),
        Part("Guided work", 15, (
            "Everyone draws both triangles at {scale}. Before the capacitor is drawn: where must its tip lie, so that "
            "the angle is that of the target?",
            "Read off S after correction: {apparent_power_after}. Current from {line_current} to {line_current_after}.",
        )),
        Part("Independent work", 20, (
            "A load of their own from the class set: triangle, target, kvar; check by Q = P · tan φ.",
            "Done early: what would power factor 1 cost in kvar, and is the last bit worth it?",
        )),
        Part("Exit question", 5, (
            "A load takes 3 kW and 4 kvar. Apparent power, and power factor?",
            "{exit_apparent_power} and {exit_power_factor}. Who says 7 kVA has added along two directions.",
        )),
    ),
    exit_values=(("power", "5 kVA"), ("factor", "0.6 lag"), ("target", "")),
    handouts=handouts_of("power-triangle", rig_of("power-triangle")),
    listen=("whole-corrected", "remaining-taken", "apparent-subtracted", "cosines-subtracted", "apparent-for-active"),
    cover_says=(
        "Write on the board: {values}. Ask for a guess: by how much does the current fall? 5 minutes.",
        "Open the classroom view. Press the arrow key for each move and read its sentence aloud. 15 minutes.",
        "Hand out the problem sheet. Learners draw P, then Q square to it, then the capacitor back down. Give P and Q "
        "from the answers below to those who are stuck. 25 minutes.",
        "Early finishers: the same load with a target of 1. How long is the capacitor’s arrow now? 10 minutes.",
        "Ask: 3 kW and 4 kvar, how many kVA? {exit_apparent_power}, not 7. 5 minutes.",
    ),
    cover_stops=cover_stops("Touching or measuring capacitors: they stay charged when the supply is off. Never today."),
    cover_handouts=cover_handouts_of("power-triangle"),
)  # fmt: skip

STAR_DELTA = LessonPlan(
    slug="star-and-delta",
    aim="Build a line current of a delta as the difference of two branch currents, and say when √3 may be used.",
    parts=(
        Part("Starter", 5, (
            "On the board: {values}. Ask: which two branches meet at line 1, and which way does "
            "each current point there?",
            "Who would multiply by √3? Keep the count: the loads differ.",
        )),
        Part("Demonstration", 15, (
            "Branch currents by Ohm’s law on the full line voltage: {branch_1}, {branch_2}, {branch_3}.",
            "Classroom view: the branch that arrives is turned round before it is added. Ask for the angle first.",
            "Line 1 carries {answer}; √3 times its branch would be about 35 A. √3 holds for equal loads alone.",
        )),
        Part("Guided work", 15, (
            "Everyone draws line 1 at {scale}. Then half the room draws line 2, half line 3 ({line_2}, {line_3}): the "
            "line is a choice on the page.",
            "Put the three line currents together on one sheet: they close. Why must they? There is no fourth wire.",
        )),
        Part("Independent work", 20, (
            "Loads of their own from the class set. Sketch first which arrow is turned round.",
            "Done early: the same three loads in star, with neutral: which line carries what?",
        )),
        Part("Exit question", 5, (
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
