"""German days of the month: «samstag den 9.» is the ninth, with no month said; «den 9. oktober» is read elsewhere."""

from typing import Final

from core import patterns as re

_WEEKDAY: Final = r"(?:(?:mon|diens|donners|frei|sams|sonn)tag|mittwoch|mo|di|mi|do|fr|sa|so)\.?"
_NTH: Final = re.compile(  # «am 9.10.» and «am 9. märz» have their month
    rf"\b(?:(?P<weekday>{_WEEKDAY}),? (?:(?:den|dem) )?|(?:am|zum|vom|den|dem) )"
    r"(?P<day>3[01]|[12]\d|0?[1-9])\.(?![\d:])"
    r"(?! ?(?:jän|jan|feb|mär|mae|apr|mai|jun|jul|aug|sep|okt|nov|dez|tag|mal|stück|schritt|stunde|woche))"
)
_ENDS: Final = {1: "st", 2: "nd", 3: "rd", 21: "st", 22: "nd", 23: "rd", 31: "st"}


def with_nth(text: str) -> str:
    """A plain German line with «den 9.» as «the 9th», the day of the week before it as it was."""
    return _NTH.sub(_as_nth, text)


def _as_nth(found: re.Match[str]) -> str:
    day, weekday = int(found["day"]), found["weekday"]
    nth = f"the {day}{_ENDS.get(day, 'th')}"
    return f"{weekday} {nth}" if weekday else nth
