"""Telegram's HTML: parsing, and the refusals in Telegram's words.

Follows TDLib's parser (`MessageEntity.cpp`, `parse_html`) as far as its published test cases show it.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field

from tests.api.refusals import JsonDict, bad

_TAGS = {
    "b": "bold",
    "strong": "bold",
    "i": "italic",
    "em": "italic",
    "u": "underline",
    "ins": "underline",
    "s": "strikethrough",
    "strike": "strikethrough",
    "del": "strikethrough",
    "span": "spoiler",
    "tg-spoiler": "spoiler",
    "tg-emoji": "custom_emoji",
    "a": "text_link",
    "code": "code",
    "pre": "pre",
    "blockquote": "blockquote",
}
_NAMED = {"lt": "<", "gt": ">", "amp": "&", "quot": '"'}
_ENTITY = re.compile(r"&(?:#x([0-9a-fA-F]+)|#([0-9]+)|([a-zA-Z]+));?")
_SPACES = " \t\r\n\0\v"
_LARGEST_CHARACTER = 0x10FFFF


@dataclass(slots=True)
class Parsed:
    """The text shown to the reader, its entities (UTF-16 offsets), and warnings about the source."""

    text: str
    entities: list[JsonDict] = field(default_factory=list)
    warnings: list[str] = field(default_factory=list)


@dataclass(slots=True)
class _Open:
    tag: str
    offset: int
    attributes: dict[str, str]


def utf16_length(text: str) -> int:
    """The length in UTF-16 units, which Telegram uses for offsets."""
    return len(text) if text.isascii() else len(text.encode("utf-16-le")) // 2


def parse_html(source: str) -> Parsed:
    """Split `source` into text and entities, or refuse it as Telegram does."""
    if "<" not in source and "&" not in source:
        return Parsed(source)
    return _Parser(source).parse()


class _Parser:
    def __init__(self, source: str) -> None:
        self.source = source
        self.at = 0
        self.pieces: list[str] = []
        self.offset = 0
        self.open: list[_Open] = []
        self.result = Parsed("")

    def parse(self) -> Parsed:
        while self.at < len(self.source):
            character = self.source[self.at]
            if character == "&":
                self._put(self._character_reference())
            elif character == "<":
                self._tag()
            else:
                plain = self._until("<&")
                self._put(plain)
        if self.open:
            raise self._refuse(f'Can\'t find end tag corresponding to start tag "{self.open[-1].tag}"')
        self.result.text = "".join(self.pieces)
        self.result.entities = _in_order(self.result.entities)
        return self.result

    def _put(self, text: str) -> None:
        self.pieces.append(text)
        self.offset += utf16_length(text)

    def _until(self, stops: str) -> str:
        start = self.at
        while self.at < len(self.source) and self.source[self.at] not in stops:
            self.at += 1
        return self.source[start : self.at]

    def _skip_spaces(self) -> None:
        while self.at < len(self.source) and self.source[self.at] in _SPACES:
            self.at += 1

    def _ended(self) -> bool:
        return self.at >= len(self.source)

    def _byte(self, position: int) -> int:
        return len(self.source[:position].encode())

    def _refuse(self, sentence: str) -> Exception:
        return bad(f"can't parse entities: {sentence}")

    def _character_reference(self) -> str:
        found = _ENTITY.match(self.source, self.at)
        decoded = _decoded(found) if found else None
        if found is None or decoded is None:
            # Telegram shows it literally, which is hardly the author's intention.
            shown = found.group() if found else "&"
            self.result.warnings.append(f"unescaped ampersand or unknown reference {shown!r} in HTML")
            self.at += 1
            return "&"
        self.at = found.end()
        return decoded

    def _tag(self) -> None:
        begin = self.at
        self.at += 1
        if self.source.startswith("/", self.at):
            self._end_tag(begin)
        else:
            self._start_tag(begin)

    def _start_tag(self, begin: int) -> None:
        tag = self._until(_SPACES + ">").lower()
        if self._ended():
            raise self._refuse(f"Unclosed start tag at byte offset {self._byte(begin)}")
        if tag not in _TAGS:
            raise self._refuse(f'Unsupported start tag "{tag}" at byte offset {self._byte(begin)}')
        attributes: dict[str, str] = {}
        self._skip_spaces()
        while not self._ended() and self.source[self.at] != ">":
            name, value = self._attribute(tag, begin)
            attributes[name] = value
            self._skip_spaces()
        if self._ended():
            raise self._refuse(f"Unclosed start tag at byte offset {self._byte(begin)}")
        self.at += 1
        if tag == "span" and attributes.get("class") != "tg-spoiler":
            raise self._refuse(f'Tag "span" must have class "tg-spoiler" at byte offset {self._byte(begin)}')
        self.open.append(_Open(tag, self.offset, attributes))

    def _attribute(self, tag: str, begin: int) -> tuple[str, str]:
        name = self._until(_SPACES + "=>").lower()
        if not name:
            raise self._refuse(f'Empty attribute name in the tag "{tag}" at byte offset {self._byte(begin)}')
        self._skip_spaces()
        if self._ended() or self.source[self.at] != "=":
            return name, ""
        self.at += 1
        self._skip_spaces()
        if self._ended():
            raise self._refuse(f'Unclosed start tag "{tag}" at byte offset {self._byte(begin)}')
        quote = self.source[self.at]
        if quote not in "'\"":
            return name, self._bare_value()
        self.at += 1
        value = self._until(quote)
        if self._ended():
            raise self._refuse(f"Unclosed start tag at byte offset {self._byte(begin)}")
        self.at += 1
        return name, _ENTITY.sub(lambda found: _decoded(found) or found.group(), value)

    def _bare_value(self) -> str:
        start = self.at
        while not self._ended() and (self.source[self.at].isalnum() or self.source[self.at] in ".-"):
            self.at += 1
        if self._ended() or self.source[self.at] not in _SPACES + ">":
            raise self._refuse(f"Unexpected end of name token at byte offset {self._byte(start)}")
        return self.source[start : self.at]

    def _end_tag(self, begin: int) -> None:
        if not self.open:
            raise self._refuse(f"Unexpected end tag at byte offset {self._byte(begin)}")
        self.at += 1
        name = self._until(_SPACES + ">").lower()
        self._skip_spaces()
        if self._ended() or self.source[self.at] != ">":
            raise self._refuse(f"Unclosed end tag at byte offset {self._byte(begin)}")
        self.at += 1
        last = self.open.pop()
        if name and name != last.tag:
            raise self._refuse(
                f"Unmatched end tag at byte offset {self._byte(begin)}, "
                f'expected "</{last.tag}>", found "</{name}>"'
            )
        length = self.offset - last.offset
        if length:
            entity = _entity(last, length, "".join(self.pieces))
            if entity:
                self.result.entities.append(entity)


def _decoded(found: re.Match[str]) -> str | None:
    hexadecimal, decimal, name = found.groups()
    if name:
        return _NAMED.get(name)
    code = int(hexadecimal, 16) if hexadecimal else int(decimal)
    return chr(code) if 0 < code <= _LARGEST_CHARACTER and not 0xD800 <= code <= 0xDFFF else None


def _entity(opened: _Open, length: int, text: str) -> JsonDict | None:
    entity: JsonDict = {"type": _TAGS[opened.tag], "offset": opened.offset, "length": length}
    attributes = opened.attributes
    if opened.tag == "a":
        covered = text.encode("utf-16-le")[2 * opened.offset :].decode("utf-16-le")
        url = attributes.get("href") or covered
        if "." not in url and "://" not in url:
            return None
        entity["url"] = url if "://" in url else f"http://{url}"
    elif opened.tag == "tg-emoji":
        entity["custom_emoji_id"] = attributes.get("emoji-id", "")
    elif opened.tag == "blockquote" and "expandable" in attributes:
        entity["type"] = "expandable_blockquote"
    elif opened.tag in {"code", "pre"} and attributes.get("class", "").startswith("language-"):
        language = attributes["class"].removeprefix("language-")
        if language:
            entity["language"] = language
    return entity


def _in_order(entities: list[JsonDict]) -> list[JsonDict]:
    """Return entities in Telegram's order; code inside pre over the same range becomes one entity."""
    kept: list[JsonDict] = []
    for entity in sorted(entities, key=lambda entity: (entity["offset"], -entity["length"])):
        twin = kept[-1] if kept else None
        if (
            twin is not None
            and {twin["type"], entity["type"]} == {"pre", "code"}
            and (twin["offset"], twin["length"]) == (entity["offset"], entity["length"])
            and ("language" in twin or "language" in entity)
        ):
            twin["type"] = "pre"
            twin["language"] = twin.get("language") or entity.get("language")
            continue
        kept.append(entity)
    for entity in kept:
        if entity["type"] == "code":
            entity.pop("language", None)  # only pre may name a language
    return kept
