"""Lengths of time as they are told: «20 min», «half an hour», «1h30», «2 days and 3 hours»."""

from datetime import timedelta
from typing import Final

from core import patterns as re

SPAN: Final = re.compile(
    r"(?<!twice )(?<!once )(?<!times )"  # «he flips it twice a day» lasts no day
    r"(?P<many>\b(?:half an?|half(?= h)|halbe|(?:a )?couple(?: of)?|a few|an?|eine[rn]?|1/2 an?)(?=\W)"
    r"|(?<![\w.])\d{1,4}(?:\.\d{1,2})?)"
    r" ?(?P<unit>m?mins?|minutes?|minuten?|h|hrs?|hours?|stunden?|d|days?|tage?n?|wks?|weeks?|wochen?)(?:\b|(?=\d))"
    r"(?: ?(?:and )?(?P<more>\d{1,2}) ?(?:m|mins?|minutes?)?\b(?! ?(?:h|hrs?|hours?|d|days?|times)\b)"
    r"| and an? (?P<part>half|quarter)\b)?"
)
_AND_MORE: Final = re.compile(  # «2 hours yesterday and 1 hour today» are three
    r"(?: (?:yesterday|today|last night|this \w+|on \w+day))?,? ?(?:and|plus|then|&|\+)(?: (?:then|another|about))* ?"
)
_MANY: Final = {"half": 0.5, "half a": 0.5, "half an": 0.5, "halbe": 0.5, "1/2 an": 0.5, "1/2 a": 0.5, "a few": 3.0}
_SECONDS: Final = {"m": 60, "h": 3600, "s": 3600, "d": 86400, "t": 86400, "w": 604800}


def span(text: str) -> timedelta | None:
    """A length of time: «20 min», «half an hour», «1h30», «a couple of hours», «2 days»."""
    found = SPAN.search(text)
    if not found:
        return None
    word = found["many"].strip()
    many = _MANY.get(word) or (float(word) if word[0].isdigit() else 2.0 if "couple" in word else 1.0)
    part = {"half": 0.5, "quarter": 0.25}.get(found["part"] or "", 0.0)
    seconds = (many + part) * _SECONDS[found["unit"][0]] + 60 * int(found["more"] or 0)
    return timedelta(seconds=min(seconds, 10_000_000.0))


def without_spans(text: str) -> str:
    """A text without its lengths of time."""
    return SPAN.sub(" ", text)


def longest(text: str) -> timedelta | None:
    """The longest of the lengths of time in a text: «back an hour ago, it was off for 3 h» is three hours.

    What is told one after the other adds up: «2 days and 3 hours», and not «between 2 hours and 3 hours».
    """
    most, told, end = None, timedelta(0), 0
    for part in SPAN.finditer(text):
        goes_on = end > 0 and _AND_MORE.fullmatch(text[end : part.start()]) and "between" not in text
        told = (span(part[0]) or timedelta(0)) + (told if goes_on else timedelta(0))
        most, end = max(most or told, told), part.end()
    return most
