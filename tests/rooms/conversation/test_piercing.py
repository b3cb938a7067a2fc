"""Which of the messages that go out may not wait behind others."""

from datetime import UTC, datetime

from bot.assembly import build, newcomer
from bot.reply import Message, Outgoing

MONDAY = datetime(2027, 3, 1, 8, tzinfo=UTC)
BEGUN = ("3.2 kg pork belly, smoked, for saturday 13 march at 18:00", "cure is 6.25 %", "weighed", "it is in the cure")


async def test_a_fire_is_handed_on_as_piercing() -> None:
    """A reply and a flip wait their turn; the fire does not."""
    sent: list[Outgoing] = []

    async def send(outgoing: Outgoing) -> str:
        sent.append(outgoing)
        return str(len(sent))

    built = build("sqlite://", newcomer("Europe/Vienna"), send)
    for number, text in enumerate(BEGUN):
        assert built.receive(Message(str(number), "garden", "7", "Ada", MONDAY, text), MONDAY)
    while (due := built.next_due()) is not None:
        await built.postman.round(due)
    built.close()
    loud = {str(one.reply.facts["reminder"]): one.piercing for one in sent if one.reply.kind == "reminder"}
    assert loud["flip_and_fridge"] is False
    assert loud["light"] is True
    assert not any(one.piercing for one in sent if one.reply.kind == "reply")
