"""What is asked around a batch: may it be eaten cold, may I go to bed, who is woken when, and how what was said is put right."""

from bot.intents.intents import Pause, Undo
from bot.wording import answers, asking, doneness, meats, numbers, plans, recalled, smoked_fish, standing, yard
from bot.wording.language import say
from core.batch.assess import Assessment
from core.batch.batch import Phase
from core.batch.events import Probe
from core.plan.steps import State
from core.safety.history import printed_f

RAW = frozenset({Phase.WAITING, Phase.CURING, Phase.DRYING})


def eat_cold(a: Assessment) -> str:
    """Whether it is cooked, and may be eaten as it is."""
    floor = numbers.at_least(smoked_fish.cooked_c(a), a.person)
    core = max((r.celsius for r in a.batch.of_probe(Probe.CORE)), default=None)
    if a.batch.phase in RAW:
        return say(
            "No: it is raw, cured or not. It has to be cooked through, to {floor} in the middle at least. {next}",
            floor=floor,
            next=plans.coming(a),
        )
    if core is None or printed_f(core) < printed_f(smoked_fish.cooked_c(a)):
        return say(
            "No: no core of {floor} or more is noted, so it counts as raw. Read the core and send it.", floor=floor
        )
    return say(
        "Cooked: the hottest core noted is {core}.\n{verdict}",
        core=numbers.temperature(core, a.person),
        verdict=answers.safe(a),
    )


def is_cold(a: Assessment) -> bool:
    """Whether it is off the fire, and the last core that was read is 40 °F or below."""
    core = a.batch.last(Probe.CORE)
    return a.batch.off_at is not None and core is not None and core.celsius <= recalled.COLD


def bed(a: Assessment) -> str:
    """Whether it may be left alone, and till when."""
    match a.batch.phase:
        case Phase.COOKING:
            ready = say("Ready {when}.", when=numbers.time_band(a.ready, a.person, a.now)) if a.ready else ""
            reading = yard.TOPICS["reading"](a)
            return say(
                "Not with the fire alone: somebody stays, or an alarm on core and pit wakes you. {ready}\n{reading}\n"
                "If nobody can: finish it in an oven, with the probe in it.",
                ready=ready,
                reading=reading,
            )
        case Phase.CHILLING | Phase.RESTING if not is_cold(a):
            return say(
                "Not before it is cold: the clock of the cooling runs. {next}\nOnce the core is at {limit} or below, good night.",
                next=plans.coming(a),
                limit=numbers.both(4.4, a.person),
            )
        case _:
            due = a.plan is not None and any(step.state is State.DUE for step in a.plan.steps)
            return plans.now(a) if due else say("Yes. {next} I call you.", next=plans.coming(a) or plans.now(a))


def rest(a: Assessment) -> str:
    """When the rest began, and till when."""
    if a.batch.off_at is None:
        if a.batch.setup.target_c < meats.TENDER_FROM_C:
            return say("It rests once it is off the fire: say «off» then, and I count. {next}", next=plans.coming(a))
        return say(
            "45 to 60 min, loosely wrapped, once it is off the fire: say «off» then, and I count. {next}",
            next=plans.coming(a),
        )
    if a.batch.phase is Phase.RESTING:
        return f"{doneness.off(a)}\n{plans.coming(a)}".strip()
    return f"{standing.since(a)}\n{plans.coming(a)}".strip()


def salty(a: Assessment) -> str:
    """How salty it will be."""
    after = a.after_cure()
    share = numbers.percent(a.batch.setup.salt_fraction)
    if after is None:
        return say("It is salted to {share}; most like 2 to 2.5 %.", share=share)
    return say(
        "Raw {mean} on average, {centre} in the middle, salted to {share}; cooking takes water, so it tastes saltier. "
        "Most like 2 to 2.5 %. Fry a thin slice after the rinse; too salty, ask «how long to soak».",
        mean=numbers.percent(after.salt_mean.p50, 1),
        centre=numbers.percent(after.salt_centre.p50, 1),
        share=share,
    )


def why_cold(a: Assessment) -> str:
    """Why the meat waits until its brine is cold."""
    return say(
        "Warm brine warms the meat for hours, and germs grow before the cure can hold them: it goes in at {limit} or colder. "
        "Ice in a shut bag helps; then read it.",
        limit=numbers.both(4.4, a.person),
    )


def quiet(a: Assessment) -> str:
    """Who wakes whom when: how it is set otherwise."""
    hours = ", ".join(f"{hour:%H:%M}" for hour in a.person.flip_hours) or "–"
    return say(
        "Sorry. Tell me hours that suit: «quiet from 23 to 6», or «flips at 7 and 19» (now {hours}).\n"
        "If the hour itself is wrong, say where you are, like «we are in Chicago». Fire, chill and safety still call.",
        hours=hours,
    )


def away(a: Assessment) -> tuple[str, asking.Rows]:
    """Somebody has to leave: what may wait and what may not, and who can take over."""
    hot = a.batch.phase in (Phase.COOKING, Phase.RESTING, Phase.CHILLING)
    waits = (
        say("The meat may not wait now: somebody minds the fire, or an oven finishes it; then it is chilled.")
        if hot
        else say(
            "Flips may wait. The fridge may not: somebody reads it once a day, {limit} or below.",
            limit=numbers.both(4.4, a.person),
        )
    )
    text = say(
        "Go. {waits}\n«pause» or the tap keeps me quiet, «invite» gives it to somebody else, «back» carries on. {next}",
        waits=waits,
        next=plans.coming(a),
    )
    return text, ((asking.button(say("Pause"), Pause(batch=a.batch.id)),),)


def hand_over(a: Assessment) -> str:
    """How somebody else gets the calls."""
    return say(
        "Tell me who and what: like «Jo has the fire from 20:00» or «Jo takes over».\n"
        "If they are not in this chat, «invite» gives a code for them. {next}",
        next=plans.coming(a),
    )


def take_back(a: Assessment) -> tuple[str, asking.Rows]:
    """What was said last, and the tap that takes it back."""
    text = say(
        "{last}\n«no, 65» puts the number right; the tap takes back the last thing said.",
        last=recalled.last_reading(a, None).split("\n", 1)[0],
    )
    return text, ((asking.button(say("Take it back"), Undo(a.batch.id)),),)
