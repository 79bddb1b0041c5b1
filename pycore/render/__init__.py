"""Answers as HTML: the regions of a page, the same in the build and in the browser."""

from pycore.render.elements import Markup, h, join
from pycore.render.regions import regions_of
from pycore.render.site import SitePage, site_pages

__all__ = ["Markup", "SitePage", "h", "join", "regions_of", "site_pages"]
