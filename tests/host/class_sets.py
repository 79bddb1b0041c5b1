"""A class of three through the api, piece by piece: its PDF and its table must be alike in every host."""

import hashlib
import json
import time

BASE = "https://www.folio.example/term/class-set/"
FORMS = (
    {"tier": "core", "method": "parallelogram", "seed": "4711", "learners": "3"},
    {"tier": "stretch", "method": "any", "seed": "12", "learners": "3", "scale": "open", "decimal": "comma"},
    {"topic": "open-neutral", "tier": "support", "seed": "7", "learners": "3"},
)
ROLL = 'Amber Okafor\n"Smith, T."\n=1+1'


def ask(**request):
    """One request."""
    from pycore import api

    text, data = api.handle(json.dumps({"page": "class-set", "base": BASE} | request))
    reply = json.loads(text)
    assert reply["ok"], reply
    return reply, data


def made(form, work, **more):
    """The bytes that some work gives."""
    reply, _ = ask(do="begin", work=work, form=form, roll=ROLL, **more)
    while not reply["ended"]:
        reply, _ = ask(do="next", job=reply["job"], pieces=3)
    return ask(do="finish", job=reply["job"])[1]


def digests():
    """A digest of each set's PDF, of its key as a table, and of its marking."""
    found = []
    for form in FORMS:
        for work, more in (("pdf", {}), ("key", {}), ("marks", {"results": "code;answer\n332-6M9-239;5\n3CD;4"})):
            found.append(hashlib.sha256(made(form, work, **more)).hexdigest()[:20])
    return found


PAPER = {"learners": "2", "seed": "4711", "questions": "2", "q2-asks": "calculation", "q2-working": "squares",
         "q1-link": "https://folio.example/neutral-current/#v=3&i1=9.2&i2=14.7&i3=6.5"}  # fmt: skip
ANSWERS = "Amber Okafor;1;7.2 A at 101 clockwise;7.24\n2;2;;12\n9;1;3;3"


def paper_digests():
    """A digest of a question paper's files and its marks, and of the register that they go into."""
    found = []
    for work, more in (("papers", {}), ("one", {"which": "2"}), ("scheme", {}), ("marks", {"results": ANSWERS})):
        made_bytes = made(PAPER, work, page="question-papers", **more)
        found.append(hashlib.sha256(made_bytes).hexdigest()[:20])
    marks = [{"place": 1, "name": "Amber Okafor", "low": 3, "high": 5, "mistakes": ["a phasor left out"]}]
    entries = [{"paper": "7AB-CDE-FGH", "title": "Hall lighting", "group": "", "date": "", "of": 10, "marks": marks}]
    found.append(ask(do="answer", page="register", form={}, papers=entries)[0]["regions"]["register"])
    table = made({}, "table", page="register", papers=entries)
    return [*found, hashlib.sha256(table).hexdigest()[:20]]


def seconds(learners):
    """How long a set takes, and the longest of its pieces: for the bench."""
    form = {"seed": "99", "learners": str(learners)}
    began = time.perf_counter()
    reply, _ = ask(do="begin", work="pdf", form=form)
    longest = 0.0
    while not reply["ended"]:
        piece = time.perf_counter()
        reply, _ = ask(do="next", job=reply["job"], pieces=1)
        longest = max(longest, time.perf_counter() - piece)
    ask(do="finish", job=reply["job"])
    return time.perf_counter() - began, longest
