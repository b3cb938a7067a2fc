"""What can go wrong between a bot and the Bot API, on demand."""

import asyncio
import json
from dataclasses import dataclass, field
from typing import Any

from tests.telegram.loopback_http import Answer

Json = dict[str, Any]


@dataclass
class Fault:
    """What goes wrong with the next `times` calls of `method` (to `chat`), after `skip` that pass.

    `how`: "status" (with `status`, `description`, `extra`), "stall" (silence for `seconds`, then the line is cut),
    "cut" (half an answer), "garbled" (200 and no JSON), "odd" (JSON of another shape), "drip" (a byte every
    `seconds`). `delivered`: the call takes effect all the same.
    """

    method: str
    how: str = "status"
    status: int = 500
    description: str = "Internal Server Error"
    extra: dict[str, int] = field(default_factory=dict)
    delivered: bool = False
    seconds: float = 0.0
    chat: int | None = None
    times: int = 1
    skip: int = 0

    def strikes(self, method: str, chat: int | None) -> bool:
        """Whether this call goes wrong; counts it."""
        if self.times <= 0 or self.method != method or self.chat not in (None, chat):
            return False
        if self.skip > 0:
            self.skip -= 1
            return False
        self.times -= 1
        return True

    async def misbehave(self, answer: Answer) -> Answer | None:
        """What goes back instead of `answer`; None cuts the line."""
        match self.how:
            case "status":
                return refusal(self.status, self.description, **self.extra)
            case "stall":
                await asyncio.sleep(self.seconds)
                return None
            case "cut":
                return Answer(answer.status, answer.body, keep=len(answer.body) // 2)
            case "garbled":
                return Answer(200, b'{"ok": tru')
            case "odd":
                return Answer(200, b'{"ok": true, "result": {}}')
            case "drip":
                return Answer(answer.status, answer.body, drip=self.seconds)
        raise ValueError(self.how)


def refusal(status: int, description: str, **extra: int) -> Answer:
    """How the API says no."""
    said: Json = {"ok": False, "error_code": status, "description": description}
    return Answer(status, json.dumps(said | ({"parameters": extra} if extra else {})).encode())
