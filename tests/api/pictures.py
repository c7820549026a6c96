"""Make a small PNG, and read the size of a PNG or JPEG."""

from __future__ import annotations

import struct
import zlib

_PNG = b"\x89PNG\r\n\x1a\n"
_JPEG = b"\xff\xd8"


def small_png(width: int = 8, height: int = 8) -> bytes:
    """A plain grey picture of the given size in pixels."""

    def chunk(kind: bytes, content: bytes) -> bytes:
        return (
            struct.pack(">I", len(content)) + kind + content + struct.pack(">I", zlib.crc32(kind + content))
        )

    header = struct.pack(">IIBBBBB", width, height, 8, 0, 0, 0, 0)
    rows = (b"\x00" + b"\x80" * width) * height
    return _PNG + chunk(b"IHDR", header) + chunk(b"IDAT", zlib.compress(rows)) + chunk(b"IEND", b"")


def size_of(content: bytes) -> tuple[int, int] | None:
    """Width and height in pixels of a PNG or JPEG picture, or None if it is neither."""
    if content.startswith(_PNG) and len(content) >= 24:
        width, height = struct.unpack(">II", content[16:24])
        return width, height
    if content.startswith(_JPEG):
        return _jpeg_size(content)
    return None


def _jpeg_size(content: bytes) -> tuple[int, int] | None:
    at = 2
    while at + 9 < len(content) and content[at] == 0xFF:
        marker = content[at + 1]
        # SOF0 to SOF15 contain the size; C4, C8 and CC are other segments in that range.
        if 0xC0 <= marker <= 0xCF and marker not in {0xC4, 0xC8, 0xCC}:
            height, width = struct.unpack(">HH", content[at + 5 : at + 9])
            return width, height
        (length,) = struct.unpack(">H", content[at + 2 : at + 4])
        at += 2 + length
    return None
