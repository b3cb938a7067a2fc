"""How it feels, stands and smells, without a number: «its hot», «probe tender», «smells rotten»."""

from itertools import pairwise
from typing import Final

from bot.intents.small import words
from core import patterns as re

_HOT: Final = re.compile(
    r"(?:(?:ok|yes|yep|its|it is|it|bit|stone|ice|properly|proper|nice|and|cold|the|meat|pit|fridge|very|too|so"
    r"|really|still|getting|feels|feel|seems|kind of|a bit|rather|got"
    r"|inside|in there|is|now) ?)+(?:hot|warm|cold|low|high)(?: enough(?= i think"
    r"| now$))?(?: to (?:the )?touch)?(?: in there| inside"
    r"| now| i think)?"
    r"|(?:(?:its|it is|feels|the|probe|meat|now|nice and|really|probes?) ?)*(?:tender|soft|like butter|jiggly)"
)

# «hasnt budged»: a temperature that is as it was
UNMOVED: Final = r"(?:no (?:change|movement|progress)|unchanged|(?:not|hasnt|wont) (?:mov(?:e|ed|ing)|budged?))"
A_BIT: Final = (
    r"(?:(?:a|bit|a bit|a little|little|kinda|kind of|sort of|slightly|rather|quite|very|really|so|too|still) )*"
)
IT: Final = (
    r"(?:(?:it|its|it is|that|thats|this|(?:the )?(?:meat|bag|brine|water|flat|piece|fat|middle|slice|juices?)|they"
    r"|all|one(?: of (?:them|the [a-z]+)| bag| piece)?) )*"
)
_ROTTEN: Final = (
    r"(?:sour(?:ish)?|rotten|rank|putrid|foul|eggy|rancid|eggs?|(?:rotten|bad) eggs?|ammonia|sulph?ur|farts?|feet|socks"
    r"|vomit|sick"
    r"|sewage|drains?|cheese|death|dead|a dead \w+|manure|poo|shit|piss|garbage|bin|the bin|gone off|bad meat|compost)"
)
_SPOILED: Final = re.compile(  # what a nose, an eye or a finger says for sure
    rf"^{IT}(?:(?:smell(?:s|ing|ed)?|smelt|reeks?|stinks?|whiffs?|pongs?|stank)(?: is)? {A_BIT}(?:like |of )?"
    rf"{A_BIT}{_ROTTEN}(?: now| to me| when i opened it)?"
    rf"|(?:has |is |have |s |feels? |looks? )?(?:gone |went |going |got |turned |all )?{A_BIT}(?:slimy|slime|ropy"
    r"|rotten|putrid|rank|foul|rancid|mou?ldy|furry|fuzzy|hairy|maggots?|smelly)(?: on (?:it|top|the outside))?"
    r"(?: now)?"
    r"|(?:theres |there is |has |got |found )(?:some |a |a bit of |white |green |black |blue )*(?:slime|mou?ld|fuzz|fur"
    r"|maggots)(?: \w+){0,5})$"
)

_GONE: Final = re.compile(r"\b(?:slimy|slimey|slime|ropy|rotten|putrid|rancid|maggots?)\b")
_NOT_SO: Final = re.compile(  # asked, or denied; but «not slimy anymore» was
    r"^(?:is|are|was|does|can|should|why|what|how|if|when)\b"
    r"|\b(?:not|no|isnt|wasnt|without|never|neither|arent)\b(?!.*\b(?:any ?more|longer)\b)"
)
_AROUND: Final = words(  # «smell is fine bit slimy tho», «surface a bit slimy», «rinsed it, not slimy anymore»
    "it its is was are has have had got gone went feels feel felt looks look smell smells smelling fine ok okay good"
    " clean normal the a an bit little slightly very really kinda quite so too all and but though tho still now some my"
    " our i we think just when opened there theres then to touch in on of at one both surface outside inside top bottom"
    " edge edges side sides underside skin rind fat meat belly bacon ham loin gammon shoulder piece pieces slab bag"
    " liquid juice brine film layer coat coating sticky not no longer any more anymore rinsed washed wiped off after"
    " colour color spots patches"
)


_OF_ROT: Final = re.compile(rf"{_ROTTEN}|bad|off")
_CLEAN: Final = re.compile(
    r"spic(?:y|es?|ed)|smok(?:y|ey|ed?)|pepper(?:y|corns?)?|garlic(?:ky)?|bay|clean|fresh|fine|normal|ok|okay|good|nice"
    r"|meat|meaty|ham|bacon|sweet"
)
_BESIDE: Final = words(
    """its it is thats that smell smells just only more rather like of on the a an bit little kinda kind sort side
    slightly very really pretty all and but i think guess id say maybe so to me at no not too raw"""
)


_NOTED: Final = (
    r"(?:(?:it|its|it is|they|that|everything|and|but|still|all|so|,|(?:the )?(?:meat|bag|brine|water|piece|inside"
    r"|slab)"
    r"|looks? (?:fine|good|ok|okay|great|normal|right),?) ?)*"
)
_TO_ME: Final = r"(?:,? (?:to me|now|though|tho|so far|still|inside|and|clean|fresh|good|at all|either|to it|from it))*"
_SMELLS_CLEAN: Final = re.compile(
    rf"^{_NOTED}\b(?:smells?|smelling|smelt)(?: (?:is|really|very|pretty|perfectly|quite|still|just|all|like|of|only))*"
    r" (?:fine|good|great|ok|okay|clean|fresh|normal|alright|all right|right|nice|nothing|spic(?:y|es?)|salt(?:y)?|meat"
    rf"|beef|pork|as it should){_TO_ME}$"
    rf"|^{_NOTED}\b(?:(?:no|without|isnt|not)(?: an?y?)?(?: (?:bad|funny|off|weird|odd|strange|sour|nasty))?"
    r" (?:smell|odou?r|whiff|pong)s?"
    r"|(?:doesnt|does not|dont|didnt) (?:smell(?: (?:bad|off|funny|weird|odd|sour|strange|of anything|like anything))?"
    rf"|have an?y? smell)|nothing smells(?: (?:bad|off|funny|weird))?){_TO_ME}$"
)


def hot_words(text: str) -> bool:
    """«its hot», «probe tender»: a temperature without a number."""
    return bool(_HOT.fullmatch(text.strip(" !.")))


def how_it_smells(text: str) -> str | None:
    """What the words for a smell, of which it was asked, say: "spoiled" or "clean_smell"; None for other words."""
    said, told = text.replace(",", " ").split(), set[str]()
    for before, word in pairwise(["", *said]):
        rot = bool(_OF_ROT.fullmatch(word))
        if not rot and not _CLEAN.fullmatch(word):
            if word not in _BESIDE:
                return None
            continue
        told.add("spoiled" if rot is not (before in ("not", "no")) else "clean_smell")
    return max(told, default=None)  # of «spicy but a bit sour» the worse


def smells_clean(text: str) -> bool:
    """Whether a plain text says, unasked, that it smells as it should or of nothing."""
    return bool(_SMELLS_CLEAN.match(text.strip(" .!?")))


def is_spoiled(text: str) -> bool:
    """Whether a plain text says that it went off, as a nose, an eye or a finger tells for sure."""
    bare = text.strip(" .!?")
    if _GONE.search(bare) and not _NOT_SO.search(bare):
        rest = _GONE.sub(" ", bare)
        return set(re.findall(r"[^\W\d_]+", rest)) <= _AROUND or bool(_SPOILED.match(bare))
    return bool(_SPOILED.match(bare))
