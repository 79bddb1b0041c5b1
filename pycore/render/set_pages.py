"""The pages that make files for a class, and what each of them answers to requests."""

from typing import Any


def set_page(slug: object) -> Any:
    """Return the module of a page with this folder, with its ``FIELDS``, its ``LONGEST`` texts, ``answer`` and
    ``share``; None for other pages."""
    # Only its own page needs each.
    if slug == "class-set":
        from pycore.render import class_set

        return class_set
    if slug == "question-papers":
        from pycore.render import question_paper

        return question_paper
    if slug == "register":
        from pycore.render import register

        return register
    if slug == "photographs":
        from pycore.render import pile

        return pile
    if slug == "college-settings":
        from pycore.render import college

        return college
    return None
