"""A question about the batch that its words made a broad one, as the closer one that it is, by likeness."""

import re
from dataclasses import replace

from bot import measures
from bot.conversation import around
from bot.intents.intents import Ask
from bot.intents.normal import normal
from bot.intents.told import told
from core.answers.entries import ENGLISH
from core.answers.find import closest
from core.plan.steps import Kind
from core.service.turn import Turn

SHORTEST = 3  # words; «plan» is the whole plan
CLOSER = {  # said of much, and what may be meant of it
    "log": frozenset(
        {"flip_last", "since", "last_reading", "fridge_log", "weight", "dose", "cure_in", "thickness", "meal", "missed"}
        | {"last_time", "flips_done", "rate", "between"}
    ),
    "plan": frozenset(
        {"plan", "out", "day", "slice", "meat_on", "light", "off", "rest", "meal", "chill", "left", "weight", "cooled"}
        | {"last_time", "earliest", "use_by"}
    ),
    "now": frozenset(
        {
            "catch_up",
            "flip_next",
            "day",
            "missed",
            "bed",
            "in_time",
            "longer",
            "rate",
            "pit_falls",
            "which_call",
            "late",
        }
    ),
    "dose": frozenset({"cure_in", "portion_salt"}),
    "sum": frozenset({"in_time", "why_dose", "cooled", "out", "day", "eta", "above", *around.WITH_A_MASS}),
    "eta": frozenset(
        {"in_time", "out", "slice", "cured_yet", "eat_cold", "reaches", "hotter", "earliest", "late", "wrap"}
    ),
    "safe": frozenset({"cooled", "photo", "last_time", "eat_cold"}),
    "fire": frozenset({"pit_falls"}),
    "pull": frozenset({"off", "reaches", "at_core", "pull_at"}),
}
ABOUT = {"why_days": ("why", "days"), "why_dose": ("why", "dose"), "why_hours": ("why", "hours")}
ONLY_WITH = {  # no closer topic than the one that its words made it, where none of these is said
    "flip_next": re.compile(r"\b(?:flip|turn)"),
    "pull_at": re.compile(r"\b(?:what (?:if|happens|would)|if|can|could|ok|okay|safe)\b"),
    "pit_falls": re.compile(r"\b(?:drop|fall|los[ei]|sink|cold|dying|hold|keep|down)"),
    "portion_salt": re.compile(r"\b(?:portions?|slices?|servings?|plates?|sodium)\b"),
}
_OWN = frozenset({"mass", "length", "volume", "fraction", "ppm"})  # told with the question: no figures of this record


def figured(plain: str) -> bool:
    """Whether a line brings a weight, a length, a volume or a share of its own."""
    return bool(_OWN & {m.kind for m in measures.find(plain)})


def with_a_mass(text: str) -> frozenset[str]:
    """The topics that the weight of a line may be of: curing salt and no meat, or meat and no curing salt."""
    line = told(normal(text))
    grams = line.cure is not None or (line.heaviest is None and line.water is None)
    return frozenset({"grams"}) if grams and line.meat is None else around.WITH_A_MASS - {"grams"}


def closer(turn: Turn, intent: Ask) -> Ask:
    """A question that its words made one for the whole log or plan, as the closer one that it is."""
    plain = normal(intent.text, turn.person.language)
    asked = intent.text if turn.person.language == ENGLISH else plain
    if len(asked.split()) < SHORTEST or intent.topic not in CLOSER:
        return intent
    if intent.topic == "log" and (step := around.step_asked(asked)):
        return replace(intent, topic="flip_last" if step is Kind.FLIP else "done_step")
    among = CLOSER[intent.topic] & with_a_mass(asked) if figured(plain) else CLOSER[intent.topic]
    among -= {topic for topic, words in ONLY_WITH.items() if not words.search(asked.lower())}
    found = closest(asked, among) if among else None
    topic, about = ABOUT.get(found or "", (found, ""))
    return intent if topic is None else replace(intent, topic=topic, about=about)
