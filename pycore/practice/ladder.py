"""Free practice: which problem comes next and how hard it is, worked out from the record that a device keeps.

The rule. Each track (a page and a method) has a level of its own: one for each tier of the codes.
Two problems in a row that are right at the first try bring the next level; two in a row of which the answer was
shown bring the one before. A problem that is right at a later try leaves the level as it is, and both counts begin
anew. An answer in the band "look again" counts as no try. The streak counts problems solved in a row, whatever the
track and the number of tries; showing an answer ends it.

Problems are codes: the record holds a seed and how many problems each track has had, so that the same record gives
the same next problem everywhere. Records come from files, and from storage that others can write: every value is
checked.
"""

import json
import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, replace

from pycore.practice import codes
from pycore.practice.codes import METHODS, MOST_LEARNERS, MOST_TOPICS, SEEDS, TIERS, Code, CodeError

VERSION = 1
KIND = "phasor-folio-practice"
IN_A_ROW = 2
"""So many problems in a row bring another level."""
MOST = 1_000_000
"""No count of a record is larger."""
LONGEST_FILE = 100_000
DEEPEST = 6
MOST_MISTAKES = 200
MISTAKE = re.compile("[a-z][a-z0-9-]{0,39}")
SOLVED, SHOWN = "solved", "shown"


class RecordError(ValueError):
    """Raised for what is no record of ours: ``reason`` is ``long``, ``deep``, ``text``, ``kind``, ``version``,
    ``key`` (one that no record has) or ``value``; ``part`` names what is at fault."""

    def __init__(self, reason: str, part: str = "") -> None:
        self.reason, self.part = reason, part
        super().__init__(f"{reason}: {part!r}")


@dataclass(frozen=True, slots=True)
class TrackProgress:
    """One track: its level (0 the first), the run of problems towards another (negative: shown
    ones), how many problems it has had, how many of them were solved; the code of the present one, the tries at
    it, and how it ended."""

    level: int = 0
    run: int = 0
    problems: int = 0
    solved: int = 0
    code: str = ""
    tries: int = 0
    done: str = ""

    @property
    def only_seen(self) -> bool:
        """Whether the present problem was looked at and nothing more."""
        return bool(self.code) and not self.tries and not self.done

    @property
    def unsolved(self) -> int:
        """Problems that were answered wrong or shown, and not solved."""
        return max(0, self.problems - self.solved - self.only_seen)


@dataclass(frozen=True, slots=True)
class Record:
    """What a device keeps of its practice. ``track`` is the present one's key (``0.parallelogram``)."""

    seed: int
    track: str
    streak: int = 0
    best: int = 0
    tracks: Mapping[str, TrackProgress] = field(default_factory=dict)
    mistakes: Mapping[str, int] = field(default_factory=dict)

    @property
    def current_track(self) -> TrackProgress:
        """The present track as it stands."""
        return self.tracks.get(self.track, TrackProgress())


def track_key(topic: int, method: str) -> str:
    """The key of a track: a topic and a method."""
    return f"{topic}.{method}"


def parts_of(key: str) -> tuple[int, str]:
    """Topic and method of a key. Raises RecordError."""
    number, _, method = key.partition(".")
    known = number.isascii() and number.isdigit() and len(number) <= len(str(MOST_TOPICS))
    topic = int(number) if known else MOST_TOPICS
    if topic >= MOST_TOPICS or method not in METHODS or key != track_key(topic, method):
        raise RecordError("value", "way")
    return topic, method


def _with(record: Record, track: TrackProgress, **more: object) -> Record:
    return replace(record, tracks={**record.tracks, record.track: track}, **more)  # type: ignore[arg-type]


def next_code(record: Record) -> Code:
    """The next problem of the present track at its level; numbers that are used up go on with the next seed."""
    topic, method = parts_of(record.track)
    problems = record.current_track.problems
    seed = (record.seed + problems // MOST_LEARNERS) % SEEDS
    return Code(topic, TIERS[record.current_track.level], method, "A4", seed, problems % MOST_LEARNERS + 1)


def begun(record: Record) -> Record:
    """The record with a problem to solve: the present one, or the next where there is none yet."""
    return record if record.current_track.code else following(record)


def following(record: Record) -> Record:
    """The record with the next problem."""
    track = record.current_track
    code = str(next_code(record))
    return _with(record, replace(track, code=code, problems=min(MOST, track.problems + 1), tries=0, done=""))


def turned_to(record: Record, track: str) -> Record:
    """The record at another track, whose problem is as it was left. Raises RecordError."""
    parts_of(track)
    return begun(replace(record, track=track))


def _climbed(track: TrackProgress, step: int) -> TrackProgress:
    """A track after one more problem of a run, upwards or downwards."""
    run = track.run + step if track.run * step > 0 else step
    if run not in (IN_A_ROW, -IN_A_ROW):
        return replace(track, run=run)
    level = min(len(TIERS) - 1, max(0, track.level + step))
    return replace(track, level=level, run=0)


def tried(record: Record, right: bool, mistakes: Iterable[str] = ()) -> Record:
    """The record after an answer; ``mistakes`` are the keys of those it may come from. A problem that is done
    changes nothing more."""
    track = record.current_track
    if track.done:
        return record
    tries = min(MOST, track.tries + 1)
    if not right:
        counts = dict(record.mistakes)
        for key in mistakes:
            counts[key] = min(MOST, counts.get(key, 0) + 1)
        return _with(record, replace(track, tries=tries), mistakes=counts)
    solved = replace(track, tries=tries, solved=min(MOST, track.solved + 1), done=SOLVED)
    solved = _climbed(solved, 1) if tries == 1 else replace(solved, run=0)
    streak = min(MOST, record.streak + 1)
    return _with(record, solved, streak=streak, best=max(record.best, streak))


def shown(record: Record) -> Record:
    """The record after its answer was asked for: not solved."""
    track = record.current_track
    return record if track.done else _with(record, _climbed(replace(track, done=SHOWN), -1), streak=0)


def _added(one: int, other: int) -> int:
    return min(MOST, one + other)


def merged(mine: Record, other: Record) -> Record:
    """Two records as one: counts added, the higher level and the longer streak kept, the present problem mine.

    Records of one seed are the same record at two times: both have had the same problems in the same order. So of their
    counts the larger holds, and an own file that is taken again changes nothing."""
    together: Callable[[int, int], int] = max if mine.seed == other.seed else _added
    tracks = dict(mine.tracks)
    for key, track in other.tracks.items():
        own = tracks.get(key)
        if own is None:
            tracks[key] = track
        else:
            tracks[key] = replace(
                own, level=max(own.level, track.level),
                problems=together(own.problems, track.problems - track.only_seen),
                solved=together(own.solved, track.solved),
            )  # fmt: skip
    counts = dict(mine.mistakes)
    for key, count in other.mistakes.items():
        counts[key] = together(counts.get(key, 0), count)
    return replace(
        mine, tracks=tracks, mistakes=counts, streak=max(mine.streak, other.streak), best=max(mine.best, other.best)
    )


# Records as they are kept and read.


def written(record: Record) -> dict[str, object]:
    """A record as it is kept, ready for JSON."""
    tracks = {
        key: {
            "level": track.level, "run": track.run, "had": track.problems, "solved": track.solved, "code": track.code,
            "tries": track.tries, "done": track.done,
        }
        for key, track in sorted(record.tracks.items())
    }  # fmt: skip
    return {
        "kind": KIND, "version": VERSION, "seed": record.seed, "way": record.track, "streak": record.streak,
        "best": record.best, "ways": tracks, "mistakes": dict(sorted(record.mistakes.items())),
    }  # fmt: skip


def _whole(value: object, name: str, least: int = 0, most: int = MOST) -> int:
    if isinstance(value, bool) or not isinstance(value, int) or not least <= value <= most:
        raise RecordError("value", name)
    return value


def _object(value: object, name: str, keys: Iterable[str] = ()) -> dict[str, object]:
    """An object with exactly these keys, if any are named."""
    if not isinstance(value, dict):
        raise RecordError("value", name)
    wanted = tuple(keys)
    if wanted:
        for key in value:
            if key not in wanted:
                raise RecordError("key", str(key))
        for key in wanted:
            if key not in value:
                raise RecordError("value", key)
    return value


def _track(key: str, value: object) -> TrackProgress:
    topic, method = parts_of(key)
    kept = _object(value, "ways", ("level", "run", "had", "solved", "code", "tries", "done"))
    code, done = kept["code"], kept["done"]
    if not isinstance(code, str) or done not in ("", SOLVED, SHOWN) or not isinstance(done, str):
        raise RecordError("value", "code" if not isinstance(code, str) else "done")
    if code:
        try:
            read = codes.read(code[:40])
        except CodeError:
            raise RecordError("value", "code") from None
        if (read.topic, read.method) != (topic, method):
            raise RecordError("value", "code")
        code = str(read)
    problems = _whole(kept["had"], "had")
    return TrackProgress(
        _whole(kept["level"], "level", 0, len(TIERS) - 1), _whole(kept["run"], "run", 1 - IN_A_ROW, IN_A_ROW - 1),
        problems, _whole(kept["solved"], "solved", 0, problems), code, _whole(kept["tries"], "tries"), done,
    )  # fmt: skip


def read(value: object) -> Record:
    """A record from JSON's values. Raises RecordError."""
    if not isinstance(value, dict) or value.get("kind") != KIND:
        raise RecordError("kind")
    if value.get("version") != VERSION:
        raise RecordError("version", str(value.get("version"))[:12])
    kept = _object(value, "", ("kind", "version", "seed", "way", "streak", "best", "ways", "mistakes"))
    track = kept["way"]
    if not isinstance(track, str):
        raise RecordError("value", "way")
    parts_of(track)
    tracks = {key: _track(key, one) for key, one in _object(kept["ways"], "ways").items()}
    counted = _object(kept["mistakes"], "mistakes")
    if len(counted) > MOST_MISTAKES:
        raise RecordError("value", "mistakes")
    for key in counted:
        if not MISTAKE.fullmatch(key):
            raise RecordError("key", key)
    mistakes = {key: _whole(count, key) for key, count in counted.items()}
    streak = _whole(kept["streak"], "streak")
    best = _whole(kept["best"], "best", streak)
    return Record(_whole(kept["seed"], "seed", 0, SEEDS - 1), track, streak, best, tracks, mistakes)


def _deepest(text: str) -> int:
    """How deep the brackets of a text stand, strings apart."""
    deep = most = 0
    quoted = escaped = False
    for sign in text:
        if quoted:
            quoted = escaped or sign != '"'
            escaped = sign == "\\" and not escaped
        elif sign == '"':
            quoted = True
        elif sign in "[{":
            deep += 1
            most = max(most, deep)
        elif sign in "]}":
            deep -= 1
    return most


def read_text(text: str) -> Record:
    """A record from a file's text. Raises RecordError."""
    if len(text) > LONGEST_FILE:
        raise RecordError("long")
    if _deepest(text) > DEEPEST:
        raise RecordError("deep")
    try:
        value = json.loads(text.removeprefix("\ufeff"))
    except (ValueError, RecursionError):
        raise RecordError("text") from None
    return read(value)
