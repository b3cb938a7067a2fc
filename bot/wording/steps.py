"""Words for each step of the week: its name in a plan; what to do when it falls due is in `tasks`."""

from bot.wording import meats, numbers
from bot.wording.language import Words, later, say
from core.batch.assess import Assessment
from core.plan.steps import Kind, State, Step

NAMES = Words(
    {
        Kind.THAW: "Thaw in the fridge",
        Kind.BRINE: "Make the brine",
        Kind.BRINE_CHECK: "Read the brine",
        Kind.INTO_CURE: "Meat into the cure",
        Kind.FLIP: "Flip the bag",
        Kind.FRIDGE_CHECK: "Read the fridge",
        Kind.MID_CHECK: "Look at the bag",
        Kind.OUT: "Out of the cure",
        Kind.RINSE: "Rinse and taste",
        Kind.SOAK: "Soak in fresh water",
        Kind.EVEN: "Seal it to rest",
        Kind.DRY: "Dry on a rack",
        Kind.RUB: "Rub, then rest",
        Kind.LIGHT: "Light the fire",
        Kind.MEAT_ON: "Meat on",
        Kind.READING: "Read core and pit",
        Kind.WRAP: "Wrap",
        Kind.OFF: "Off the fire",
        Kind.REST: "Rest",
        Kind.CHILL: "Start the chill",
        Kind.CHILL_CHECK: "Read the core in the chill",
        Kind.SLICE: "Slice",
        Kind.SERVE: "Meal",
        Kind.USE_BY: "Use by",
        Kind.DEBRIEF: "Look back",
    }
)
DRY_NAME = later("Weigh the cure")
SALT_NAME = later("Weigh the salt")
POT_NAMES = Words(
    {
        Kind.LIGHT: "Heat the water",
        Kind.MEAT_ON: "Meat into the pot",
        Kind.READING: "Read the core",
        Kind.OFF: "Out of the pot",
    }
)


def name(step: Step, a: Assessment) -> str:
    """The step in a few words, as a plan lists it."""
    if step.kind is Kind.BRINE and a.batch.setup.method == "dry":
        return say(SALT_NAME if meats.plain(a) else DRY_NAME)
    if meats.in_pot(a) and step.kind in POT_NAMES:
        return POT_NAMES[step.kind]
    if step.kind is Kind.CHILL_CHECK:
        corner = 26.7 if step.key.endswith("/27") else 4.4
        return say("Core at {limit} or below", limit=numbers.at_most(corner, a.person))
    return NAMES[step.kind]


def called(key: str, a: Assessment) -> str:
    """The name of a step of a batch from its key."""
    return name(Step(key, Kind(key.split("/")[0]), a.now), a)


def name_of(key: str) -> str:
    """The name of a step from its key alone."""
    return NAMES[Kind(key.split("/")[0])]


def brine_unread(a: Assessment) -> bool:
    """Whether the brine still has to be read cold enough before the meat may go in."""
    check = a.plan.step("brine_check") if a.plan else None
    return check is not None and check.state in (State.DUE, State.AHEAD)
