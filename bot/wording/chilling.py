"""Words for the chill: how long each way takes to each mark of the rules, which way passes, and what to do now to pass."""

from datetime import timedelta

from bot.wording import numbers
from bot.wording.language import Words, decimal, say
from core.batch.assess import Assessment
from core.batch.material import cut_of
from core.batch.pass_now import Help, help_now
from core.heat.cooling import Chill
from core.heat.ways import Way, ways
from core.units import celsius_from_fahrenheit

CORNERS_F = (80.0, 40.0)
MARKS_F = (80.0, 70.0, 55.0, 45.0, 41.0, 40.0)
METHODS = Words(
    {
        "foil": "in its foil in the fridge",
        "rack": "unwrapped on a rack in the fridge",
        "fan": "unwrapped on a rack before a fan",
        "ice": "bagged in ice water",
    }
)
DO = Words(
    {
        "foil": "leave it in its foil in the fridge",
        "rack": "unwrap it and lay it on a rack in the fridge",
        "fan": "unwrap it, on a rack, with a fan on it",
        "ice": "into a bag with the air out, and into ice water to the brim",
    }
)


def asked(a: Assessment) -> str:
    """How to chill it: what to do now where a corner is open, else each way against the rules."""
    help_ = now(a)
    if help_:
        return f"{help_}\n{_marks(a.cooling.forecast, a)}".strip()
    found = ways(a.piece, 60.0, a.batch.setup.fridge_c)
    planned = next(w for w in found if w.method == a.batch.setup.chill and w.cut_to is None)
    forecast = a.cooling.forecast or planned.chill
    first = next((w for w in found if w.cut_to is None and w.passes), None)
    lead = (
        say(
            "{cap}, as planned, it passes: {best} keep the rule.",
            cap=_cap(METHODS[planned.method]),
            best=numbers.chance(_best(planned)),
        )
        if planned.passes
        else say(
            "{cap} only {best} keep the rule; {instead}.",
            cap=_cap(METHODS[planned.method]),
            best=numbers.chance(_best(planned)),
            instead=_instead(first, found, a),
        )
    )
    whole = "; ".join(f"{METHODS[w.method]} {numbers.chance(_best(w))}" for w in found if w.cut_to is None)
    return say("{lead}\n{marks}\nBy the way of chilling: {whole}.", lead=lead, marks=_marks(forecast, a), whole=whole)


def planned(a: Assessment) -> str:
    """In a plan, before it is off: that the planned chill is not sure to keep the rule, and what is; else empty."""
    if not a.chilled or a.batch.off_at is not None:
        return ""
    found = ways(a.piece, 60.0, a.batch.setup.fridge_c)
    way = next(w for w in found if w.method == a.batch.setup.chill and w.cut_to is None)
    if way.passes:
        return ""
    first = next((w for w in found if w.cut_to is None and w.passes), None)
    return say(
        "It is slow to cool: {method} only {best} keep the rule; {instead}. I say so again when it comes off.",
        method=METHODS[way.method],
        best=numbers.chance(_best(way)),
        instead=_instead(first, found, a),
    )


def cut(a: Assessment) -> str:
    """After it was cut so as to cool: what that makes of the hours, where it was said how thick the layers are."""
    told = cut_of(a.batch)
    if told is None:
        return say(
            "Noted: cut. Say how thick the thickest layer is, like «cut it to 25 mm»: thinner is what cools it, "
            "a cut across hardly does.\nLay the pieces apart, and send the core of the thickest."
        )
    lead = say(
        "Noted: cut to {thick}. Lay the pieces apart, and send the core of the thickest.",
        thick=numbers.length(told[1], a.person),
    )
    return "\n".join(line for line in (lead, _marks(a.cooling.forecast, a), now(a)) if line)


def now(a: Assessment) -> str:
    """What to do now to pass the corner that is open; empty where none is, or nothing helps any more."""
    found = help_now(a)
    return "" if found is None else say("To pass: {action}.", action=action(found, a))


def action(found: Help, a: Assessment) -> str:
    """«cut it flat to 24 mm, into a bag … : there by 21:10»"""
    cut = (
        ""
        if found.cut_to is None
        else say("cut it flat to {cut_to} pieces, then ", cut_to=numbers.length(found.cut_to, a.person))
    )
    return say(
        "{cut}{do}: there by {reached} in nine of ten",
        cut=cut,
        do=DO[found.method],
        reached=numbers.clock(found.reached[2], a.person),
    )


def _instead(first: Way | None, found: tuple[Way, ...], a: Assessment) -> str:
    best = first or next((w for w in found if w.passes), None)
    if best is None:
        return say("cut it to thin slices and lay them in ice water")
    cut = "" if best.cut_to is None else say("cut flat to {cut_to} and ", cut_to=numbers.length(best.cut_to, a.person))
    return say(
        "{cut}{methods} it passes ({best})", cut=cut, methods=METHODS[best.method], best=numbers.chance(_best(best))
    )


def _best(way: Way) -> float:
    """The chance of the rule that it keeps most surely."""
    return max((chance for _, chance in way.chances), default=0.0)


def ahead(a: Assessment) -> str:
    """When the middle is past the corners of the rule, by the forecast of this chill."""
    forecast, since = a.cooling.forecast, a.cooling.since
    if forecast is None or since is None:
        return now(a)
    told = []
    for mark in (celsius_from_fahrenheit(f) for f in CORNERS_F):
        hours = forecast.to(mark)
        if hours is not None and since + timedelta(hours=hours.p50) > a.now:
            at, late = (numbers.when(since + timedelta(hours=h), a.person, a.now) for h in (hours.p50, hours.p90))
            told.append(
                say("{mark} about {at}, {late} at the latest", mark=numbers.at_most(mark, a.person), at=at, late=late)
            )
    lead = (
        say("By what it read the middle is at {marks}; cold, it goes into the fridge.", marks=", ".join(told))
        if told
        else ""
    )
    return "\n".join(filter(None, (lead, now(a))))


def _marks(forecast: Chill | None, a: Assessment) -> str:
    """«From 60 °C: 26 °C (80 °F) after 0.9 h (0.7 to 1.2), …»"""
    if forecast is None:
        return ""
    told = []
    for mark in (celsius_from_fahrenheit(f) for f in MARKS_F):
        hours = forecast.to(mark)
        if hours is not None and hours.p90 > 0.0:
            told.append(
                say(
                    "{mark} after {p50} h ({p10} to {p90})",
                    mark=numbers.at_most(mark, a.person),
                    p50=decimal(hours.p50, 1),
                    p10=decimal(hours.p10, 1),
                    p90=decimal(hours.p90, 1),
                )
            )
    start = numbers.temperature(forecast.start_c, a.person)
    return say("From {start} the middle is at {join}.", start=start, join=", ".join(told)) if told else ""


def _cap(text: str) -> str:
    return text[:1].upper() + text[1:]
