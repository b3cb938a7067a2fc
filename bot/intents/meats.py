"""The words for products and cuts, and what they say of a batch.

Products other than pastrami are named here so that they are recognised and answered honestly, planned or not.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from core import patterns as re
from core.meat.cuts import cuts
from core.plan.recipe import product, products
from core.units import Kilograms

_SALMON_TROUT: Final = r"(?:salmon|sea|ocean|steelhead)[ -]?trouts?|steelheads?|(?:lachs|meer)forellen?"
SALMON_TROUT: Final = re.compile(rf"\b(?:{_SALMON_TROUT})\b")  # a fillet of them is planned as one of salmon
_DARK: Final = r"(?:leg[ _]quarters?|legs?|thighs?|drum(?:stick)?s?)"
# (words, product or "", cut or ""); the first that matches wins for each of the two
_PRODUCTS: Final = (
    (r"venison|bear|(?:wild )?boar|elk|moose|deer|kangaroo|wildschwein|reh|hirsch", "game"),
    (r"lamb|mutton|hogget|goat|veal|lamm|hammel|ziege|kalb", "lamb"),
    (r"pastrami|pastrmi|pastrama|pastromi", "pastrami"),
    (
        r"corned(?:[ _]beef)?|corn beef|to corn|corn(?:ing)? (?:it|this|that)|salt beef|pökelfleisch"
        r"|pökelrind(?:fleisch)?",
        "corned_beef",
    ),
    (r"buckboard(?: bacon)?", "shoulder"),
    (r"(?:canadian|back)[ _]bacon|kassler|lachsschinken", "back_bacon"),
    (r"pancetta|guanciale", "pancetta"),
    (r"bresaola|coppa|cap[io]col+[ao]|lon[zj]ino|prosciutto|jamon|serrano|saucisson|chorizo|pepperoni", "sausage"),
    (r"(?:cod|tuna|haddock|halibut|hake|pollock|monkfish|swordfish|sturgeon)[ _]loins?", "other_fish"),
    (r"salmon[ _]loins?", "salmon"),
    (r"(?:pork[ _]|hog[ _])?jowls?", "jowl_bacon"),
    (r"bacon|(?:bauch)?speck|(?:pork )?belly|bellies|(?:schweine)?bauch", "bacon"),
    (r"(?:(?:ham|pork)[ _])?hocks?|(?:pork|ham)[ _](?:knuckles?|shanks?)", "hocks"),
    (r"hams?|gammon|schinken(?:braten)?|schweinekeule|fresh leg of pork|leg of pork|pork legs?", "ham"),
    (r"tenderloins?", "tenderloin"),
    (r"(?:smoked )?(?:pork |loin |rib )chops|pork[ _]chops?", "pork_chops"),
    (r"(?:pork )?loins?", "back_bacon"),
    (r"turkey[ _](?:breasts?|brests?)|(?:breasts?|brests?) of turkey|putenbrust", "turkey"),
    (rf"turkey[ _]{_DARK}|{_DARK} of turkey", "turkey_legs"),
    (r"turkey[ _](?:wings?|necks?)", "turkey_pieces"),
    (r"turkeys?|puter?|truthahn", "whole_turkey"),
    (rf"chicken[ _]{_DARK}|{_DARK} of chicken", "chicken_legs"),
    (r"chicken[ _](?:breasts?|brests?)|(?:breasts?|brests?) of chicken", "chicken_breast"),
    (r"chicken[ _](?:wings?|necks?)|(?<=(?:lb|kg|of) )wings|(?<=(?:lbs|zen) )wings|smoked wings", "chicken_pieces"),
    (r"chickens?|hühnchen|huhn|hühner|hähnchen", "chicken"),
    (r"(?:goose|geese)[ _](?:breasts?|brests?|legs?|thighs?|wings?|necks?)", "goose_pieces"),
    (r"(?:(?:whole|entire) )?(?:goose|geese)|gans|gänse", "goose"),
    (r"(?:whole|entire) ducks?|ducks?,? (?:its |which is |that is )?whole|ganze enten?", "whole_duck"),
    (r"duck[ _](?:legs?|thighs?|wings?|necks?)|entenkeulen?", "duck_legs"),
    (r"ducks?(?:[ _]breasts?)?|enten?|entenbrust", "duck"),
    (r"(?:cod|salmon|trout|fish|herring|lumpfish)[ _]?(?:'s )?roes?|roes?|rogen|(?:kabeljau|dorsch)rogen", "roe"),
    (rf"{_SALMON_TROUT}|salmon|lachs", "salmon"),
    (r"trouts?|forellen?", "trout"),
    (
        r"mackerels?|makrelen?|herrings?|heringe?|kippers?|eels?|aale?|cod|kabeljau|dorsch|haddock|halibut"
        r"|heilbutt|tuna"
        r"|thunfisch|sturgeon|stör|sablefish|arctic char|saiblinge?|whitefish|pollock|sprats?|sprotten"
        r"|sardines?|carp|karpfen|pike|hecht|perch|zander|catfish|bluefish|redfish|dogfish",
        "other_fish",
    ),
    (r"jerky|biltong", "jerky"),
    (r"sausages?|salami|kielbasa|wurst", "sausage"),
    (r"(?:beef )?tongue|zunge", "tongue"),
    (r"(?:pork )?(?:butts?|shoulders?)|schulter", "shoulder"),
    (r"pulled ?pork", "pulled_pork"),
    (r"(?:short ?|spare ?)?ribs?|rippen", "ribs"),
)  # fmt: skip
_ROUND: Final = re.compile(
    r"\b(?:(?:bottom|eye of(?: the)?|top|beef) round|eye round|round (?:of beef|roast)|topside|silverside)\b"
)
_BARE_ROUND: Final = re.compile(r"\bround\b")
_BONE_IN: Final = re.compile(
    r"\b(?:bone[- ]?in|on the bone|with (?:the |its )?bone|bones? (?:is |are )?(?:still )?in|mit knochen)\b"
)
_BONED: Final = re.compile(
    r"\b(?:buckboard|bone[- ]?less|boned|deboned|no bone|off the bone|bone (?:is )?out|without (?:the |its )?bone"
    r"|netted|rolled|ohne knochen|not (?:on the bone|bone[- ]?in)|(?:took|taken|cut|pulled|got) the bone out)\b"
)
_NO_THROW: Final = (  # «chuck it in»
    r"(?! (?:it|them|that|this|these|the|my|an?|another|some|more|one|two|in|on|out|away)\b)"
)
_CHUCK: Final = r"(?:beef[ _])?chuck(?:[ _](?:roasts?|rolls?|eyes?|blades?|pot roasts?))*"
_CUTS: Final = (
    (r"brisket[ _]flats?|flat (?:cut )?brisket|flat cut|flats?", "brisket_flat"),
    (r"brisket[ _]points?|point (?:cut|end|brisket)|deckle|points?", "brisket_point"),
    (r"packers?|(?:whole|full|entire) brisket|brisket,? (?:whole|untrimmed)", "packer"),
    (rf"{_CHUCK}{_NO_THROW}|blade roasts?", "beef_chuck"),
    (r"briskets?|rinderbrust|brust|brisk[ei]ts?", "brisket"),
    (r"duck[ _](?:breasts?|brests?)|(?:breasts?|brests?) of (?:a )?ducks?|entenbrust", "duck_breast"),
)
PRODUCT_WORDS: Final = re.Rules((re.compile(rf"\b(?:{words})\b"), name) for words, name in _PRODUCTS)
CUT_WORDS: Final = re.Rules((re.compile(rf"\b(?:{words})\b"), name) for words, name in _CUTS)
_OF_MEAT: Final = re.Rules(
    (words, None) for words in (*(found for found, _ in (*PRODUCT_WORDS, *CUT_WORDS)), _ROUND, _BONE_IN, _BONED)
)
_MEAT_WORDS: Final = "|".join(
    (r"bird|fish|fillets?|pork|beef|joint|roast|slab|hunk|piece|chop|hock|leg|thigh|drumstick",
     *(w for w, _ in _PRODUCTS), *(w for w, _ in _CUTS))
)  # fmt: skip
# «the belly is on», «put the bird on», and «is on» behind the name of a batch: the meat in hand, and no new one
_IN_HAND: Final = re.compile(
    r"(?P<does>\b(?:put|got|took|taken|pulled|lifted|popped) )?\b(?:the |my |our )?(?:pork |beef )?"
    rf"\b(?:{_MEAT_WORDS})s?"
    r"(?= (?:(?:is|are|was|has|went|goes|came|just|now|all|been) )*(?:on|off|out|in|into|from|resting)\b)"
    r"|^(?P<then>is|are|went|has been) (?=(?:now )?(?:on|off|out|in)\b)"
)
# several pieces are one batch: «they are in», «trout are on», «they came off», «the fish are drying»
_MANY: Final = re.compile(r"\b(?:they|meat) are (?=(?:now |all |both )*(?:in|on|off|out)\b)")
_CAME_OFF: Final = re.compile(r"\b(?:they|it|meat) (?:just |all |both )?came off(?= now$| just now$|$)")
_DRIES: Final = re.compile(
    rf"^(?:now )?(?:the )?(?:it|its|they|meat|{_MEAT_WORDS})s? ?(?:(?:is|are) )?(?:now |already )?drying"
    r"(?: (?:now|on the rack|in the fridge))*$"
)
_OTHER_BACON: Final = re.compile(r"\b(?:shoulder|butt|loin)\b")
_UNCURED: Final = re.compile(
    r"\b(?:no|without(?: any)?|not|isnt|dont) (?:cured?|curing|curing salt|nitrite)\b(?! yet)|\buncured\b"
    r"|\b(?:just|only|simply|plain) smok(?:e|ed|ing)\b"
)
_CURED_PORK: Final = re.compile(r"\b(?:bacon|buckboard|ham|pastrami)\b")
_BIRD: Final = r"(?:turkey|duck|chicken|goose|salmon|trout)"
_BIRD_PASTRAMI: Final = re.compile(
    rf"\b{_BIRD}(?:(?!\band\b|\bplus\b|;).){{0,48}}\bpastrami\b(?! (?:and|plus)\b)"
    rf"|\bpastrami(?:[- ]style)?,? (?:(?:from|of|out of|with|made|a|an|my|some|2|two) )*{_BIRD}(?: breasts?"
    rf"| legs?| thighs?)?"
)
_OF_BEEF: Final = ("pastrami", "corned_beef")
_LIKE_IT: Final = re.compile(  # «a loin, smoked like ham»: how it shall be, and not what it is
    r"\b(?<!tastes )(?<!looks )(?:like|the way (?:of|i do)|in the style of) (?:an? |my |the )?(?:ham|bacon|pastrami"
    r"|gammon)\b"
)
_DENIED: Final = re.compile(rf"\bnot (?:the |a |an )?(?:pork |beef )?(?:{_MEAT_WORDS})\b")


@dataclass(frozen=True)
class Meat:
    """What was named: `product` and `cut` are "" where they were not; `cut` is "both" for a flat and a point."""

    product: str = ""
    cut: str = ""

    def __bool__(self) -> bool:
        """True where anything was named."""
        return bool(self.product or self.cut)


_LEG: Final = ("ham_bone_in", "ham_boned")
BY_BONE: Final = {"ham": _LEG, "boiled_ham": _LEG, "shoulder": ("shoulder_bone_in", "pork_shoulder")}
_SHOULDER_HAM: Final = re.compile(r"\b(?:shoulder|picnic|butt)\b")  # cured like a ham, and no leg


_BOILED: Final = re.compile(
    r"^(?!.*\bsmok).*(?:\b(?:boiled|poached|simmered) (?:\w+ )?(?:ham|gammon)\b"
    r"|\b(?:ham|gammon)\b[^?;]{0,60}\b(?:boiled|simmered|poached|to (?:boil|simmer|poach))\b"
    r"|\b(?:boil|simmer|poach) (?:a|an|my|the|this) (?:\w+ )?(?:ham|gammon)\b[^?]*$)"
)


@lru_cache(maxsize=64)  # a line is asked for its meat by many readers
def meat(text: str) -> Meat:
    """The product and the cut named in a plain text; «point, not flat» is the point, «loin not belly» the loin."""
    text = _LIKE_IT.sub(" ", _DENIED.sub(" ", text))
    cut_names = [name for _, name in CUT_WORDS.hits(text)]
    cut = "both" if {"brisket_flat", "brisket_point"} <= set(cut_names) else next(iter(cut_names), "")
    made = next((name for _, name in PRODUCT_WORDS.hits(text)), "")
    if made == "pastrami" and (bird := _BIRD_PASTRAMI.search(text)):  # «duck breast, pastrami style»: by the bird
        made = next((name for _, name in PRODUCT_WORDS.hits(bird[0]) if name != "pastrami"), made)
    if made == "bacon" and (other := _OTHER_BACON.search(text)):  # «pork shoulder bacon»
        made = "back_bacon" if other[0] == "loin" else "shoulder"
    if made == "ham" and _SHOULDER_HAM.search(text):
        made = "shoulder"
    if made == "ham" and _BOILED.search(text):
        made = "boiled_ham"
    if made == "shoulder" and _UNCURED.search(text) and not _CURED_PORK.search(text):  # plain smoked pork
        made = "pulled_pork"
    if made in BY_BONE:
        cut = bone(text, made)
    elif not cut and (_ROUND.search(text) or (made in _OF_BEEF and _BARE_ROUND.search(text))):
        cut = "beef_round"
    if made:
        return Meat(made, cut)
    added = _by_file(text)
    return Meat(added.product, cut or added.cut)


# cuts that people cure and that nothing here plans yet
OTHER_CUT: Final = re.compile(
    r"\b(?:(?<!pork )(?<!ham )shank|shin|tri ?tip|neck|cheeks?|tongues?|sirloin|rump|rib ?eye|flank|skirt|navel"
    r"|trotters?|tenderloin|oxtail|hearts?)\b"
)


def _by_file(text: str) -> Meat:
    """A product or a cut that a cook added, by the name in its file."""
    made, taken = (
        next((name for _, name in those.hits(text)), "") for those in _spoken(tuple(products()), tuple(cuts()))
    )
    return Meat(made, taken)


@lru_cache(maxsize=2)  # a cook may add a file
def _spoken(*names: tuple[str, ...]) -> tuple[re.Rules[str], ...]:
    """The names of products and those of cuts, each as it is said."""
    spoken = re.compile(r"[_ ]")
    words = {n: rf"\b{spoken.sub('[ _]', re.escape(n))}s?\b" for those in names for n in those}
    return tuple(re.Rules((re.compile(words[n]), n) for n in those) for those in names)


def ranges(named: Meat) -> tuple[tuple[Kilograms, Kilograms], ...]:
    """What a piece of that cut can weigh [kg], or of each cut that such a product is made from; none where unknown."""
    made_from = [of for name in _called(named.product) for of in product(name).cuts]
    known = (named.cut,) if named.cut in cuts() else made_from
    return tuple((cuts()[name].mass_low, cuts()[name].mass_high) for name in known)


def may_be(named: Meat, made: str, cut: str) -> bool:
    """Whether what was named may be a batch of that product from that cut: «brisket» a flat, «whole duck» a «duck»."""
    by_cut = named.cut in ("both", "packer") or bool(named.cut and cut.startswith(named.cut))
    return by_cut or named.product in _called(made) or made in _called(named.product)


def _called(name: str) -> list[str]:
    """The products that a name may stand for: «duck» is the breast, or the bird by its weight; none where unknown."""
    return [one for one in (name, product(name).heavier) if one] if name in products() else []


def bone(text: str, made: str = "ham") -> str:
    """The cut of a ham or a shoulder, where it is said whether the bone is in."""
    with_bone, boned = BY_BONE[made]
    if _BONED.search(text):
        return boned
    return with_bone if _BONE_IN.search(text) else ""


def besides_a_bone(text: str, words: list[str]) -> list[str]:
    """The words that may be a meat; «a bone in leg» alone is the ham that was asked about."""
    return [word for word in words if word not in ("leg", "joint", "haunch")] if bone(text) else words


def as_meat(text: str) -> str:
    """The text with the meat of the batch as «the meat», by whatever name it goes: «the meat is on»."""

    def spoken(found: re.Match[str]) -> str:
        does, then = found["does"], found["then"]
        return f"meat {then} " if then else f"{does}the meat" if does else "meat"

    text = _IN_HAND.sub(spoken, _DRIES.sub("on the rack", text))
    return _CAME_OFF.sub("meat is off", _MANY.sub("meat is ", text))


def as_named(text: str, names: Iterable[str]) -> str:
    """The text with the meat of a batch by that batch's own name: «the belly» or «Speck» for the one called «bacon»."""
    for name in names:
        base = re.sub(r" \d+$", "", name.lower())
        words = next((each for each, _ in (*PRODUCT_WORDS, *CUT_WORDS) if each.fullmatch(base)), None)
        if words is not None and base not in text:
            text = words.sub(base, text, count=1)
    return text


def of_none(text: str, names: Iterable[str]) -> str:
    """The meat that a plain text names, where no batch is called so: «the ham» beside a flat and a bacon; else ""."""
    called = [re.sub(r" \d+$", "", name.lower()) for name in names]
    for found, product_ in PRODUCT_WORDS.hits(text):
        if product_ not in _OF_BEEF and not any(found.re.search(name) or found[0] in name for name in called):
            return found[0]
    return ""


def without(text: str) -> str:
    """The text with its words for meat taken out."""
    return _OF_MEAT.in_turn(text, lambda line, words, _: words.sub(" ", line))
