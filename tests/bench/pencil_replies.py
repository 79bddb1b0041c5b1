"""What the page's script finds in made-up photographs of drawings, kept in a folder: a photograph is made and read once
for many counts, as long as neither the script nor what makes photographs changes.

`python -m bench.pencil_replies count first folder` collects alone, with tests/ and the project on the path.
"""

import hashlib
import json
import re
import sys
from collections.abc import Mapping
from dataclasses import asdict, dataclass
from functools import lru_cache
from pathlib import Path

from pencil_photographs import photographed
from pencilled import NEUTRAL, pencilled
from PIL import Image
from strokes_of import RUN, Reader, measured

from pycore.geometry import Point
from pycore.practice.photograph import Photo, PhotoUnusableError, measured_by
from pycore.projection import Projection
from pycore.sums.strokes import StrokesTask, strokes_task

MAKERS = ("pencilled.py", "pencil_photographs.py", "photographs.py")
IMPORTED = re.compile(r'^(?:import|}).* from "(\.[^"]+)"', re.MULTILINE)


@dataclass(frozen=True)
class Reply:
    """What the script found in one photograph: the texts of its QR codes, its marks (pixels of the picture as it is
    measured, of that ``size``; None: none were found), the paper as it was told of it, the strokes, the processor's
    milliseconds; ``source``: from which script and which makers of photographs."""

    source: str
    codes: list[str]
    size: tuple[int, int]
    marks: list[list[float] | None] | None
    ground: dict[str, object] | None
    strokes: list[dict]
    milliseconds: float


def ground_of(task: StrokesTask, projection: Projection) -> dict[str, object]:
    """What the page's script is told about the paper."""
    lens = {"middle": list(projection.lens.middle), "reach": projection.lens.reach}
    return {"projection": {"numbers": projection.numbers, **lens}, "box": list(task.box),
            "printed": asdict(task.printed)}  # fmt: skip


def projection_of(task: StrokesTask, size: tuple[int, int], marks: object) -> Projection | None:
    """The projection from found marks; None where they do not fit the sheet."""
    seen = [Point(*mark) if mark else None for mark in marks or ()]
    try:
        return measured_by(Photo(*map(float, size), 1.0), task.photo.marks, seen, by_hand=False) if seen else None
    except PhotoUnusableError:
        return None


def reply_to(reader: Reader, photograph: Image.Image, task: StrokesTask) -> Reply:
    """The script's reply to a photograph."""
    codes, picture = reader.codes(photograph), measured(photograph)
    found = reader.ask(picture, do="marks", editions=[[list(place) for place in task.photo.marks]])
    marks = found["marks"] and [mark and [mark["x"], mark["y"]] for mark in found["marks"]]
    projection = projection_of(task, picture.size, marks)
    if projection is None:
        return Reply(source(), codes, picture.size, None, None, [], found["milliseconds"])
    ground = ground_of(task, projection)
    read = reader.ask(picture, do="strokes", ground=ground)
    whole = found["milliseconds"] + read["milliseconds"]
    return Reply(source(), codes, picture.size, marks, as_kept(ground), read["strokes"], whole)


def as_kept(value: object) -> dict:
    """A value as it is once it has been in a file: lists for tuples."""
    return json.loads(json.dumps(value))


@lru_cache(maxsize=1)
def source() -> str:
    """A digest of the script with all that it imports, and of what makes photographs."""
    tests, files = Path(__file__).parents[1], [RUN]
    for file in files:
        imported = [(file.parent / name).resolve() for name in IMPORTED.findall(file.read_text("utf-8"))]
        files += [one for one in imported if one not in files]
    whole = b"".join(file.read_bytes() for file in (*files, *(tests / name for name in MAKERS)))
    return hashlib.sha256(whole).hexdigest()


def kept(folder: Path, seed: int) -> Reply | None:
    """The reply to the photograph with this number; None where there is none of today's script and photographs."""
    file = folder / f"{seed}.json"
    if not file.exists():
        return None
    fields: Mapping[str, object] = json.loads(file.read_text("utf-8"))
    reply = Reply(**fields)  # type: ignore[arg-type]
    return reply if reply.source == source() else None


def collect(folder: Path, first: int, number: int) -> None:
    """Make and read so many photographs, but those whose replies are in the folder."""
    folder.mkdir(parents=True, exist_ok=True)
    with Reader() as reader:
        for seed in range(first, first + number):
            if kept(folder, seed) is None:
                sheet = pencilled(seed)
                reply = reply_to(reader, photographed(sheet, seed).picture, strokes_task(NEUTRAL, sheet.form))
                half = folder / f"{seed}.half"
                half.write_text(json.dumps(asdict(reply)), "utf-8")
                half.rename(folder / f"{seed}.json")


if __name__ == "__main__":
    collect(Path(sys.argv[3]), int(sys.argv[2]), int(sys.argv[1]))
