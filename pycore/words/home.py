"""The words of the front page."""

TITLE = "Alternating currents, drawn to scale"
DESCRIPTION = (
    "Phasor calculators. They draw the answer to scale, explain each move of ruler and protractor, and print at exact "
    "size."
)
LEAD = (
    "Type your values. The page works out the answer, draws every move of ruler and protractor, and prints at exact "
    "size."
)
OPEN, LESSON, BLANK = "Open this sheet", "Lesson", "Blank sheet"
USE = "Use these values"

LEARNING, TEACHING = "I am learning", "I am teaching"
CODE, OPEN_CODE = "Code", "Open"
TO_PRACTISE = ("Practise", "at your own level")
TO_READ = ("Read a protractor", "one page")
TO_SHARE = ("New learner", "on a shared computer")
TO_CUT = ("Ruler and protractor", "print and cut out")
TO_SHOW = ("Show a lesson", "projector")
TO_SET = ("Make a class set", "one for each learner")
TO_EXAMINE = ("Put a question paper together", "with its mark scheme")
TO_SETTLE = ("College settings", "once, for every page")
TO_PLAN = ("Plan a lesson", "60 minutes")
