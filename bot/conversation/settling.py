"""Answers to what the bot asked, settings of a person, pauses, and the end of a batch."""

import re
from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime
from typing import Any
from zoneinfo import available_timezones

from bot.conversation import (
    doubting,
    last_resort,
    marking,
    mending,
    moving,
    starting,
    trade,
    which_batch,
)
from bot.conversation.guesses import scale_said, with_length, with_place
from bot.conversation.half import share_open, unpack
from bot.conversation.lacking import SHARE
from bot.conversation.understand import PLACES, Understood
from bot.facts import facts
from bot.intents.intents import Cancel, Change, Choose, Debrief, Pause, Resume, Settings
from bot.intents.places import zones_at
from bot.intents.weights import share_of
from bot.measures import to_house
from bot.reply import Reply
from bot.wording import asking, errands, general, language, mends, plans, privacy, refusals, settings
from bot.wording import batches as batch_words
from bot.wording.language import say
from core.batch.assess import Change as Done
from core.batch.ways import alternatives
from core.errors import Gone, UnknownCure
from core.service import batches, people
from core.service.turn import Turn

_SHOWN_AGAIN = re.compile(r"\b(?:that|this|it|the (?:whole )?plan|everything|those)\b")  # and not only from now on
ONE_BY_ONE = re.compile(r"\b(?:weigh|gewicht).*\b(?:temp|but|keep|aber)|\btemp.*\b(?:weigh|gewicht)")  # each quantity
_OF_A_START = frozenset({"cut", "mass", "mass_unit", "share", "zone", "deadline", "thickness", "hot_instead"})
_SAME_SLOT = {"share": "mass"}  # «3 lb in all» is the weight


OF_THE_CURE = {"second": "cure-types", "needed": "when-cure", "what": "what-is-nitrite"}
"""What is told where, asked how strong it is, somebody asks back or names the kind with nitrate, by its entry."""


def choose(turn: Turn, meant: Understood, intent: Choose) -> Sequence[Reply]:
    """What was asked is answered, by a tap or in words."""
    asked = meant.asked or {}
    if intent.slot in _OF_A_START and _was_asked(asked, intent.slot):
        return _go_on(turn, meant, intent)
    match intent.slot:
        case "zone" if str(intent.value) in available_timezones():
            return _settings(turn, meant, {"zone": intent.value}, "")
        case "about":
            return last_resort.chosen(turn, meant, str(intent.value))
        case "change":
            return _slot(turn, meant, intent)
        case "confirm" if asked.get("batch"):
            return _confirm(turn, meant, bool(intent.value), asked["batch"])
        case "cure" | "thickness" if intent.value in ("unknown", *OF_THE_CURE):
            return _not_known(turn, meant, intent)
        case "way":
            return _way(turn, meant, intent)
        case "probe" if asked.get("slot") == "probe":
            return doubting.probe(turn, asked, str(intent.value))
        case "doubt" if asked.get("slot") == "doubt":
            return doubting.settle(turn, asked, str(intent.value))
        case "grey" | "salty" | "weight_after":
            return marking.note(turn, meant, _looked_back(intent))
        case "vouch":
            return mending.change(turn, meant, Change({"fridge_vouched": True}, intent.batch))
        case "sum" | "sum_why" | "entry" | "more" | "sources" | "wrong":
            return trade.chosen(turn, meant, intent.slot, str(intent.value))
        case "keep":
            turn.ask(None)
            return (Reply(general.kept()),)
        case "forget" if asked.get("slot") == "forget":  # asked of this person, so nobody else's tap forgets them
            return _forget(turn, bool(intent.value))
        case "moved" if intent.batch:
            return moving.to_other(turn, intent.batch, str(intent.value))
        case "batch":
            return _which(turn, meant, intent.batch or str(intent.value))
        case _:
            return (Reply(general.answered_already(), facts={"answer_kind": "declined"}),)


def _was_asked(asked: dict[str, Any], slot: str) -> bool:
    """Whether it is what was asked of a batch that is half said."""
    return asked.get("said") is not None and slot in (asked.get("slot"), _SAME_SLOT.get(str(asked.get("slot"))))


def _which(turn: Turn, meant: Understood, batch: str) -> Sequence[Reply]:
    """The batch of which the talk is from now on; «all», where no line waits for it, tells how each stands."""
    if batch == "all":
        return which_batch.every(turn, meant.message.text)
    turn.ask({"slot": "talk", "batch": batch})
    return (Reply(general.about(batches.look(turn, batch))),)


def _looked_back(intent: Choose) -> Debrief:
    match intent.slot:
        case "grey":
            return Debrief(grey=float(intent.value), batch=intent.batch)
        case "salty":
            return Debrief(salt=int(intent.value), batch=intent.batch)
        case _:
            return Debrief(mass=float(intent.value), batch=intent.batch)


def _confirm(turn: Turn, meant: Understood, yes: bool, batch: str) -> Sequence[Reply]:
    """«yes» or «no» to dropping a batch."""
    if yes:
        return _cancel(turn, meant, Cancel(batch, sure=True))
    turn.ask(None)
    return (Reply(general.kept()),)


def _forget(turn: Turn, yes: bool) -> Sequence[Reply]:
    turn.ask(None)
    if not yes:
        return (Reply(general.kept()),)
    return (Reply(privacy.forgotten(people.forget(turn))),)


def _not_known(turn: Turn, meant: Understood, intent: Choose) -> Sequence[Reply]:
    """«I don't know»: of a thickness a guess will do, of a curing salt none will, and its number is no strength."""
    rows = asking.cure(meant.batch)[1] if meant.batch else ()  # what the packet says is one tap, as it was before
    if told := OF_THE_CURE.get(str(intent.value)):  # with which packet it goes on is asked again
        return tuple(replace(one, buttons=rows) for one in trade.told(turn, told, meant.message.text))
    if intent.slot == "thickness":
        turn.ask(None)
        return (Reply(general.thickness_guessed(), about=meant.batch),)
    text = refusals.say(UnknownCure(""), turn.person)
    return (Reply(text, buttons=rows, facts={"refused": "UnknownCure"}, about=meant.batch),)


def _go_on(turn: Turn, meant: Understood, intent: Choose) -> Sequence[Reply]:
    said = dict(unpack((meant.asked or {}).get("said")) or {})
    match intent.slot:
        case "mass" if open_ := share_open(meant.asked or {}, intent.value, meant.message.text):
            return starting.begin(turn, said, open_)
        case "mass_unit":
            said["mass"] = to_house(float(said.pop("mass_value")), str(intent.value))
        case "share":
            count, mass = share_of(said[SHARE])
            said["mass"] = mass if intent.value == "all" else mass * count
        case "zone":
            before = turn.person
            people.change(turn, with_place(turn, {"zone": intent.value, "zone_known": True}))
            said = starting.on_the_wall(said, before, turn.person)
        case "hot_instead":
            turn.ask(None)
        case slot:
            said[slot] = intent.value
    return starting.begin(turn, {name: value for name, value in said.items() if name != "mass_value"})


def _slot(turn: Turn, meant: Understood, intent: Choose) -> Sequence[Reply]:
    batch = meant.of(intent.batch)
    text, rows = asking.slot(str(intent.value), batches.look(turn, batch), turn.person)
    turn.ask({"slot": str(intent.value), "batch": batch})
    return (Reply(text, buttons=rows, facts={"answer_kind": "asked_back", "asked": str(intent.value)}, about=batch),)


def _way(turn: Turn, meant: Understood, intent: Choose) -> Sequence[Reply]:
    a = batches.look(turn, meant.of(intent.batch))
    way = next((w for w in alternatives(a) if w.name == intent.value), None)
    if way is None:
        raise Gone("plan")
    return mending.change(turn, meant, Change(dict(way.changes), a.batch.id))


def settle(turn: Turn, meant: Understood, intent: Settings | Pause | Resume | Cancel) -> Sequence[Reply]:
    """Settings of a person, pauses, and the end of a batch."""
    match intent:
        case Settings(changes, unclear):
            return _with_other_zones(meant, turn.now, _settings(turn, meant, changes, unclear))
        case Pause(until):
            done = [
                batches.pause(turn, batch, until, intent.since) for batch in _named_or_all(turn, meant, intent.batch)
            ]
            a = next((one.after for one in done if settings.while_away(one.after)), done[0].after)
            others = a.person.id not in (turn.said.chat, turn.person.id)
            said = settings.away_alone(a) if others else settings.paused(a)
            short = until is not None and intent.since is None and until - turn.now <= errands.LONGEST
            due = errands.meanwhile(a, until - turn.now) if until is not None and short else ""
            due = plans.coming(a) if until is None else due
            return (Reply(f"{said}\n{due}".strip(), facts=facts(a), about=_only(done)),)
        case Resume():
            done = [batches.resume(turn, batch) for batch in _named_or_all(turn, meant, intent.batch)]
            text = settings.resumed(*(one.after for one in done))
            return (Reply(text, facts=facts(done[0].after), about=_only(done)),)
        case Cancel():
            return _cancel(turn, meant, intent)


def _with_other_zones(meant: Understood, now: datetime, replies: Sequence[Reply]) -> Sequence[Reply]:
    """After a shared location: the clocks of other places near it, one tap away."""
    others = zones_at(meant.message.text, now)[1:] if meant.message.other in PLACES else ()
    row = tuple(
        asking.button(say("No, {name}", name=zone.rsplit("/", 1)[-1].replace("_", " ")), Choose("zone", zone))
        for zone in others
    )
    return [replace(replies[0], buttons=(*replies[0].buttons, row)), *replies[1:]] if row else replies


def _named_or_all(turn: Turn, meant: Understood, named: str | None) -> Sequence[str]:
    """Who goes out is away from every batch, unless one was named."""
    return [named] if named else _by_name(turn) or [meant.of(None)]


def _by_name(turn: Turn) -> list[str]:
    return [row.id for row in sorted(batches.open_here(turn), key=lambda row: row.name)]


def _only(done: Sequence[Done]) -> str | None:
    return done[0].after.batch.id if len(done) == 1 else None


def _settings(turn: Turn, meant: Understood, changes: dict[str, Any], unclear: str) -> Sequence[Reply]:
    asked = meant.asked or {}
    if not changes:
        return (Reply(asking.zone(unclear), facts={"answer_kind": "asked_back", "asked": "zone"}),)
    changes = changes | {f"{field}_known": True for field in ("language", "units") if field in changes}
    if scale_said(turn.person, changes):
        changes = changes | {"degrees_known": True}
    if "zone" in changes:
        changes = with_place(turn, changes | {"zone_known": True})
    changes = changes if ONE_BY_ONE.search(meant.message.text.lower()) else with_length(turn.person, changes)
    before = turn.person
    changed = people.change(turn, changes)
    language.speak(turn.person.language)
    if asked.get("slot") == "zone" and "zone" in changes and asked.get("said") is not None:
        return starting.begin(turn, starting.on_the_wall(dict(unpack(asked["said"])), before, turn.person))
    text = "\n".join([settings.changed(turn.person, changes, turn.now), *_staying(turn, changes)])
    if not changed:
        return (Reply(text),)
    if len(changed) > 1 or len(batches.open_here(turn)) > 1:  # what follows by its name; the message is about no batch
        said = [
            batch_words.with_name(one.after.batch.name, "\n".join(lines))
            for one in changed
            if (lines := mends.effects(one))
        ]
        return (Reply("\n".join([text, *said])),)
    lines = [text, *(line for one in changed for line in mends.effects(one))]
    if "units" in changes and _SHOWN_AGAIN.search(meant.message.text.lower()):
        lines.append(plans.whole(changed[-1].after))
    return (Reply("\n".join(lines), facts=facts(changed[-1].after), about=changed[-1].after.batch.id),)


def _staying(turn: Turn, changes: dict[str, Any]) -> list[str]:
    """The batches that are left on the clock of the place where they lie."""
    here = (batches.look(turn, row.id) for row in batches.open_here(turn)) if "zone" in changes else ()
    own = (a for a in here if a.person.id == turn.person.id)
    return [settings.stays(a.batch.name, a.batch.setup.zone) for a in own if a.batch.setup.zone]


def _cancel(turn: Turn, meant: Understood, intent: Cancel) -> Sequence[Reply]:
    if intent.batch is None and (meant.asked or {}).get("said"):  # what is only half said
        turn.ask(None)
        return (Reply(general.not_begun()),)
    a = batches.look(turn, meant.of(intent.batch))
    if not intent.sure:
        text, rows = asking.cancel(a.batch.name, a.batch.id)
        turn.ask({"slot": "confirm", "batch": a.batch.id})
        return (Reply(text, buttons=rows, facts={"asked": "confirm"}, about=a.batch.id),)
    done = batches.finish(turn, a.batch.id, "cancelled")
    turn.ask(None)
    return (Reply(general.dropped(done.after), facts=facts(done.after), about=a.batch.id),)
