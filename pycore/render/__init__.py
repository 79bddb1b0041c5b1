"""Answers as HTML: the regions of a page, the same in the build and in the browser."""

from pycore.render.elements import Markup
from pycore.render.regions import regions_of


def site_pages() -> tuple[object, ...]:
    """Every page of the site (see :mod:`pycore.render.site`), which only the build asks for."""
    from pycore.render.site import site_pages as made  # the browser must not load what only the build needs

    return made()


__all__ = ["Markup", "regions_of", "site_pages"]
