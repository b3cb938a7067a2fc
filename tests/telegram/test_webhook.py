"""The webhook server: only the Bot API gets in, and 200 means kept."""

import asyncio
import json
from collections.abc import AsyncIterator

import pytest

from bot.channels.telegram.channel import Telegram
from tests.telegram.conftest import SECRET
from tests.telegram.echo_house import EchoHouse
from tests.telegram.loopback import PATIENCE, BotApi
from tests.telegram.loopback_http import HttpClient

HEADER = "X-Telegram-Bot-Api-Secret-Token"


@pytest.fixture
async def caller(webhook: Telegram) -> AsyncIterator["Caller"]:
    caller = Caller(webhook.webhook_port or 0)
    yield caller
    caller.close()


class Caller:
    """Somebody who calls the webhook by hand."""

    def __init__(self, port: int) -> None:
        self.port = port
        self._clients: list[HttpClient] = []

    async def post(self, body: bytes, secret: str | None = SECRET, path: str = "/telegram") -> int:
        headers = {} if secret is None else {HEADER: secret}
        self._clients.append(HttpClient(f"http://127.0.0.1:{self.port}{path}", headers))
        return await self._clients[-1].post(body)

    async def raw(self, request: bytes) -> bytes:
        reader, writer = await asyncio.open_connection("127.0.0.1", self.port)
        writer.write(request)
        answer = await asyncio.wait_for(reader.read(1000), PATIENCE)
        writer.close()
        return answer

    def close(self) -> None:
        for client in self._clients:
            client.close()


def update(number: int, chat: int, text: str = "158") -> bytes:
    who = {"id": chat, "is_bot": False, "first_name": "Ida"}
    message = {"message_id": 1, "date": 1_800_000_000, "chat": {"id": chat, "type": "private"}, "from": who}
    return json.dumps({"update_id": number, "message": message | {"text": text}}).encode()


@pytest.mark.parametrize("secret", [None, "", "wrong", SECRET[:-1], SECRET + "x", "ü"])
async def test_a_forged_call_is_refused(secret: str | None, caller: Caller, server: BotApi, house: EchoHouse) -> None:
    """Without the secret nobody is heard: 403, and the house is told nothing."""
    ida = server.person("Ida")

    assert await caller.post(update(1, ida.chat), secret) == 403
    assert house.received == []


async def test_a_true_call_is_kept(caller: Caller, server: BotApi, house: EchoHouse) -> None:
    """With the secret the update is in, and a second delivery of it changes nothing."""
    ida = server.person("Ida")

    assert [await caller.post(update(1, ida.chat)) for _ in range(2)] == [200, 200]
    await server.reaches(ida.chat, 1)
    assert (len(house.received), len(house.repeated), len(server.to(ida.chat))) == (1, 1, 1)


async def test_another_path_and_method(caller: Caller) -> None:
    """Only POST on the one path is served."""
    assert await caller.post(b"{}", path="/") == 404
    assert b" 405 " in await caller.raw(b"GET /telegram HTTP/1.1\r\nhost: x\r\n\r\n")


@pytest.mark.parametrize("body", [b"", b"{", b"[]", b"17", b'{"update_id": "x"}', b"\xff\xfe"])
async def test_what_is_no_update_is_not_asked_for_again(body: bytes, caller: Caller, house: EchoHouse) -> None:
    """Nonsense with the right secret is answered 200: it would be nonsense the next time too."""
    assert await caller.post(body) == 200
    assert house.received == []


async def test_too_long_a_body(caller: Caller, house: EchoHouse) -> None:
    """A body of more than a megabyte is refused before it fills the memory."""
    assert await caller.post(b'{"update_id": 1, "x": "' + b"x" * (1 << 20) + b'"}') in (413, 0)
    assert house.received == []


async def test_not_http_at_all(caller: Caller, server: BotApi) -> None:
    """Whoever talks nonsense is hung up on, and the next caller is served."""
    await caller.raw(b"\x16\x03\x01 not http\r\n\r\n")
    ida = server.person("Ida")

    assert await caller.post(update(1, ida.chat)) == 200


async def test_the_webhook_is_set_as_it_should(server: BotApi, webhook: Telegram) -> None:
    """The secret and the explicit list of updates are told; nothing that waits is dropped."""
    given = next(given for name, given, _ in server.calls if name == "setWebhook")

    assert given["secret_token"] == SECRET
    assert json.loads(str(given["allowed_updates"])) == [
        "message",
        "edited_message",
        "callback_query",
        "my_chat_member",
    ]
    assert given.get("drop_pending_updates", "false") == "false"
