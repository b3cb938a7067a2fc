"""A place as typed, into the name of its time zone: by the zone names, a few more cities, and near spellings."""

from difflib import get_close_matches
from functools import cache
from typing import Final
from zoneinfo import available_timezones

from babel.core import Locale, get_global

from core import patterns as re
from core.person import Units

# cities and regions that no zone is named after; zone names from the IANA time zone database
_PLACES: Final = {
    "America/New_York": "eastern, est, edt, et, east coast, boston, philadelphia, washington, dc, miami, atlanta, "
                        "pittsburgh, new york city, nyc, ny, "
                        "charlotte, orlando, tampa, cleveland, north carolina, florida, georgia usa, ohio, "
                        "maine, vermont, new hampshire, massachusetts, connecticut, rhode island, new jersey, "
                        "delaware, maryland, virginia, west virginia, pennsylvania, south carolina, new york state",
    "America/Chicago": "central, cst, cdt, ct, dallas, houston, austin, san antonio, texas, minneapolis, milwaukee, "
                       "st louis, kansas city, "
                       "memphis, nashville, new orleans, tennessee, illinois, wisconsin, minnesota, iowa, missouri, "
                       "arkansas, louisiana, mississippi, alabama, oklahoma",
    "America/Denver": "mountain, mst, mdt, mt, salt lake city, albuquerque, colorado, utah, montana, wyoming, "
                      "new mexico",
    "America/Los_Angeles": "west coast, pacific, pst, pdt, pt, la, san francisco, sf, seattle, portland, san diego, "
                           "california, oakland, las vegas",
    "America/Toronto": "ottawa, ontario, montreal, quebec", "America/Vancouver": "british columbia",
    "America/Edmonton": "calgary, alberta",
    "America/Phoenix": "arizona, tucson", "Pacific/Honolulu": "hawaii", "America/Anchorage": "alaska",
    "Europe/London": "uk, england, scotland, wales, britain, great britain, united kingdom, manchester, birmingham, "
                     "leeds, glasgow, edinburgh, "
                     "bristol, liverpool, cardiff, bst",
    "Europe/Dublin": "ireland, cork", "Europe/Belfast": "northern ireland",
    "Europe/Berlin": "germany, deutschland, munich, münchen, hamburg, cologne, köln, frankfurt, stuttgart, leipzig, "
                     "dresden, düsseldorf, dortmund, duisburg, bochum, bremen, hannover, nürnberg, augsburg, "
                     "bonn, mainz, kiel, rostock, karlsruhe, mannheim, freiburg, kassel, münster, regensburg, erfurt, "
                     "saarbrücken, bayern, sachsen, hessen, bavaria, saxony, hesse, swabia, cet, cest",
    "Europe/Vienna": "austria, österreich, wien, graz, salzburg, linz, innsbruck, klagenfurt, villach, wels, bregenz, "
                     "st pölten, tirol, tyrol, steiermark, styria, kärnten, carinthia, "
                     "niederösterreich, oberösterreich, burgenland, vorarlberg",
    "Europe/Zurich": "switzerland, schweiz, zürich, bern, basel, geneva, genf, luzern, winterthur, st gallen, lausanne",
    "Europe/Paris": "france, lyon, marseille, toulouse", "Europe/Amsterdam": "netherlands, holland, rotterdam, utrecht",
    "Europe/Brussels": "belgium, antwerp, ghent", "Europe/Madrid": "spain, barcelona, valencia",
    "Europe/Rome": "italy, milan, naples, turin",
    "Europe/Copenhagen": "denmark", "Europe/Stockholm": "sweden, gothenburg", "Europe/Oslo": "norway, bergen",
    "Europe/Helsinki": "finland",
    "Europe/Warsaw": "poland, krakow", "Europe/Prague": "czechia, czech republic, brno, prag",
    "Europe/Lisbon": "portugal, porto",
    "Australia/Sydney": "canberra, new south wales", "Pacific/Auckland": "new zealand, wellington, christchurch",
    "Africa/Johannesburg": "south africa, cape town, durban, pretoria", "Asia/Tokyo": "japan, osaka",
    "UTC": "utc, gmt, zulu",
}  # fmt: skip
_ALIASES: Final = {name.strip(): zone for zone, names in _PLACES.items() for name in names.split(",")}
# the law of the kitchen by place; the rules themselves are in core/cure
_JURISDICTIONS: Final = {
    "US": "usa, us, united states, america, the states, american, us american",
    "UK": "uk, england, scotland, wales, britain, great britain, united kingdom, northern ireland, british, english, "
          "scottish, welsh",
    "EU": "eu, europe, europa, germany, deutschland, austria, österreich, france, netherlands, holland, belgium, "
          "spain, italy, denmark, sweden, "
          "finland, poland, czechia, czech republic, portugal, ireland, greece, hungary, romania, slovakia, "
          "slovenia, croatia, german, austrian, french, dutch, italian, spanish, european, irish, danish, swedish",
    "CA": "canada, canadian",
}  # fmt: skip
_COUNTRIES: Final = {name.strip(): law for law, names in _JURISDICTIONS.items() for name in names.split(",")}
_LAWS: Final = {"US": "US", "GB": "UK", "CA": "CA"}
_OF_THE_EU: Final = {
    "AT", "BE", "BG", "CY", "CZ", "DE", "DK", "EE", "ES", "FI", "FR", "GR", "HR", "HU", "IE", "IT", "LT", "LU", "LV",
    "MT", "NL", "PL", "PT", "RO", "SE", "SI", "SK",
}  # fmt: skip
_NO_CITY: Final = ("Etc/", "SystemV/", "posix/", "right/", "US/", "Canada/", "Mexico/", "Brazil/", "Chile/")
_FAHRENHEIT: Final = ("America/", "US/")
_CLOSE: Final = 0.82
_SMALL: Final = re.compile(
    r"^(?:the |near |around |city of )+| (?:time(?: ?zone)?|tz|zone|zeit|area|standard time|daylight time|please|pls"
    r"|now|rules?|law)$"
)


def zone_of(place: str) -> str | None:
    """The zone of a place or zone name as typed, or None: «chicago time», «europe/vienna», «viena»."""
    name = _trimmed(place)
    if name in _ALIASES:
        return _ALIASES[name]
    known = _zones()
    key = name.replace(" ", "_")
    if key in known:
        return known[key]
    # a slip of the finger keeps the first letter and nearly the length: most names need no comparing
    if (region := _region(name)) or name in _countries():  # «australia» has several, and is no slip of «austria»
        return region
    near = [n for n in (*known, *_ALIASES) if n[0] == key[:1] and abs(len(n) - len(key)) < 3] if len(key) > 3 else []
    close = get_close_matches(key, near, n=1, cutoff=_CLOSE)
    return (known.get(close[0]) or _ALIASES[close[0]]) if close else None


def _region(name: str) -> str | None:
    """«phoenix arizona», «london ontario»: the zone of what stands behind the city, which many places share."""
    words = name.replace(",", " ").split()
    behind = (" ".join(words[-many:]) for many in (2, 1) if len(words) > many)
    return next((zone for region in behind if (zone := _ALIASES.get(region))), None) or _in_its_country(words)


def _in_its_country(words: list[str]) -> str | None:
    """«adelaide australia»: a city with its country behind it, by the Unicode CLDR."""
    for many in (1, 2):
        name = " ".join(words[:-many])
        zone = city(name) or _ALIASES.get(name) if len(words) > many else None
        if zone and get_global("zone_territories").get(zone) == _countries().get(" ".join(words[-many:])):
            return zone
    return None


@cache
def _countries() -> dict[str, str]:
    return {name.lower(): code for code, name in Locale("en").territories.items()}


def city(name: str) -> str | None:
    """The zone of a city named exactly as its zone is, or None."""
    key = name.strip(" .!").replace(" ", "_")
    zone = _zones().get(key) if len(key) > 3 else None
    return zone if zone and zone.rsplit("/", 1)[1].lower() == key else None


def named(name: str) -> str | None:
    """The zone of a city or region whose name is typed without a slip, or None."""
    plain = name.strip(" .!")
    return city(plain) or _ALIASES.get(plain) or _region(plain)


def units_of(zone: str) -> Units:
    """The units that go with a zone, as a first guess."""
    return Units("lb", "in", "f") if zone.startswith(_FAHRENHEIT) else Units()


def units_spoken(code: str | None) -> Units | None:
    """The units that go with the country in the language code of an account («en-US»); None where it names none."""
    _, _, country = (code or "").replace("_", "-").partition("-")
    if len(country) != 2 or not country.isalpha():
        return None
    return Units("lb", "in", "f") if country.upper() == "US" else Units()


def jurisdiction_of(place: str) -> str | None:
    """The jurisdiction of a country as typed, or None."""
    return _COUNTRIES.get(_trimmed(place))


def law_of(zone: str) -> str | None:
    """The jurisdiction of the country in which a zone lies, by the Unicode CLDR; None where its law is not held."""
    territory = country_of(zone)
    return "EU" if territory in _OF_THE_EU else _LAWS.get(territory)


def country_of(zone: str) -> str:
    """The code of the country in which a zone lies, by the Unicode CLDR; "" where it is in none."""
    return str(get_global("zone_territories").get(zone, ""))


def _trimmed(place: str) -> str:
    name = place.lower().strip(" .!,?")
    while (shorter := _SMALL.sub("", name)) != name:
        name = shorter
    return name


@cache
def _zones() -> dict[str, str]:
    """Every zone by its name in lower case and by its city; read once."""
    out: dict[str, str] = {}
    for zone in sorted(available_timezones()):
        if "/" not in zone or zone.startswith(_NO_CITY):
            continue
        out[zone.lower()] = zone
        out.setdefault(zone.rsplit("/", 1)[1].lower(), zone)
    return out
