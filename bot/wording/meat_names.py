"""What products and cuts are called."""

from bot.wording.language import Words, say
from core.plan.recipe import products

PRODUCTS = Words(
    {
        "pastrami": "Pastrami",
        "corned_beef": "Corned beef",
        "bacon": "Bacon",
        "jowl_bacon": "Jowl bacon",
        "back_bacon": "Back bacon",
        "shoulder": "Cured shoulder",
        "pork_chops": "Smoked pork chops",
        "ham": "Ham",
        "boiled_ham": "Boiled ham",
        "hocks": "Smoked hocks",
        "turkey": "Smoked turkey",
        "whole_turkey": "Whole smoked turkey",
        "turkey_legs": "Smoked turkey legs",
        "chicken": "Smoked chicken",
        "chicken_legs": "Smoked chicken legs",
        "chicken_breast": "Smoked chicken breast",
        "duck": "Smoked duck",
        "whole_duck": "Whole smoked duck",
        "goose": "Smoked goose",
        "salmon": "Hot-smoked salmon",
        "trout": "Hot-smoked trout",
    }
)
CUTS = Words(
    {
        "brisket_flat": "brisket flat",
        "brisket_point": "brisket point",
        "beef_round": "round of beef",
        "beef_chuck": "chuck roast",
        "pork_belly": "pork belly",
        "pork_jowl": "pork jowl",
        "pork_loin": "pork loin",
        "pork_shoulder": "boned shoulder",
        "shoulder_bone_in": "shoulder with its bone",
        "pork_chop": "chop",
        "pork_hock": "hock",
        "ham_boned": "boned leg",
        "ham_bone_in": "leg with its bone",
        "turkey_breast": "breast",
        "turkey_whole": "bird",
        "turkey_leg": "leg",
        "chicken_whole": "whole bird",
        "chicken_leg": "leg or thigh",
        "chicken_breast": "breast",
        "duck_breast": "breast",
        "duck_whole": "bird",
        "goose_whole": "bird",
        "salmon_side": "side",
        "trout": "fish",
    }
)
ALONE = Words(  # cuts whose name within a sentence leaves the animal to the product
    {
        "turkey_breast": "Turkey breast",
        "turkey_whole": "Whole turkey",
        "turkey_leg": "Turkey leg",
        "chicken_whole": "Whole chicken",
        "chicken_leg": "Chicken leg or thigh",
        "chicken_breast": "Chicken breast",
        "duck_breast": "Duck breast",
        "duck_whole": "Whole duck",
        "goose_whole": "Goose",
        "salmon_side": "Salmon side",
        "trout": "Trout",
    }
)
INSIDE = Words(
    {
        "pastrami": "pastrami",
        "corned_beef": "corned beef",
        "bacon": "bacon",
        "jowl_bacon": "jowl bacon",
        "back_bacon": "back bacon",
        "shoulder": "cured shoulder",
        "pork_chops": "smoked pork chops",
        "ham": "ham",
        "boiled_ham": "boiled ham",
        "hocks": "smoked hocks",
        "turkey": "smoked turkey",
        "whole_turkey": "whole smoked turkey",
        "turkey_legs": "smoked turkey legs",
        "chicken": "smoked chicken",
        "chicken_legs": "smoked chicken legs",
        "chicken_breast": "smoked chicken breast",
        "duck": "smoked duck",
        "whole_duck": "whole smoked duck",
        "goose": "smoked goose",
        "salmon": "hot-smoked salmon",
        "trout": "hot-smoked trout",
    }
)
SHORT = Words(
    {
        "flat": "flat",
        "point": "point",
        "pastrami": "pastrami",
        "corned beef": "corned beef",
        "bacon": "bacon",
        "jowl bacon": "jowl bacon",
        "back bacon": "back bacon",
        "shoulder": "shoulder",
        "pork chops": "pork chops",
        "ham": "ham",
        "boiled ham": "boiled ham",
        "hocks": "hocks",
        "turkey": "turkey",
        "whole turkey": "whole turkey",
        "turkey legs": "turkey legs",
        "chicken": "chicken",
        "chicken legs": "chicken legs",
        "chicken breast": "chicken breast",
        "duck": "duck",
        "whole duck": "whole duck",
        "goose": "goose",
        "salmon": "salmon",
        "trout": "trout",
    }
)


def short_name(english: str) -> str:
    """What a batch is called by, in the language of who begins it: «ham», «Schinken»."""
    return SHORT.get(english, english)


def product_inside(name: str) -> str:
    """A product within a sentence: «the bacon», «I plan bacon»."""
    return INSIDE.get(name, name.replace("_", " "))


def product_name(name: str) -> str:
    """What a product is called; one that a cook added is called by the name in its file."""
    return PRODUCTS.get(name, name.replace("_", " ").capitalize())


def planned() -> str:
    """«pastrami, corned beef, … and hot-smoked trout»."""
    ours = [name for name in PRODUCTS if name in products()]
    names = [product_inside(name) for name in (*ours, *sorted(products().keys() - PRODUCTS.keys()))]
    return say("{join} and {names}", join=", ".join(names[:-1]), names=names[-1])


def cut_name(name: str) -> str:
    """A cut by itself, as a button says it: with its animal."""
    said = ALONE.get(name) or CUTS.get(name, name.replace("_", " "))
    return said[:1].upper() + said[1:]  # what comes after it may be a noun of German
