"""Lighthouse finds nothing to better in access, practice and findability; the bench weighs the speed of every page."""

from pathlib import Path

import pytest
from browser.asking import SLUG
from making.lighthouse import GOALS, scores

CHECKED = ("accessibility", "best-practices", "seo")


@pytest.mark.parametrize("slug", ["", f"{SLUG}/"], ids=["home", SLUG])
def test_lighthouse_gives_full_marks(site: str, chromium_path: Path, slug: str) -> None:
    found, short = scores(site + slug, chromium_path, CHECKED)
    assert {name: GOALS[name] for name in CHECKED} == found, short
