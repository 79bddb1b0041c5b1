"""What a page asks as it opens: the same in every host, as JSON."""

import json


def ask(**request: object) -> tuple[dict, bytes | None]:
    """The api's reply."""
    from pycore import api

    text, data = api.handle(json.dumps(request))
    return json.loads(text), data


def first(slug: str) -> str:
    """All of the page's first answer."""
    form = ask(do="open", page=slug, fragment="")[0]["form"]
    return json.dumps(ask(do="answer", page=slug, form=form, parts=["answer", "sheet", "view", "workings"])[0])


def coded(slug: str, code: str) -> str:
    """The values and the answer of the problem that a code opens, held back as the page holds it back."""
    opened = ask(do="open", page=slug, fragment=f"v=3&code={code}")[0]
    parts = ["answer", "sheet", "view", "check"]
    return json.dumps([opened, ask(do="answer", page=slug, form=opened.get("form"), parts=parts, veiled=True)[0]])


def pdf(slug: str) -> str:
    """The reply to a PDF asked for, with its size."""
    reply, data = ask(do="pdf", page=slug, form=ask(do="open", page=slug, fragment="")[0]["form"])
    return json.dumps({**reply, "size": len(data or b"")})
