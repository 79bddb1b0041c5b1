"""What the codes on sheets, keys and papers are for, told to a lecturer in one place."""

TITLE = "Codes: which is which"
LEAD = "Capital or small letters, with or without hyphens. No code has a 0, a 1, an O or an I."
SHEET, SET, PAPER, CHECK = "532-222-296", "532-222-224", "75L-KUT-225", "627-25S-L2D"
"""An example of each kind of code."""
KINDS = (
    (
        "Code of a sheet", SHEET,
        "It stands on a learner’s sheet and in each row of a key. It opens this learner’s problem. A QR code beside "
        "it does the same.",
        "Learners type it on the front page or on the problem’s own page, under Check. You type it on the page Mark "
        "photographs, or in place of a name where you mark answers.",
    ),
    (
        "Code of a class set", SET,
        "It stands on the key and on the page Class set. It opens the whole set: the same sheets and the same key.",
        "You type it under “Open an earlier set” on the page Class set; any sheet’s code does the same there. Learners "
        "do not need it.",
    ),
    (
        "Code of a question paper", PAPER,
        "It begins with 7. It stands on the mark scheme and, with another end for each learner, on their papers. It "
        "opens nothing on a phone.",
        "You type it on the page Question papers: in place of a name, or for a lost paper. For a photograph, add /2 "
        "for question 2.",
    ),
    (
        "Check code", CHECK,
        "It begins with 6. It stands on a sheet with your own values. It brings no values.",
        "Learners type the values of their sheet, then the code. The page says whether the values are right.",
    ),
)
"""Each kind of code: its name, an example, where it stands and what it opens, who types it where."""
