"""The words that send a piece into the cold, keep it hot or warm it up."""

from typing import Final

from core import patterns as re

TO_THE_COLD: Final = re.compile(r"\b(?:iced?|chill\w*|cool(?!er)\w*|cold)\b")
FROM_THE_COLD: Final = re.compile(  # as it is before it is warmed
    r"\b(?:(?:from|of|a|is|its|the) )?(?:fridge |stone |ice )?cold\b(?! (?:water|smok))"
    r"(?=.*\b(?:in the|to|until|till?|hot|through|warm\w*|oven|steam\w*)\b)"
)
INTO_THE_COLD: Final = re.compile(r"\b(?:iced?|chill\w*|cool(?!er)\w*|cold|fridge|freezer)\b")
HELD_IN: Final = re.compile(r"\bhow long\b.*\b(?:hold|keep|stay|sit)\b.*\b(?:cooler|esky|cool box)\b")
STAYS_HOT: Final = re.compile(r"\b(?:stays?|keeps?|hold\w*|be|remain) (?:it |them |still )?(?:hot|warm)\b")
KEPT_HOT: Final = re.compile(r"\b(?:keeps?|stays?|rest\w*|box|cooler|esky|towels?|warm|hot|oven|wrapped|foil)\b")
