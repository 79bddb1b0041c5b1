"""The foot of each page: a topic's own cautions on its sheet's page, and a short list on those of no one topic."""

import re

from pycore.calculators.registry import CALCULATORS
from pycore.render.site import site_pages
from pycore.words import furniture

LISTED = re.compile(r'<ul class="cautions">(.*?)</ul>', re.DOTALL)


def test_a_page_lists_the_cautions_of_its_topic_and_any_other_page_a_short_list():
    """Together the topics have twenty and more, of which nobody would read one."""
    for page in site_pages():
        if page.slug in ("this-device", "register", "photographs"):
            assert not LISTED.search(page.regions["footer"])  # nobody does electrical work by what a browser keeps
            continue
        listed = LISTED.search(page.regions["footer"])[1].count("<li>")
        own = CALCULATORS[page.slug].cautions if page.slug in CALCULATORS else furniture.CAUTIONS
        assert 3 <= len(own) <= 7 and len(own) == listed, page.slug
