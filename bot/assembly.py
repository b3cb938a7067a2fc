"""Everything that stands behind a channel, built once and fitted together."""

import gc
import os
import re
import secrets
from collections.abc import Awaitable, Callable
from dataclasses import dataclass, replace
from datetime import datetime
from functools import partial

from bot.config import Settings
from bot.conversation.turns import Conversation
from bot.intents.context import Context
from bot.intents.read import read
from bot.intents.zones import units_of
from bot.keeper.gauges import Gauges
from bot.keeper.report import Report
from bot.notify import Notify, stands
from bot.reply import Message, Outgoing
from bot.wording import keeper as words
from core import patterns
from core.person import Person
from core.reminders.delivery import Postman
from core.service import waiting, wronged
from core.service.admission import Rules
from core.service.turn import House
from core.service.waiting import Time

STATUS = re.compile(r"/?\s*bot[ _]?(?P<what>status|wrong|mended)", re.IGNORECASE)


@dataclass(frozen=True)
class Built:
    """The house as the channels use it."""

    house: House
    conversation: Conversation
    postman: Postman[Outgoing]
    report: Report

    def receive(self, message: Message, now: datetime) -> bool:
        """One whole turn, counted; see `Conversation.receive`."""
        return self.report.gauges.receiving(self.conversation.receive)(message, now)

    def go_by(self, now: Time) -> None:
        """Go by a time that is agreed on with the other replicas. Raises NotKept."""
        now.agree(self.house)
        self.postman.agree, self.report.now = now.agree, now

    def next_due(self) -> datetime | None:
        """When the next thing falls due."""
        return waiting.next_due(self.house)

    def without_facts(self) -> "Built":
        """The same for a channel that shows words alone: no facts are kept with what is said."""
        return replace(self, conversation=replace(self.conversation, facts=False))

    def close(self) -> None:
        """Let go of the store."""
        self.postman.leave()
        self.house.close()


def build(url: str, newcomer_: Person, send: Callable[[Outgoing], Awaitable[str]], rules: Rules | None = None) -> Built:
    """The house over a store, sending through one channel; `rules` say whom it lets in, and who its keeper is."""
    house = waiting.open_house(url)
    gauges = Gauges(waiting.wall())
    report = Report(gauges, house, partial(waiting.backlog, house), waiting.wall)
    # unlike any other process's, on this machine or another: in a container every process has the number 1
    owner = f"saltbell-{os.getpid()}-{secrets.token_hex(4)}"
    postman = Postman(house, Notify(house).render, gauges.sending(send), owner)
    postman.stands = stands
    aside = partial(_aside, (house, report), rules.keeper if rules else None)
    return Built(house, Conversation(house, newcomer_, aside, rules, postman), postman, report)


def made_ready() -> None:
    """Load what every line needs, so that no turn does it while others wait for the store; once a process."""
    read("3.2 kg brisket flat", Context(waiting.wall()))
    patterns.keep()
    gc.collect()
    gc.freeze()  # what is loaded stays: to look through half a million of its objects took a turn 0.1 s now and then


def _aside(of: tuple[House, Report], keeper: str | None, message: Message) -> str | None:
    """How the bot goes, and which answers were called wrong, where its keeper asks in private."""
    asked = STATUS.fullmatch(message.text.strip())
    if asked is None or keeper is None or message.person != keeper or message.in_group:
        return None
    house, report = of
    match asked["what"].lower():
        case "wrong":
            return words.wronged([(one.at, one.answer, one.question) for one in wronged.latest(house)])
        case "mended":
            return words.mended(wronged.clear(house))
        case _:
            return _status(report)


def _status(report: Report) -> str:
    gauges, behind, late = report.status()
    sent = gauges.sends["reply"] + gauges.sends["reminder"] + gauges.sends["repeat"]
    up = waiting.wall() - gauges.started
    return words.status(up, gauges.updates["kept"], sent, (behind.replies, behind.reminders, late), gauges.not_kept)


def rules(chosen: Settings) -> Rules:
    """Whom the settings let in."""
    door = chosen.door
    return Rules(door.allowed, door.code, door.messages or None, door.new_chats or None, chosen.keeper)


def newcomer(zone: str | None) -> Person:
    """Somebody who speaks for the first time: the zone of the house, and the units that go with it as a first guess."""
    if zone is None:
        return Person("")
    return Person("", zone=zone, zone_known=True, units=units_of(zone))
