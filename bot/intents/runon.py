"""Statements that run on without a comma, as a phone writes down what was spoken: «fridge is 36 flipped it».

A comma is set only between a deed and a thermometer that has its number, so that no hour becomes a temperature.
"""

import re
from typing import Final

_NUMBER: Final = r"-?\d{1,3}(?:\.\d)?(?: ?(?:°|degrees?|deg)? ?[cf]\b| degrees)?"
_COLD_OR_PIT: Final = r"(?:fridge|refrigerator|brine|pit|smoker|grill)"
_DEED: Final = r"(?:flipped|turned (?:it|them|both)|wrapped|rinsed|wrapping)"
_DONE: Final = r"(?:flipped|turned (?:it|them|both)|wrapped|rinsed|done|did it)"
_RULES: Final = tuple(
    (re.compile(pattern), put)
    for pattern, put in (
        (rf"\b((?:{_COLD_OR_PIT}|core|meat|internal)\b[^,;.?\d]{{0,16}}{_NUMBER}) "
         rf"(?=(?:(?:i|we|ive|just|have) )*{_DEED}\b)", r"\1, "),
        (rf"\b({_DONE}(?: it| them| both| now| just)*) (?=(?:the |my )?{_COLD_OR_PIT}s?\b[^,;.?]{{0,20}}\d)", r"\1, "),
        # what was read, and what is going to be done about it
        (rf"^((?:{_COLD_OR_PIT}|core|meat|hit|its|at|now| )*{_NUMBER}),? (?=(?:(?:so|im|i am|we are|now) )*"
         r"(?:gonna|going to|about to|ill|i will|time to)\b)", r"\1, "),
    )
)  # fmt: skip


def parted(text: str) -> str:
    """A plain line with a comma where one statement ends and the next begins."""
    for pattern, put in _RULES:
        text = pattern.sub(put, text)
    return text
