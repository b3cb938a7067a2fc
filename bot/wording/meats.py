"""Words for products and cuts, and what of them is said in a way of its own: how it is cooked, carved and eaten."""

from bot.wording import numbers
from bot.wording.language import Words, later, say
from bot.wording.meat_names import CUTS, product_name
from core.batch.assess import Assessment
from core.meat.piece import Species

TENDER_FROM_C = 80.0  # under it meat is firm, and no probe slides in like into butter
PURPOSES = Words(
    {
        "thin": "thin cold slices by machine",
        "cold": "tender, chilled, sliced cold",
        "hot": "tender, sliced warm the same day",
        "pulled": "pulled",
    }
)
FIRM = Words({"thin": "thin cold slices by machine", "cold": "chilled, sliced cold", "hot": "sliced warm the same day"})
AS_THEY_ARE = Words(  # cuts that come to the table in the piece, and what is done with them there
    {
        "turkey_leg": "Serve them whole, or cut the meat off the bone and draw out the hard sinews.",
        "chicken_leg": "Serve them whole, or cut the meat off the bone.",
        "pork_chop": "Serve the chops as they are.",
        "pork_hock": "Simmer them until the meat leaves the bone, or cut it off in slices: they are firm now.",
    }
)
OFF_THE_BONE = frozenset({"turkey_leg", "chicken_leg", "pork_hock"})
EATEN = Words({"cold": "chilled, eaten cold", "hot": "eaten warm the same day"})


def what(a: Assessment) -> str:
    """«Pastrami from a 3.2 kg brisket flat», «Hot-smoked trout from 4 pieces, 1.4 kg in all»."""
    setup, mass = a.batch.setup, numbers.mass(a.batch.setup.mass, a.person)
    name, cut = product_name(setup.product), CUTS.get(setup.cut, setup.cut.replace("_", " "))
    if setup.pieces > 1 and whole_bird(a):
        return say("{name} from {pieces} birds, {mass} in all", name=name, pieces=setup.pieces, mass=mass)
    if setup.pieces > 1:
        return say(
            "{name} from {pieces} pieces of {cut}, {mass} in all", name=name, pieces=setup.pieces, cut=cut, mass=mass
        )
    vowel = mass.startswith(("8", "11 ", "11.", "18 ", "18."))
    sentence = later("{name} from an {mass} {cut}") if vowel else later("{name} from a {mass} {cut}")
    return say(sentence, name=name, mass=mass, cut=cut)


def purpose(a: Assessment) -> str:
    """How it will be eaten."""
    return purpose_of(a, a.batch.setup.purpose)


def purpose_of(a: Assessment, name: str) -> str:
    """A way to eat this product, in words."""
    if fish(a) or in_portions(a):
        return EATEN.get(name, PURPOSES[name])
    return PURPOSES[name] if a.batch.setup.target_c >= TENDER_FROM_C else FIRM.get(name, PURPOSES[name])


def fish(a: Assessment) -> bool:
    """Whether it is fish."""
    return a.piece.cut.species is Species.FISH


def in_portions(a: Assessment) -> bool:
    """Whether it comes to the table in the piece, as legs, chops and hocks do."""
    return a.batch.setup.cut in AS_THEY_ARE


def never_wrapped(a: Assessment) -> bool:
    """Whether nobody wraps it on the fire: fish, and small pieces that are done before they stall."""
    return fish(a) or in_portions(a)


def bird(a: Assessment) -> bool:
    """Whether it is poultry."""
    return a.piece.cut.species in (Species.TURKEY, Species.CHICKEN, Species.DUCK)


def waterfowl(a: Assessment) -> bool:
    """Whether it is duck or goose, whose fat runs."""
    return a.piece.cut.species is Species.DUCK


def whole_bird(a: Assessment) -> bool:
    """Whether it is a bird with breast and thigh, probed in both and carved off the bone."""
    return a.batch.setup.cut.endswith("_whole")


def has_bone(a: Assessment) -> bool:
    """Whether a large bone runs through it, along which it sours first and cooks last."""
    return a.batch.setup.cut.endswith("_bone_in")


def in_pot(a: Assessment) -> bool:
    """Whether it is simmered, not smoked."""
    return a.batch.setup.cooker == "pot"


def plain(a: Assessment) -> bool:
    """Whether no nitrite goes in: salted, not cured."""
    return a.batch.setup.nitrite_target == 0.0


def probed(a: Assessment) -> str:
    """Where the probe goes."""
    if whole_bird(a):
        return say("probe into the deepest breast, clear of bone")
    if has_bone(a):
        return say("probe into the middle of the thickest part, an inch off the bone")
    if a.batch.setup.cut in OFF_THE_BONE:
        return say("probe into the middle of the thickest part, clear of the bone")
    return say("probe from the side into the middle of the thickest part")


def done_at(a: Assessment) -> str:
    """How it is known that it is done."""
    target = numbers.temperature(a.batch.setup.target_c, a.person)
    if a.batch.setup.target_c >= TENDER_FROM_C:
        if in_pot(a):
            hold = numbers.hours(a.hold_hours)
            return say(
                "Try it with a fork: it turns without force about {hold} after {target}. Then lift it out and say «off».",
                hold=hold,
                target=target,
            )
        return say(
            "Probe the thickest part: at about {target} it should slide in like into soft butter.\n"
            "If it does, take it off and say «off»; if not, give it time and send a reading.",
            target=target,
        )
    floor = numbers.at_least(a.floor_c, a.person)
    if fish(a):
        return say(
            "Probe the thickest part: once it reads {floor}, it stays on for 30 min at that or above.\n"
            "Send that first reading and one after the half hour, then take it off and say «off».",
            floor=floor,
        )
    if in_pot(a):
        return say(
            "Probe three places: it comes out when the coldest reads {target}; never before {floor}.\n"
            "Send that reading, then lift it out and say «off»; if it is short, give it time.",
            target=target,
            floor=floor,
        )
    where = say("breast and inner thigh, three places") if whole_bird(a) else say("three places")
    return say(
        "Probe {where}: off when the coldest reads {target}; never before {floor}.\n"
        "Send that reading, then take it off and say «off»; if it is short, give it time.",
        where=where,
        target=target,
        floor=floor,
    )


def reached(a: Assessment) -> str:
    """Its core is at the target: what to do now."""
    target = numbers.temperature(a.batch.setup.target_c, a.person)
    if in_pot(a):
        return say(
            "It has reached {target}: leave it in until a fork turns in it, then lift it out and say «off».",
            target=target,
        )
    if a.batch.setup.target_c >= TENDER_FROM_C:
        return say(
            "It has reached {target}: probe it. If it slides in like into soft butter, take it off and say «off».",
            target=target,
        )
    return say(
        "It has reached {target}: probe two more places. If the coldest of them is there too, take it off and say «off».",
        target=target,
    )


def carved(a: Assessment) -> str:
    """How it is sliced, and what to look at."""
    look = say("Look at the middle: is any of it grey, and how wide?")
    if fish(a):
        return say("Lift the flakes off the skin, or slice it thin with a long knife.")
    if whole_bird(a) and plain(a):
        return say("Joint it, and carve the breast across the grain. The thermometer decides, not the colour.")
    if whole_bird(a):
        return say(
            "Joint it, and carve the breast across the grain. Pink is the cure: the thermometer decides, not the colour."
        )
    if in_portions(a):
        return AS_THEY_ARE[a.batch.setup.cut]
    if a.batch.setup.cut in ("pork_belly", "pork_jowl"):
        return say("Slice it cold, across the grain, 2 to 4 mm. {look}", look=look)
    if a.chilled:
        return say("Slice it cold, across the grain, 2 to 3 mm. {look}", look=look)
    return say("Slice it across the grain, pencil thick. {look}", look=look)


def nitrite_refused(thing: str) -> str:
    """A product for which the place's law, as it is held here, names no nitrite."""
    jurisdiction = thing.split()[2]
    return say(
        "No nitrite for that: in the law of {jurisdiction}, as I hold it, nothing allows it in this product.\n"
        "It needs none when it is cooked through; say «without nitrite».",
        jurisdiction=jurisdiction,
    )
