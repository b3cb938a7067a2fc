"""The weight of what is left: trimmed down to it, or a share of a piece whose whole was weighed."""

from typing import Final

from core import patterns as re

_UNIT: Final = r"kgs?|kilos?|kilograms?|lbs?|pounds?"
_N: Final = r"\d{1,2}(?:\.\d{1,3}| \d/\d)?"
_ABOUT: Final = r"(?:(?:about|around|roughly|nearly|approx|just|only|maybe|circa|ca) )*"
_WHOLE: Final = rf"(?<![\w.])(?P<whole>{_N}) ?(?P<unit>{_UNIT})\b(?P<piece>(?! (?:salt|cure|sugar))[^,;?%$]{{0,40}}?)"
_LEFT: Final = (
    rf"(?P<left>{_N}) ?(?P<unit2>{_UNIT})?\b"
    r"(?! ?(?:%|in\b|inch|cm|mm|h\b|hours|days|weeks|g\b|oz|off\b|away\b|of fat\b)|[:.]\d)"
)
_LINK: Final = r"[,;]? ?(?:(?:and|which|that|its|it is|is|was|i|we|got|after|then|now|weighs|or|only|down to|left) )*"
_NO_SUM: Final = (
    r"^(?!.*(?:\?|\bhow\b|\bcost|\bprice|\bpaid\b|\byield|\bloss\b|\bpercent|%|\$|£|€|\bper\b))(?P<before>.*?)"
)


def _rest(found: re.Match[str]) -> str:
    """The line with the weight that is left in the place of the whole one; as it was where that is no share of it."""
    if not _value(found["left"]) < _value(found["whole"]) < 3 * _value(found["left"]):
        return found[0]
    return f"{found['before']}{found['left']} {found['unit2'] or found['unit']}{found['piece']}"


def _value(number: str) -> float:
    whole, _, part = number.partition(" ")
    over, _, under = part.partition("/")
    return float(whole) + (float(over) / float(under) if under and float(under) else 0.0)


def share(found: re.Match[str]) -> str:
    """«half a 14 lb packer» is 7 lb of it."""
    of = {"half": 2, "a quarter": 4, "a third": 3}[found["part"]]
    return f"{float(found['mass']) / of:.4g} {found['unit']}"


# «9 lb flat trimmed to about 7 1/2», «10 lb brisket, 8.2 after trimming»
TRIM_RULES: Final = (
    # «the 7 lb was with all the fat on, its 6.4 lb now», «thats the sticker, its 4.75 lb»: what it weighed before
    (rf"^(?:(?:oops|sorry|the|that|those|my|and|no|wait),? )*(?:{_N} ?(?:{_UNIT}) )?(?:(?:was|is|were|thats"
     rf"|thats what) )+"
     r"(?:(?:with|before|the|all|its|on) )*(?:fat|trim\w*|sticker|label|packet|shop|store|untrimmed|packaging"
     r"|price tag)\b"
     rf"[^\d,;?]{{0,24}}[,;]? ?(?=(?:(?:its|it is|now|really|weighs|trimmed|down to|only|just) )+{_N} ?(?:{_UNIT})\b)",
     "trimmed "),
    (r"^((?:(?:its|it is|weighs|now|oops|thats|the|sticker) )*)(?P<n>\d{1,2}\.\d{1,2}) (?:with "
     r"|w/? ?)(?:all )?(?:the )?"
     r"fat(?: cap)? (?:off|gone)$", r"trimmed \g<n>"),
    (rf"{_NO_SUM}{_WHOLE}{_LINK}trim\w*(?: (?:it|down|off|back))* (?:to|is|at|leaves|came to|comes to|weighs) {_ABOUT}"
     rf"{_LEFT}", _rest),
    (rf"{_NO_SUM}{_WHOLE}{_LINK}{_ABOUT}{_LEFT} (?:(?:once|when|after|its|it is|the) )*trim(?:med|ming)?\b", _rest),
)  # fmt: skip
