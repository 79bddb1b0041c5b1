"""Elements: text is always escaped, and what the page's policy would refuse is refused here."""

import pytest

from pycore.render.elements import Markup, h, join


def test_text_and_attributes_are_escaped():
    hostile = '<img src=x onerror="alert(1)">\'&'
    written = h("p", {"title": hostile}, hostile)
    safe = "&lt;img src=x onerror=&quot;alert(1)&quot;&gt;&#39;&amp;"
    assert f'<p title="{safe}">{safe}</p>' == written


def test_markup_is_kept_and_plain_text_joined_to_it_is_escaped_again():
    bold = h("b", None, "a<b")
    assert "<p><b>a&lt;b</b></p>" == h("p", None, bold)
    assert "<p>&lt;b&gt;a&amp;lt;b&lt;/b&gt;!</p>" == h("p", None, bold + "!")


def test_markup_cannot_be_made_from_text_by_accident():
    with pytest.raises(TypeError):
        Markup("<b>")


@pytest.mark.parametrize("name", ["style", "STYLE", "onclick", "OnLoad"])
def test_refused_attributes(name):
    with pytest.raises(ValueError, match="refuses"):
        h("p", {name: "x"})


@pytest.mark.parametrize("name", ['a"b', "a b", "", "a>"])
def test_an_attribute_name_cannot_break_out(name):
    with pytest.raises(ValueError, match="no attribute name"):
        h("p", {name: "x"})


@pytest.mark.parametrize("tag", ["script", "SCRIPT", "style", "iframe", "b><script", "base"])
def test_refused_tags(tag):
    with pytest.raises(ValueError, match="may not be written"):
        h(tag)


@pytest.mark.parametrize("address", ["javascript:alert(1)", " JavaScript:x", "java\tscript:x", "data:text/html,x"])
def test_refused_addresses(address):
    with pytest.raises(ValueError, match="scheme"):
        h("a", {"href": address})


@pytest.mark.parametrize("address", ["../", "#answer", "a/?b=c:d", "https://example.org/", "mailto:a@example.org"])
def test_addresses_that_may_stand(address):
    assert f'<a href="{address}"></a>' == h("a", {"href": address})


def test_true_stands_alone_false_and_none_are_left_out():
    assert "<input hidden>" == h("input", {"hidden": True, "checked": False, "value": None})


def test_a_void_element_holds_nothing():
    with pytest.raises(ValueError, match="holds nothing"):
        h("br", None, "x")


def test_children_may_be_nested_iterables_and_nothing():
    assert "<p>a1<i></i></p>" == h("p", None, ["a", (1, None)], h("i"))
    assert "a&lt;" == join("a", None, ["<"])


def test_a_number_with_fractions_is_no_child():
    """Numbers are written by one function elsewhere, never by a stray str()."""
    with pytest.raises(TypeError):
        h("p", None, 1.5)
