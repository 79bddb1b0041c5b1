"""What a request says of its sheets beside the form: how they are opened again, their place in a class set, letters."""

from dataclasses import dataclass

from pycore.lettering.glyphs import NO_LETTERS, Letters


@dataclass(frozen=True, slots=True)
class SetPlace:
    """A sheet's place in a class set: its code as printed, its number and the number of sheets, whether any method is
    allowed, and whether the learner chooses the scale. ``question``: its name in a question paper, whose code is then
    printed; "" for a class set. There ``page`` of ``pages`` is its place among the learner's pages (0: not counted),
    and ``calculated`` says whether it has room for a calculated answer; ``of`` is 0 for a sheet of all learners."""

    code: str
    number: int
    of: int
    any_method: bool = False
    own_scale: bool = False
    question: str = ""
    page: int = 0
    pages: int = 0
    calculated: bool = True


@dataclass(frozen=True, slots=True)
class ReopenInfo:
    """How a printed sheet is opened again, and what else a request brings for it.

    ``base``: address without fragment, "" if unknown. ``code``: draw a QR code, if another device can reach the
    address. ``issue``: the sheet's place in a class set, if any. ``letters``: shapes of letters that our faces lack.
    """

    base: str = ""
    code: bool = False
    issue: SetPlace | None = None
    letters: Letters = NO_LETTERS

    @property
    def comes_again(self) -> bool:
        """Whether the sheet is made again, with its code and its steps, once nobody types."""
        return bool(self.base) and not self.code

    @property
    def reachable(self) -> bool:
        """Whether another device can open the address: not a file, not the machine itself."""
        scheme, _, rest = self.base.partition("://")
        host = rest.partition("/")[0].rpartition("@")[2]
        name = host.partition("]")[0] + "]" if host.startswith("[") else host.partition(":")[0]
        return (
            scheme in ("http", "https")
            and bool(name)
            and name not in ("localhost", "[::1]", "0.0.0.0")
            and not name.startswith("127.")
            and not name.endswith(".localhost")
        )
