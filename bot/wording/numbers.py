"""Masses, lengths, temperatures, days and hours in a person's units and zone: the rim of the house, outwards.

Doses are always in grams, whatever the person's units: a scale reads them, a cup does not. Nothing that is
a limit is rounded to the unsafe side; `ceiling` and `floor` say which way a figure may go.
"""

import re
from datetime import datetime, timedelta
from math import ceil, floor

from bot.measures import from_house
from bot.wording import language
from bot.wording.language import decimal, point, say, say_n
from core.person import Person
from core.plan.steps import TimeBand
from core.units import Celsius, Days, Fraction, Hours, Kilograms, Metres

_FIGURES = r"[-\u2212]?\d[\d.,]*(?: (?:to|and|or|bis|und|oder) [-\u2212]?\d[\d.,]*)?"
WITHIN_G = 1e-6  # of a tenth of a gram; binary fractions, no tolerance
WITHIN_K = 0.05  # 5.0 °C that came out of 41 °F
_BOTH = re.compile(rf"({_FIGURES}) °C \(({_FIGURES}) °F\)")


def plain(value: float) -> str:
    """A number as it was typed: «3.2», «70»."""
    return point(f"{round(value, 3):g}")


def mass(value: Kilograms, person: Person) -> str:
    """«3.2 kg» or «7.1 lb»."""
    if person.units.mass == "lb":
        return f"{decimal(from_house(value, 'lb'), 1)} lb"
    return point(f"{value:.2f} kg".replace("0 kg", " kg") if value < 10 else f"{value:.1f} kg")


def grams(value: Kilograms) -> str:
    """A dose: «12.0 g» under 100 g, «173 g» above, «0 g» where none goes in."""
    amount = value * 1000
    return f"{decimal(amount, 1 if 0.0 < amount < 100 else 0)} g"


def grams_down(value: Kilograms) -> str:
    """What may still be added to a dose, to the step that is shown below it, so that it never goes over."""
    steps = _steps(value)
    return grams(floor(value * steps + WITHIN_G) / steps)


def grams_up(value: Kilograms) -> str:
    """The most that a spoon may hold, to the step that is shown above it."""
    steps = _steps(value)
    return grams(ceil(value * steps - WITHIN_G) / steps)


def _steps(value: Kilograms) -> float:
    """Into how many steps a kilo is shown: tenths of a gram, from 100 g on grams."""
    return 1e4 if value < 0.1 else 1e3


def length(value: Metres, person: Person) -> str:
    """«48 mm» or «1.9 in», «2.25 in» where it is a quarter by the rule."""
    if person.units.length == "in":
        inches = from_house(value, "in")
        quarter_in = abs(inches * 4 - round(inches * 4)) < 0.01 and round(inches * 4) % 2
        return f"{decimal(inches, 2 if quarter_in else 1)} in"
    return f"{value * 1000:.0f} mm"


def temperature(value: Celsius, person: Person) -> str:
    """«88 °C» or «190 °F», to the half degree where that is how it was read."""
    shown = from_house(value, "f") if person.units.temperature == "f" else value
    unit = "°F" if person.units.temperature == "f" else "°C"
    rounded = round(shown * 2) / 2
    return f"{decimal(rounded, 0 if rounded == int(rounded) else 1)} {unit}"


def whole(celsius: Celsius, person: Person) -> str:
    """A temperature of a forecast, to the degree: «66 °C», «151 °F»."""
    fahrenheit = person.units.temperature == "f"
    return f"{from_house(celsius, 'f'):.0f} °F" if fahrenheit else f"{celsius:.0f} °C"


def both(value: Celsius, person: Person) -> str:
    """A limit in the person's unit with the other beside it, as the rules print both: «4 °C (40 °F)»."""
    f, c = f"{from_house(value, 'f'):.0f} °F", f"{value:.0f} °C"
    return f"{f} ({c})" if person.units.temperature == "f" else f"{c} ({f})"


def at_most(value: Celsius, person: Person) -> str:
    """A limit to fall to, in both units: 80 °F is 26.7 °C, and who reads 27 is not there, so «26 °C (80 °F)»."""
    f, c = f"{floor(from_house(value, 'f') + 2 * WITHIN_K):.0f} °F", f"{floor(value + WITHIN_K):.0f} °C"
    return f"{f} ({c})" if person.units.temperature == "f" else f"{c} ({f})"


def at_least(value: Celsius, person: Person) -> str:
    """A limit to rise to, in both units: 130 °F is 54.4 °C, and who reads 54 is not there, so «55 °C (130 °F)»."""
    f, c = f"{from_house(value, 'f'):.0f} °F", f"{ceil(value - WITHIN_K):.0f} °C"
    return f"{f} ({c})" if person.units.temperature == "f" else f"{c} ({f})"


def own_first(text: str, person: Person) -> str:
    """A text that prints both units with the person's own in front: «40 °F (4 °C)» to who reads in °F."""
    return _BOTH.sub(r"\2 °F (\1 °C)", text) if person.units.temperature == "f" else text


def percent(value: Fraction, digits: int = 2) -> str:
    """«2.25 %», without zeros that say nothing."""
    shown = f"{value * 100:.{digits}f}"
    return point(shown.rstrip("0").rstrip(".") if "." in shown else shown) + " %"


def chance(value: float) -> str:
    """«95 %», never said to be certain: «over 99 %», «under 1 %»."""
    if value > 0.99:
        return say("over 99 %")
    return say("under 1 %") if value < 0.01 else f"{value * 100:.0f} %"


def share(value: Fraction) -> str:
    """A part of a whole: «27 %»."""
    return f"{value * 100:.0f} %"


def ppm(value: float) -> str:
    """Nitrite: «150 mg/kg»."""
    return f"{value:.0f} mg/kg"


def ppm_between(low: float, high: float) -> str:
    """«280 to 356 mg/kg», or one figure where both round to it."""
    return ppm(high) if round(low) == round(high) else say("{low} to {high}", low=f"{low:.0f}", high=ppm(high))


def clock(moment: datetime, person: Person) -> str:
    """«14:05», in the person's zone."""
    return f"{moment.astimezone(person.tz):%H:%M}"


def day(moment: datetime, person: Person) -> str:
    """«Sat 13 Mar»."""
    return language.day(moment.astimezone(person.tz))


def when(moment: datetime, person: Person, now: datetime) -> str:
    """«14:05» today, «tomorrow 08:00», otherwise «Sat 13 Mar 13:00»."""
    away = (moment.astimezone(person.tz).date() - now.astimezone(person.tz).date()).days
    at = clock(moment, person)
    match away:
        case 0:
            return at
        case 1:
            return say("tomorrow {at}", at=at)
        case -1:
            return say("yesterday {at}", at=at)
        case _:
            return f"{day(moment, person)} {at}"


def when_after(moment: datetime, earlier: datetime, person: Person) -> str:
    """«19:15», or «Sat 03:15» where that is another day than the earlier moment's."""
    local, before = moment.astimezone(person.tz), earlier.astimezone(person.tz)
    at = clock(moment, person)
    return at if local.date() == before.date() else f"{language.weekday(local)} {at}"


def quarter(moment: datetime, *, up: bool) -> datetime:
    """The quarter of an hour around a moment: estimates are not known to the minute."""
    minutes = moment.timestamp() / 900
    return datetime.fromtimestamp((ceil if up else floor)(minutes) * 900, tz=moment.tzinfo)


def time_band(band: TimeBand, person: Person, now: datetime) -> str:
    """«about 17:45 (16:30 to 19:15)»; the 10 % and 90 % points, widened to the quarter hour."""
    early, late = quarter(band.p10, up=False), quarter(band.p90, up=True)
    middle = quarter(band.p50 + timedelta(minutes=7), up=False)
    same_day = early.astimezone(person.tz).date() == late.astimezone(person.tz).date()
    end = clock(late, person) if same_day else when(late, person, now)
    return say(
        "about {middle} ({early} to {late})", middle=when(middle, person, now), early=clock(early, person), late=end
    )


def days(value: Days) -> str:
    """«4.5 days», to the half day, upwards: days in the cure are a safety figure."""
    shown = half_up(value)
    return say_n("{n} day", "{n} days", shown, n=plain(shown))


def lying(value: Days) -> str:
    """How long it lies in its salt or brine: «12 h», or «4.5 days» from a day on."""
    return hours(value * 24) if value < 1.0 else days(value)


def half(value: float) -> float:
    """To the nearest half: a middle of a band, and no limit."""
    return round(value * 2) / 2


def half_up(value: float) -> float:
    """Upwards to the half."""
    return ceil(value * 2 - 1e-9) / 2


def half_down(value: float) -> float:
    """Downwards to the half."""
    return floor(value * 2 + 1e-9) / 2


def hours(value: Hours) -> str:
    """«2 h 15 min», «40 min»."""
    minutes = round(value * 60)
    if minutes < 60:
        return f"{minutes} min"
    whole, rest = divmod(minutes, 60)
    return f"{whole} h {rest:02d} min" if rest else f"{whole} h"


def span(value: timedelta) -> str:
    """How long ago or ahead: «40 min», «3 h», «2 days»."""
    hours_all = value / timedelta(hours=1)
    if hours_all >= 48:
        return say_n("{n} day", "{n} days", round(hours_all / 24), n=round(hours_all / 24))
    return hours(round(hours_all * 12) / 12)
