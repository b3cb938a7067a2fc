"""Words for each caution: short, once, where it belongs. The register with its sources is `core/safety/cautions.toml`."""

import re
from collections.abc import Iterable, Sequence
from math import floor

from bot.wording import chilling, language, meats, numbers
from bot.wording.language import Words
from core.batch.assess import Assessment
from core.plan.steps import Kind, Step
from core.safety.cautions import Caution, Severity, caution, for_step, register

AT_THE_START = ("nitrite_away_from_children", "local_code")
A_MINUTE_H = 1.0 / 60.0
MOST = 2  # cautions in one message: more are read by nobody

OF_FISH = frozenset({"fish_160f", "vacuum_fish_38f"})
OF_BIRDS = frozenset({"poultry_own_table"})
OF_WATERFOWL = frozenset({"fat_under_the_bird"})
WORDS = Words({
    "nitrite_weigh_exactly": "Weigh the curing salt on a scale that shows 0.1 g; a spoon can be out by a quarter.",
    "nitrite_away_from_children": "Keep curing salt labelled, shut, and away from children: a teaspoon of it can make somebody very ill.",
    "nitrite_limit": "The nitrite limit is law; I give no dose over it.",
    "pink_rock_salt_is_no_cure": "Pink rock salt is only salt; curing salt names its nitrite on the packet.",
    "cure_strength_on_the_packet": "Without the strength on the packet there is no dose.",
    "poison_centre": "Anybody who ate curing salt, or has blue lips, dizziness or trouble breathing: call the emergency number or your local poison centre now.",
    "brine_cold_first": "Warm brine warms the meat for hours: cold first.",
    "keep_at_40f": "The fridge stays at 4 °C (40 °F) or below all the way.",
    "never_at_room_temperature": "Never cure or dry it at room temperature.",
    "thaw_in_the_fridge": "Thaw in the fridge, never on the counter.",
    "thawed_through": "Thawed through to the middle before it meets cure or fire.",
    "raw_juices": "Raw juices stay away from what is eaten as it is; wash hands, board and sink.",
    "cure_not_in_the_middle": "A grey middle is safe when cooked through, and cools by the stricter limits.",
    "non_intact": "Injected or cut-open meat is no longer intact: its core counts, and its clocks are stricter.",
    "charcoal_outdoors_only": "Charcoal burns outdoors only: its carbon monoxide kills in a garage with the door open too.",
    "no_fluid_on_hot_coals": "No lighter fluid on hot coals.",
    "fat_under_the_bird": "Duck and goose drip much fat: a pan under them, out of the fire. Should it burn: lid and vents shut, never water.",
    "burp_before_opening": "Open the vents, then lift the lid a little and wait, before you open it: a starved fire flashes.",
    "no_water_on_coals": "No water on the coals; shut the vents.",
    "hot_ash": "Ash stays hot for days: a metal bin with a lid, away from the house.",
    "through_140f_in_4h": "Birds, and opened meat not cured to its middle, should pass 60 °C (140 °F) within about 4 h of going on.",
    "through_130f_in_6h": "It has to pass 55 °C (130 °F) within 6 h of going on.",
    "no_partial_cook": "No smoking part of the way today and finishing tomorrow.",
    "coldest_spot": "Probe three places; the coldest counts.",
    "moist_surface": "The kill tables assume moist heat; a dry surface can lag behind the core.",
    "low_rows_not_shown": "The lowest rows of the kill table were not shown to be enough for every germ.",
    "poultry_own_table": "Poultry has its own table: 74 °C (165 °F).",
    "fish_160f": "Hot-smoked fish: 72 °C (160 °F) held for 30 min.",
    "vacuum_fish_38f": "Vacuum-packed fish stays under 3 °C (38 °F).",
    "hold_at_140f": "Held warm means 60 °C (140 °F) or above in the middle.",
    "danger_zone": "Between 4 and 60 °C (40 and 140 °F) the clock runs: two hours, one in great heat.",
    "chill_clock": "Spores survive the fire and wake as it cools: 54 to 26 °C (130 to 80 °F) in 1.5 h, 4 °C (40 °F) 5 h later.",
    "reheating_is_no_repair": "Cooking it again does not undo time spent warm.",
    "smell_proves_nothing": "Looks, smell and taste cannot clear a doubt.",
    "reheat_165f": "Leftovers are heated to 74 °C (165 °F).",
    "at_risk_reheat": "For anybody pregnant, under 5, over 65 or weakened: heat cold slices to 74 °C (165 °F) first.",
    "not_for_at_risk": "Not for anybody pregnant, under 5, over 65 or weakened.",
    "clean_slicer": "A clean knife and board for what is eaten cold.",
    "use_by_shorter_end": "The date is the shorter end of the storage chart.",
    "for_sale": "For sale or a public event, local codes and a licensed plan decide, not this bot.",
    "local_code": "Local rules and licensed practice come before anything said here.",
    "record_is_no_licence": "This log is yours; it is no licence.",
    "cured_meat_in_moderation": "Cured meat is for eating in moderation; this is no medical advice.",
    "scale_too_coarse": "On a scale that shows whole grams this dose is too rough: dissolve 10 g in 90 g water and use 10 g of that for each gram.",
    "limit_from_memory": "This limit is from memory; check it with your food authority.",
    "under_cured_floor": "Under the level that counts as cured: it cools and keeps by the uncured rules.",
    "nitrate_in_short_cure": "Nitrate is for long cures; this one is short.",
    "skin_counted_out": "The skin is counted out, as the limit is on skin-free weight.",
    "pumped_bacon_wants_ascorbate": "Plants that pump bacon must add ascorbate.",
    "salt_set_by_cure": "This curing salt is weak, so it brings all the salt.",
    "nitrite_throw_away": "That much nitrite is not to be eaten: throw it away.",
    "nitrite_cannot_call_safe": "That is over the limit for what is eaten: I cannot call it safe.",
    "nitrite_over_limit": "That is over the legal limit.",
})  # fmt: skip


def say(caution: Caution) -> str:
    """The sentence of one caution, with the figure that it found."""
    tenth = dict(caution.facts).get("solution_g")
    if tenth is None:
        return WORDS[caution.key]
    return language.say(
        "On a scale that shows whole grams this dose is too rough: dissolve 10 g in 90 g water and use {grams} g of that.",
        grams=floor(tenth),  # what is too little by a part of a gram is no danger
    )


def lines(found: Iterable[Caution], most: int = MOST) -> list[str]:
    """The gravest few, a line each."""
    return [language.say("Mind: {more}", more=say(c)) for c in list(found)[:most]]


def of_step(step: Step, a: Assessment) -> list[str]:
    """The cautions of a step, said with the first of its kind only."""
    later_one = a.plan is not None and a.plan.of_kind(step.kind)[:1] != (step,)
    if later_one or (step.kind is Kind.READING and step.key != "reading/1"):
        return []
    return lines(of_kind(step.kind.value, a))


def at_the_start(a: Assessment) -> list[str]:
    """What is said once, under the first plan; of curing salt only where there is some."""
    return lines(caution(key) for key in AT_THE_START if not (meats.plain(a) and key.startswith("nitrite")))


def of_kind(kind: str, a: Assessment) -> Sequence[Caution]:
    """The cautions of a place that apply to this batch."""
    leave_out = {"non_intact"} if a.piece.intact else set()
    record = a.ledger.record
    leave_out.add("through_130f_in_6h" if record.hurried else "through_140f_in_4h")
    leave_out |= set() if record.fish else OF_FISH
    leave_out |= set() if record.bird else OF_BIRDS
    leave_out |= set() if meats.waterfowl(a) else OF_WATERFOWL
    leave_out |= set() if a.batch.setup.frozen else {"thawed_through"}
    if meats.in_pot(a):
        leave_out |= {key for key in WORDS if re.search("coal|ash|burp|moist|fat_", key)}
    if meats.plain(a):
        leave_out |= {key for key in WORDS if key.startswith(("nitrite", "cure_", "pink_rock", "poison"))}
    if a.batch.setup.at_risk_eaters is False:
        leave_out.add("at_risk_reheat")
    fitting = [c for c in for_step(kind) if c.key not in leave_out]
    # of two that are equally grave the one that belongs here and nowhere else comes first
    grave = list(reversed(Severity))
    return sorted(fitting, key=lambda c: (grave.index(c.severity), len(register()[c.key].at)))


def every(a: Assessment) -> str:
    """Every caution that belongs to a batch, and what its dose and its record found, for whoever asks."""
    kinds = dict.fromkeys(kind for entry in register().values() for kind in entry.at)
    found = (*(a.dose.cautions if a.dose else ()), *a.ledger.verdict.cautions)
    seen = {c.key: c for c in (*found, *(c for kind in kinds for c in of_kind(kind, a)))}
    return _listed(seen.values())


def without_a_batch() -> str:
    """What ends the matter for everybody, with its source."""
    stops = (entry.caution for entry in register().values() if entry.caution.severity is Severity.STOP)
    told = language.say("A batch has its own beside these: type «cautions» once it is under way.")
    return f"{_listed(stops)}\n{told}"


def _listed(cautions: Iterable[Caution]) -> str:
    """A line each; those of one source stand together, and it is named once, behind the last of them."""
    of_source: dict[str, list[str]] = {}
    for c in cautions:
        of_source.setdefault(c.source.title, []).append(say(c))
    groups = (("\n".join(said), title) for title, said in of_source.items())
    return "\n".join(f"{said} ({title})" for said, title in groups)


def chill_forecast(a: Assessment) -> str:
    """How the chill is expected to go against the rule, and what would pass where it does not."""
    forecast = a.cooling.forecast
    if forecast is None:
        return ""
    to_80, to_40 = forecast.between(54.4, 26.7), forecast.to(4.4)
    if to_80 is None:
        return ""
    chance = forecast.chance(((54.4, 26.7, 1.5), (26.7, 4.4, 5.0)))
    if to_80.p90 < A_MINUTE_H:  # past the first span by its last reading
        return language.say("Cold after about {p50} this way.", p50=numbers.hours(to_40.p50)) if to_40 else ""
    cold = language.say("; cold after {p50}", p50=numbers.hours(to_40.p50)) if to_40 else ""
    lead = language.say(
        "{span} takes about {p50} this way ({p10} to {p90}){cold}.",
        span=_span(a),
        p50=numbers.hours(to_80.p50),
        p10=numbers.hours(to_80.p10),
        p90=numbers.hours(to_80.p90),
        cold=cold,
    )
    if chance >= 0.9:
        return lead
    help_ = chilling.now(a) or language.say("Ice water around the bag, or cut it to half its thickness now.")
    return language.say("{lead} That may miss the rule of 1.5 h. {help}", lead=lead, help=help_)


def _span(a: Assessment) -> str:
    """The first span of the rule, in the person's unit first."""
    if a.person.units.temperature == "f":
        return language.say("130 to 80 °F (54 to 26 °C)")
    return language.say("54 to 26 °C (130 to 80 °F)")
