"""Questions about the cure itself, answered from the sums of `core/cure`."""

from collections.abc import Callable, Sequence
from dataclasses import replace
from math import isfinite

from bot import measures
from bot.conversation import answered, sums, sums_cold
from bot.conversation.understand import Understood
from bot.facts import facts
from bot.intents.cures import Mixture, WantedDose, mixture, wanted_dose
from bot.intents.intents import Ask, Change
from bot.intents.normal import normal
from bot.reply import Reply
from bot.wording import asking, curing, general, per_weight, plans
from bot.wording.language import say
from core.batch.assess import Assessment
from core.batch.ways import without_needle
from core.cure.choices import choices
from core.cure.contents import Contents
from core.cure.course import Immersion
from core.cure.dose import Dose, Recipe, dose, house_target
from core.cure.judgement import judge
from core.cure.limits import jurisdictions, limit
from core.cure.soak import Soak, soak
from core.cure.weighing import LEAST_COVER
from core.errors import Gone, SaltbellError, UnknownCure
from core.plan.recipe import product, products
from core.plan.setup import Setup
from core.service.turn import Turn

LESS_SALT = (0.005, 0.010)  # half a percentage point and a whole one: what a tongue asks for. Judgement
LEAST_SALT = 0.005


def topics() -> frozenset[str]:
    """What is answered here."""
    return frozenset(_ANSWERS)


def answer(turn: Turn, meant: Understood, intent: Ask) -> Sequence[Reply]:
    """One of them answered; where it is about a batch and there is none, that is said."""
    return (_ANSWERS[intent.topic](turn, meant.a, intent),)


def _poison(turn: Turn, a: Assessment | None, intent: Ask) -> Reply:
    return Reply(curing.poison(), facts={"answer_kind": "entry", "entry": "poison_centre"})


def _law(turn: Turn, a: Assessment | None, intent: Ask) -> Reply:
    kind = "whole_muscle" if a is None else product(a.batch.setup.product).product_class
    method = "brine" if a is None else a.batch.setup.method
    found = []
    for place in jurisdictions():
        try:
            found.append(limit(place, kind, method))
        except Gone:  # this place names no nitrite for it
            continue
    body = {"answer_kind": "batch" if a else "entry", "topic": "law"}
    return Reply(curing.law(a, turn.person, tuple(found)), facts=body)


def _judge(turn: Turn, a: Assessment | None, intent: Ask) -> Reply:
    """A mix as it was told: by the strength in the words, else by what this batch or this person has."""
    mix = mixture(normal(intent.text, turn.person.language))
    strength = None if mix is None else mix.strength or _strength(turn, a)
    if mix is None or (strength is None and a is not None):
        raise UnknownCure(intent.text)
    if strength is None:
        return sums.ask_strength(turn, "ppm", intent.text)
    low, high = (judge(_contents(turn, a, mix, (cure, strength)), _hours_in(a)) for cure in mix.cure)
    text = curing.judged(mix, (low, high), _instead(turn, a, mix, strength), turn.person)
    if mix.method == "dry" and low.top_up_cure_kg == high.top_up_cure_kg:  # of spoons nobody knows what is missing
        of_more = sums_cold.missing(turn, (intent.text.lower(), _kind(a)), (strength, low))
        text = f"{text}\n{of_more}".strip()
    answered.remember(turn, "sum:ppm", intent.text)
    body = {
        "answer_kind": "batch" if a else "entry",
        "topic": "judge",
        "judged": high.verdict.value,
        "nitrite_low_mg_kg": low.ingoing.nitrite,
        "nitrite_high_mg_kg": high.ingoing.nitrite,
        "nitrite_limit_mg_kg": high.limit.max_mg_kg,
    }
    return Reply(text, facts=body)


def _strength(turn: Turn, a: Assessment | None) -> float | None:
    of_batch = None if a is None else a.batch.setup.cure_nitrite_fraction
    return of_batch or turn.person.cure_nitrite_fraction


def _kind(a: Assessment | None) -> str:
    return "whole_muscle" if a is None else product(a.batch.setup.product).product_class


def _contents(turn: Turn, a: Assessment | None, mix: Mixture, cure: tuple[float, float]) -> Contents:
    pickle = (mix.water or 0.0) + mix.salt + cure[0]
    return Contents(
        method=mix.method,
        meat_kg=mix.meat,
        cure_kg=cure[0],
        nitrite_fraction=cure[1],
        nitrate_fraction=0.0 if a is None or mix.strength else a.batch.setup.cure_nitrate_fraction,
        salt_kg=mix.salt,
        water_kg=mix.water or 0.0,
        pump_fraction=min(mix.pump or 1.0, pickle / mix.meat),
        covered=mix.covered,
        product_class=_kind(a),
        jurisdiction=turn.person.jurisdiction,
    )


def _hours_in(a: Assessment | None) -> float | None:
    into = None if a is None else a.batch.done.get("into_cure")
    return None if a is None or into is None else (a.now - into).total_seconds() / 3600.0


def _instead(turn: Turn, a: Assessment | None, mix: Mixture, strength: float) -> Dose | None:
    """The dose that passes for that meat and water; None where no dose of such salt does."""
    method, place = mix.method, turn.person.jurisdiction
    water = mix.water or mix.meat
    pump = 0.10 if mix.pump in (None, 1.0) else mix.pump
    try:
        return dose(
            Recipe(
                method=method,
                meat_kg=mix.meat,
                nitrite_fraction=strength,
                product_class=_kind(a),
                jurisdiction=place,
                nitrite_target=house_target(place, _kind(a), method),
                water_share=water / mix.meat,
                pump_fraction=pump,
                cover_share=max(water / mix.meat - pump, LEAST_COVER) if mix.covered else 0.0,
            )
        )
    except SaltbellError:  # so little meat, or so much water, that no dose is computed for it
        return None


def dose_asked(turn: Turn, meant: Understood, text: str) -> Sequence[Reply]:
    """So much curing salt for so much meat, by the law of the place, with no batch begun; nothing for another question.

    The strength of the curing salt is asked for where nobody has said it.
    """
    wanted = wanted_dose(normal(text, turn.person.language))
    if wanted is None:
        return ()
    strength = wanted.strength or _strength(turn, meant.a)
    if strength is None:
        return (sums.ask_strength(turn, "dose", text),)
    reply = _dose_for(turn, meant.a, wanted, strength)
    answered.remember(turn, "sum:dose", text)
    more = sums.beside_dose(turn, text, reply.facts["cure_kg"])
    return (replace(reply, text=f"{reply.text}\n{more}") if more else reply,)


def _dose_for(turn: Turn, a: Assessment | None, wanted: WantedDose, strength: float) -> Reply:
    kind, method = _kind_and_way(a, wanted)
    place = turn.person.jurisdiction
    found = dose(
        Recipe(
            method=method,
            meat_kg=wanted.meat,
            nitrite_fraction=strength,
            product_class=kind,
            jurisdiction=place,
            nitrite_target=house_target(place, kind, method),
            water_share=wanted.water / wanted.meat if wanted.water else Recipe.water_share,
        )
    )
    body = {
        "answer_kind": "computed",
        "topic": "dose_for",
        "cure_kg": found.cure_kg,
        "nitrite_ingoing_mg_kg": found.nitrite_ingoing,
    }
    return Reply(per_weight.asked_for(found, turn.person), facts=body)


def _kind_and_way(a: Assessment | None, wanted: WantedDose) -> tuple[str, str]:
    """Class of product and method: as they were said, else of the batch in hand, else dry on a whole cut."""
    made = products().get(wanted.product)
    if wanted.method == "comminuted":
        return "whole_muscle", wanted.method
    if made is not None:
        usual = made.defaults_of(made.cuts[0]).get("method", Setup.method)
        return made.product_class, wanted.method or usual
    return _kind(a), wanted.method or (a.batch.setup.method if a is not None else "dry")


def _what_if(turn: Turn, a: Assessment | None, intent: Ask) -> Reply:
    if a is None:
        return Reply(general.no_batch(), facts={"answer_kind": "asked_back"})
    body = facts(a) | {"answer_kind": "batch", "topic": "what_if"}
    if a.cure is None or a.plan is None:
        text = curing.salted_only() if a.batch.setup.nitrite_target == 0.0 else plans.now(a)
        return Reply(text, facts=body, about=a.batch.id)
    found = choices(a.cure.immersion, a.plan.cure_days)
    body |= {
        "pink_probability_one_more_day": found.one_more_day.probability_pink,
        "cure_days_halved": found.halved.days_p90,
    }
    rows = _taken(a, intent.about) if "into_cure" not in a.batch.done else ()
    return Reply(curing.what_if(a, found, intent.about), buttons=rows, facts=body, about=a.batch.id)


def _taken(a: Assessment, about: str) -> asking.Rows:
    """What was asked about, one tap away."""
    days = a.plan.cure_days if a.plan else 0.0
    offers = {
        "day": (say("One more day"), {"cure_days": days + 1.0}),
        "inject": (say("Inject it"), {"method": "inject"}),
        "split": (say("Split it"), {"thickness": a.piece.thickness / 2}),
    }
    if a.batch.setup.method == "inject":
        offers.pop("inject")
        tried = without_needle(a) if about == "immerse" else None
        if tried is not None and tried.plan is not None:
            offers["immerse"] = (say("Without a needle"), {"method": tried.batch.setup.method})
    chosen = offers.values() if not about else [offers[about]] if about in offers else []
    return (tuple(asking.button(label, Change(changes, a.batch.id)) for label, changes in chosen),) if chosen else ()


def _soak(turn: Turn, a: Assessment | None, intent: Ask) -> Reply:
    if a is None:
        return Reply(general.no_batch(), facts={"answer_kind": "asked_back"})
    if a.plan is None or a.dose is None:
        return Reply(plans.now(a), facts=facts(a), about=a.batch.id)
    tries = tuple((wanted, _soaking(a, wanted)) for wanted in _wanted(a, intent))
    hours = tries[0][1].hours.p50  # none brings it there where it is inf
    body = facts(a) | {"answer_kind": "batch", "topic": "soak"} | ({"soak_hours": hours} if isfinite(hours) else {})
    return Reply(curing.soaked(a, tries), facts=body, about=a.batch.id)


def _wanted(a: Assessment, intent: Ask) -> tuple[float, ...]:
    shares = [m.value for m in measures.of_kind(normal(intent.text), "fraction") if 0 < m.value <= 0.06]
    before = _soaking(a, LEAST_SALT).salt_before.p50
    return tuple(shares) or tuple(dict.fromkeys(max(before - less, LEAST_SALT) for less in LESS_SALT))


def _soaking(a: Assessment, wanted: float) -> Soak:
    immersion = a.cure.immersion if a.cure else _immersion(a)
    into, out = a.batch.done.get("into_cure"), a.batch.done.get("out")
    days = (
        (out - into).total_seconds() / 86400.0 if into and out and out > into else a.plan.cure_days if a.plan else 1.0
    )
    return soak(replace(immersion, fridge_c=a.batch.setup.fridge_c), days, wanted)


def _immersion(a: Assessment) -> Immersion:
    if a.dose is None:
        raise Gone("plan")
    return Immersion(a.piece, a.dose, a.batch.setup.fridge_c)


_ANSWERS: dict[str, Callable[[Turn, Assessment | None, Ask], Reply]] = {
    "poison": _poison,
    "law": _law,
    "judge": _judge,
    "what_if": _what_if,
    "soak": _soak,
}
