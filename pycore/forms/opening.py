"""How a printed sheet is opened again, and its place in a class set."""

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    pass

@dataclass(frozen=True, slots=True)
class SetPlace:
    """A sheet's place in a class set: its code as printed, which sheet of how many it is; whether any method
    will do, and whether the scale is the learner's to choose."""

    code: str
    number: int
    of: int
    any_method: bool = False
    own_scale: bool = False


@dataclass(frozen=True, slots=True)
class ReopenInfo:
    """How a printed sheet is opened again: the page's own address, and whether to draw a code.

    ``base`` is the address without fragment, "" when it is not known; a QR code is drawn only
    when ``code`` is true and the address is one that another device can reach. ``issue`` is the
    sheet's place in a class set, if it is of one.
    """

    base: str = ""
    code: bool = False
    issue: SetPlace | None = None

    @property
    def reachable(self) -> bool:
        """Whether another device can open the address: not a file, not this machine's own."""
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
