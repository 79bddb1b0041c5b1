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
TO_DRAW = ("Draw on the screen", "each line checked")
TO_SHOW = ("Show a lesson", "projector")
TO_SET = ("Make a class set", "one for each learner")
TO_EXAMINE = ("Make a question paper", "mark scheme too")
TO_MARK = ("Mark photographs", "a pile at once")
