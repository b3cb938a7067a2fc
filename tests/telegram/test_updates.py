"""No update stops the door: whatever the Bot API may send one day is read, or confirmed and passed over."""

import asyncio
import copy
import logging
from datetime import UTC, datetime
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from bot.channels.telegram.intake import Doorway, House, Intake
from bot.channels.telegram.updates import Me
from bot.reply import Message

NOW = datetime(2027, 3, 1, 8, tzinfo=UTC)
ME = Me(100001, "saltbell_bot")
IDA = {"id": 7, "is_bot": False, "first_name": "Ida", "language_code": "en"}
BOT = {"id": ME.id, "is_bot": True, "first_name": "Saltbell"}
SAID: dict[str, Any] = {
    "message_id": 5,
    "date": 1_800_000_000,
    "chat": {"id": -7, "type": "group", "title": "Harvest supper"},
    "from": IDA,
    "text": "/plan@saltbell_bot",
    "entities": [{"type": "bot_command", "offset": 0, "length": 18}],
    "reply_to_message": {"message_id": 4, "date": 1, "chat": {"id": -7, "type": "group"}, "from": BOT},
}
MEMBER = {"status": "kicked", "user": IDA, "until_date": 0}
UPDATES: list[dict[str, Any]] = [
    {"message": SAID},
    {"edited_message": SAID | {"edit_date": 1_800_000_001}},
    {"message": SAID | {"photo": [{"file_id": "a", "file_unique_id": "b", "width": 1, "height": 1}], "text": None}},
    {"callback_query": {"id": "1", "from": IDA, "message": SAID, "data": "v1:done", "chat_instance": "1"}},
    {
        "my_chat_member": {
            "chat": SAID["chat"],
            "from": IDA,
            "date": 1,
            "old_chat_member": MEMBER,
            "new_chat_member": MEMBER,
        }
    },
]
VALUES = st.one_of(
    st.none(),
    st.booleans(),
    st.integers(-(2**70), 2**70),
    st.floats(),
    st.text(max_size=20),
    st.builds(list),
    st.builds(dict),
    st.builds(lambda: [{}]),
    st.builds(lambda: {"id": None}),
)


@st.composite
def spoiled(draw: st.DrawFn) -> dict[str, Any]:
    """An update of which one to three places hold something else, or nothing."""
    update: dict[str, Any] = copy.deepcopy(draw(st.sampled_from(UPDATES)))
    for _ in range(draw(st.integers(1, 3))):
        where = draw(st.sampled_from(list(_places(update))))
        if draw(st.booleans()):
            where[0][where[1]] = draw(VALUES)
        else:
            del where[0][where[1]]
    return update | {"update_id": 1}


def _places(node: Any) -> list[tuple[Any, Any]]:
    if not isinstance(node, dict | list) or not node:
        return [({"": None}, "")]
    items = list(node.items()) if isinstance(node, dict) else list(enumerate(node))
    return [(node, key) for key, _ in items] + [place for _, value in items for place in _places(value)]


async def take(update: dict[str, Any]) -> tuple[bool, list[Message]]:
    """Whether an update is confirmed, and what of it reached the house."""
    taken: list[Message] = []

    async def nothing(_: str) -> None: ...

    async def me() -> Me:
        return ME

    def receive(message: Message, _: datetime) -> bool:
        taken.append(message)
        return True

    async def house() -> House:
        return House(receive, nothing)

    intake = Intake(Doorway(me, house, lambda: NOW, nothing))
    kept = await intake.take(update)
    await intake.drain()
    return await kept, taken


@settings(max_examples=250, deadline=None)
@given(spoiled())
def test_a_spoiled_update_is_confirmed(update: dict[str, Any]) -> None:
    """It reaches the house as a message of one chat with a key, or not at all; it never comes again."""
    logging.disable()
    try:
        confirmed, taken = asyncio.run(take(update))
    finally:
        logging.disable(logging.NOTSET)

    assert confirmed
    assert len(taken) <= 1
    assert all((each.key, type(each.text), each.said_at.tzinfo) == ("tg:1", str, UTC) for each in taken)
    assert all(str(int(number)) == number for each in taken for number in (each.chat, each.person))


def test_the_whole_ones_are_read() -> None:
    """The same updates unspoiled all reach the house: the test above spoils something that works."""
    kinds = [asyncio.run(take(update | {"update_id": 1}))[1][0] for update in UPDATES]

    assert [(each.text, each.other, each.pressed) for each in kinds] == [
        ("/plan", None, None),
        ("/plan", None, None),
        ("", "photo", None),
        ("", None, "v1:done"),
        ("", "blocked", None),
    ]
