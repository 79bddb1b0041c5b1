"""The address that a build is given reaches the pages, and one that no browser opens is refused."""

from pathlib import Path

import pytest
from making.pages import Places, pages_of_pycore, site_address, write_pages
from making.progress import BuildError


@pytest.mark.parametrize("given", ["https://www.folio.example/term", "https://www.folio.example/term/"])
def test_pages_carry_the_address_that_they_will_have(given: str, tmp_path: Path):
    pages = [page for page in pages_of_pycore() if page.slug == "neutral-current"]
    write_pages(tmp_path, Places("a/", "py/", "lib/", "letters/", base=site_address(given)), pages)
    html = (tmp_path / "neutral-current" / "index.html").read_text("utf-8")
    assert 1 == html.count(' data-base="https://www.folio.example/term/neutral-current/"')


def test_pages_of_an_unknown_address_carry_none(tmp_path: Path):
    pages = [page for page in pages_of_pycore() if page.slug == "neutral-current"]
    write_pages(tmp_path, Places("a/", "py/", "lib/", "letters/", base=site_address("")), pages)
    assert "data-base" not in (tmp_path / "neutral-current" / "index.html").read_text("utf-8")


@pytest.mark.parametrize("given", ["folio.example", "ftp://folio.example/", "https://", "https://[", "file:///term/",
                                   "https://folio.example/?a=1", "https://folio.example/#v=1"])  # fmt: skip
def test_an_address_that_no_browser_opens_is_refused(given: str):
    with pytest.raises(BuildError, match="give the site's address"):
        site_address(given)


@pytest.mark.parametrize("credentials", ["hall:secret", "hall", ":secret", "hall:"])
def test_an_address_with_a_name_or_password_is_refused_and_not_repeated(credentials: str):
    with pytest.raises(BuildError, match="leave the name and password out") as refused:
        site_address(f"https://{credentials}@www.folio.example/term/")
    assert "secret" not in str(refused.value)
