"""Simulated colour vision for the tests of charts.

The matrices are those of Machado, Oliveira and Fernandes, IEEE Transactions on Visualization and Computer
Graphics 15(6), 2009, severity 1.0, for linear sRGB (seen in public code that cites them). Contrast is that of
WCAG 2, difference the CIE 1976 one in L*a*b* for D65.
"""

from __future__ import annotations

import math

Triple = tuple[float, float, float]
Matrix = tuple[Triple, Triple, Triple]

VISIONS: dict[str, Matrix] = {
    "usual": ((1, 0, 0), (0, 1, 0), (0, 0, 1)),
    "deuteranopia": (
        (0.367322, 0.860646, -0.227968),
        (0.280085, 0.672501, 0.047413),
        (-0.011820, 0.042940, 0.968881),
    ),
    "protanopia": (
        (0.152286, 1.052583, -0.204868),
        (0.114503, 0.786281, 0.099216),
        (-0.003882, -0.048116, 1.051998),
    ),
    # no colours, only lightness
    "grey": ((0.2126, 0.7152, 0.0722),) * 3,
}

_TO_XYZ: Matrix = (
    (0.4124564, 0.3575761, 0.1804375),
    (0.2126729, 0.7151522, 0.0721750),
    (0.0193339, 0.1191920, 0.9503041),
)
_WHITE: Triple = (0.95047, 1.0, 1.08883)


def linear(colour: str) -> Triple:
    """Return the linear red, green and blue of "#RRGGBB"."""
    parts = [int(colour[place : place + 2], 16) / 255 for place in (1, 3, 5)]
    red, green, blue = (x / 12.92 if x <= 0.04045 else ((x + 0.055) / 1.055) ** 2.4 for x in parts)
    return red, green, blue


def _times(matrix: Matrix, colour: Triple) -> Triple:
    one, two, three = (sum(a * b for a, b in zip(row, colour, strict=True)) for row in matrix)
    return one, two, three


def contrast(first: str, second: str) -> float:
    """Return the WCAG contrast, 1 to 21, of two colours."""
    low, high = sorted(
        sum(a * b for a, b in zip((0.2126, 0.7152, 0.0722), linear(colour), strict=True))
        for colour in (first, second)
    )
    return (high + 0.05) / (low + 0.05)


def difference(first: str, second: str, vision: str) -> float:
    """Return the perceived difference of two colours in this vision; about 2 is just visible."""
    return math.dist(_lab(first, vision), _lab(second, vision))


def _lab(colour: str, vision: str) -> Triple:
    seen = _times(VISIONS[vision], linear(colour))
    clipped = min(1.0, max(0.0, seen[0])), min(1.0, max(0.0, seen[1])), min(1.0, max(0.0, seen[2]))
    x, y, z = (
        ratio ** (1 / 3) if ratio > 216 / 24389 else (24389 / 27 * ratio + 16) / 116
        for ratio in (part / white for part, white in zip(_times(_TO_XYZ, clipped), _WHITE, strict=True))
    )
    return 116 * y - 16, 500 * (x - y), 200 * (y - z)
