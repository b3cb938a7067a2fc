"""The loopback Bot API behaves as the published one: tried with the library's own Bot, not with our door."""

import asyncio
from collections.abc import AsyncIterator

import pytest
from telegram import Bot, InlineKeyboardButton, InlineKeyboardMarkup
from telegram.error import BadRequest, Conflict, Forbidden, InvalidToken
from telegram.request import HTTPXRequest

from tests.telegram.loopback import BotApi
from tests.telegram.loopback_chats import Limits

PNG = b"\x89PNG\r\n\x1a\n" + b"\r\n--a boundary?\r\n" + bytes(range(256))


@pytest.fixture
async def bot(server: BotApi) -> AsyncIterator[Bot]:
    requests = HTTPXRequest(connection_pool_size=4), HTTPXRequest(connection_pool_size=4)
    bot = Bot(server.token, server.url, request=requests[0], get_updates_request=requests[1])
    yield bot
    for request in requests:
        await request.shutdown()


async def test_an_update_is_confirmed_by_the_next_offset(server: BotApi, bot: Bot) -> None:
    """Until then it comes again, each time the same; what comes later stays."""
    ida = server.person("Ida")
    first, second = ida.says("1"), ida.says("2")

    assert [each.update_id for each in await bot.get_updates()] == [first, second]
    assert [each.update_id for each in await bot.get_updates(offset=first)] == [first, second]
    assert [each.update_id for each in await bot.get_updates(offset=second)] == [second]
    assert [each.update_id for each in await bot.get_updates(limit=1)] == [second]
    assert await bot.get_updates(offset=second + 1) == ()


async def test_a_long_poll_ends_with_the_first_message(server: BotApi, bot: Bot) -> None:
    """It waits, and answers at once when somebody speaks; without a message it is empty in the end."""
    ida = server.person("Ida")
    waiting = asyncio.create_task(bot.get_updates(timeout=50))
    await server.until(lambda: server.count("getUpdates") == 1)
    ida.says("158")

    assert len(await asyncio.wait_for(waiting, 40)) == 1


async def test_the_second_of_two_pollers_wins(server: BotApi, bot: Bot) -> None:
    """The older question gets 409."""
    older = asyncio.create_task(bot.get_updates(timeout=50))
    await server.until(lambda: server.count("getUpdates") == 1)
    newer = asyncio.create_task(bot.get_updates(timeout=50))

    with pytest.raises(Conflict):
        await older
    server.person("Ida").says("158")
    assert len(await newer) == 1


async def test_polling_under_a_webhook_is_a_conflict(server: BotApi, bot: Bot) -> None:
    """Until the webhook is deleted; what waits is kept."""
    await bot.set_webhook("http://127.0.0.1:9/nobody")
    server.person("Ida").says("158")
    with pytest.raises(Conflict, match="webhook"):
        await bot.get_updates()
    await bot.delete_webhook()

    assert len(await bot.get_updates()) == 1


async def test_only_what_was_asked_for_comes(server: BotApi, bot: Bot) -> None:
    """`allowed_updates` holds until it is changed."""
    await bot.get_updates(allowed_updates=["edited_message"])
    ida = server.person("Ida")
    ida.says("158")
    ida.edits("185")
    updates = await bot.get_updates()

    assert [each.edited_message.text for each in updates if each.edited_message] == ["185"]
    assert len(updates) == 1


async def test_the_limits_of_length(server: BotApi, bot: Bot) -> None:
    """4,096 for a text, 1,024 for a caption, 64 bytes for a button; nothing empty."""
    chat = server.person("Ida").chat
    await bot.send_message(chat, "x" * 4096)
    await bot.send_photo(chat, PNG, caption="x" * 1024)
    await bot.send_message(chat, "x", reply_markup=button("x" * 64))
    for wrong in (
        bot.send_message(chat, "x" * 4097),
        bot.send_message(chat, "🔥" * 2049),
        bot.send_message(chat, " "),
        bot.send_photo(chat, PNG, caption="x" * 1025),
        bot.send_photo(chat, b"no picture"),
        bot.send_message(chat, "x", reply_markup=button("x" * 65)),
        bot.send_message(chat, "x", reply_markup=button("ü" * 33)),
    ):
        with pytest.raises(BadRequest):
            await wrong

    assert [each.photo for each in server.to(chat)] == [None, PNG, None]


def button(payload: str) -> InlineKeyboardMarkup:
    return InlineKeyboardMarkup([[InlineKeyboardButton("Done", callback_data=payload)]])


async def test_editing_and_deleting(server: BotApi, bot: Bot) -> None:
    """A message can be changed and taken away, once."""
    chat = server.person("Ida").chat
    number = (await bot.send_message(chat, "x")).message_id
    await bot.edit_message_text("y", chat, number)
    await bot.edit_message_reply_markup(chat, number, reply_markup=button("z"))
    with pytest.raises(BadRequest, match="not modified"):
        await bot.edit_message_text("y", chat, number)
    assert await bot.delete_message(chat, number)
    with pytest.raises(BadRequest, match="not found"):
        await bot.delete_message(chat, number)

    assert (await bot.get_chat(chat)).id == chat


async def test_who_is_there(server: BotApi, bot: Bot) -> None:
    """Nobody by that number, somebody who blocked the bot, a token of another."""
    ida = server.person("Ida")
    with pytest.raises(BadRequest, match="not found"):
        await bot.send_message(1, "x")
    ida.blocks()
    with pytest.raises(Forbidden, match="blocked"):
        await bot.send_message(ida.chat, "x")
    server.token = "100001:another"
    with pytest.raises(InvalidToken):
        await bot.get_me()


async def test_the_limits_of_pace() -> None:
    """Thirty a second overall, four in three seconds to a person, twenty a minute to a group: then a 429."""
    async with BotApi(limits=Limits()) as server:
        statuses: dict[str, list[bool]] = {"person": [], "group": [], "all": []}
        ida, group = server.person("Ida"), server.group("Harvest supper")
        people = [server.person(str(number)) for number in range(40)]
        for kind, chats in (("person", [ida.chat] * 5), ("group", [group.id] * 21), ("all", [p.chat for p in people])):
            for chat in chats:
                answer = await server._answer(server.token, "sendMessage", {"chat_id": str(chat), "text": "x"})
                statuses[kind].append(answer.status == 200)

        assert statuses["person"] == [True] * 4 + [False]
        assert statuses["group"] == [True] * 20 + [False]
        assert sum(statuses["all"]) == 30 - 4 - 20
        assert server.chats.refused == 1 + 1 + 40 - 6


async def test_a_fault_strikes_as_often_as_it_is_told(server: BotApi, bot: Bot) -> None:
    """Two calls pass, the next two to that chat fail, then all is well."""
    ida, otto = server.person("Ida"), server.person("Otto")
    server.fail("sendMessage", status=403, description="Forbidden: x", chat=ida.chat, times=2, skip=2)
    worked = []
    for _ in range(6):
        await bot.send_message(otto.chat, "x")
        try:
            await bot.send_message(ida.chat, "x")
        except Forbidden:
            worked.append(False)
        else:
            worked.append(True)

    assert worked == [True, True, False, False, True, True]
