"""Words and buttons for everything that the bot asks. A question is short, says why, and offers taps."""

from math import isinf

from bot.intents.buttons import payload
from bot.intents.intents import Ask, Cancel, Change, Choose, Intent, Snooze, StepDone
from bot.reply import Button
from bot.wording import meat_names, numbers, steps
from bot.wording.language import point, say
from bot.wording.options import CHOSEN, TO_CHANGE
from core.batch.assess import Assessment
from core.batch.ways import Way
from core.cure.contents import STRONG_CURES, WEAK_CURES
from core.errors import TooLong
from core.person import Person
from core.plan.recipe import product
from core.plan.steps import Kind, State
from core.safety.findings import Rule, Status
from core.units import Kilograms

Rows = tuple[tuple[Button, ...], ...]
ANSWERED_IN_WORDS = frozenset(
    {Kind.BRINE_CHECK, Kind.FRIDGE_CHECK, Kind.READING, Kind.CHILL_CHECK, Kind.DEBRIEF, Kind.USE_BY}
)
STRENGTHS = tuple((one, f"{100 * one:g} %") for one in (*STRONG_CURES, *WEAK_CURES))


def button(label: str, intent: Intent) -> Button:
    """A label with the intent that it means."""
    return Button(label, payload(intent))


def cure(batch: str) -> tuple[str, Rows]:
    """The strength of the curing salt, which nobody may guess."""
    rows = tuple(
        tuple(button(point(label), Change({"cure_nitrite_fraction": value}, batch)) for value, label in pair)
        for pair in (STRENGTHS[:2], STRENGTHS[2:])
    )
    text = say(
        "How strong is your curing salt? The packet says its nitrite in percent.\n"
        "Tap it, or type it like «cure is 6.25 %». Until I know, there is no dose and no cure."
    )
    none = (button(say("No curing salt"), Change({"nitrite_target": 0.0}, batch)),)
    return text, (*rows, none)


def mass(person: Person) -> str:
    """The weight of the trimmed piece."""
    example = "7 lb" if person.units.mass == "lb" else say("3.2 kg")
    return say("How heavy is it, trimmed? Type it with its unit, like {example}.", example=example)


def mass_unit(value: float, batch: str | None) -> tuple[str, Rows]:
    """A number without a unit, where a guess would be a dose."""
    text = say("Is {value} kilograms or pounds? I do not guess a weight.", value=numbers.plain(value))
    row = (
        button(f"{numbers.plain(value)} kg", Choose("mass_unit", "kg", batch)),
        button(f"{numbers.plain(value)} lb", Choose("mass_unit", "lb", batch)),
    )
    return text, (row,)


def share(count: int, mass: Kilograms, person: Person) -> tuple[str, Rows]:
    """One weight for several pieces, where it may be that of each or of all: a guess would be a dose."""
    said = numbers.mass(mass, person)
    row = (
        button(say("{mass} in all", mass=said), Choose("mass", mass)),
        button(say("{mass} each", mass=said), Choose("mass", mass * count)),
    )
    return say("Is that the weight of each of the {count}, or of all? I do not guess a weight.", count=f"{count}"), (
        row,
    )


def cut(name: str = "pastrami", *, open_: bool = True) -> tuple[str, Rows]:
    """Which cut of those that a product is made from; `open_` where the product was not said either."""
    row = tuple(button(meat_names.cut_name(c), Choose("cut", c)) for c in product(name).cuts)
    if any(c.endswith("_bone_in") for c in product(name).cuts):
        return say("Is the bone in it? It decides how it is cured."), (row,)
    if not open_:
        return say("Which cut is it for the {product}? Tap it, or type it.", product=meat_names.product_inside(name)), (
            row,
        )
    more = say(
        "Or type it: belly, loin, chops, hocks, shoulder, ham, turkey breast, turkey legs, chicken, duck, goose, salmon, trout."
    )
    return say("Which cut is it? For pastrami tap one of these.\n{more}", more=more), (row,)


def zone(said: str = "") -> str:
    """Where the person is, so that eight o'clock is their eight o'clock."""
    lead = say("I found no place called «{said}». ", said=said) if said else ""
    return say(
        "{lead}In which city's time do you live? Type it, like «Vienna» or «Chicago»; every reminder keeps that clock.",
        lead=lead,
    )


def brine(typed: str) -> str:
    """A brine by the cup, whose strength is that of the salt."""
    return say(
        "How strong is «{typed}»? A cup of salt weighs 135 to 292 g, so I do not guess.\n"
        "Weigh the salt, and type it like «15 % brine for 2 h».",
        typed=typed,
    )


def thickness() -> str:
    """The number that decides the days."""
    return say("How thick is it at its thickest? Type it with its unit, like 48 mm or 1.9 in.")


def slot(name: str, a: Assessment, person: Person) -> tuple[str, Rows]:
    """The question behind a button that changes an assumption."""
    batch, made = a.batch.id, product(a.batch.setup.product)
    hot = "250 f" if person.units.temperature == "f" else "121 c"
    cold = "38 f" if person.units.temperature == "f" else "3 c"
    texts = {
        "thickness": thickness(),
        "deadline": say("When is the meal? Type it, like «saturday 13:00» or «13 march 18:00»."),
        "pit_c": say("At what temperature will the pit run? Type it, like «pit {hot}».", hot=hot),
        "fridge_c": say("How cold is the fridge? Type it, like «fridge runs at {cold}».", cold=cold),
        "mass": mass(person),
        "cooker": say("What do you cook on? Ceramic, steel, kettle, offset, pellet, gas or electric?"),
    }
    questions = {
        "method": say("How will you cure it?"),
        "purpose": say("How will you eat it?"),
        "wrap": say("Will you wrap it on the way?"),
        "chill": say("How will you chill it?"),
    }
    if name in questions:
        fitting = {"method": made.methods(a.batch.setup.cut), "purpose": tuple(p.name for p in made.purposes)}
        offered = (key.removeprefix(f"{name}/") for key in CHOSEN if key.startswith(f"{name}/"))
        values = [value for value in offered if value in fitting.get(name, (value,))]
        return questions[name], tuple(
            (button(CHOSEN[f"{name}/{value}"], Change({name: value}, batch)),) for value in values
        )
    return texts[name], ()


def changes(a: Assessment) -> Rows:
    """The taps under a plan: each assumption can be changed."""
    batch = a.batch.id

    def ask(*names: str) -> tuple[Button, ...]:
        return tuple(button(TO_CHANGE[name], Choose("change", name, batch)) for name in names)

    return (
        ask("thickness", "deadline", "method"),
        ask("purpose", "pit_c", "wrap", "chill"),
        (
            button(say("Why these days"), Ask("why", "days", batch=batch)),
            button(say("Picture"), Ask("picture", "cure", batch=batch)),
        ),
    )


def long_cure(a: Assessment) -> Rows:
    """A cure of more days than are planned unasked, to be taken on the cook's word."""
    if not isinstance(a.refusal, TooLong) or isinf(a.refusal.days):
        return ()
    label = say("Yes, {days}", days=numbers.days(a.refusal.days))
    return ((button(label, Change({"long_cure_confirmed": True}, a.batch.id)),),)


def ways(a: Assessment, offered: tuple[Way, ...]) -> Rows:
    """The ways that do work for a meal that comes too soon, each computed."""
    labels = {
        "soonest": say("Meal {at}"),
        "date": say("Meal {at}"),
        "hot": say("Eat it hot, meal {at}"),
        "dry": say("Dry cure, meal {at}"),
        "inject": say("Inject, meal {at}"),
        "strong": say("Strong brine, meal {at}"),
        "strong_hot": say("Strong brine, hot, {at}"),
        "thinner": say("Split to {mm}, meal {at}"),
    }
    rows = []
    for way in offered:
        at = f"{numbers.day(way.serve, a.person)} {numbers.clock(way.serve, a.person)}"
        mm = numbers.length(a.piece.thickness / 2, a.person)
        rows.append((button(labels[way.name].format(at=at, mm=mm), Choose("way", way.name, a.batch.id)),))
    return tuple(rows)


def eaters(batch: str) -> tuple[str, Rows]:
    """Asked once a batch: it tightens the advice."""
    text = say(
        "Will anybody eat it who is pregnant, under 5, over 65, or has a weak immune system? "
        "Then I hold to the stricter rule."
    )
    row = (
        button(say("Yes"), Change({"at_risk_eaters": True}, batch)),
        button(say("No"), Change({"at_risk_eaters": False}, batch)),
    )
    return text, (row,)


def probe(value: float, batch: str, options: tuple[str, ...]) -> tuple[str, Rows]:
    """A number that may be several things; each option is "probe/unit"."""
    row = _places("probe", value, batch, options)
    text = say(
        "What is {value}? I do not guess a temperature.\n"
        "Tap it, or type it with its place or its unit, like «fridge 38 f», «6 hours» or «48 mm».",
        value=numbers.plain(value),
    )
    return text, (row,)


def _places(slot: str, value: float, batch: str, options: tuple[str, ...]) -> tuple[Button, ...]:
    """A number as each that it may be, "probe/unit"."""
    names = {"core": say("meat"), "pit": say("pit"), "fridge": say("fridge"), "brine": say("brine")}
    return tuple(
        button(f"{numbers.plain(value)} °{unit.upper()} {names[place]}", Choose(slot, f"{place}/{unit}", batch))
        for place, unit in (option.split("/") for option in options)
    )


def or_else(rows: Rows, value: float, ways: tuple[str, ...], batch: str) -> Rows:
    """The answers to a doubt with what else the number may be, before «forget it»."""
    ((*first, drop),) = rows
    return ((*first, *_places("doubt", value, batch, ways), drop),)


def doubted(said: str, why: str, suggestion: str | None, batch: str) -> tuple[str, Rows]:
    """A reading that cannot be: asked about, not swallowed."""
    reasons = {
        "typing_slip": say("{said} cannot be the core now.", said=said),
        "pit_slip": say("{said} can hardly be the pit now.", said=said),
        "probe_in_air": say("{said} looks like the probe is in the air.", said=said),
        "unit": say("{said} looks like the other unit.", said=said),
        "swapped": say("{said} looks like pit and meat are swapped.", said=said),
        "jump": say("{said} is far from what I expect by now.", said=said),
        "clock": say("{said} does not fit the time it was read.", said=said),
        "on_fire": say("{said} cannot be of that hour: the meat was on the fire then.", said=said),
        "off_the_fire": say("{said}, and it was all but done before: is it off the fire?", said=said),
        "range": say("{said} is no temperature that it can have.", said=said),
    }
    if why == "off_the_fire":
        off = button(say("It is off"), Choose("doubt", "off", batch))
        still = button(say("Still on"), Choose("doubt", "keep", batch))
        return reasons[why], ((off, still, button(say("Forget it"), Choose("doubt", "drop", batch))),)
    anew = why == "on_fire" and not suggestion
    asks = say(" Type it again with the hour at which it read that.") if anew else say(" What is right?")
    text = reasons.get(why, say("{said} does not fit.", said=said)) + asks
    row = [button(f"{suggestion}", Choose("doubt", "suggested", batch))] if suggestion else []
    keep = (
        []
        if why in ("range", "on_fire")
        else [button(say("{said} is right", said=said), Choose("doubt", "keep", batch))]
    )
    drop = [button(say("Forget it"), Choose("doubt", "drop", batch))]
    return text, ((*row, *keep, *drop),)


def step_buttons(key: str, batch: str) -> Rows:
    """Under a reminder: one tap is enough."""
    return ((button(say("Done"), StepDone(key, batch=batch)), button(say("Later"), Snooze(step=key, batch=batch))),)


def cancel(name: str, batch: str) -> tuple[str, Rows]:
    """Asked before a batch is dropped."""
    row = (button(say("Drop it"), Cancel(batch, sure=True)), button(say("Keep it"), Choose("keep", "yes", batch)))
    return say("Shall I drop «{name}» and all of its reminders? Its log is kept.", name=name), (row,)


def which(batches: tuple[tuple[str, str], ...], slot_name: str) -> tuple[str, Rows]:
    """Several batches are under way and the words fit more than one."""
    return say("Which batch do you mean?"), tuple((button(name, Choose(slot_name, key, key)),) for key, name in batches)


def fridge_stayed_cold(a: Assessment) -> Rows:
    """Where nobody read the fridge, the cook's own word stands in the record as such."""
    unread = any(f.detail == "not_watched" and f.status is Status.UNKNOWN for f in a.ledger.verdict.of(Rule.FRIDGE))
    return ((button(say("The fridge stayed cold"), Choose("vouch", "fridge", a.batch.id)),),) if unread else ()


def later_button(key: str, batch: str) -> Rows:
    """Under a reminder that is answered with a number."""
    return ((button(say("Later"), Snooze(step=key, batch=batch)),),)


def after_slice(batch: str) -> Rows:
    """Under the question what the slice showed."""
    return ((button(say("Pink all through"), Choose("grey", 0.0, batch)),),)


def next_buttons(a: Assessment) -> Rows:
    """The step that is due now can be answered at once."""
    due = [s for s in a.plan.steps if s.state is State.DUE and s.kind not in ANSWERED_IN_WORDS] if a.plan else []
    if steps.brine_unread(a):  # no tap that puts the meat into a brine that nobody has read
        due = [s for s in due if s.kind is not Kind.INTO_CURE]
    if not due:
        return ()
    step, batch = due[0], a.batch.id
    done = button(say("{name}: done", name=steps.name(step, a)), StepDone(step.key, batch=batch))
    return ((done, button(say("Later"), Snooze(step=step.key, batch=batch))),)
