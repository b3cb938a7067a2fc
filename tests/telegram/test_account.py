"""The account: its token stays out of every log, and its commands and connections are as they should be."""

import logging
from collections.abc import Iterator

import pytest

from bot.channels.telegram import circuit as circuit_room
from bot.channels.telegram.account import Account, hide_token
from bot.channels.telegram.channel import Telegram
from bot.channels.telegram.intake import House, Menu
from bot.channels.telegram.webhook import WebhookSite
from tests.telegram.conftest import QUICK, behind_door, door, running
from tests.telegram.echo_house import EchoHouse
from tests.telegram.loopback import TOKEN, BotApi


@pytest.fixture
def hidden() -> Iterator[None]:
    """The token is hidden, and after the test records are made as before."""
    before = logging.getLogRecordFactory()
    hide_token(TOKEN)
    yield
    logging.setLogRecordFactory(before)


def test_the_token_is_not_shown(hidden: None, caplog: pytest.LogCaptureFixture) -> None:
    """Neither in a message, nor among its arguments, nor in a traceback, whichever logger writes."""
    caplog.set_level(logging.DEBUG)
    log = logging.getLogger("some.library")
    log.info("POST https://api.example/bot%s/getMe", TOKEN)
    log.info("POST https://api.example/bot" + TOKEN + "/getMe")
    log.info("%s", {"url": f"/bot{TOKEN}/getMe"})
    try:
        raise ValueError(f"bad address /bot{TOKEN}/getMe")
    except ValueError:
        log.exception("it broke")

    assert TOKEN not in caplog.text
    assert caplog.text.count("<token>") == 3
    assert "bad address" not in caplog.text
    assert "ValueError\n" in caplog.text


async def test_a_whole_session_shows_no_token(
    server: BotApi,
    house: EchoHouse,
    caplog: pytest.LogCaptureFixture,
    hidden: None,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """A session with messages and failures, with every library as talkative as it can be made."""
    ida = server.person("Ida")
    monkeypatch.setattr(circuit_room, "FIRST_WAIT", 0.1)
    server.fail("getMe", status=500)
    server.fail("sendMessage", "cut")
    house.patience = 2.0
    house.channel = door(server)
    async with running(house.channel, house.channel.run_polling(house.open)):
        for name in ("", "httpx", "httpcore", "telegram"):
            caplog.set_level(logging.DEBUG, name)
        ida.says("158")
        await server.reaches(ida.chat, 1)

    assert "<token>" in caplog.text
    assert TOKEN not in caplog.text


async def test_libraries_are_quiet(server: BotApi, polling: Telegram, caplog: pytest.LogCaptureFixture) -> None:
    """What people say is in the libraries' debug lines, so these are off even where the keeper asks for debug."""
    caplog.set_level(logging.DEBUG)
    ida = server.person("Ida")
    ida.says("a secret of Ida")
    await server.reaches(ida.chat, 1)

    assert "secret" not in caplog.text


def test_an_account_prints_no_token() -> None:
    """The token and the secret do not show where the settings are printed."""
    assert TOKEN not in repr(Account(TOKEN))
    assert "hush" not in repr(WebhookSite("https://bot.example.org/saltbell", "hush"))


def test_the_path_is_that_of_the_public_address() -> None:
    """The webhook listens where the Bot API calls, unless a proxy changes the path on the way."""
    assert WebhookSite("https://bot.example.org/saltbell", "s").path == "/saltbell"
    assert WebhookSite("https://bot.example.org", "s").path == "/"
    assert WebhookSite("https://bot.example.org/saltbell", "s", local_path="/in").path == "/in"


async def test_commands_are_told(server: BotApi, house: EchoHouse) -> None:
    """Each menu is set for its language and its kind of chat."""
    menus = (
        Menu((("plan", "The week"), ("help", "What I can do"))),
        Menu((("plan", "Die Woche"),), "de", "private"),
        Menu((("plan", "The week"),), None, "group"),
    )

    async def open_house() -> House:
        return House(house.receive, house.deliver, menus)

    house.channel = door(server)
    async with running(house.channel, house.channel.run_polling(open_house)):
        await server.until(lambda: len(server.commands) == 3)

    assert server.commands["default", ""] == [
        {"command": "plan", "description": "The week"},
        {"command": "help", "description": "What I can do"},
    ]
    assert server.commands["all_private_chats", "de"] == [{"command": "plan", "description": "Die Woche"}]
    assert ("all_group_chats", "") in server.commands


async def test_commands_that_are_refused_stop_nothing(
    server: BotApi, house: EchoHouse, caplog: pytest.LogCaptureFixture
) -> None:
    """A command that the API refuses is said in the log; the others are set and the bot runs."""
    server.fail("setMyCommands", status=400, description="Bad Request: BOT_COMMAND_INVALID")

    async def open_house() -> House:
        return House(house.receive, house.deliver, (Menu((("Bad One", "x"),)), Menu((("plan", "The week"),), "de")))

    house.channel = door(server)
    async with running(house.channel, house.channel.run_polling(open_house)):
        await server.until(lambda: len(server.commands) == 1)

    assert "bot_command_invalid" in caplog.text.lower()


async def test_lines_are_used_again(server: BotApi, house: EchoHouse) -> None:
    """A hundred messages one after the other go over one connection, not a hundred."""
    ida = server.person("Ida")
    for number in range(100):
        ida.says(str(number))
    async with behind_door("polling", server, house, QUICK):
        await server.reaches(ida.chat, 100)

    assert server.lines <= 6
