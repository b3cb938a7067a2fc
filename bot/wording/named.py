"""Words for what comes after a step that nobody has confirmed yet: named in its call, not called for one by one."""

from bot.wording import meats, numbers
from bot.wording.language import Words, say
from core.batch.assess import Assessment
from core.plan.steps import Kind, Step

NEXT = {  # what is told beforehand; the rest is called for once there is a sign of a fire
    "out": {Kind.RINSE, Kind.SOAK, Kind.DRY},
    "rinse": {Kind.DRY},
    "light": {Kind.RUB, Kind.MEAT_ON},
    "meat_on": {Kind.WRAP},
}
INSIDE = Words(  # as they stand within a sentence
    {
        Kind.RINSE: "rinse and taste",
        Kind.SOAK: "soak in fresh water",
        Kind.DRY: "dry on a rack",
        Kind.RUB: "rub, then rest",
        Kind.MEAT_ON: "meat on",
        Kind.WRAP: "wrap",
    }
)
SAY = Words(
    {
        "light": "Say «lit» once it burns: until I hear of a fire I call for nothing that comes after it.",
    }
)


def following(step: Step, a: Assessment) -> list[str]:
    """«Then: 06:15 rub, then rest; 07:00 meat on.»"""
    named = [s for s in a.plan.named_with(step.key) if s.kind in NEXT.get(step.key, ())] if a.plan else []
    if not named:
        return []
    told = "; ".join(f"{numbers.clock(s.due, a.person)} {_inside(s, a)}" for s in named)
    return [say("Then: {told}.", told=told)]


def again(step: Step, a: Assessment) -> list[str]:
    """In the one repeat: what is left out until somebody says so."""
    if a.plan is None or not a.plan.named_with(step.key) or step.key not in SAY:
        return []
    return [SAY[step.key]]


def _inside(step: Step, a: Assessment) -> str:
    return say("meat into the pot") if step.kind is Kind.MEAT_ON and meats.in_pot(a) else INSIDE[step.kind]
