"""How old they are who will eat it: told as years it is no temperature, and tells whether they are at risk."""

from typing import Final

from bot.intents.rewriting.words import rules
from core import patterns as re

_OLD, _SMALL = 65, 5  # years; the ages from which and up to which an eater is at risk, as said in `fields`
_KIN: Final = (
    r"(?:(?:grand|great ?|great ?grand|god|step)?(?:mother|father|mum|mom|ma|pa|dad|son|daughter|child|kid|parents?)"
    r"|nan|nana|nanna|granny|gran|grandma|grandpa|grannie|oma|opa|aunt(?:ie|y)?|uncle|wife|husband|brother|sister|niece"
    r"|nephew|cousin|neighbou?r|guest|baby|kid|boy|girl|toddler|youngest|oldest|little one)"
)
_THING: Final = (  # «a 2 year old pack of cure»
    r"(?:pack|packet|bag|tub|cure|curing|pink|salt|spice|smoker|grill|probe|thermometer|ham|bacon|fridge|freezer)"
)


def _of_an_age(found: re.Match[str]) -> str:
    """How old somebody is is no temperature: it counts as whether they are at risk."""
    years = int(found["years"])
    who = f"{found['who']} is " if found["who"] else ""
    return f"{who}{'elderly' if years >= _OLD else 'a toddler' if years <= _SMALL else 'an adult'}"


def _of_ages(found: re.Match[str]) -> str:
    """«the kids are 3 and 6»: of several the one at risk counts."""
    years = [int(age) for age in re.findall(r"\d+", found["ages"])]
    who = "a toddler" if min(years) <= _SMALL else "elderly" if max(years) >= _OLD else "an adult"
    return f"guest is {who}, "


RULES: Final = rules(
    (r"^(?:(?:its|it is|itll|it will|there|we|were|we are)? ?(?:gonna|going to|be))+ (?P<n>\d{1,2}) of us(?: now)?"
     r"(?:,? (?:and )?not \d{1,2})?$", r"we are \g<n> now"),
    (r"^(?=.*\b(?:com(?:e|ing)|join(?:ing)?|eat(?:ing)?|invited|here)\b).*"
     r"\bso (?:were|we are|thats|that makes) (?P<n>\d{1,2})$", r"we are \g<n> now"),
    (r"^(?:(?:its|it is|itll be|were|we are|there|just|only|for|so|and|be) )*me (?:and|plus|\+|&) (?:the )?"
     r"(?P<n>\d{1,2}) (?:others?|more|people|guests?|friends|mates|of (?:them|us)|family|kids"
     r"|grandkids)(?: (?:eating|coming))?$",
     lambda m: f"we are {int(m['n']) + 1} people"),
    (r"\b(?:theres|there is|there are|itll|it is|its|well|we are|were) (?:gonna|going to) be (?=\d{1,3} (?:people|ppl"
     r"|guests|of us|for)\b"
     r"|\d{1,2}$)", "there will be "),
    (r"(?<=\d\d),? (?:and )?(?:hes|shes|he is|she is) (?:coming|eating|joining)(?: us| too| as well)*\b", ""),
    (rf"\b(?P<who>{_KIN})\b(?P<asked>[^\d?]{{0,40}}?),? (?:shes|hes|she is|he is|whos) (?P<years>\d{{1,2}}"
     r"|10\d)(?:[ -]?(?:years?|yrs?)(?:[ -]?old)?)?(?=$|[?.!])", lambda m: f"{_of_an_age(m)}{m['asked']}"),
    (r"\b(?:(?:the|my|our|two|2|three|3) )?(?:kids|children|boys|girls|sons|daughters|grandkids|grandchildren"
     r"|little ones|parents|grandparents)(?: are|,? aged?| who are)"
     r" (?P<ages>\d{1,2}(?:,? (?:and |& )?\d{1,2})+)"
     r"(?! ?(?:kg|lbs?|people|guests|pm|am|oclock|%)\b)(?: years? old| yrs?)?,? ?", _of_ages),
    (r"\b(?:(?:the|my|our|two|2|three|3) )?(?:kids|children|boys|girls|grandkids|grandchildren|little ones)\b"
     r"[^\d?;]{0,20}\b(?:eat(?:ing)?|com(?:e|ing)|join(?:ing)?|here|too|with us|there)\b[^\d?;,]{0,10},? "
     r"(?P<ages>(?:1[0-7]|[1-9])(?:,? (?:and |& )?(?:1[0-7]|[1-9]))+)(?: years? old| yrs?)?$", _of_ages),
    (rf"(?P<who>\b{_KIN}(?:[ -]in[ -]law)?)(?:(?<!guest)(?<!kid)(?<!boy)(?<!girl)(?<!neighbour)(?<!neighbor)s\b| is"
     r"| has| turn(?:ed|s|ing)|s turning| whos| who is|,? aged?|(?= (?:6[5-9]|[7-9]\d|10\d)\b)) (?:(?:already|nearly"
     r"|almost|about|only|just|now|turning|turned|over|aged?) )*(?P<years>\d{1,2}|10\d)(?![.:]\d)"
     r"(?:[ -]?(?:years?|yrs?|y)(?:[ -]?(?:old|o))?)?"
     r"(?=$|[,;.!?]| (?:and|but|so|who|had|has|ate|is|will|eats|with|too|comes?|coming|joins?|can|may|should|could|does"
     r"|wants?|ok|what|btw|by the way|though|hes|shes|theyre)\b)(?!,? \d)", _of_an_age),
    (rf"(?P<who>\b{_KIN}\b[^,;.\d]{{0,30}}?)[,;]? (?:and )?(?:shes|hes|she is|he is|whos) (?P<years>[6-9]\d|10\d|[1-5])"
     r"(?=$|[,;.!?]| (?:and|so|but|now|years?)\b)(?! ?(?:[cf]\b|degrees|in the))", _of_an_age),
    (r"(^|[,;] (?:and )?|\band (?=my |our |the ))(?!.*\b(?:ate|eaten|had|tried|can|could|should|may|safe|ok|not|nobody"
     r"|no one|none)\b)"
     r"(?:(?:but|also|oh|btw|fyi),? )*(?:[a-z]+ ){1,3}(?:is|whos|who is) (?:(?:about|nearly|already|now) )*"
     r"(?:[a-z\d]+ (?:months?|weeks?) )?(?:along )?pregnant(?:,? (?:btw|by the way|too|fyi"
     r"|and (?:is )?(?:coming|eating)(?: too)?))?$", r"\1a pregnant guest is eating"),
    (rf"(?P<who>)\b(?P<years>\d{{1,2}}|10\d)[- ]?(?:year[- ]old|yr[- ]old|yo|y/o)\b(?! (?:\w+ )?{_THING}\b)",
     _of_an_age),
)  # fmt: skip
