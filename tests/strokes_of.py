"""A made-up photograph read as the page reads it: its marks and strokes by the page's own scripts, in one Node."""

import json
import subprocess
import tempfile
from dataclasses import dataclass
from pathlib import Path
from types import TracebackType

from PIL import Image

RUN = Path(__file__).parent / "bench" / "photographs_read.mjs"
MOST = 2000


def measured(picture: Image.Image) -> Image.Image:
    """A photograph no larger than the page makes it."""
    share = min(1.0, MOST / max(picture.size))
    return picture.resize((round(picture.width * share), round(picture.height * share)), Image.Resampling.BILINEAR)


@dataclass
class Reader:
    """A Node that reads photographs one after another; a context manager."""

    def __enter__(self) -> "Reader":
        self.folder = tempfile.TemporaryDirectory()
        self.node = subprocess.Popen(
            ["node", str(RUN)], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, bufsize=1
        )
        return self

    def __exit__(self, kind: type | None, error: BaseException | None, trace: TracebackType | None) -> None:
        self.node.stdin.close()
        self.node.wait(timeout=20)
        self.node.stdout.close()
        self.folder.cleanup()

    def ask(self, picture: Image.Image, **request: object) -> dict:
        """The reply to one request about a picture."""
        self.node.stdin.write(json.dumps({**self._filed(picture, "pixels"), **request}) + "\n")
        reply = self.node.stdout.readline()
        if not reply:
            raise RuntimeError("the reader in Node has ended")
        return json.loads(reply)

    def codes(self, picture: Image.Image) -> list[str]:
        """The texts of the QR codes in a picture."""
        return self.ask(picture, do="codes", measured=self._filed(measured(picture), "measured"))["texts"]

    def _filed(self, picture: Image.Image, name: str) -> dict[str, object]:
        """A picture in a file that Node reads, with its size."""
        file = Path(self.folder.name) / name
        file.write_bytes(picture.convert("RGBA").tobytes())
        return {"file": str(file), "width": picture.width, "height": picture.height}
