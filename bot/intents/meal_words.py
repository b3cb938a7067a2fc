"""The words for a meal, and for how long it is moved."""

from typing import Final

MEAL: Final = (
    r"(?:dinner|lunch|supper|tea|breakfast|brunch|the meal|meal|deadline|party|feast|essen|everything|it all"
    r"|the whole (?:thing|plan)|the plan|all(?! at \d{3}\b))"
)
AMOUNT: Final = (
    r"(?:half an|an?|\d{1,3}(?:\.\d)?|a couple of|eine[rn]?) ?"
    r"(?:h|hrs?|hours?|m?mins?|minutes?|days?|weeks?|d|stunden?|tage?)"
)
