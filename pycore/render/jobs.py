"""Jobs over several requests: begun, continued piece by piece, then finished or stopped.

The only state between requests: one job at most; a new one replaces it.
"""

from collections.abc import Mapping
from typing import Any

from pycore.forms import links
from pycore.forms.opening import ReopenInfo
from pycore.pages import class_set as page
from pycore.pages.class_job import Job, key_job, pdf_job
from pycore.pages.print_setup import correction_of
from pycore.render.class_marks import marks_job
from pycore.render.class_set import roll_of
from pycore.render.lettered import letters_of
from pycore.render.set_pages import set_page
from pycore.words import class_set as words

Reply = tuple[dict[str, Any], bytes | None]
MOST_PIECES = 10_000
_under_way: dict[int, Job] = {}
_counted = [0]


def _job(form: Mapping[str, str], request: Mapping[str, Any]) -> Job:
    """Return the job that a request asks for. Raises InputError."""
    own = getattr(set_page(request.get("page")), "job", None)
    if own is not None:
        job: Job = own(form, request)
        return job
    group = page.read_set(form, roll_of(request), letters_of(request))
    if request.get("work") == "key":
        return key_job(group)
    if request.get("work") == "marks":
        return marks_job(group, request)
    return pdf_job(group, ReopenInfo(topic_base(request.get("base"), group)), correction_of(request))


def topic_base(base: object, group: page.ClassSet) -> str:
    """Return the address of a topic's page from that of the page of class sets; "" if unknown."""
    root = links.root_of(base, words.SLUG)
    return f"{root}{group.topic.slug}/" if root else ""


def _reply(number: int, job: Job) -> dict[str, Any]:
    return {"ok": True, "job": number, "said": job.said, "share": round(job.share, 4), "ended": job.ended}


def begin(form: Mapping[str, str], request: Mapping[str, Any]) -> Reply:
    """Begin a job and drop any other. Raises InputError."""
    job = _job(form, request)
    _counted[0] += 1
    _under_way.clear()
    _under_way[_counted[0]] = job
    return _reply(_counted[0], job), None


def _gone() -> Reply:
    return {"ok": False, "gone": True, "errors": [], "announce": words.NO_JOB, "waiting": words.NO_JOB}, None


def _request(request: Mapping[str, Any]) -> tuple[int, Job | None]:
    number = request.get("job")
    return (number, _under_way.get(number)) if isinstance(number, int) else (0, None)


def go_on(request: Mapping[str, Any]) -> Reply:
    """Do as many pieces as the request asks for, at least one; with ``parts`` the reply brings the next part of the
    file, where one is ready."""
    number, job = _request(request)
    if job is None:
        return _gone()
    pieces = request.get("pieces")
    job.go_on(max(1, min(MOST_PIECES, pieces)) if isinstance(pieces, int) else 1)
    return _reply(number, job), job.take() if request.get("parts") is True else None


def finish(request: Mapping[str, Any]) -> Reply:
    """Return the result of the job, or what follows the parts of it; the job is then removed."""
    _, job = _request(request)
    if job is None:
        return _gone()
    while not job.ended:
        job.go_on(MOST_PIECES)
    _under_way.clear()
    reply, data = job.result()
    return {"ok": True, **reply}, data


def stop(request: Mapping[str, Any]) -> Reply:
    """Drop the job."""
    number, job = _request(request)
    if job is not None:
        del _under_way[number]
    return {"ok": True, "announce": words.STOPPED}, None
