"""Tests of Telegram's HTML. Cases marked TDLib follow its `test/message_entities.cpp` (read in a copy)."""

from __future__ import annotations

import pytest

from tests.api.markup import parse_html, utf16_length
from tests.api.refusals import RefusalError


@pytest.mark.parametrize(
    ("source", "sentence"),
    [
        # TDLib; offsets count bytes.
        ("🏟 🏟&lt;<abacaba", "Unclosed start tag at byte offset 13"),
        ("🏟 🏟&lt;<abac aba>", 'Unsupported start tag "abac" at byte offset 13'),
        ("🏟 🏟&lt;<abac>", 'Unsupported start tag "abac" at byte offset 13'),
        ("🏟 🏟&lt;<i   =aba>", 'Empty attribute name in the tag "i" at byte offset 13'),
        ("🏟 🏟&lt;<i    aba>", 'Can\'t find end tag corresponding to start tag "i"'),
        ("🏟 🏟&lt;<i    aba  =  ", 'Unclosed start tag "i" at byte offset 13'),
        ("🏟 🏟&lt;<i    aba  =  190azAz-.,", "Unexpected end of name token at byte offset 27"),
        ('🏟 🏟&lt;<i    aba  =  "&lt;&gt;&quot;>', "Unclosed start tag at byte offset 13"),
        ("🏟 🏟&lt;</", "Unexpected end tag at byte offset 13"),
        ("🏟 🏟&lt;<b></b></", "Unexpected end tag at byte offset 20"),
        ("🏟 🏟&lt;<i>a</i   ", "Unclosed end tag at byte offset 17"),
        (
            "🏟 🏟&lt;<i>a</em   >",
            'Unmatched end tag at byte offset 17, expected "</i>", found "</em>"',
        ),
        # Common mistakes of bots.
        ("strength <40", "Unclosed start tag at byte offset 9"),
        ("5 < 6 > 4", 'Unsupported start tag "" at byte offset 2'),
        ("<p>no</p>", 'Unsupported start tag "p" at byte offset 0'),
        ("line<br>", 'Unsupported start tag "br" at byte offset 4'),
        ("<b>cut off", 'Can\'t find end tag corresponding to start tag "b"'),
        ("<b><i>x</b></i>", 'Unmatched end tag at byte offset 7, expected "</i>", found "</b>"'),
        ("<span>x</span>", 'Tag "span" must have class "tg-spoiler" at byte offset 0'),
    ],
)
def test_bad_markup_is_refused(source: str, sentence: str) -> None:
    with pytest.raises(RefusalError) as raised:
        parse_html(source)
    assert raised.value.description == f"Bad Request: can't parse entities: {sentence}"
    assert raised.value.breach


@pytest.mark.parametrize(
    ("source", "text", "entities"),
    [
        # TDLib; offsets count UTF-16 units.
        ("&lt;&gt;&amp;&quot;", '<>&"', []),
        ("➡️ ➡️<i>➡️ ➡️</i><b>➡️ ➡️</b>", "➡️ ➡️➡️ ➡️➡️ ➡️", [("italic", 5, 5), ("bold", 10, 5)]),
        ("🏟 🏟<i>🏟 &lt🏟</i>", "🏟 🏟🏟 <🏟", [("italic", 5, 6)]),
        ("🏟 🏟<i>🏟 &gt;<b aba   =   caba>&lt🏟</b></i>", "🏟 🏟🏟 ><🏟", [("italic", 5, 7), ("bold", 9, 3)]),
        ("🏟 🏟&lt;<i    aba  =  190azAz-.   >a</i>", "🏟 🏟<a", [("italic", 6, 1)]),
        ("🏟 🏟&lt;<i>a</    >", "🏟 🏟<a", [("italic", 6, 1)]),
        ("🏟 🏟&lt;<b></b>", "🏟 🏟<", []),
        ('<span class="tg-spoiler">a</span><s>b</s>', "ab", [("spoiler", 0, 1), ("strikethrough", 1, 1)]),
        ("<blockquote expandable>a</blockquote>", "a", [("expandable_blockquote", 0, 1)]),
        ("🏟<pre>🏟 🏟&lt;</pre>", "🏟🏟 🏟<", [("pre", 2, 6)]),
        # Numeric references also work; html.escape writes an apostrophe that way.
        ("it&#x27;s &#65;", "it's A", []),
    ],
)
def test_good_markup_becomes_text_and_entities(
    source: str, text: str, entities: list[tuple[str, int, int]]
) -> None:
    parsed = parse_html(source)
    assert parsed.text == text
    assert [(one["type"], one["offset"], one["length"]) for one in parsed.entities] == entities
    assert parsed.warnings == []


def test_links_and_languages() -> None:
    parsed = parse_html(
        '<a href="https://example.org/?a=1&amp;b=2">x</a><a>no link</a>'
        '<pre><code class="language-python">y</code></pre>'
    )
    assert parsed.entities == [
        {"type": "text_link", "offset": 0, "length": 1, "url": "https://example.org/?a=1&b=2"},
        {"type": "pre", "offset": 8, "length": 1, "language": "python"},
    ]


@pytest.mark.parametrize("source", ["salt & lime", "a&nbsp;b", "&laquo;x&raquo;"])
def test_a_loose_ampersand_is_shown_but_noted(source: str) -> None:
    parsed = parse_html(source)
    assert parsed.text == source
    assert parsed.warnings


def test_lengths_count_utf16_units() -> None:
    assert [utf16_length(text) for text in ("ab", "é", "🍊", "")] == [2, 1, 2, 0]
