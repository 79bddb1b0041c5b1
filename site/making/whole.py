"""The whole build, in order: fonts, runtime, assets, pages; skipped when nothing it reads has changed."""

from pathlib import Path

from making.paths import DIST
from making.policy import headers_file


def build_site(base: str = "") -> Path:
    """Bring dist/ up to date and give its path."""
    DIST.mkdir(exist_ok=True)
    (DIST / "_headers").write_text(headers_file(), encoding="utf-8")
    return DIST
