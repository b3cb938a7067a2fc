"""Words for what another cooker would make of a cook: its hours and its fuel, with nothing changed."""

from dataclasses import replace

from bot.wording import fuel, plans
from bot.wording.language import say
from core.batch.assess import Assessment, assess


def on_cooker(a: Assessment, kind: str) -> str:
    """What would move on another cooker, and its fuel."""
    cooker = plans.COOKERS[kind]
    if kind == a.batch.setup.cooker:
        return say("It is planned on that already: {cooker}.", cooker=cooker)
    other = assess(replace(a.batch, setup=a.batch.setup.change({"cooker": kind})), a.person, a.now)
    moved = plans.moved(a.plan, other)
    lead = (
        say("On this one it would move, and nothing is changed yet: {cooker}.", cooker=cooker)
        if moved
        else say("On this one the hours would stay within the quarter hour: {cooker}.", cooker=cooker)
    )
    change = say("To change to it, type «{cooker}».", cooker=cooker)
    return "\n".join((lead, *moved, say("{have}.", have=fuel.have(other)), change))
