"""One turn: a message in, its effect and its replies committed together, whatever happens."""

import logging
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from functools import partial

from bot.conversation import admitting, heard
from bot.conversation.act import answers
from bot.intents.households import invitation_in
from bot.intents.zones import units_spoken
from bot.reply import Message, Outgoing, Reply, to_body
from bot.wording import language, numbers, refusals
from core.answers import loading
from core.errors import NotKept
from core.person import Person
from core.reminders.delivery import Postman
from core.service import admission
from core.service import turn as turns
from core.service.admission import Knock, Rules
from core.service.entry import Entry
from core.service.steps import EDIT
from core.service.turn import House, Said, Turn

log = logging.getLogger(__name__)


@dataclass(frozen=True)
class Conversation:
    """The talk of the whole house: where it is kept, and the defaults for somebody who speaks for the first time."""

    house: House
    newcomer: Person
    aside: Callable[[Message], str | None] = lambda _: None  # what somebody is told before the talk begins
    rules: Rules | None = None  # whom the keeper lets in; None is everybody
    postman: Postman[Outgoing] | None = None  # who takes the first reply along with the turn
    facts: bool = True  # whether the facts behind a reply are kept with it, for a channel that shows them

    def receive(self, message: Message, now: datetime) -> bool:
        """Take one message: True if it was new, False if it had been taken before.

        Raises
        ------
        NotKept
            The store could not keep it: the channel must not confirm it.
        """
        message = message.keepable()
        aside = self.aside(message)
        try:
            return self._at_once(message, now, answers if aside is None else lambda *_: (Reply(aside),))
        except NotKept:
            raise
        except Exception:  # the last line of defence: a person gets a sentence, the keeper gets the trace
            log.exception("the turn for message %s failed", message.key)
            return self._turn(message, now, _apology)

    def _at_once(self, message: Message, now: datetime, answer: Callable[[Turn, Message], Sequence[Reply]]) -> bool:
        """A turn that holds the store for no longer than it reckons: what it misses is loaded before it begins anew."""
        while True:
            try:
                with loading.nothing_loads():
                    return self._turn(message, now, answer)
            except loading.NotLoaded as missing:
                missing.load()

    def _turn(self, message: Message, now: datetime, answer: Callable[[Turn, Message], Sequence[Reply]]) -> bool:
        said = Said(
            message.key,
            message.chat,
            message.person,
            message.name,
            message.said_at,
            now,
            message.language,
            _ref(message),
        )
        with turns.begin(self.house, said, self._newcomer(message), self._door(message)) as turn:
            if turn is None:
                return False
            with language.speaking(turn.person.language):
                open_ = turn.entry is Entry.OPEN
                for reply in heard.answered(turn, message, answer) if open_ else admitting.answer(turn, message):
                    text = numbers.own_first(reply.text, turn.person)
                    facts = reply.facts if self.facts else {}
                    said_in = replace(reply, text=text, language=language.spoken(), facts=facts)
                    turn.say(to_body(said_in), answering=message.ref or None, about=reply.about)
            taken = self.postman.take_reply(turn.tx, turn.said.chat, now) if self.postman and turn.replies else None
        if self.postman is not None and taken is not None:
            self.postman.hand(taken)
        return True

    def _newcomer(self, message: Message) -> Person:
        """The defaults of somebody who speaks for the first time, units by the country of their language."""
        units = units_spoken(message.language)
        return self.newcomer if units is None else replace(self.newcomer, units=units)

    def _door(self, message: Message) -> turns.Door:
        """The door for a message; that a chat is gone or has another number is heard of any."""
        if self.rules is None or message.other in ("blocked", "moved"):
            return turns.open_door
        return partial(admission.entry, self.rules, Knock(message.text, invitation_in(message.text)))


def _ref(message: Message) -> str:
    """The message's name in the log; an edit of it has one of its own, so that the log takes both."""
    return f"{message.ref}{EDIT}{message.key}" if message.edits else message.ref


def _apology(_: Turn, message: Message) -> Sequence[Reply]:
    return (Reply(refusals.our_fault(message.key)),)
