"""What is asked and told beside the fire: a topic or an event, and who has the words for it."""

from collections.abc import Callable
from datetime import timedelta

from bot.wording import chilling, doneness, fire, freezer, fuel, holding, numbers, readings, wraps
from bot.wording.language import say
from core.batch.assess import Assessment
from core.heat.cooker import cooker

TOPICS: dict[str, Callable[[Assessment], str]] = {
    "fuel": fuel.fuel_asked,
    "light": fire.lighting_asked,
    "fire": fire.asked,
    "wrap": wraps.asked,
    "stall": wraps.stall_asked,
    "hold": holding.asked,
    "chill": chilling.asked,
    "pull": doneness.pull_asked,
    "run": doneness.run_asked,
    "tender": doneness.tender,
    "reading": readings.next_asked,
    "probe_out": readings.probe_out,
    "tough": doneness.tough,
}


def _lid(a: Assessment) -> str:
    wait = cooker(a.batch.setup.cooker).wait_minutes.high
    at = next((at for at, what in reversed(a.batch.incidents) if what.what == "lid"), a.now)
    back = numbers.clock(at + timedelta(minutes=wait), a.person)
    often = fire.often(a)
    return say(
        "Noted, the lid was open. Leave the vents till {back}.\nWhat the pit reads before then says nothing.{often}",
        back=back,
        often=often,
    )


def _flare(a: Assessment) -> str:
    out = say("Turn the burner off. ") if cooker(a.batch.setup.cooker).fuel == "propane" else ""
    return say(
        "{out}Lid shut and both vents shut, now; stand back. No water on it.\n"
        "After 5 min give the top vent a crack, wait, and lift the lid by a finger before you open it: a starved fire flashes. "
        "If it burns outside the cooker, call the fire brigade. Then send the pit.",
        out=out,
    )


def _unwrapped(a: Assessment) -> str:
    ready = say("Ready {when}.", when=numbers.time_band(a.ready, a.person, a.now)) if a.ready else ""
    return say(
        "Noted: unwrapped. {ready}\nThe surface dries and the crust firms up again; bare it climbs more slowly.",
        ready=ready,
    )


EVENTS: dict[str, Callable[[Assessment], str]] = {
    "lid": _lid,
    "flare": _flare,
    "unwrapped": _unwrapped,
    "cut": chilling.cut,
    "frozen": freezer.frozen,
    "thawed": freezer.thawed,
}
