"""Find the city, country and time zone that a person names.

The cities come from GeoNames (CC BY 4.0); `tests/places.py` makes the table. Countries and their zones come
from CLDR through Babel.
"""

from __future__ import annotations

import gzip
import re
import unicodedata
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from zoneinfo import available_timezones

from babel import Locale
from babel.core import get_global

TABLE = Path(__file__).with_name("cities.tsv.gz")
_PLAINLY = 4  # the largest city is meant if it has this many times the people of every other one
_MOST = 6
_NOT_LETTERS = re.compile(r"[^a-z0-9]+")
# What people call a clock, and a city too short for the table.
_CLOCKS = {
    "est edt et eastern": "America/New_York",
    "cst cdt ct central": "America/Chicago",
    "mst mdt mt mountain": "America/Denver",
    "pst pdt pt pacific": "America/Los_Angeles",
    "gmt bst": "Europe/London",
    "dc": "America/New_York",
    "wet west": "Europe/Lisbon",
    "cet cest": "Europe/Paris",
    "eet eest": "Europe/Athens",
    "aest aedt": "Australia/Sydney",
    "jst": "Asia/Tokyo",
}
# Countries by names that CLDR's lists do not have.
_COUNTRIES = {
    "usa": "US",
    "america": "US",
    "the states": "US",
    "uk": "GB",
    "england": "GB",
    "scotland": "GB",
    "wales": "GB",
    "great britain": "GB",
    "gran bretana": "GB",
    "inglaterra": "GB",
    "escocia": "GB",
    "holland": "NL",
    "holanda": "NL",
    "eeuu": "US",
    "ee uu": "US",
    "uae": "AE",
    "us": "US",
}


@dataclass(frozen=True, slots=True)
class Place:
    """A city, or a zone without one."""

    zone: str
    country: str
    region: str
    people: int
    name: str


def folded(name: str) -> str:
    """Return a name in plain small letters and single spaces, without accents or punctuation."""
    plain = unicodedata.normalize("NFKD", name.replace("ß", "ss").casefold())
    letters = "".join(one for one in plain if not unicodedata.combining(one))
    return _NOT_LETTERS.sub(" ", letters.replace("ø", "o").replace("ł", "l").replace("đ", "d")).strip()


def find(text: str) -> list[Place]:
    """Return the places that a text may mean, the likeliest first; one if it is plainly that one.

    A country or the name of a clock stands for its zones; 'Boston, UK' and 'Portland Maine' narrow a name.
    """
    wanted = folded(text)
    if not wanted:
        return []
    zone = _zones().get(text.strip().replace(" ", "_").casefold())
    if zone is not None:
        return [_of_zone(zone)]
    clock = next((zone for names, zone in _CLOCKS.items() if wanted in names.split()), None)
    found = [_of_zone(clock)] if clock else _of_country(wanted) or _named(list(_cities(wanted)), wanted)
    for cut in _cuts(text):
        found = found or _within(*cut)
    return found[:_MOST]


def _named(found: Sequence[Place], wanted: str) -> list[Place]:
    """Return the cities whose own name this is; those that only go by it if they are far larger."""
    own = [one for one in found if folded(one.name) == wanted]
    plain = own if own and _PLAINLY * own[0].people >= found[0].people else found
    return _plainest(plain)


def _cuts(text: str) -> Iterator[tuple[str, str]]:
    """Yield each way to read a text as a city and the land it is in."""
    if "," in text:
        city, _comma, land = text.rpartition(",")
        yield folded(city), folded(land)
    words = folded(text).split()
    for number in range(len(words) - 1, max(0, len(words) - 4), -1):
        yield " ".join(words[:number]), " ".join(words[number:])


def _within(city: str, land: str) -> list[Place]:
    """Return the cities of that name in a land: a country, a state of the US, or its code."""
    if not city or not land:
        return []
    code = _countries().get(land, land.upper() if len(land) == 2 else "")
    inside = [
        one
        for one in _cities(city)
        if one.country == code or (one.region and land in {folded(one.region), _STATES.get(one.region, "")})
    ]
    return _plainest(inside)


def _plainest(found: Sequence[Place]) -> list[Place]:
    """Return one place for each zone; only the largest if it is plainly the one that is meant."""
    zones: dict[str, Place] = {}
    for one in found:
        zones.setdefault(one.zone, one)
    kept = list(zones.values())
    if len(kept) > 1 and kept[0].people >= _PLAINLY * kept[1].people:
        return kept[:1]
    return kept


def _cities(wanted: str) -> Iterator[Place]:
    """Yield the cities of this folded name, the largest first."""
    lines, sought, begin = table(), f"|{wanted}|", 0
    while (hit := lines.find(sought, begin)) >= 0:
        start = lines.rfind("\n", 0, hit) + 1
        begin = lines.index("\n", hit)
        zone, country, region, people, name, _names = lines[start:begin].split("\t")
        if zone in available_zones():
            yield Place(zone, country, region, int(people), name)


def table() -> str:
    """Return the lines of the table of cities."""
    # Not kept: it is wanted once in a bar's life.
    return gzip.decompress(TABLE.read_bytes()).decode()


def _of_country(wanted: str) -> list[Place]:
    """Return the zones of a country, by its name in English or Spanish."""
    code = _countries().get(wanted)
    if code is None:
        return []
    zones = [zone for zone in get_global("territory_zones").get(code, ()) if zone in available_zones()]
    largest: dict[str, Place] = {}
    for line in table().splitlines():
        zone, country, region, people, name, _names = line.split("\t")
        if country == code and zone in zones:
            largest.setdefault(zone, Place(zone, country, region, int(people), name))
    return _plainest(list(largest.values())) or [_of_zone(zone) for zone in zones]


def _of_zone(zone: str) -> Place:
    country = get_global("zone_territories").get(zone, "")
    return Place(zone, country, "", 0, zone.rpartition("/")[2].replace("_", " "))


@cache
def available_zones() -> frozenset[str]:
    """Return the IANA zones of this machine. Cached: listing them reads many folders."""
    return frozenset(available_timezones())


def _zones() -> dict[str, str]:
    others = ("Etc/", "posix/", "right/", "SystemV/")
    zones = (zone for zone in available_zones() if "/" in zone or zone == "UTC")
    return {zone.casefold(): zone for zone in zones if not zone.startswith(others)}


@cache
def _countries() -> dict[str, str]:
    """Return the codes of countries by folded name, in the languages that people here may write."""
    known = dict(_COUNTRIES)
    for language in ("en", "es"):
        for code, name in Locale(language).territories.items():
            if len(code) == 2 and code.isalpha():
                known.setdefault(folded(name), code)
    return known


# Postal codes of the states of the US (USPS Publication 28, appendix B).
_POSTAL = """
    Alabama:al Alaska:ak Arizona:az Arkansas:ar California:ca Colorado:co Connecticut:ct Delaware:de
    District_of_Columbia:dc Florida:fl Georgia:ga Hawaii:hi Idaho:id Illinois:il Indiana:in Iowa:ia Kansas:ks
    Kentucky:ky Louisiana:la Maine:me Maryland:md Massachusetts:ma Michigan:mi Minnesota:mn Mississippi:ms
    Missouri:mo Montana:mt Nebraska:ne Nevada:nv New_Hampshire:nh New_Jersey:nj New_Mexico:nm New_York:ny
    North_Carolina:nc North_Dakota:nd Ohio:oh Oklahoma:ok Oregon:or Pennsylvania:pa Rhode_Island:ri
    South_Carolina:sc South_Dakota:sd Tennessee:tn Texas:tx Utah:ut Vermont:vt Virginia:va Washington:wa
    West_Virginia:wv Wisconsin:wi Wyoming:wy
"""
_STATES = {line.split(":")[0].replace("_", " "): line.split(":")[1] for line in _POSTAL.split()}
