"""Words and buttons for everything that the bot asks. A question is short, says why, and offers taps."""

from bot.intents.buttons import payload
from bot.intents.intents import Ask, Cancel, Change, Choose, Intent, Snooze, StepDone
from bot.reply import Button
from bot.wording import meats, numbers, steps
from core.batch.assess import Assessment, Way
from core.person import Person
from core.plan.recipe import product
from core.plan.steps import Kind, State

Rows = tuple[tuple[Button, ...], ...]
ANSWERED_IN_WORDS = frozenset(
    {Kind.BRINE_CHECK, Kind.FRIDGE_CHECK, Kind.READING, Kind.CHILL_CHECK, Kind.DEBRIEF, Kind.USE_BY}
)
STRENGTHS = ((0.0625, "6.25 %"), (0.0588, "5.88 %"), (0.006, "0.6 %"), (0.005, "0.5 %"))


def button(label: str, intent: Intent) -> Button:
    """A label with the intent that it means."""
    return Button(label, payload(intent))


def cure(batch: str) -> tuple[str, Rows]:
    """The strength of the curing salt, which nobody may guess."""
    rows = tuple(
        tuple(button(label, Change({"cure_nitrite_fraction": value}, batch)) for value, label in pair)
        for pair in (STRENGTHS[:2], STRENGTHS[2:])
    )
    text = (
        "How strong is your curing salt? The packet says its nitrite in percent.\n"
        "Tap it, or type it like «cure is 6.25 %». Until I know, there is no dose and no cure."
    )
    return text, rows


def mass(person: Person) -> str:
    """The weight of the trimmed piece."""
    example = "7 lb" if person.units.mass == "lb" else "3.2 kg"
    return f"How heavy is it, trimmed? Type it with its unit, like {example}."


def mass_unit(value: float, batch: str | None) -> tuple[str, Rows]:
    """A number without a unit, where a guess would be a dose."""
    text = f"Is {value:g} kilograms or pounds? I do not guess a weight."
    row = (
        button(f"{value:g} kg", Choose("mass_unit", "kg", batch)),
        button(f"{value:g} lb", Choose("mass_unit", "lb", batch)),
    )
    return text, (row,)


def cut(name: str = "pastrami", *, open_: bool = True) -> tuple[str, Rows]:
    """Which cut of those that a product is made from; `open_` where the product was not said either."""
    row = tuple(button(meats.cut_name(c), Choose("cut", c)) for c in product(name).cuts)
    if name == "ham":
        return "Is the bone in it? It decides how it is cured.", (row,)
    if not open_:
        return f"Which cut is it for the {meats.product_name(name).lower()}? Tap it, or type it.", (row,)
    more = "Or type it: belly, loin, shoulder, ham, turkey breast, chicken, duck breast, salmon, trout."
    return f"Which cut is it? For pastrami tap one of these.\n{more}", (row,)


def unknown_meat(said: str) -> str:
    """A meat that is none, or none that is planned yet."""
    return (
        f"I do not know «{said}» as a cut. Type it with its weight, like «3.2 kg brisket flat» or «2 kg pork belly».\n"
        f"I plan {meats.planned()}."
    )


def zone(said: str = "") -> str:
    """Where the person is, so that eight o'clock is their eight o'clock."""
    lead = f"I found no place called «{said}». " if said else ""
    return (
        f"{lead}In which city's time do you live? Type it, like «Vienna» or «Chicago»; every reminder keeps that clock."
    )


def thickness() -> str:
    """The number that decides the days."""
    return "How thick is it at its thickest? Type it with its unit, like 48 mm or 1.9 in."


def slot(name: str, a: Assessment, person: Person) -> tuple[str, Rows]:
    """The question behind a button that changes an assumption."""
    batch, made = a.batch.id, product(a.batch.setup.product)
    hot = "250 f" if person.units.temperature == "f" else "121 c"
    cold = "38 f" if person.units.temperature == "f" else "3 c"
    texts = {
        "thickness": thickness(),
        "deadline": "When is the meal? Type it, like «saturday 13:00» or «13 march 18:00».",
        "pit_c": f"At what temperature will the pit run? Type it, like «pit {hot}».",
        "fridge_c": f"How cold is the fridge? Type it, like «fridge runs at {cold}».",
        "mass": mass(person),
        "cooker": "What do you cook on? Ceramic, steel, kettle, offset, gas or electric?",
    }
    choices = {
        "method": ("How will you cure it?", "method", (("Brine in a bag", "brine"), ("Dry in a bag", "dry"), ("Inject", "inject"))),
        "purpose": ("How will you eat it?", "purpose", (("Cold slices", "cold"), ("Thin cold slices", "thin"), ("Warm slices", "hot"), ("Pulled", "pulled"))),
        "wrap": ("Will you wrap it on the way?", "wrap", (("No wrap", "none"), ("Paper", "paper"), ("Foil", "foil"))),
        "chill": ("How will you chill it?", "chill", (("Ice bath", "ice"), ("Rack and fan", "fan"), ("Rack", "rack"), ("In foil", "foil"))),
    }  # fmt: skip
    if name in choices:
        question, field, options = choices[name]
        fitting = {"method": made.methods(a.batch.setup.cut), "purpose": tuple(p.name for p in made.purposes)}
        options = tuple(o for o in options if o[1] in fitting.get(name, (o[1],)))
        return question, tuple((button(label, Change({field: value}, batch)),) for label, value in options)
    return texts[name], ()


def changes(a: Assessment) -> Rows:
    """The taps under a plan: each assumption can be changed."""
    batch = a.batch.id

    def ask(label: str, name: str) -> Button:
        return button(label, Choose("change", name, batch))

    return (
        (ask("Thickness", "thickness"), ask("Meal time", "deadline"), ask("Method", "method")),
        (ask("Eaten how", "purpose"), ask("Pit", "pit_c"), ask("Wrap", "wrap"), ask("Chill", "chill")),
        (
            button("Why these days", Ask("why", "days", batch=batch)),
            button("Picture", Ask("picture", "cure", batch=batch)),
        ),
    )


def ways(a: Assessment, offered: tuple[Way, ...]) -> Rows:
    """The ways that do work for a meal that comes too soon, each computed."""
    labels = {
        "soonest": "Meal {at}",
        "date": "Meal {at}",
        "dry": "Dry cure, meal {at}",
        "inject": "Inject, meal {at}",
        "thinner": "Split to {mm}, meal {at}",
    }
    rows = []
    for way in offered:
        at = f"{numbers.day(way.serve, a.person)} {numbers.clock(way.serve, a.person)}"
        mm = numbers.length(a.piece.thickness / 2, a.person)
        rows.append((button(labels[way.name].format(at=at, mm=mm), Choose("way", way.name, a.batch.id)),))
    return tuple(rows)


def eaters(batch: str) -> tuple[str, Rows]:
    """Asked once a batch: it tightens the advice."""
    text = (
        "Will anybody eat it who is pregnant, under 5, over 65, or has a weak immune system? "
        "Then I hold to the stricter rule."
    )
    row = (
        button("Yes", Change({"at_risk_eaters": True}, batch)),
        button("No", Change({"at_risk_eaters": False}, batch)),
    )
    return text, (row,)


def probe(value: float, batch: str, options: tuple[str, ...]) -> tuple[str, Rows]:
    """A number that may be several things; each option is "probe/unit"."""
    names = {"core": "meat", "pit": "pit", "fridge": "fridge", "brine": "brine"}
    row = tuple(
        button(f"{value:g} °{unit.upper()} {names[place]}", Choose("probe", f"{place}/{unit}", batch))
        for place, unit in (option.split("/") for option in options)
    )
    return f"What is {value:g}? I do not guess a temperature.", (row,)


def doubted(said: str, why: str, suggestion: str | None, batch: str) -> tuple[str, Rows]:
    """A reading that cannot be: asked about, not swallowed."""
    reasons = {
        "typing_slip": f"{said} cannot be the core now.",
        "probe_in_air": f"{said} looks like the probe is in the air.",
        "unit": f"{said} looks like the other unit.",
        "swapped": f"{said} looks like pit and meat are swapped.",
        "jump": f"{said} is far from what I expect by now.",
        "clock": f"{said} does not fit the time it was read.",
        "off_the_fire": f"{said}, and it was all but done before: is it off the fire?",
        "range": f"{said} is no temperature that meat or a pit can have.",
    }
    if why == "off_the_fire":
        off = button("It is off", Choose("doubt", "off", batch))
        return reasons[why], (
            (
                off,
                button("Still on", Choose("doubt", "keep", batch)),
                button("Forget it", Choose("doubt", "drop", batch)),
            ),
        )
    text = reasons.get(why, f"{said} does not fit.") + " What is right?"
    row = [button(f"{suggestion}", Choose("doubt", "suggested", batch))] if suggestion else []
    keep = [] if why == "range" else [button(f"{said} is right", Choose("doubt", "keep", batch))]
    drop = [button("Forget it", Choose("doubt", "drop", batch))]
    return text, ((*row, *keep, *drop),)


def step_buttons(key: str, batch: str) -> Rows:
    """Under a reminder: one tap is enough."""
    return ((button("Done", StepDone(key, batch=batch)), button("Later", Snooze(step=key, batch=batch))),)


def cancel(name: str, batch: str) -> tuple[str, Rows]:
    """Asked before a batch is dropped."""
    row = (button("Drop it", Cancel(batch, sure=True)), button("Keep it", Choose("keep", "yes", batch)))
    return f"Shall I drop «{name}» and all of its reminders? Its log is kept.", (row,)


def which(batches: tuple[tuple[str, str], ...], slot_name: str) -> tuple[str, Rows]:
    """Several batches are under way and the words fit more than one."""
    return "Which batch do you mean?", tuple((button(name, Choose(slot_name, key, key)),) for key, name in batches)


def fridge_stayed_cold(batch: str) -> Rows:
    """Where nobody read the fridge, the cook's own word stands in the record as such."""
    return ((button("The fridge stayed cold", Choose("vouch", "fridge", batch)),),)


def later_button(key: str, batch: str) -> Rows:
    """Under a reminder that is answered with a number."""
    return ((button("Later", Snooze(step=key, batch=batch)),),)


def after_slice(batch: str) -> Rows:
    """Under the question what the slice showed."""
    return ((button("Pink all through", Choose("grey", 0.0, batch)),),)


def again(slot_name: str, typed: str) -> str:
    """Something that was typed and cannot be: said once, with what to type instead."""
    wanted = {
        "mass": ("a weight that a piece of meat can have", "3.2 kg or 7 lb"),
        "thickness": ("a thickness that a piece of meat can have", "48 mm or 1.9 in"),
        "deadline": ("a day and an hour that I can read", "saturday 13:00"),
    }
    what, example = wanted[slot_name]
    return f"«{typed}» is not {what}. Type it like {example}; the rest of what you said is kept."


def next_buttons(a: Assessment) -> Rows:
    """The step that is due now can be answered at once."""
    due = [s for s in a.plan.steps if s.state is State.DUE and s.kind not in ANSWERED_IN_WORDS] if a.plan else []
    if steps.brine_unread(a):  # no tap that puts the meat into a brine that nobody has read
        due = [s for s in due if s.kind is not Kind.INTO_CURE]
    if not due:
        return ()
    step, batch = due[0], a.batch.id
    done = button(f"{steps.name(step, a)}: done", StepDone(step.key, batch=batch))
    return ((done, button("Later", Snooze(step=step.key, batch=batch))),)
