"""The Bot API's bad days: each trouble becomes what the outbox should do about it, and nothing is hammered."""

import asyncio
import time
from collections.abc import Awaitable
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest

from bot.channels.telegram import circuit as circuit_room
from bot.channels.telegram import polling as polling_room
from bot.channels.telegram.account import TokenRefused
from bot.channels.telegram.channel import Telegram
from bot.channels.telegram.webhook import WebhookSite
from bot.reply import Outgoing, Reply
from core.errors import NotDelivered
from tests.telegram.conftest import behind_door, door, running
from tests.telegram.echo_house import EchoHouse
from tests.telegram.loopback import PATIENCE, BotApi

NOW = datetime(2027, 3, 1, 8, tzinfo=UTC)
FLOOD: dict[str, Any] = {"status": 429, "description": "Too Many Requests", "extra": {"retry_after": 7}}
NO_CHAT: dict[str, Any] = {"status": 400, "description": "Bad Request: chat not found"}
CONFLICT: dict[str, Any] = {"status": 409, "description": "Conflict: terminated by other getUpdates request"}


def to(chat: int, text: str = "Flip it.") -> Outgoing:
    return Outgoing(f"{chat} {text}", str(chat), NOW, Reply(text))


async def trouble_of(sending: Awaitable[str]) -> NotDelivered:
    with pytest.raises(NotDelivered) as caught:
        await sending
    return caught.value


@pytest.mark.parametrize(
    ("how", "details", "arrived"),
    [
        ("status", {"status": 500}, False),
        ("status", {"status": 503}, False),
        ("status", {"status": 502, "delivered": True}, True),
        ("status", {"status": 504}, True),
        ("stall", {"seconds": 600.0}, True),
        ("stall", {"seconds": 600.0, "delivered": True}, True),
        ("cut", {"delivered": True}, True),
        ("garbled", {"delivered": True}, True),
        ("odd", {"delivered": True}, True),
        ("drip", {"delivered": True, "seconds": 600.0}, True),
    ],
)
async def test_troubles_that_pass(how: str, details: dict[str, Any], arrived: bool, server: BotApi) -> None:
    """Each is tried again after a short while; what may have arrived is said to be uncertain."""
    ida = server.person("Ida")
    server.fail("sendMessage", how, **details)
    waits_in_vain = details.get("seconds", 0) > 60
    polling = door(server, read_timeout=0.5 if waits_in_vain else 30.0)

    trouble = await trouble_of(polling.send(to(ida.chat)))

    assert trouble.after is not None
    assert timedelta(0) < trouble.after <= timedelta(seconds=1)
    assert (trouble.uncertain, trouble.chat_gone, trouble.moved_to) == (arrived, False, None)
    # a trouble that may not be repeated unmarked is never called certain
    assert trouble.uncertain or not server.to(ida.chat)
    if not waits_in_vain:
        await polling.send(to(ida.chat))
    await polling.close()


async def test_a_slow_answer_is_waited_for(server: BotApi, polling: Telegram) -> None:
    """An answer that comes byte by byte is still an answer."""
    ida = server.person("Ida")
    server.fail("sendMessage", "drip", delivered=True, seconds=0.0005)

    assert await polling.send(to(ida.chat)) == f"{ida.chat}:{server.to(ida.chat)[0].message_id}"


async def test_nobody_listens() -> None:
    """A connection that cannot be made is no uncertainty: nothing left the house."""
    server = BotApi(port=1)
    channel = door(server)

    trouble = await trouble_of(channel.send(to(1)))
    await channel.close()

    assert (trouble.uncertain, trouble.chat_gone) == (False, False)
    assert trouble.after is not None


async def test_after_the_end_nothing_is_sent(server: BotApi, house: EchoHouse) -> None:
    """A reminder that falls due while the program stops goes back whole: the next process sends it."""
    async with behind_door("polling", server, house) as channel:
        ida = server.person("Ida")

    trouble = await trouble_of(channel.send(to(ida.chat)))

    assert (trouble.uncertain, trouble.chat_gone, server.to(ida.chat)) == (False, False, [])
    assert trouble.after is not None


async def test_retry_after_is_obeyed_for_that_chat_only(server: BotApi, polling: Telegram) -> None:
    """A 429 silences its own chat for as long as it says, without another call; other chats go on."""
    ida, otto = server.person("Ida"), server.person("Otto")
    server.fail("sendMessage", chat=ida.chat, **FLOOD | {"extra": {"retry_after": 300}})

    first = await trouble_of(polling.send(to(ida.chat)))
    second = await trouble_of(polling.send(to(ida.chat)))
    await polling.send(to(otto.chat))

    assert (first.after, first.uncertain) == (timedelta(seconds=300), False)
    assert second.after is not None
    assert timedelta(seconds=200) < second.after <= timedelta(seconds=300)
    assert (len(server.to(ida.chat)), len(server.to(otto.chat)), server.count("sendMessage")) == (0, 1, 2)


async def test_silence_for_the_whole_account_is_kept_everywhere(server: BotApi, polling: Telegram) -> None:
    """Where one chat after another is silenced, nobody else is tried until the time is over."""
    people = [server.person(str(number)) for number in range(10)]
    server.fail("sendMessage", times=1000, **FLOOD | {"extra": {"retry_after": 300}})

    waits = [(await trouble_of(polling.send(to(person.chat)))).after for person in people]

    assert server.count("sendMessage") == 3
    assert all(wait is not None and wait > timedelta(seconds=200) for wait in waits)


async def test_busy_groups_silence_nobody_else(server: BotApi, polling: Telegram) -> None:
    """Chats that are silenced while others are served have each their own silence."""
    ida = server.person("Ida")
    for number in range(5):
        busy = server.person(str(number))
        server.fail("sendMessage", chat=busy.chat, **FLOOD | {"extra": {"retry_after": 300}})
        await trouble_of(polling.send(to(busy.chat)))
        await polling.send(to(ida.chat))

    assert len(server.to(ida.chat)) == 5


async def test_a_start_in_silence_keeps_it(server: BotApi, house: EchoHouse, monkeypatch: pytest.MonkeyPatch) -> None:
    """A 429 to the first question of all: it is asked again when the API said, and not before."""
    monkeypatch.setattr(circuit_room, "FIRST_WAIT", 0.05)
    server.fail("getMe", **FLOOD | {"extra": {"retry_after": 1}})
    async with behind_door("polling", server, house):
        await server.until(lambda: server.count("getMe") == 2)

    first, second = (at for method, _, at in server.calls if method == "getMe")
    assert second - first >= 1.0


async def test_a_short_silence_is_waited_out(server: BotApi, polling: Telegram) -> None:
    """A second of silence is kept by waiting, and then the message goes out."""
    ida = server.person("Ida")
    server.fail("sendMessage", chat=ida.chat, **FLOOD | {"extra": {"retry_after": 1}})
    started = time.monotonic()
    await trouble_of(polling.send(to(ida.chat)))
    await polling.send(to(ida.chat))

    assert server.to(ida.chat)[0].at - started >= 1.0


async def test_a_429_without_a_time(server: BotApi, polling: Telegram) -> None:
    """A 429 that does not say how long is taken for a second."""
    ida = server.person("Ida")
    server.fail("sendMessage", status=429, description="Too Many Requests")

    assert (await trouble_of(polling.send(to(ida.chat)))).after == timedelta(seconds=1)


@pytest.mark.parametrize(
    ("how", "gone"),
    [
        ({"status": 403, "description": "Forbidden: bot was blocked by the user"}, True),
        ({"status": 403, "description": "Forbidden: user is deactivated"}, True),
        (NO_CHAT, True),
        ({"status": 400, "description": "Bad Request: not enough rights to send text messages to the chat"}, True),
        ({"status": 400, "description": "Bad Request: can't parse reply keyboard markup JSON object"}, False),
    ],
)
async def test_what_is_given_up(how: dict[str, Any], gone: bool, server: BotApi, polling: Telegram) -> None:
    """A chat that is gone stops its reminders; a message that is refused is not sent for ever."""
    ida = server.person("Ida")
    server.fail("sendMessage", **how)

    trouble = await trouble_of(polling.send(to(ida.chat)))

    assert (trouble.after, trouble.chat_gone, trouble.uncertain) == (None, gone, False)


async def test_a_blocked_and_an_unknown_chat(server: BotApi, polling: Telegram) -> None:
    """The same from what the server knows by itself."""
    ida = server.person("Ida")
    ida.blocks()

    assert (await trouble_of(polling.send(to(ida.chat)))).chat_gone
    assert (await trouble_of(polling.send(to(424242)))).chat_gone


async def test_a_group_that_moved(server: BotApi, polling: Telegram) -> None:
    """A reply to the old number says where the group is now."""
    ida, group = server.person("Ida"), server.group("Harvest supper")
    bigger = ida.upgrades(group)

    trouble = await trouble_of(polling.send(to(group.id)))

    assert (trouble.moved_to, trouble.after, trouble.chat_gone) == (str(bigger.id), timedelta(0), False)


async def test_an_api_that_fails_is_left_alone(
    server: BotApi, polling: Telegram, monkeypatch: pytest.MonkeyPatch
) -> None:
    """After some failures in a row the waits grow and the API is not called at all, until one try gets through."""
    monkeypatch.setattr(circuit_room, "FIRST_WAIT", 50.0)  # however slow the machine is, it is not over meanwhile
    ida = server.person("Ida")
    server.fail("sendMessage", times=1000)

    waits = [(await trouble_of(polling.send(to(ida.chat)))).after for _ in range(30)]

    assert server.count("sendMessage") <= 5
    assert None not in waits
    assert max(wait for wait in waits if wait) > timedelta(seconds=3)


async def test_failures_side_by_side_count_once(server: BotApi, polling: Telegram) -> None:
    """Sixteen sends under way when the API hiccups are one failure: the next try is not a minute away."""
    people = [server.person(str(number)) for number in range(16)]
    server.fail("sendMessage", "stall", seconds=0.1, times=16)

    troubles = await asyncio.gather(*(trouble_of(polling.send(to(person.chat))) for person in people))
    await polling.send(to(people[0].chat))

    assert max(each.after for each in troubles if each.after) <= timedelta(seconds=1)


async def test_a_refusal_is_an_answer(server: BotApi, polling: Telegram) -> None:
    """People who blocked the bot do not make the API look broken to the others."""
    ida = server.person("Ida")
    for number in range(8):
        gone = server.person(str(number))
        server.chats.open(gone.chat).blocked = True
        server.fail("sendMessage", chat=ida.chat)
        await trouble_of(polling.send(to(ida.chat)))
        await trouble_of(polling.send(to(gone.chat)))
    await polling.send(to(ida.chat))

    assert server.count("sendMessage") == 17


async def test_a_reply_survives_an_outage(
    server: BotApi, house: EchoHouse, polling: Telegram, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A 500 and a time-out: what was said is kept, and its reply arrives when it is tried again."""
    monkeypatch.setattr(circuit_room, "FIRST_WAIT", 0.1)
    house.patience = 2.0
    ida = server.person("Ida")
    server.fail("sendMessage", status=500)
    server.fail("sendMessage", "cut")
    ida.says("158")

    sent = await server.reaches(ida.chat, 1)

    assert [each.text for each in sent] == ["158"]
    assert [each.uncertain for each in house.troubles] == [False, True]


@pytest.mark.parametrize(
    ("how", "details"),
    [
        ("status", {"status": 500}),
        ("status", {"status": 502}),
        ("status", FLOOD | {"extra": {"retry_after": 1}}),
        ("garbled", {}),
        ("odd", {}),
        ("cut", {}),
        ("stall", {"seconds": 0.05}),
        ("status", CONFLICT),
    ],
)
async def test_the_question_for_updates_fails(
    how: str, details: dict[str, Any], server: BotApi, house: EchoHouse, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Whatever getUpdates answers, it is asked again, and what waited is taken once."""
    monkeypatch.setattr(polling_room, "FIRST_BACK_OFF", 0.05)
    monkeypatch.setattr(polling_room, "CONFLICT_PAUSE", 0.05)
    ida = server.person("Ida")
    ida.says("158")
    server.fail("getUpdates", how, times=2, **details)
    async with behind_door("polling", server, house):
        await server.reaches(ida.chat, 1)

    assert [each.text for each in server.to(ida.chat)] == ["158"]
    assert len(house.received) == 1


async def test_a_second_poller_is_told_plainly(
    server: BotApi, house: EchoHouse, caplog: pytest.LogCaptureFixture
) -> None:
    """Two programs with one token: the log says so and what to do, and the API is not asked in a loop."""
    server.fail("getUpdates", times=1000, **CONFLICT)
    async with behind_door("polling", server, house):
        await server.until(lambda: "another program polls with this bot's token (409)" in caplog.text)
        await asyncio.sleep(0.3)
        asked = server.count("getUpdates")

    assert asked == 1  # it is ten seconds at least to the next


async def test_a_start_without_network(house: EchoHouse, monkeypatch: pytest.MonkeyPatch) -> None:
    """A bot that starts before its network does waits for it."""
    monkeypatch.setattr(polling_room, "FIRST_BACK_OFF", 0.1)
    server = BotApi()
    async with server:
        pass  # the port is known, and nobody listens there any more
    house.channel = door(server)
    async with running(house.channel, house.channel.run_polling(house.open)):
        await asyncio.sleep(0.2)
        async with server:
            ida = server.person("Ida")
            ida.says("158")
            await server.reaches(ida.chat, 1)

    assert len(house.received) == 1


@pytest.mark.parametrize("way", ["polling", "webhook"])
async def test_a_token_that_is_refused(way: str, server: BotApi, house: EchoHouse) -> None:
    """A token that the API does not know ends the program with a clear error that does not show it."""
    channel = door(server)
    server.token = "100001:another"
    site = WebhookSite("http://127.0.0.1:1/telegram", "s", port=0)
    run = channel.run_polling(house.open) if way == "polling" else channel.run_webhook(house.open, site)

    with pytest.raises(TokenRefused) as refused:
        await asyncio.wait_for(run, PATIENCE)

    assert "loopback-token" not in str(refused.value)


async def test_a_token_revoked_meanwhile_gives_nothing_up(server: BotApi, polling: Telegram) -> None:
    """While the keeper fetches a new token, what waits goes on waiting."""
    ida = server.person("Ida")
    server.fail("sendMessage", status=401, description="Unauthorized")

    trouble = await trouble_of(polling.send(to(ida.chat)))

    assert trouble.after is not None
    assert trouble.after >= timedelta(minutes=1)
    assert not trouble.chat_gone
